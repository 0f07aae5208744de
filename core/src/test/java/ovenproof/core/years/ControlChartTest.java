package ovenproof.core.years;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.years.SelfStartingChart.Signal;

class ControlChartTest {

  @Test
  void individualsChartOfTheHandbook() {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: flow rates of ten batches; centre
    // 50.81, upper limit 55.8041 with d2 rounded to 1.128, hence the tolerance.
    double[] flow = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    KnownStandardChart chart = KnownStandardChart.ofMovingRanges(flow);
    assertThat(chart.target()).isCloseTo(50.81, within(1e-9));
    assertThat(chart.upper(3)).isCloseTo(55.8041, within(0.002));
  }

  @Test
  void ewmaChartOfTheHandbook() {
    // NIST/SEMATECH e-Handbook, 6.3.2.4: target 50, s 2.0539, λ 0.3; limits 52.5884 and the first
    // and last averages. The handbook rounds √(0.3/1.7) to 0.4201.
    double[] x = {
      52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8,
      51.2, 52.6, 52.4, 53.6, 52.1
    };
    KnownStandardChart chart = new KnownStandardChart(50, 2.0539);
    double[] ewma = chart.ewma(0.3, x);
    assertThat(ewma[0]).isCloseTo(50.60, within(0.005));
    assertThat(ewma[4]).isCloseTo(50.16, within(0.005));
    assertThat(ewma[19]).isCloseTo(51.99, within(0.005));
    assertThat(50 + chart.ewmaHalfWidth(0.3, 3, Double.POSITIVE_INFINITY))
        .isCloseTo(52.5884, within(0.0002));
    assertThat(50 + chart.ewmaHalfWidth(0.3, 3, 1)).isCloseTo(51.84851, within(1e-5));
  }

  @Test
  void cusumChartOfTheHandbook() {
    // NIST/SEMATECH e-Handbook, 6.3.2.3: target 325, allowance 0.3175, decision 4.1959; the upper
    // sum passes it first at group 14.
    double[] means = {
      324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
      324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
    };
    double[] sums = new KnownStandardChart(325, 1).cusumAbove(0.3175, means);
    assertThat(sums[12]).isCloseTo(3.01, within(0.005));
    assertThat(sums[13]).isCloseTo(4.94, within(0.005));
    assertThat(sums[12]).isLessThan(4.1959);
    assertThat(sums[13]).isGreaterThan(4.1959);
    assertThat(sums[19]).isCloseTo(19.04, within(0.005));
  }

  @Test
  void aShiftOfOneDeviationIsSeenByTheEwmaAndNotByShewhart() {
    // Montgomery, Introduction to Statistical Quality Control, table 9.1: 20 values from N(10, 1),
    // ten with mean 11; EWMA λ 0.1, L 2.7 signals at 29, no value beyond three deviations.
    double[] x = {
      9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34, 9.03, 11.47, 10.51, 9.40,
      10.08, 9.37, 10.62, 10.31, 8.52, 10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62,
      11.31, 10.52
    };
    KnownStandardChart chart = new KnownStandardChart(10, 1);
    double[] ewma = chart.ewma(0.1, x);
    int first = 0;
    for (int i = x.length - 1; i >= 0; i--) {
      first = ewma[i] > 10 + chart.ewmaHalfWidth(0.1, 2.7, i + 1.0) ? i + 1 : first;
      assertThat(x[i]).isLessThan(chart.upper(3));
    }
    assertThat(first).isEqualTo(29);
  }

  @Test
  void nothingIsJudgedBeforeTheSixthSession() {
    List<SelfStartingChart.Point> points = SelfStartingChart.of(10, 10.1, 9.9, 30, 10, 10.2);
    assertThat(points.subList(0, 5))
        .allSatisfy(p -> assertThat(p.signal()).isEqualTo(Signal.STARTING));
    assertThat(points.get(5).signal()).isEqualTo(Signal.NONE);
  }

  @Test
  void aSessionFarOutSignals() {
    List<SelfStartingChart.Point> points =
        SelfStartingChart.of(10, 10.1, 9.9, 10.05, 9.95, 10.02, 9.98, 12);
    assertThat(points.get(7).signal()).isEqualTo(Signal.SHEWHART);
    assertThat(points.get(6).signal()).isEqualTo(Signal.NONE);
  }

  @Test
  void yearsWithoutChangeSignalAsRarelyAsTheRulesImply() {
    // Limits of the rule: a false signal in 5–9 % of years of twenty sessions.
    double exact = falseSignalProbability(15);
    assertThat(exact).isBetween(0.05, 0.09).isCloseTo(0.0786, within(0.0005));
    assertAgrees(300, exact);
  }

  @Tag("long")
  @Test
  void fiveToNinePercentOfYearsSignalFalsely() {
    double share = assertAgrees(4_000, falseSignalProbability(15));
    assertThat(share).isBetween(0.05, 0.09);
  }

  /** Whether the charted years signal as often as computed, by exact binomial limits at 0.1 %. */
  private static double assertAgrees(int years, double exact) {
    int signals = falseSignals(years);
    report(signals, years);
    assertThat(Distributions.binomialUpperTail(signals, years, exact)).isGreaterThan(0.0005);
    assertThat(1 - Distributions.binomialUpperTail(signals + 1, years, exact))
        .isGreaterThan(0.0005);
    return signals / (double) years;
  }

  /**
   * Probability that independent standard normal z leave |z| ≤ 3 or the EWMA with λ 0.2 leaves ±
   * 2.7√(0.2/1.8) within so many sessions, from the definitions: the density of the EWMA among the
   * years without a signal, carried on session by session over a grid (the method of Crowder,
   * Technometrics 29, 1987, 401–407, without his quadrature). A self-starting chart's z are
   * independent standard normal while nothing changes (Quesenberry 1991).
   */
  private static double falseSignalProbability(int judged) {
    int cells = 600;
    double limit = 2.7 * Math.sqrt(0.2 / 1.8);
    double width = 2 * limit / cells;
    double[] density = new double[cells];
    for (int session = 0; session < judged; session++) {
      double[] next = new double[cells];
      for (int to = 0; to < cells; to++) {
        double at = -limit + (to + 0.5) * width;
        for (int from = 0; from < (session == 0 ? 1 : cells); from++) {
          double before = session == 0 ? 0 : -limit + (from + 0.5) * width;
          double z = (at - 0.8 * before) / 0.2;
          double mass = session == 0 ? 1 : density[from] * width;
          if (Math.abs(z) <= 3) {
            next[to] += mass * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) / 0.2;
          }
        }
      }
      density = next;
    }
    double silent = 0;
    for (double value : density) {
      silent += value * width;
    }
    return 1 - silent;
  }

  private static void report(int signals, int years) {
    System.out.printf(
        Locale.ROOT, "false signal in %.1f %% of %d years%n", 100.0 * signals / years, years);
  }

  private static int falseSignals(int years) {
    Random random = new Random(2029);
    int signals = 0;
    for (int y = 0; y < years; y++) {
      double[] sessions =
          random.doubles(20).map(u -> 10 + Distributions.normalQuantile(u)).toArray();
      boolean any =
          SelfStartingChart.of(sessions).stream()
              .anyMatch(p -> p.signal() == Signal.SHEWHART || p.signal() == Signal.EWMA);
      signals += any ? 1 : 0;
    }
    return signals;
  }

  @Test
  void noCorrectionBeforeFiveSessionsAndNeverTheWholeDrift() {
    double[] a = {10, 11};
    double[] b = {14, 15};
    assertThat(SessionCorrection.of(List.of(a, b, a, b)).share()).isZero();
    SessionCorrection correction = SessionCorrection.of(List.of(a, b, a, b, a));
    // s_w² = 0.5, m = 2; means 10.5, 14.5, 10.5, 14.5, 10.5 have variance 4.8: b = 1 − 0.25/4.8.
    assertThat(correction.share()).isCloseTo(1 - 0.25 / 4.8, within(1e-12));
    assertThat(correction.corrected(20, 14.5))
        .isCloseTo(20 - correction.share() * (14.5 - 12.1), within(1e-12));
    double[] flat = {10, 12};
    assertThat(SessionCorrection.of(List.of(flat, flat, flat, flat, flat)).share()).isZero();
  }

  @Test
  void aBridgeNeedsThreeSpecimensAndAgreement() {
    double[] old = {5, 6, 7};
    double[] current = {5.5, 6.4, 7.6};
    PoolBridge bridge = PoolBridge.of(old, current, 0.5).orElseThrow();
    assertThat(bridge.offset()).isCloseTo(0.5, within(1e-12));
    // Differences 0.5, 0.4, 0.6: s 0.1, half width 0.1/√3 · t(0.95; 2) = 2.920 (table of t).
    assertThat(bridge.interval().width() / 2).isCloseTo(0.1 / Math.sqrt(3) * 2.920, within(1e-4));
    assertThat(bridge.uncertainty(0)).isGreaterThan(bridge.uncertainty());
    assertThat(PoolBridge.of(old, new double[] {5, 8, 6}, 0.5)).isEmpty();
    assertThat(PoolBridge.of(new double[] {1, 2}, new double[] {1, 2}, 0.5)).isEmpty();
  }
}
