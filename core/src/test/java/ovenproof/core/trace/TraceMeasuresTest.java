package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

class TraceMeasuresTest {

  private static Trace line(double length, double step, java.util.function.DoubleUnaryOperator f) {
    int n = (int) (length / step) + 1;
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = i * step;
      v[i] = f.applyAsDouble(t[i]);
    }
    return new Trace("centre", t, v, Unit.CELSIUS);
  }

  private static Measurement take(String id, TraceInput input) {
    return TraceMeasures.named(id).orElseThrow().measure(input);
  }

  @Test
  void crossingOfARampIsInterpolated() {
    TraceInput ramp = TraceInput.of(line(600, 5, t -> 20 + 0.4 * t)).withSetting(181.0);
    assertThat(take("preheat-first", ramp).value()).isCloseTo(402.5, within(1e-6));
  }

  /**
   * Read 1 K high on a ramp of 0.4 K/s: there 2.5 s too early, and every run of the probe alike.
   */
  @Test
  void calibrationOfTheProbeIsASharedComponentWithItsSign() {
    TraceInput ramp =
        TraceInput.of(line(600, 5, t -> 20 + 0.4 * t))
            .withSetting(181.0)
            .withProbe(new ProbeAccuracy("probe:P3@2026-03", 1, 0, null));
    assertThat(take("preheat-first", ramp).components().get(0).source())
        .isEqualTo("probe:P3@2026-03");
    assertThat(take("preheat-first", ramp).components().get(0).u()).isCloseTo(-2.5, within(1e-6));
    assertThat(take("highest", ramp).components().get(0).u()).isEqualTo(1);
  }

  @Test
  void whatIsNeverReachedIsABound() {
    Measurement m =
        take("preheat-first", TraceInput.of(line(600, 5, t -> 20 + 0.1 * t)).withSetting(230.0));
    assertThat(m.censored()).isEqualTo(Censoring.ABOVE);
    assertThat(m.value()).isNull();
    assertThat(m.low()).isEqualTo(600);
  }

  @Test
  void crossingInsideAGapLiesBetweenItsEnds() {
    Trace ramp = line(600, 5, t -> 20 + 0.4 * t);
    double[] values = ramp.values().clone();
    java.util.Arrays.fill(values, 70, 100, Double.NaN);
    Measurement m =
        take("preheat-first", TraceInput.of(ramp.withValues(values)).withSetting(180.0));
    assertThat(m.censored()).isEqualTo(Censoring.BETWEEN);
    assertThat(m.low()).isEqualTo(345);
    assertThat(m.high()).isEqualTo(500);
  }

  @Test
  void singleSpikeChangesNothing() {
    Trace clean = line(1200, 2, t -> 200 - 180 * Math.exp(-t / 200));
    double[] spiked = clean.values().clone();
    spiked[300] = 900;
    spiked[120] = 0;
    assertThat(take("highest", TraceInput.of(clean.withValues(spiked))).value())
        .isCloseTo(take("highest", TraceInput.of(clean)).value(), within(1e-9));
  }

  /** A sine of 8 K peak to trough and 60 s around 200 °C; its mean over whole cycles is 200. */
  @Test
  void sineIsMeasuredOverWholeCycles() {
    TraceInput input =
        TraceInput.of(line(3000, 1, t -> 200 + 4 * Math.sin(2 * Math.PI * t / 60)))
            .withSetting(195.0);
    assertThat(take("steady-mean", input).value()).isCloseTo(200, within(0.01));
    assertThat(take("offset", input).value()).isCloseTo(5, within(0.01));
    assertThat(take("cycle-amplitude", input).value()).isCloseTo(8, within(0.05));
    assertThat(take("cycle-period", input).value()).isCloseTo(60, within(0.1));
  }

  /** Lopsided: rises in 10 s, falls in 50 s, by an exponential; the middle is not the mean. */
  @Test
  void middleOfALopsidedSwingIsNotItsMean() {
    TraceInput input = TraceInput.of(line(3000, 1, t -> 200 + 12 * Math.exp(-(t % 60) / 15)));
    double mean = take("steady-mean", input).value();
    assertThat(take("mid-range", input).value()).isGreaterThan(mean + 2);
  }

  /**
   * 1/√(1 + (2πτ/P)²) is 43 % for τ 20 s and P 60 s, 89 % for τ 5 s (own figures from the formula).
   */
  @ParameterizedTest
  @CsvSource({"20, 0.431, true", "5, 0.886, false"})
  void swingFasterThanTheProbeIsRefused(double tau, double share, boolean refused) {
    TraceInput input =
        TraceInput.of(line(3000, 1, t -> 200 + 4 * Math.sin(2 * Math.PI * t / 60)))
            .withProbe(new ProbeAccuracy("probe:P1", 1, 0, tau));
    assertThat(CycleAmplitude.shownShare(input, 60)).isCloseTo(share, within(0.001));
    assertThat(take("cycle-amplitude", input).isMissing()).isEqualTo(refused);
  }

  @Test
  void energyIsPowerTimesTime() {
    Trace power =
        new Trace(
            "power", new double[] {0, 1800, 3600}, new double[] {1000, 1000, 1000}, Unit.WATT);
    TraceInput input = TraceInput.of(line(3600, 5, t -> 100)).withPower(power);
    assertThat(take("energy", input).value()).isCloseTo(1.0, within(1e-12));
  }

  @Test
  void counterSetBackOnTheWayStillCounts() {
    Trace counter =
        new Trace(
            "e",
            new double[] {0, 60, 120, 180},
            new double[] {5, 5.4, 0.1, 0.3},
            Unit.KILOWATT_HOUR);
    assertThat(take("energy", TraceInput.of(line(180, 5, t -> 100)).withEnergy(counter)).value())
        .isCloseTo(0.6, within(1e-12));
  }

  @Test
  void spreadIsTheDeviationOfTheSteadyMeans() {
    Trace centre = line(1800, 5, t -> 200);
    TraceInput input =
        TraceInput.of(centre)
            .withPoints(List.of(centre, line(1800, 5, t -> 190), line(1800, 5, t -> 210)));
    assertThat(take("spread", input).value()).isCloseTo(10, within(1e-9));
    assertThat(take("spread-range", input).value()).isCloseTo(20, within(1e-9));
  }

  @Test
  void coldestOfTheCoresCounts() {
    TraceInput input =
        TraceInput.of(line(600, 5, t -> 200))
            .withCores(List.of(line(600, 5, t -> 75), line(600, 5, t -> 71.5)));
    assertThat(take("core-highest", input).value()).isEqualTo(71.5);
  }

  /** Shifting the temperatures shifts what is a temperature and leaves what is a difference. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void shiftOfTheReadingsShiftsTheTemperatures(long seed) {
    Trace a =
        new SimulatedOven(1500, 180, 4, 6, 0.2)
            .run(3600, 2, 0, new SplittableRandom(seed))
            .logged();
    double[] shifted = a.values().clone();
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] += 7;
    }
    TraceInput base = TraceInput.of(a);
    TraceInput moved = TraceInput.of(a.withValues(shifted));
    for (String id : List.of("steady-mean", "highest", "mid-range")) {
      assertThat(take(id, moved).value()).isCloseTo(take(id, base).value() + 7, within(1e-6));
    }
    for (String id : List.of("overshoot", "cycle-amplitude", "cycle-period", "preheat-steady")) {
      assertThat(take(id, moved).value()).isCloseTo(take(id, base).value(), within(1e-6));
    }
  }

  /** How often |measured − truth| stays within 1.645 standard uncertainties. */
  private static int covered(String id, int simulations) {
    SplittableRandom random = new SplittableRandom(42);
    int covered = 0;
    for (int s = 0; s < simulations; s++) {
      double setting = 150 + 60 * random.nextDouble();
      SimulatedOven oven = new SimulatedOven(1400 + 300 * random.nextDouble(), setting, 4, 6, 0.3);
      SimulatedOven.Log log = oven.run(3600, 2, 1.2 * random.nextGaussian(), random.split());
      ProbeAccuracy probe = new ProbeAccuracy("probe:P1", 1.2, 0, 6.0);
      Measurement m = take(id, TraceInput.of(log.logged()).withSetting(setting).withProbe(probe));
      // The truth: the probe without error, far into the record, or where it first crosses.
      double truth =
          id.equals("steady-mean")
              ? TimeMean.of(log.truth(), m.value() == null ? 0 : 1800, 3600)
              : crossing(log.truth(), setting);
      Double u = m.uncertainty();
      covered +=
          m.value() != null && u != null && Math.abs(m.value() - truth) <= 1.6448536 * u ? 1 : 0;
    }
    return covered;
  }

  private static double crossing(Trace truth, double setting) {
    int i = 1;
    while (truth.values()[i] < setting) {
      i++;
    }
    double v0 = truth.values()[i - 1];
    return truth.seconds()[i - 1]
        + (setting - v0) / (truth.values()[i] - v0) * (truth.seconds()[i] - truth.seconds()[i - 1]);
  }

  /** 252 to 287 of 300 lie within the exact binomial limits at 0.1 % for a true 90 %. */
  @ParameterizedTest
  @ValueSource(strings = {"steady-mean", "preheat-first"})
  void intervalCoversAboutNineInTen(String id) {
    assertThat(covered(id, 300)).isBetween(252, 287);
  }

  @Tag("long")
  @ParameterizedTest
  @ValueSource(strings = {"steady-mean", "preheat-first"})
  void intervalCoversEightySevenToNinetyThreePercent(String id) {
    assertThat(covered(id, 2000)).isBetween(1740, 1860);
  }
}
