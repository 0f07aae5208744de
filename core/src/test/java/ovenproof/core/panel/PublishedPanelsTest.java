package ovenproof.core.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.statistics.ReferenceData;

class PublishedPanelsTest {

  /**
   * Hollander and Wolfe, Nonparametric Statistical Methods, 1973, p. 140 ff, rounding first base; R
   * 4.2.2 friedman.test prints 11.143 and p 0.003805.
   */
  @Test
  void friedmanOfBaseRunning() {
    double[][] times =
        ReferenceData.read("panel/base_running.csv").rows().stream()
            .map(r -> r.subList(1, 4).stream().mapToDouble(Double::parseDouble).toArray())
            .toArray(double[][]::new);
    FriedmanTest test = FriedmanTest.of(times);
    assertThat(test.rankSums()).containsExactly(53.0, 47.0, 32.0);
    assertThat(test.chiSquared()).isCloseTo(11.1428571428571, offset(1e-10));
    assertThat(test.p()).isCloseTo(0.00380504077551136, offset(1e-12));
    assertThat(test.kendallW()).isCloseTo(0.253246753246753, offset(1e-12));
    assertThat(test.f()).isCloseTo(7.12173913043478, offset(1e-10));
    assertThat(test.fP()).isCloseTo(0.00217129838760752, offset(1e-10));
  }

  /** Cases made for this purpose and computed by two programs: no ties, heavy ties, a tied row. */
  @Test
  void friedmanWithTies() {
    assertFriedman(new double[][] {{1, 2, 3, 4}, {2, 1, 4, 3}, {1, 3, 2, 4}}, 5.8, 0.121756619711);
    assertFriedman(
        new double[][] {{7, 7, 5, 3}, {6, 8, 6, 4}, {9, 9, 9, 2}, {5, 6, 4, 4}, {8, 7, 7, 6}},
        11.7857142857143,
        0.00815444851993);
    assertFriedman(new double[][] {{1, 1, 2}, {3, 3, 3}, {2, 1, 1}}, 1, 0.606530659713);
  }

  private static void assertFriedman(double[][] marks, double chiSquared, double p) {
    FriedmanTest test = FriedmanTest.of(marks);
    assertThat(test.chiSquared()).isCloseTo(chiSquared, offset(1e-10));
    assertThat(test.p()).isCloseTo(p, offset(1e-10));
    assertThat(test.chiSquared())
        .isCloseTo(test.persons() * (test.products() - 1) * test.kendallW(), offset(1e-10));
  }

  /**
   * Rank sums 17, 31, 32, 23, 17 of 8 people and 5 samples: the example of ISO 8587 as quoted on a
   * vendor's page (standard not seen): F 10.6, above the 9.5 of the table.
   */
  @Test
  void friedmanOfTheRankingExample() {
    FriedmanTest test = FriedmanTest.of(RANKING_EXAMPLE);
    assertThat(test.rankSums()).containsExactly(17.0, 31.0, 32.0, 23.0, 17.0);
    assertThat(test.chiSquared()).isCloseTo(10.6, offset(1e-9));
    assertThat(test.kendallW()).isCloseTo(0.33, offset(0.005));
  }

  /** Ranks found so that they have these sums. */
  private static final double[][] RANKING_EXAMPLE = {
    {3, 4, 5, 2, 1},
    {3, 5, 4, 2, 1},
    {1, 5, 3, 4, 2},
    {2, 3, 5, 1, 4},
    {2, 3, 5, 4, 1},
    {1, 4, 3, 5, 2},
    {4, 2, 5, 1, 3},
    {1, 5, 2, 4, 3}
  };

  @Test
  void whenAllTieEverythingNothingIsKnown() {
    FriedmanTest test = FriedmanTest.of(new double[][] {{5, 5}, {3, 3}});
    assertThat(test.chiSquared()).isNaN();
    assertThat(test.p()).isNaN();
  }

  /**
   * Shrout and Fleiss, Psychological Bulletin 86, 1979, 420–428: .17 .29 .71 .44 .62 .91 (table 4);
   * full digits and limits computed with R psych 2.2.9.
   */
  @Test
  void sixIntraclassCorrelations() {
    double[][] marks =
        ReferenceData.read("panel/shrout_fleiss_1979.csv").rows().stream()
            .map(r -> r.subList(1, 5).stream().mapToDouble(Double::parseDouble).toArray())
            .toArray(double[][]::new);
    List<IntraclassCorrelation> six = IntraclassCorrelation.of(marks);
    assertIcc(six.get(0), "ICC(1,1)", 0.165741768405476, -0.132932324874751, 0.722560062328121);
    assertIcc(six.get(1), "ICC(2,1)", 0.289763779527559, 0.018786513374712, 0.761084369648953);
    assertIcc(six.get(2), "ICC(3,1)", 0.714840714840715, 0.342464765033925, 0.945858259955359);
    assertIcc(six.get(3), "ICC(1,k)", 0.442797133679269, -0.884442155238122, 0.912415420340775);
    assertIcc(six.get(4), "ICC(2,k)", 0.620050547598989, 0.0711368153025031, 0.927232040167722);
    assertIcc(six.get(5), "ICC(3,k)", 0.90931554237707, 0.675674713816304, 0.985891678169062);
    assertThat(six.get(2).p()).isCloseTo(0.000134566516484335, offset(1e-12));
  }

  private static void assertIcc(
      IntraclassCorrelation icc, String symbol, double coefficient, double low, double high) {
    assertThat(icc.form().symbol()).isEqualTo(symbol);
    assertThat(icc.coefficient()).isCloseTo(coefficient, offset(1e-12));
    assertThat(icc.interval().low()).as(symbol).isCloseTo(low, offset(1e-7));
    assertThat(icc.interval().high()).as(symbol).isCloseTo(high, offset(1e-7));
  }

  /** Exact rational arithmetic; FAO Fisheries Technical Paper 348, Appendix A, agrees. */
  @Test
  void triangleTableOfFewestRightAnswers() {
    ReferenceData table = ReferenceData.read("statistics/triangle/min_correct.csv");
    double[] levels = {0.10, 0.05, 0.01, 0.001};
    for (List<String> row : table.rows()) {
      int answers = Integer.parseInt(row.get(0));
      for (int i = 0; i < levels.length; i++) {
        String fewest = row.get(i + 1);
        if (!fewest.isEmpty()) {
          assertThat(TriangleTest.fewestCorrect(answers, levels[i]))
              .as("%s answers at %s", answers, levels[i])
              .isEqualTo(Integer.parseInt(fewest));
        }
      }
      int needed = Integer.parseInt(row.get(2));
      assertThat(TriangleTest.of(needed, answers).p())
          .isCloseTo(Double.parseDouble(row.get(5)), offset(1e-8));
    }
  }

  /** Binomial at a half, two-sided: fewest of n at 5 % (by hand). */
  @ParameterizedTest
  @CsvSource({"8, 8", "9, 10", "10, 12", "15, 20"})
  void pairedPreferenceNeedsNearlyAll(int fewest, int answers) {
    PairedTest.Hypothesis either = PairedTest.Hypothesis.EITHER;
    assertThat(PairedTest.of(fewest, answers, either).p()).isLessThanOrEqualTo(0.05);
    assertThat(PairedTest.of(fewest - 1, answers, either).p()).isGreaterThan(0.05);
    assertThat(PairedTest.of(answers - fewest, answers, either).p()).isLessThanOrEqualTo(0.05);
  }

  /** R help page of TukeyHSD, breaks ~ wool + tension (Tippett 1950). */
  @Test
  void tukeyOfWarpbreaks() {
    List<Rating> ratings =
        ReferenceData.read("statistics/tukey/warpbreaks.csv").rows().stream()
            .map(
                r ->
                    new Rating(
                        null,
                        r.get(2),
                        null,
                        null,
                        "breaks",
                        Double.parseDouble(r.get(0)),
                        null,
                        Map.of("wool", r.get(1))))
            .toList();
    AttributeAnalysis analysis = PanelAnalysis.of(ratings).attributes().get(0);
    PanelTest product = analysis.tests().get(0);
    assertThat(product.statistic()).isCloseTo(7.53665, offset(1e-5));
    assertThat(product.df()).containsExactly(2.0, 50.0);
    assertThat(product.p()).isCloseTo(0.0013778, offset(1e-7));
    assertThat(p(analysis, "L", "M")).isCloseTo(0.0336262, offset(2e-6));
    assertThat(p(analysis, "L", "H")).isCloseTo(0.0011218, offset(2e-6));
    assertThat(p(analysis, "M", "H")).isCloseTo(0.4474210, offset(2e-6));
    assertThat(groups(analysis)).isEqualTo("L a, M b, H b");
  }

  /** Computed in R: Dobson 1983, Beall 1942. */
  @Test
  void tukeyOfIndependentGroups() {
    AttributeAnalysis plants = independent("plantgrowth");
    assertThat(plants.tests().get(0).statistic()).isCloseTo(4.84609, offset(1e-5));
    assertThat(p(plants, "trt2", "trt1")).isCloseTo(0.0120064, offset(2e-6));
    assertThat(p(plants, "trt2", "ctrl")).isCloseTo(0.1979960, offset(2e-6));
    assertThat(p(plants, "ctrl", "trt1")).isCloseTo(0.3908711, offset(2e-6));
    assertThat(groups(plants)).isEqualTo("trt2 a, ctrl ab, trt1 b");
    AttributeAnalysis sprays = independent("insectsprays");
    assertThat(p(sprays, "F", "A")).isCloseTo(0.7542147, offset(2e-6));
    assertThat(p(sprays, "D", "C")).isCloseTo(0.4920707, offset(2e-6));
    assertThat(groups(sprays)).isEqualTo("F a, B a, A a, D b, E b, C b");
  }

  private static AttributeAnalysis independent(String set) {
    List<Rating> ratings =
        ReferenceData.read("statistics/tukey/" + set + ".csv").rows().stream()
            .map(
                r ->
                    new Rating(
                        null,
                        r.get(1),
                        null,
                        null,
                        "y",
                        Double.parseDouble(r.get(0)),
                        null,
                        Map.of()))
            .toList();
    return PanelAnalysis.of(ratings).attributes().get(0);
  }

  private static double p(AttributeAnalysis analysis, String first, String second) {
    return analysis.pairs().stream()
        .filter(d -> d.first().equals(first) && d.second().equals(second))
        .findFirst()
        .orElseThrow()
        .p();
  }

  private static String groups(AttributeAnalysis analysis) {
    return analysis.products().stream()
        .map(m -> m.product() + " " + m.groups())
        .collect(Collectors.joining(", "));
  }

  /** Tukey with the interaction mean square on 10 degrees of freedom: HSD 5.968 (computed in R). */
  @Test
  void machinesInLetters() {
    PanelAnalysis analysis = PanelAnalysis.of(Machines.ratings());
    AttributeAnalysis one = analysis.attributes().get(0);
    assertThat(groups(one)).isEqualTo("C a, B a, A b");
    assertThat(one.products().get(0).uncertaintyAmongProducts())
        .isCloseTo(1.53935412141297, offset(1e-9));
    assertThat(analysis.warnings()).anyMatch(w -> w.contains("batches"));
    assertThat(Arrays.asList("product", "product × assessor", "friedman", "ICC(3,k)"))
        .allMatch(name -> one.tests().stream().anyMatch(t -> t.name().equals(name)));
  }
}
