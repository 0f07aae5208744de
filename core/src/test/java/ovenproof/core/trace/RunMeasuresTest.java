package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** What a log says together with what people noted: doors, loads, stops. Cases worked by hand. */
class RunMeasuresTest {

  private static Trace trace(String channel, Unit unit, double seconds, DoubleUnaryOperator value) {
    int n = (int) seconds + 1;
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = i;
      v[i] = value.applyAsDouble(i);
    }
    return new Trace(channel, t, v, unit);
  }

  private static Trace celsius(String channel, double seconds, DoubleUnaryOperator value) {
    return trace(channel, Unit.CELSIUS, seconds, value);
  }

  private static Measurement measured(String id, TraceInput input) {
    return TraceMeasures.named(id).orElseThrow().measure(input);
  }

  private static Happening at(Happening.Kind kind, double second) {
    return new Happening(kind, second, 1);
  }

  /** 200 °C; at 1000 s it falls by 60 K and comes back with τ = 40 s. */
  private static double withDoor(double t) {
    return t < 1000 ? 200 : 200 - 60 * Math.exp(-(t - 1000) / 40);
  }

  @Test
  void theDropIsBelowTheMeanBefore() {
    TraceInput input =
        TraceInput.of(celsius("centre", 2000, RunMeasuresTest::withDoor))
            .withHappenings(List.of(at(Happening.Kind.DOOR_OPEN, 1000)));
    // The curve falls by 60 K at once; smoothing may take a little off it.
    assertThat(measured("door-drop", input).value()).isCloseTo(60, within(0.5));
  }

  @Test
  void theRecoveryEndsFiveKelvinBelowTheMeanBefore() {
    TraceInput input =
        TraceInput.of(celsius("centre", 2000, RunMeasuresTest::withDoor))
            .withHappenings(List.of(at(Happening.Kind.DOOR_OPEN, 1000)));
    // 60 e^(−t/40) = 5 at t = 40 ln 12 = 99.4 s.
    assertThat(measured("door-recovery", input).value()).isCloseTo(99.4, within(3.0));
  }

  @Test
  void aRecoveryThatTheRecordDoesNotShowIsABound() {
    TraceInput input =
        TraceInput.of(celsius("centre", 1050, RunMeasuresTest::withDoor))
            .withHappenings(List.of(at(Happening.Kind.DOOR_OPEN, 1000)));
    Measurement recovery = measured("door-recovery", input);
    assertThat(recovery.censored()).isEqualTo(Censoring.ABOVE);
    assertThat(recovery.low()).isCloseTo(50, within(1.0));
  }

  @Test
  void noDoorNoRecovery() {
    TraceInput input = TraceInput.of(celsius("centre", 2000, RunMeasuresTest::withDoor));
    assertThat(measured("door-recovery", input).note()).contains("nobody noted");
  }

  @Test
  void theFrontAgainstTheBackIsTheDifferenceOfTheirMeans() {
    Trace centre = celsius("centre", 3600, t -> 200);
    TraceInput input =
        TraceInput.of(centre)
            .withPoints(
                List.of(
                    centre,
                    celsius("front-left", 3600, t -> 194),
                    celsius("front-right", 3600, t -> 196),
                    celsius("back-left", 3600, t -> 203),
                    celsius("back-right", 3600, t -> 209)));
    assertThat(measured("front-back", input).value()).isCloseTo(195 - 206, within(0.01));
    assertThat(measured("left-right", input).value()).isCloseTo(198.5 - 202.5, within(0.01));
    assertThat(measured("top-bottom", input).note()).contains("no place is called top");
  }

  @Test
  void theStartIsColdByTemperatureNotByTime() {
    TraceInput cold = TraceInput.of(celsius("centre", 60, t -> 22.5)).withAmbient(21.0);
    TraceInput hot = TraceInput.of(celsius("centre", 60, t -> 48)).withAmbient(21.0);
    assertThat(measured("start-above-room", cold).note()).isEqualTo("a cold start");
    assertThat(measured("start-above-room", hot).note()).isEqualTo("a hot start");
    assertThat(measured("start-above-room", hot).value()).isCloseTo(27, within(0.1));
  }

  @Test
  void theEnergyOfAPartIsThePowerOverIt() {
    // 1800 W throughout; the centre rises 0.2 K/s from 20 °C and reaches 200 °C after 900 s.
    TraceInput input =
        TraceInput.of(celsius("centre", 1800, t -> 20 + 0.2 * t))
            .withSetting(200.0)
            .withPower(trace("power", Unit.WATT, 1800, t -> 1800))
            .withHappenings(List.of(at(Happening.Kind.LOAD, 1000), at(Happening.Kind.STOP, 1600)));
    assertThat(measured("energy-to-setting", input).value()).isCloseTo(0.45, within(0.005));
    assertThat(measured("energy-cook", input).value()).isCloseTo(0.3, within(0.001));
  }

  @Test
  void standbyNeedsToBeSwitchedOff() {
    TraceInput on =
        TraceInput.of(celsius("centre", 600, t -> 50))
            .withPower(trace("power", Unit.WATT, 600, t -> t < 200 ? 900 : 1.5));
    TraceInput off = on.withHappenings(List.of(at(Happening.Kind.POWER_OFF, 200)));
    assertThat(measured("power-standby", on).value()).isNull();
    assertThat(measured("power-standby", off).value()).isCloseTo(1.5, within(0.001));
  }

  @Test
  void theMainsCountWhileTheElementsAreOn() {
    TraceInput input =
        TraceInput.of(celsius("centre", 600, t -> 50))
            .withPower(trace("power", Unit.WATT, 600, t -> t % 100 < 40 ? 1800 : 1))
            .withMains(trace("mains", Unit.VOLT, 600, t -> t % 100 < 40 ? 226 : 233));
    assertThat(measured("mains-mean", input).value()).isCloseTo(226, within(0.5));
  }

  @Test
  void notesThatRunAheadOfTheLoggerAreFoundOut() {
    // Doors at 1000, 1600 and 2300 s; the person's clock is 37 s ahead.
    DoubleUnaryOperator air =
        t -> {
          double v = 200;
          for (double door : new double[] {1000, 1600, 2300}) {
            v -= t < door ? 0 : 50 * Math.exp(-(t - door) / 60) * (1 - Math.exp(-(t - door) / 6));
          }
          return v;
        };
    ClockAlignment found =
        ClockAlignment.of(celsius("centre", 3000, air), List.of(963.0, 1563.0, 2263.0))
            .orElseThrow();
    assertThat(found.offsetSeconds()).isCloseTo(37, within(2 * found.u()));
    assertThat(found.falls()).isEqualTo(3);
    assertThat(found.u()).isLessThan(3);
  }

  @Test
  void aCurveWithoutFallsSaysNothingOfClocks() {
    assertThat(ClockAlignment.of(celsius("centre", 3000, t -> 200), List.of(1000.0))).isEmpty();
  }
}
