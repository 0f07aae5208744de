package ovenproof.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Unit;

/** JCGM 100:2008 (GUM), 5.1 and 5.2: correlated inputs add before they are squared. */
class AveragingTest {
  private static final MeasureDescription LIGHTNESS =
      new MeasureDescription(
          "lightness-mean",
          "Mean L*",
          Unit.LIGHTNESS,
          "",
          "mean",
          "own",
          EvidenceKind.PHOTO,
          List.of(),
          1);
  private static final Subject RUN = Subject.ofRun("r1");

  private static Measurement piece(double value, double camera, double own) {
    return Measurement.of(LIGHTNESS, RUN, value)
        .withComponents(List.of(Component.shared("camera:1", camera), Component.run(own)));
  }

  @Test
  void aSharedErrorDoesNotShrinkWithTheNumberOfPieces() {
    Measurement mean = Averaging.mean(List.of(piece(60, 0.8, 0.6), piece(64, 0.8, 0.6)), RUN);
    assertThat(mean.value()).isEqualTo(62.0);
    assertThat(mean.components()).contains(Component.shared("camera:1", 0.8));
    assertThat(mean.uncertainty()).isCloseTo(Math.sqrt(0.64 + 0.36 / 2), within(1e-12));
    assertThat(mean.n()).isEqualTo(1);
  }

  @Test
  void aSharedErrorCancelsInADifference() {
    Measurement change =
        Averaging.difference(List.of(piece(58, 0.8, 0.6)), List.of(piece(64, 0.8, 0.6)), RUN);
    assertThat(change.value()).isEqualTo(-6.0);
    assertThat(change.uncertainty()).isCloseTo(0.6 * Math.sqrt(2), within(1e-12));
  }

  @Test
  void aMissingPieceIsLeftOutAndSaid() {
    Measurement missing = Measurement.missing(LIGHTNESS, RUN, "hidden by the rack");
    Measurement mean = Averaging.mean(List.of(piece(60, 0, 0), missing), RUN);
    assertThat(mean.value()).isEqualTo(60.0);
    assertThat(mean.note()).isEqualTo("1 of 2 not measured");
  }

  @Test
  void allMissingKeepsTheReason() {
    Measurement missing = Measurement.missing(LIGHTNESS, RUN, "no photograph");
    assertThat(Averaging.mean(List.of(missing), RUN).note()).isEqualTo("no photograph");
  }

  @Test
  void oneCensoredBatchMakesTheMeanABound() {
    Measurement mean =
        Averaging.mean(List.of(piece(40, 0, 0), Measurement.above(LIGHTNESS, RUN, 50)), RUN);
    assertThat(mean.censored()).isEqualTo(Censoring.ABOVE);
    assertThat(mean.low()).isEqualTo(45.0);
    assertThat(mean.high()).isNull();
    assertThat(mean.value()).isNull();
  }

  @Test
  void aDifferenceTurnsTheBoundOfWhatIsSubtracted() {
    Measurement change =
        Averaging.difference(
            List.of(piece(40, 0, 0)), List.of(Measurement.above(LIGHTNESS, RUN, 50)), RUN);
    assertThat(change.censored()).isEqualTo(Censoring.BELOW);
    assertThat(change.high()).isEqualTo(-10.0);
  }

  @Test
  void theLargestIsTheOneThatIsOpenAbove() {
    Measurement open = Measurement.above(LIGHTNESS, RUN, 50);
    assertThat(Averaging.largest(List.of(piece(90, 0, 0), open), RUN).censored())
        .isEqualTo(Censoring.ABOVE);
  }

  @Test
  void theSpreadOfTwoIsTheirDistanceOverRootTwo() {
    Measurement spread = Averaging.spread(List.of(piece(60, 0, 0), piece(64, 0, 0)), RUN);
    assertThat(spread.value()).isCloseTo(4 / Math.sqrt(2), within(1e-12));
  }
}
