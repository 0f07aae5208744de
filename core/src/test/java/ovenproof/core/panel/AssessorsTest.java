package ovenproof.core.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AssessorsTest {

  private static final List<String> PRODUCTS = List.of("A", "B", "C", "D", "E");

  /**
   * Five people, two servings of each product; the last one guesses, the first uses half a scale.
   */
  private static List<Rating> panel() {
    Random random = new Random(12);
    List<Rating> ratings = new ArrayList<>();
    for (int person = 0; person < 5; person++) {
      for (int serving = 0; serving < 2; serving++) {
        for (int p = 0; p < PRODUCTS.size(); p++) {
          double spread = person == 0 ? 0.3 : 1;
          double noise = person == 4 ? 3 : 0.3;
          double taste = person == 4 ? 0 : 1.5 * p * spread;
          double value = 4 + person * 0.5 + taste + noise * random.nextGaussian();
          ratings.add(
              Rating.of("P" + person, PRODUCTS.get(p), "crisp", value)
                  .withPosition(1 + (p + person + serving) % 5));
        }
      }
    }
    return ratings;
  }

  private static AssessorCheck check(List<Rating> ratings, AssessorWeighting rule, int person) {
    return PanelAnalysis.of(ratings, PairAdjustment.TUKEY, rule)
        .attributes()
        .get(0)
        .assessors()
        .get(person);
  }

  @Test
  void theOneWhoGuessesIsSeenAndStays() {
    AssessorCheck guesser = check(panel(), AssessorWeighting.EQUAL, 4);
    assertThat(guesser.repeatability()).isGreaterThan(1.5);
    assertThat(guesser.remarks()).anyMatch(r -> r.contains("repeats itself"));
    assertThat(guesser.weight()).isEqualTo(1);
    assertThat(PanelAnalysis.of(panel()).attributes().get(0).products().get(0).marks())
        .isEqualTo(10);
  }

  @Test
  void aNarrowScaleIsSaid() {
    AssessorCheck narrow = check(panel(), AssessorWeighting.EQUAL, 0);
    assertThat(narrow.spread()).isLessThan(0.5);
    assertThat(narrow.discriminationP()).isLessThan(0.05);
    assertThat(narrow.agreement()).isGreaterThan(0.8);
  }

  @Test
  void declaredWeightsFollowTheRuleAndNobodyCountsLessThanAQuarter() {
    AssessorCheck guesser = check(panel(), AssessorWeighting.REPEATABILITY, 4);
    assertThat(guesser.weight()).isBetween(0.2499, 0.5);
    assertThat(check(panel(), AssessorWeighting.REPEATABILITY, 1).weight()).isEqualTo(1);
  }

  @Test
  void equalWeightsGiveThePlainMeans() {
    for (ProductMean mean : PanelAnalysis.of(panel()).attributes().get(0).products()) {
      assertThat(mean.weightedMean()).isCloseTo(mean.mean(), offset(1e-9));
    }
  }

  @Test
  void oneImpressionOnAllAttributesIsAHalo() {
    List<Rating> ratings = new ArrayList<>();
    Random random = new Random(3);
    for (String person : List.of("halo", "fair", "other")) {
      for (int p = 0; p < PRODUCTS.size(); p++) {
        for (String attribute : List.of("crisp", "taste", "look")) {
          double value = person.equals("halo") ? 2 + p : 2 + 4 * random.nextDouble();
          ratings.add(
              Rating.of(person, PRODUCTS.get(p), attribute, value + random.nextGaussian() / 20));
        }
      }
    }
    List<HaloCheck> checks = PanelAnalysis.of(ratings).halo();
    assertThat(checks.get(0).finding()).isEqualTo(HaloCheck.Finding.HALO);
    assertThat(checks.get(1).finding()).isEqualTo(HaloCheck.Finding.NONE);
  }

  @Test
  void servedFirstIsSeenWhenOrdersDiffer() {
    List<Rating> ratings = new ArrayList<>();
    Random random = new Random(8);
    for (int person = 0; person < 12; person++) {
      for (int p = 0; p < 4; p++) {
        int position = 1 + (p + person) % 4;
        double bonus = position == 1 ? 3 : 0;
        ratings.add(
            Rating.of("P" + person, PRODUCTS.get(p), "x", 5 + bonus + random.nextGaussian() / 2)
                .withPosition(position));
      }
    }
    AttributeAnalysis one = PanelAnalysis.of(ratings).attributes().get(0);
    PanelTest position =
        one.tests().stream().filter(t -> t.name().equals("position")).findFirst().orElseThrow();
    assertThat(position.p()).isLessThan(0.001);
    assertThat(one.warnings()).anyMatch(w -> w.contains("position mattered"));
  }

  @Test
  void theSameOrderForEverybodyCannotBeSeparatedFromTheBatch() {
    List<Rating> ratings = new ArrayList<>();
    Random random = new Random(8);
    for (int person = 0; person < 12; person++) {
      for (int p = 0; p < 4; p++) {
        ratings.add(
            Rating.of("P" + person, PRODUCTS.get(p), "x", random.nextGaussian())
                .withPosition(p + 1));
      }
    }
    assertThat(PanelAnalysis.of(ratings).attributes().get(0).warnings())
        .anyMatch(w -> w.contains("cannot be separated from batch"));
  }

  @Test
  void fewPeopleAreNoCaseForPenalties() {
    List<PenaltyAnalysis.Answer> answers = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      answers.add(new PenaltyAnalysis.Answer(i < 12 ? 5 : 3, i < 12 ? 4 : 7));
    }
    PenaltyAnalysis all = PenaltyAnalysis.of("A", "salt JAR", answers, 3).get(1);
    assertThat(all.finding()).isEqualTo(PenaltyAnalysis.Finding.ACT);
    assertThat(all.drop()).isEqualTo(3);
    assertThat(all.count()).isEqualTo(12);
    PenaltyAnalysis few = PenaltyAnalysis.of("A", "salt JAR", answers.subList(0, 20), 3).get(1);
    assertThat(few.finding()).isEqualTo(PenaltyAnalysis.Finding.TOO_FEW_PEOPLE);
    assertThat(PenaltyAnalysis.of("A", "salt JAR", List.of(), 3)).isEmpty();
  }

  @Test
  void moreTastersDoNotReplaceBatches() {
    Sensitivity seen =
        Sensitivity.of(
            new Sensitivity.Plan(4, 10, 2, new VarianceComponents(1, 0.2, 0.5, 1)), true);
    assertThat(seen.floor()).isGreaterThan(0.8 * seen.detectable());
    assertThat(seen.detectableWithTwiceTheBatches()).isLessThan(0.7 * seen.detectable());
    assertThat(
            Sensitivity.personsFor(
                new Sensitivity.Plan(4, 10, 2, new VarianceComponents(1, 0.2, 0.5, 1)), 1))
        .isZero();
    assertThat(
            Sensitivity.batchesFor(
                new Sensitivity.Plan(4, 10, 2, new VarianceComponents(1, 0.2, 0.5, 1)), 2))
        .isBetween(3, 50);
  }

  @Test
  void constantMarksAndConditionsAreSurvived() {
    List<Rating> same = new ArrayList<>();
    for (String person : List.of("a", "b", "c")) {
      for (String product : List.of("A", "B")) {
        same.add(new Rating(person, product, null, null, "x", 5, null, Map.of()));
      }
    }
    AttributeAnalysis one = PanelAnalysis.of(same).attributes().get(0);
    assertThat(one.warnings()).anyMatch(w -> w.contains("All marks are equal"));
    assertThat(one.products()).allMatch(p -> p.mean() == 5 && p.groups().isEmpty());
  }
}
