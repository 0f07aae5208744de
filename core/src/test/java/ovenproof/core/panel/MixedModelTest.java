package ovenproof.core.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.statistics.ReferenceData;

class MixedModelTest {

  static List<Rating> unbalanced() {
    return ReferenceData.read("panel/unbalanced.csv").rows().stream()
        .map(
            r ->
                new Rating(
                    r.get(0),
                    r.get(1),
                    r.get(2),
                    r.get(3),
                    "mark",
                    Double.parseDouble(r.get(4)),
                    null,
                    Map.of()))
        .toList();
  }

  /**
   * Computed from the definitions with dense matrices and a general optimiser: panel/
   * dense_mixed_model.py beside the data.
   */
  @Test
  void incompletePanelAgreesWithTheDefinitions() {
    MixedModel model = MixedModel.fit(Observations.of(unbalanced()));
    VarianceComponents variances = model.components();
    assertThat(variances.residual()).isCloseTo(0.54381315, offset(2e-6));
    assertThat(variances.interaction()).isCloseTo(0.25435688, offset(2e-6));
    assertThat(variances.batch()).isCloseTo(0.47172824, offset(2e-6));
    FTest test = model.productTest();
    assertThat(test.f()).isCloseTo(2.818152015, offset(1e-5));
    assertThat(test.denominator()).isCloseTo(22.99893999, offset(1e-3));
    assertThat(model.means())
        .containsExactly(
            new double[] {5.12724608886, 5.71750868865, 6.16000316198, 6.63258459315},
            offset(1e-5));
    assertThat(model.standardErrorOfDifference(0, 3)).isCloseTo(0.54040498, offset(1e-5));
    assertThat(model.degreesOfDifference(0, 3)).isCloseTo(22.753425741, offset(1e-3));
    // Without Kenward and Roger's enlargement: 0.3701, 0.3697, 0.3987, 0.3930.
    assertThat(model.standardErrors())
        .containsExactly(new double[] {0.37013, 0.36970, 0.39866, 0.39296}, offset(0.004));
  }

  @Test
  void theOrderOfRowsDoesNotMatter() {
    List<Rating> shuffled = new ArrayList<>(unbalanced());
    java.util.Collections.shuffle(shuffled, new Random(3));
    FTest before = MixedModel.fit(Observations.of(unbalanced())).productTest();
    FTest after = MixedModel.fit(Observations.of(shuffled)).productTest();
    assertThat(after.f()).isCloseTo(before.f(), offset(1e-5));
    assertThat(after.denominator()).isCloseTo(before.denominator(), offset(1e-3));
  }

  @Test
  void runMeansTakeOutWhoHappenedToTaste() {
    // Persons differ by 10 points and nothing else; run r2 was rated by the high one only.
    List<Rating> ratings = new ArrayList<>();
    Random random = new Random(1);
    for (String person : List.of("low", "high")) {
      double level = person.equals("high") ? 14 : 4;
      for (String run : List.of("r1", "r2", "r3", "r4")) {
        if (!(person.equals("low") && run.equals("r2"))) {
          String product = run.compareTo("r3") < 0 ? "A" : "B";
          ratings.add(
              Rating.of(person, product, "x", level + random.nextGaussian() / 100).withBatch(run));
        }
      }
    }
    PanelMeans means = PanelMeans.of(ratings, PanelMeans.description("x"));
    for (Measurement run : means.runs()) {
      assertThat(run.value()).isCloseTo(9, offset(0.1));
      assertThat(run.n()).isEqualTo(1);
    }
    assertThat(means.products()).allSatisfy(m -> assertThat(m.n()).isEqualTo(2));
    assertThat(means.warnings()).noneMatch(w -> w.contains("batches apart"));
  }

  @Test
  void furtherBatchesDoNotReduceWhatTheSamePeopleLike() {
    PanelMeans means = PanelMeans.of(unbalanced(), PanelMeans.description("mark"));
    Measurement first = means.products().get(0);
    assertThat(first.components())
        .extracting(Component::source)
        .containsExactly("run", "panel:S1+S2:mark:A", "panel:S1+S2:mark");
    assertThat(first.components().get(1).u()).isCloseTo(Math.sqrt(0.25435688 / 7), offset(1e-4));
    assertThat(first.n()).isEqualTo(6);
  }

  @Test
  void aProductThatNobodyLinksIsComparedAsAnIndependentGroup() {
    List<Rating> ratings = new ArrayList<>();
    Random random = new Random(5);
    for (int person = 0; person < 12; person++) {
      ratings.add(Rating.of("P" + person, person < 6 ? "A" : "B", "x", 5 + random.nextGaussian()));
    }
    FittedPanel fitted = FittedPanel.fit(Observations.of(ratings));
    assertThat(fitted.warnings()).anyMatch(w -> w.contains("one product only"));
    assertThat(fitted.model().productTest().denominator()).isEqualTo(10);
  }

  @Test
  void tablesThatAllowNoTestSayWhy() {
    assertThat(fit(Rating.of("a", "A", "x", 5), Rating.of("b", "A", "x", 6)).warnings())
        .anyMatch(w -> w.contains("Only one product"));
    assertThat(fit(Rating.of("a", "A", "x", 5), Rating.of("a", "B", "x", 5)).warnings())
        .anyMatch(w -> w.contains("All marks are equal"));
    FittedPanel one = fit(Rating.of("a", "A", "x", 5), Rating.of("a", "B", "x", 6));
    assertThat(one.warnings()).anyMatch(w -> w.contains("One assessor"));
    assertThat(one.warnings()).anyMatch(w -> w.contains("Too few marks"));
    assertThat(one.means()).containsExactly(5, 6);
  }

  private static FittedPanel fit(Rating... ratings) {
    return FittedPanel.fit(Observations.of(List.of(ratings)));
  }
}
