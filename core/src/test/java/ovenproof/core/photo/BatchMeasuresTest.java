package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static ovenproof.core.photo.BatchMeasureCatalogue.*;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.BatchMeasures.Judged;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.photo.PieceClasses.ShadeClass;

class BatchMeasuresTest {
  private static final Subject RUN = Subject.ofRun("alder-1");
  private static final PieceClasses CLASSES =
      PieceClasses.of(
          List.of(
              new ShadeClass("pale", 65), new ShadeClass("golden", 50), new ShadeClass("dark", 0)),
          PieceClasses.Judged.MEDIAN);

  /**
   * Newcombe, Statistics in Medicine 17 (1998) 857–872, table I: Wilson without correction for 81
   * of 263 is 0.2553 to 0.3662, for 15 of 148 is 0.0624 to 0.1605 (from memory).
   */
  @Test
  void theNoteOfAShareHoldsThePublishedWilsonInterval() {
    assertThat(share(81, 263).note()).contains("81 of 263 pieces").contains("26 to 37 %");
    assertThat(share(15, 148).note()).contains("6 to 16 %");
  }

  private static Measurement share(int dark, int n) {
    List<Judged> pieces = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      pieces.add(new Judged(piece(String.valueOf(i), i < dark ? 40 : 60, 0), 1));
    }
    return BatchMeasures.classShare(CLASS_SHARE, RUN, CLASSES, "dark", pieces);
  }

  /** Half of the 68.27 % Wilson interval; with many pieces that is √(p(1−p)/n). */
  @Test
  void theUncertaintyOfAShareIsOneStandardError() {
    Measurement share = share(250, 1000);
    assertThat(share.value()).isCloseTo(25.0, within(1e-9));
    assertThat(share.uncertainty()).isCloseTo(100 * Math.sqrt(0.25 * 0.75 / 1000), within(0.01));
  }

  @Test
  void noneOfTwentyIsNotCertainlyNone() {
    Measurement none = share(0, 20);
    assertThat(none.value()).isEqualTo(0.0);
    assertThat(none.uncertainty()).isGreaterThan(1);
  }

  @Test
  void byAreaALargePieceWeighsMore() {
    List<Judged> pieces =
        List.of(
            new Judged(piece("1", 40, 0), 300),
            new Judged(piece("2", 60, 0), 100),
            new Judged(piece("3", 60, 0), 100));
    assertThat(BatchMeasures.classShare(CLASS_AREA, RUN, CLASSES, "dark", pieces).value())
        .isCloseTo(60, within(1e-9));
    assertThat(BatchMeasures.classShare(CLASS_SHARE, RUN, CLASSES, "dark", pieces).value())
        .isCloseTo(100 / 3.0, within(1e-9));
  }

  @Test
  void aCameraThatCouldMovePiecesOverALimitIsAComponent() {
    List<Judged> pieces = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      pieces.add(new Judged(piece(String.valueOf(i), i < 5 ? 49.5 : 60, 1), 1));
    }
    Measurement dark = BatchMeasures.classShare(CLASS_SHARE, RUN, CLASSES, "dark", pieces);
    assertThat(dark.components()).contains(Component.shared("camera:day-1/L", -25));
  }

  @Test
  void theWorstPieceIsNamedWithItsDirectionAndCarriesItsOwnUncertainty() {
    List<Measurement> pieces =
        List.of(piece("1", 60, 0.5), piece("2", 52, 0.5), piece("3", 66, 0.5));
    Measurement worst = BatchMeasures.worstPiece(RUN, pieces, 62.0);
    assertThat(worst.value()).isCloseTo(10, within(1e-9));
    assertThat(worst.note()).isEqualTo("piece 2, darker");
    assertThat(worst.components()).contains(Component.shared("camera:day-1/L", -0.5));
    Measurement fromMean = BatchMeasures.worstPiece(RUN, pieces, null);
    assertThat(fromMean.value()).isCloseTo((60 + 52 + 66) / 3.0 - 52, within(1e-9));
    assertThat(fromMean.components()).noneMatch(Component::isShared);
  }

  @Test
  void aBatchWithoutAnyValueSaysWhyItHasNoWorstPiece() {
    Measurement missing =
        Measurement.missing(PhotoMeasureCatalogue.LIGHTNESS_MEAN, RUN, "5 of 6 pieces found");
    Measurement worst = BatchMeasures.worstPiece(RUN, List.of(missing), 62.0);
    assertThat(worst.isMissing()).isTrue();
    assertThat(worst.note()).isEqualTo("5 of 6 pieces found");
  }

  @Test
  void frontAgainstBackIsTheDifferenceOfTheirMeansAndTheCameraCancels() {
    Map<Position, List<Measurement>> tray = tray(70, 69, 71, 60, 61, 59);
    Measurement side = BatchMeasures.side(CAVITY_FRONT_BACK, RUN, tray);
    assertThat(side.value()).isCloseTo(60 - 70, within(1e-9));
    assertThat(side.note()).contains("one tray cannot separate");
    assertThat(side.components().stream().filter(Component::isShared))
        .allSatisfy(c -> assertThat(c.u()).isCloseTo(0, within(1e-12)));
    // pooled SD 1 of the halves, (1/3 + 1/3) observations
    assertThat(side.uncertainty()).isCloseTo(Math.sqrt(2 / 3.0), within(0.01));
  }

  @Test
  void leftAgainstRightLeavesOutTheMiddle() {
    Measurement side = BatchMeasures.side(CAVITY_LEFT_RIGHT, RUN, tray(70, 5, 60, 70, 5, 60));
    assertThat(side.value()).isCloseTo(10, within(1e-9));
  }

  @Test
  void cornersOfATrayOfFourHaveNoRest() {
    Map<Position, List<Measurement>> four = new LinkedHashMap<>();
    four.put(new Position("back-left", 0, 0), List.of(piece("1", 60, 0)));
    four.put(new Position("front-right", 1, 1), List.of(piece("2", 60, 0)));
    assertThat(BatchMeasures.side(CAVITY_CORNERS, RUN, four).isMissing()).isTrue();
  }

  @Test
  void theSecondBatchIsComparedPlaceByPlace() {
    Map<Position, List<Measurement>> first = tray(70, 60, 50, 70, 60, 50);
    Map<Position, List<Measurement>> second = new LinkedHashMap<>(tray(66, 56, 46, 66, 56, 46));
    second.keySet().removeIf(p -> p.id().equals("p0"));
    Measurement change = BatchMeasures.secondBatch(RUN, second, first);
    assertThat(change.value()).isCloseTo(-4, within(1e-9));
  }

  @Test
  void turningAPieceSidewaysExchangesLeftAndRightOnly() {
    Measurement across = tilt(PhotoMeasureCatalogue.TILT_LEFT_RIGHT, 3);
    Measurement deep = tilt(PhotoMeasureCatalogue.TILT_FRONT_BACK, 2);
    List<Measurement> seen =
        FacePairs.asFromAbove(List.of(across, deep), FacePairs.Turned.SIDEWAYS);
    assertThat(seen).extracting(Measurement::value).containsExactly(-3.0, 2.0);
    assertThat(seen.get(0).components()).containsExactly(Component.run(-0.4));
    assertThat(
            FacePairs.asFromAbove(List.of(across, deep), FacePairs.Turned.LENGTHWAYS).stream()
                .map(Measurement::value))
        .containsExactly(3.0, -2.0);
  }

  @Test
  void turningAPieceTurnsABoundIntoTheOtherBound() {
    Measurement atLeast = Measurement.above(PhotoMeasureCatalogue.TILT_LEFT_RIGHT, RUN, 3);
    Measurement between = Measurement.between(PhotoMeasureCatalogue.TILT_LEFT_RIGHT, RUN, -1, 4);
    List<Measurement> seen =
        FacePairs.asFromAbove(List.of(atLeast, between), FacePairs.Turned.SIDEWAYS);
    assertThat(seen.get(0).censored()).isEqualTo(Censoring.BELOW);
    assertThat(seen.get(0).low()).isNull();
    assertThat(seen.get(0).high()).isEqualTo(-3);
    assertThat(seen.get(1).censored()).isEqualTo(Censoring.BETWEEN);
    assertThat(seen.get(1).low()).isEqualTo(-4);
    assertThat(seen.get(1).high()).isEqualTo(1);
  }

  private static Measurement tilt(ovenproof.core.measure.MeasureDescription measure, double value) {
    return Measurement.of(measure, RUN, value).withComponents(List.of(Component.run(0.4)));
  }

  private static Map<Position, List<Measurement>> tray(double... lightness) {
    Map<Position, List<Measurement>> tray = new LinkedHashMap<>();
    for (int i = 0; i < lightness.length; i++) {
      Position place = new Position("p" + i, i % 3 / 2.0, i / 3);
      tray.put(place, List.of(piece("p" + i, lightness[i], 1)));
    }
    return tray;
  }

  private static Measurement piece(String name, double lightness, double cameraU) {
    List<Component> parts = new ArrayList<>(List.of(Component.run(0.1)));
    if (cameraU != 0) {
      parts.add(Component.shared("camera:day-1/L", cameraU));
    }
    return Measurement.of(PhotoMeasureCatalogue.LIGHTNESS_MEAN, RUN.withPiece(name), lightness)
        .withComponents(parts);
  }
}
