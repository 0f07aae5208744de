package ovenproof.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Happening;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;
import ovenproof.core.trace.TraceMeasures;

/**
 * How often the truth of simulated runs lies within 1.645 standard uncertainties of what is
 * measured: nine in ten. The truth is that of the probe without its errors; of what the thermostat
 * does on the long run, it is the same oven without its scatter.
 */
class MeasureCoverageTest {
  private static final double NORMAL_90 = 1.6448536;
  private static final double DOOR = 3000;

  /** Measures and how their intervals may miss nine in ten. */
  enum Id {
    PREHEAT_FIRST(Limit.NINE_IN_TEN),
    PREHEAT_BAND(Limit.NINE_IN_TEN),
    /** A whole cycle is its step, and scatter moves it by several. */
    PREHEAT_STEADY(Limit.AT_LEAST),
    /** The same where loggers write each half second to each quarter of a minute. */
    PREHEAT_STEADY_AT_ANY_STEP(Limit.AT_LEAST),
    /** Allows for glowing elements also where the highest came later. */
    OVERSHOOT(Limit.AT_LEAST),
    SETTLING(Limit.NINE_IN_TEN),
    STEADY_MEAN(Limit.NINE_IN_TEN),
    OFFSET(Limit.NINE_IN_TEN),
    MID_RANGE(Limit.NINE_IN_TEN),
    DRIFT(Limit.NINE_IN_TEN),
    CYCLE_AMPLITUDE(Limit.NINE_IN_TEN),
    CYCLE_PERIOD(Limit.NINE_IN_TEN),
    DUTY(Limit.NINE_IN_TEN),
    SPREAD(Limit.NINE_IN_TEN),
    SPREAD_RANGE(Limit.NINE_IN_TEN),
    FRONT_BACK(Limit.NINE_IN_TEN),
    LEFT_RIGHT(Limit.NINE_IN_TEN),
    HIGHEST(Limit.NINE_IN_TEN),
    START_ABOVE_ROOM(Limit.NINE_IN_TEN),
    SIGNAL_TEMPERATURE(Limit.NINE_IN_TEN),
    /** Allows for all that the probe may feel of the walls; they cool by less. */
    DOOR_DROP(Limit.AT_LEAST),
    DOOR_RECOVERY(Limit.NINE_IN_TEN),
    ENERGY(Limit.NINE_IN_TEN),
    ENERGY_TO_SETTING(Limit.NINE_IN_TEN),
    ENERGY_COOK(Limit.NINE_IN_TEN),
    POWER_HOLD(Limit.NINE_IN_TEN),
    MAINS_MEAN(Limit.AT_LEAST),
    PREHEAT_NOMINAL(Limit.NINE_IN_TEN),
    /** Elements that warm up are a third exponential: the residuals remember, and it is wider. */
    CEILING_TEMPERATURE(Limit.AT_LEAST),
    PREHEAT_MODEL(Limit.AT_LEAST),
    HEAT_LOSS(Limit.AT_LEAST),
    HEAT_CAPACITY(Limit.AT_LEAST),
    POWER_NEEDED(Limit.AT_LEAST),
    CORE_HIGHEST(Limit.NINE_IN_TEN),
    CORE_TIME(Limit.NINE_IN_TEN),
    /** Readings are rounded to a tenth. */
    CORE_CARRY_OVER(Limit.AT_LEAST);

    private final Limit limit;

    Id(Limit limit) {
      this.limit = limit;
    }

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }

  /** What the share of covered truths must be. */
  private enum Limit {
    NINE_IN_TEN,
    /** Quantised or bounded: it may cover more. */
    AT_LEAST
  }

  /** Covered and counted simulations of one measure. */
  private static final class Tally {
    private int covered;
    private int counted;

    void add(Measurement m, double truth) {
      Double value = m.value();
      Double u = m.uncertainty();
      if (value == null || u == null) {
        return;
      }
      counted++;
      covered += Math.abs(value - truth) <= NORMAL_90 * u ? 1 : 0;
    }
  }

  private static final Map<Integer, Map<String, Tally>> DONE = new LinkedHashMap<>();

  private static synchronized Map<String, Tally> simulated(int n) {
    return DONE.computeIfAbsent(n, MeasureCoverageTest::simulate);
  }

  private static Map<String, Tally> simulate(int n) {
    Map<String, Tally> tallies = new LinkedHashMap<>();
    SplittableRandom random = new SplittableRandom(20260420);
    for (int i = 0; i < n; i++) {
      new Simulation(random.split(), tallies).run();
    }
    tallies.forEach(
        (id, t) ->
            System.out.printf(
                "%-22s %5.1f %% of %d%n", id, 100.0 * t.covered / t.counted, t.counted));
    return tallies;
  }

  /** One oven, its runs, and what is measured of them. */
  private static final class Simulation {
    private final SplittableRandom random;
    private final Map<String, Tally> tallies;
    private final SimulatedRun.Build build;

    Simulation(SplittableRandom random, Map<String, Tally> tallies) {
      this.random = random;
      this.tallies = tallies;
      build = SimulatedRun.Build.drawn(random);
    }

    void run() {
      thermostat();
      places();
      lowMains();
      fullPower();
      anyStep();
      new FoodSimulation(random, this::compare).run();
    }

    private SimulatedRun oven(double volt) {
      return new SimulatedRun(build, volt, random.split());
    }

    private void compare(Measurement m, double truth) {
      tallies.computeIfAbsent(m.id(), id -> new Tally()).add(m, truth);
    }

    private void thermostat() {
      SimulatedRun run =
          oven(SimulatedRun.NOMINAL_VOLT).run(3600, SimulatedRun.Mode.THERMOSTAT, 0.4, DOOR);
      SimulatedRun still =
          oven(SimulatedRun.NOMINAL_VOLT).run(5400, SimulatedRun.Mode.THERMOSTAT, 0, Double.NaN);
      double signal = run.crossing(build.setting() - 20, 0);
      TraceInput input =
          run.input()
              .withMains(run.loggedMains(0))
              .withHappenings(
                  List.of(
                      run.noted(Happening.Kind.SIGNAL, signal),
                      run.noted(Happening.Kind.LOAD, 1500),
                      run.noted(Happening.Kind.DOOR_OPEN, DOOR),
                      run.noted(Happening.Kind.STOP, 2800)));
      HeatCurve curve = HeatCurve.of(input.centre());
      SteadyState steady = curve.steady();
      Map<String, Double> truth = new LinkedHashMap<>();
      HeatCurve exact = HeatCurve.of(run.exact());
      TraceInput known = TraceInput.of(run.exact()).withSetting(build.setting());
      for (String byDefinition : List.of("preheat-band", "preheat-steady", "settling")) {
        Double value = named(byDefinition).measure(known, exact).value();
        truth.put(byDefinition, value == null ? Double.NaN : value);
      }
      truth.put("preheat-first", run.crossing(build.setting(), 0));
      if (steady != null) {
        hold(run, still, steady, truth);
      }
      truth.put("highest", run.highest(0, 3600));
      truth.put("start-above-room", 0.0);
      truth.put("signal-temperature", run.at(signal));
      truth.put("mains-mean", SimulatedRun.NOMINAL_VOLT);
      double before = run.mean(DOOR - 120, DOOR);
      double low = run.lowest(DOOR, DOOR + 300);
      truth.put("door-drop", before - low);
      truth.put("door-recovery", back(run, before - 5) - DOOR);
      truth.put("energy", 3600 * run.meanPower(0, 3600) / 3.6e6);
      double first = run.crossing(build.setting(), 0);
      truth.put("energy-to-setting", first * run.meanPower(0, first) / 3.6e6);
      truth.put("energy-cook", 1300 * run.meanPower(1500, 2800) / 3.6e6);
      truth.forEach(
          (id, value) -> {
            if (Double.isFinite(value)) {
              compare(named(id).measure(input, curve), value);
            }
          });
    }

    /** Over the same minutes as measured: the walls go on warming, and the cycles with them. */
    private void hold(
        SimulatedRun run, SimulatedRun still, SteadyState steady, Map<String, Double> truth) {
      double from = steady.startSecond();
      double to = steady.endSecond();
      double mean = still.mean(from, to);
      double high = still.highest(from, to);
      double low = still.lowest(from, to);
      truth.put("overshoot", run.highest(0, 1800) - mean);
      truth.put("steady-mean", mean);
      truth.put("offset", mean - build.setting());
      truth.put("mid-range", (high + low) / 2);
      truth.put("cycle-amplitude", still.swing(from, to));
      truth.put("cycle-period", still.period(from, to));
      truth.put("drift", still.slope(from, to));
      double hold = run.meanPower(from, to);
      truth.put("power-hold", hold);
      truth.put("duty", 100 * hold / build.ratedWatt());
    }

    /** Back at a level after the lowest of the open door. */
    private static double back(SimulatedRun run, double level) {
      double lowest = run.lowest(DOOR, DOOR + 300);
      double from = DOOR;
      while (run.at(from) > lowest + 1e-9) {
        from += 0.25;
      }
      return run.crossing(level, from);
    }

    private void places() {
      SimulatedRun run =
          oven(SimulatedRun.NOMINAL_VOLT).run(2700, SimulatedRun.Mode.THERMOSTAT, 0.4, Double.NaN);
      List<String> names =
          List.of("centre", "front-left", "front-right", "back-left", "back-right");
      double[] offsets = new double[5];
      List<Trace> points = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        offsets[i] = 5 * random.nextGaussian();
        points.add(run.logged(names.get(i), offsets[i]));
      }
      TraceInput input =
          TraceInput.of(points.get(0))
              .withPoints(points)
              .withProbe(SimulatedRun.probe(build.probeSeconds()));
      HeatCurve curve = HeatCurve.of(input.centre());
      double mean = java.util.Arrays.stream(offsets).average().orElse(0);
      double squares = java.util.Arrays.stream(offsets).map(o -> (o - mean) * (o - mean)).sum();
      double[] sorted = offsets.clone();
      java.util.Arrays.sort(sorted);
      compare(named("spread").measure(input, curve), Math.sqrt(squares / 4));
      compare(named("spread-range").measure(input, curve), sorted[4] - sorted[0]);
      compare(
          named("front-back").measure(input, curve),
          (offsets[1] + offsets[2] - offsets[3] - offsets[4]) / 2);
      compare(
          named("left-right").measure(input, curve),
          (offsets[1] + offsets[3] - offsets[2] - offsets[4]) / 2);
    }

    private void lowMains() {
      double volt = SimulatedRun.between(random, 213, 247);
      SimulatedRun run = oven(volt).run(2700, SimulatedRun.Mode.THERMOSTAT, 0.4, Double.NaN);
      SimulatedRun nominal =
          oven(SimulatedRun.NOMINAL_VOLT).run(2700, SimulatedRun.Mode.THERMOSTAT, 0, Double.NaN);
      TraceInput input =
          run.input().withMains(run.loggedMains(0)).withNominalVolt(SimulatedRun.NOMINAL_VOLT);
      compare(
          named("preheat-nominal").measure(input, HeatCurve.of(input.centre())),
          nominal.crossing(build.setting(), 0));
    }

    /** A mean that dies away under a swing, logged at any step and phase. */
    private void anyStep() {
      double step = new double[] {0.5, 1, 2, 5, 10, 15}[random.nextInt(6)];
      double phase = random.nextDouble();
      double period = SimulatedRun.between(random, 70, 110);
      double cut = SimulatedRun.between(random, 200, 300);
      int n = (int) (2400 / step);
      double[] t = new double[n];
      double[] v = new double[n];
      for (int i = 0; i < n; i++) {
        t[i] = (i + phase) * step;
        double wave = 6 * Math.sin(2 * Math.PI * (t[i] - cut) / period);
        double risen = 200 - 180 * Math.exp(-3 * t[i] / cut) + 180 * Math.exp(-3);
        v[i] =
            (t[i] < cut ? Math.min(200, risen) : 200 + wave + decay(t[i] - cut))
                + 0.2 * random.nextGaussian();
      }
      Trace trace = new Trace("centre", t, v, Unit.CELSIUS);
      Measurement m = named("preheat-steady").measure(TraceInput.of(trace), HeatCurve.of(trace));
      tallies
          .computeIfAbsent(Id.PREHEAT_STEADY_AT_ANY_STEP.word(), id -> new Tally())
          .add(m, cut + settled());
    }

    private static double decay(double since) {
      return 6 * Math.exp(-since / 200);
    }

    /** First time from which the line through ten minutes of the decay falls by less than 1 K. */
    private static double settled() {
      double from = 0;
      while (true) {
        double xy = 0;
        double xx = 0;
        for (double x = -300; x <= 300; x += 5) {
          xy += x * decay(from + 300 + x);
          xx += x * x;
        }
        if (Math.abs(600 * xy / xx) < 1) {
          return from;
        }
        from += 1;
      }
    }

    private void fullPower() {
      SimulatedRun run =
          oven(SimulatedRun.NOMINAL_VOLT)
              .run(
                  SimulatedRun.between(random, 1800, 2700),
                  SimulatedRun.Mode.FULL_POWER,
                  0,
                  Double.NaN);
      SimulatedRun long_ =
          oven(SimulatedRun.NOMINAL_VOLT).run(15_000, SimulatedRun.Mode.FULL_POWER, 0, Double.NaN);
      double rise = build.ratedWatt() / build.lossWattPerKelvin();
      double ceiling = SimulatedRun.ROOM + rise;
      double setting = SimulatedRun.ROOM + SimulatedRun.between(random, 0.5, 0.93) * rise;
      TraceInput input = run.input().withSetting(setting);
      HeatCurve curve = HeatCurve.of(input.centre());
      compare(named("ceiling-temperature").measure(input, curve), ceiling);
      compare(named("preheat-model").measure(input, curve), long_.crossing(setting, 0));
      compare(named("heat-loss").measure(input, curve), build.lossWattPerKelvin());
      double remaining = 15_000 * (ceiling - long_.mean(0, 15_000));
      compare(
          named("heat-capacity").measure(input, curve),
          build.lossWattPerKelvin() * remaining / rise);
      compare(
          named("power-needed").measure(input, curve),
          build.lossWattPerKelvin() * (setting - SimulatedRun.ROOM));
    }

    private static TraceMeasure named(String id) {
      return TraceMeasures.named(id)
          .or(
              () ->
                  ThermalMeasures.all().stream()
                      .filter(m -> m.description().id().equals(id))
                      .findFirst())
          .orElseThrow();
    }
  }

  /** A joint with three needles, taken out and rested. */
  private static final class FoodSimulation {
    private static final double OUT = 2400;
    private static final double END = 3300;
    private final SplittableRandom random;
    private final java.util.function.ObjDoubleConsumer<Measurement> compare;

    FoodSimulation(
        SplittableRandom random, java.util.function.ObjDoubleConsumer<Measurement> compare) {
      this.random = random;
      this.compare = compare;
    }

    /** Warms towards the oven, goes on after it came out, then cools. */
    private static double core(double t, double slow, double carried) {
      double warmed = 95 - 91 * Math.exp(-Math.min(t, OUT) / slow);
      double since = Math.max(0, t - OUT);
      return warmed + carried * (1 - Math.exp(-since / 150)) - since / 250;
    }

    void run() {
      double carried = SimulatedRun.between(random, 3, 8);
      double shared = SimulatedRun.CALIBRATION * random.nextGaussian();
      List<Trace> needles = new ArrayList<>();
      double coldest = Double.POSITIVE_INFINITY;
      double latest = 0;
      double rise = 0;
      for (int k = 0; k < 3; k++) {
        double slow = SimulatedRun.between(random, 1300, 1700);
        double own = shared + SimulatedRun.PLACEMENT * random.nextGaussian();
        double top = Double.NEGATIVE_INFINITY;
        double reached = Double.NaN;
        int n = (int) (END / 5);
        double[] t = new double[n];
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
          t[i] = 5 * i;
          double true_ = core(t[i], slow, carried);
          reached = Double.isNaN(reached) && true_ >= 65 ? crossing(slow) : reached;
          top = Math.max(top, true_);
          v[i] = Math.round(10 * (true_ + own + 0.05 * random.nextGaussian())) / 10.0;
        }
        if (top < coldest) {
          coldest = top;
          rise = top - core(OUT, slow, carried);
        }
        latest = Math.max(latest, reached);
        needles.add(new Trace("core-" + (k + 1), t, v, Unit.CELSIUS));
      }
      TraceInput input =
          TraceInput.of(needles.get(0))
              .withCores(needles)
              .withCoreTarget(65.0)
              .withHappenings(
                  List.of(
                      new Happening(
                          Happening.Kind.LOAD, Math.max(0, 30 + random.nextGaussian()), 1),
                      new Happening(Happening.Kind.REMOVE, OUT + random.nextGaussian(), 1)))
              .withProbe(
                  new ovenproof.core.trace.ProbeAccuracy(
                      "probe:P1", SimulatedRun.CALIBRATION, SimulatedRun.PLACEMENT, null));
      HeatCurve curve = HeatCurve.of(input.centre());
      compare.accept(Simulation.named("core-highest").measure(input, curve), coldest);
      compare.accept(Simulation.named("core-time").measure(input, curve), latest - 30);
      compare.accept(Simulation.named("core-carry-over").measure(input, curve), rise);
    }

    private static double crossing(double slow) {
      return -slow * Math.log((95 - 65) / 91.0);
    }
  }

  private static void check(Id id, int simulations, double low, double high) {
    Tally tally = simulated(simulations).get(id.word());
    assertThat(tally).as(id.word()).isNotNull();
    assertThat(tally.counted).as("measured").isGreaterThan(simulations / 2);
    double share = (double) tally.covered / tally.counted;
    assertThat(share).isGreaterThanOrEqualTo(low);
    if (id.limit == Limit.NINE_IN_TEN) {
      assertThat(share).isLessThanOrEqualTo(high);
    }
  }

  /** Exact binomial limits at 0.1 % for a true 90 %. */
  @ParameterizedTest
  @EnumSource
  void intervalCoversAboutNineInTen(Id id) {
    int counted = simulated(300).get(id.word()).counted;
    BinomialDistribution ninety = BinomialDistribution.of(counted, 0.9);
    double low = ninety.inverseCumulativeProbability(0.0005);
    double high = ninety.inverseSurvivalProbability(0.0005);
    check(id, 300, low / counted, high / counted);
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource
  void intervalCoversEightySevenToNinetyThreePercent(Id id) {
    check(id, 2000, 0.87, 0.93);
  }
}
