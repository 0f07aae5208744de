package ovenproof.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Unit;

class MeasurementTest {
  private static final MeasureDescription TILT =
      new MeasureDescription(
          "tilt-left-right",
          "Tilt",
          Unit.LIGHTNESS,
          "",
          "right minus left",
          "own",
          EvidenceKind.PHOTO,
          List.of(),
          1);
  private static final Subject RUN = Subject.ofRun("r1");

  @Test
  void theOtherSignTurnsWhatTheValueSharesWithOthers() {
    Measurement turned =
        Measurement.of(TILT, RUN, 3)
            .withComponents(List.of(Component.shared("light:bench-a", 0.4), Component.run(0.3)))
            .negated();
    assertThat(turned.value()).isEqualTo(-3.0);
    assertThat(turned.uncertainty()).isEqualTo(0.5);
    assertThat(turned.components())
        .containsExactly(Component.shared("light:bench-a", -0.4), Component.run(-0.3));
  }

  @Test
  void whatLayAboveABoundLiesBelowItWithTheOtherSign() {
    Measurement turned = Measurement.above(TILT, RUN, 2).negated();
    assertThat(turned.censored()).isEqualTo(Censoring.BELOW);
    assertThat(turned.low()).isNull();
    assertThat(turned.high()).isEqualTo(-2.0);
    Measurement between = Measurement.between(TILT, RUN, 1, 2).negated();
    assertThat(between.low()).isEqualTo(-2.0);
    assertThat(between.high()).isEqualTo(-1.0);
  }

  @Test
  void turnedTwiceItIsItself() {
    Measurement below = Measurement.below(TILT, RUN, 5).withNote("seen at the first look");
    assertThat(below.negated().negated()).isEqualTo(below);
  }

  @Test
  void whatIsUnknownElsewhereKeepsItsEvidenceAndSaysWhy() {
    Measurement gone =
        Measurement.of(TILT, RUN, 3)
            .withEvidence(List.of("photos/a.jpg"))
            .unknownFor(Subject.ofRun("r2"), "not photographed");
    assertThat(gone.isMissing()).isTrue();
    assertThat(gone.n()).isZero();
    assertThat(gone.note()).isEqualTo("not photographed");
    assertThat(gone.evidence()).containsExactly("photos/a.jpg");
  }
}
