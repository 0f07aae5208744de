package ovenproof.kitchen.bench;

import java.time.LocalDateTime;
import ovenproof.kitchen.physics.Mains;
import ovenproof.kitchen.physics.Oven;

/**
 * One attempt as the calendar has it, with what the day brought.
 *
 * @param replicate from 1
 * @param session half day
 * @param started heat on
 * @param order place in the session, from 1
 * @param preset toast preset 1–7 that was chosen
 * @param lot ingredient lot; empty for no food
 * @param mains of the session, and when the run began in it
 */
public record RunPlan(
    String id,
    Oven oven,
    TestKind test,
    int replicate,
    Kind kind,
    String session,
    String bench,
    LocalDateTime started,
    int order,
    int preset,
    Lot lot,
    Day day,
    Mishap mishap,
    String redoOf) {

  /** The run of an oven on an ideal day, for the truth. */
  public static RunPlan noiseless(Oven oven, TestKind test, int preset) {
    return new RunPlan(
        test.id() + "-" + oven.id() + "-truth",
        oven,
        test,
        0,
        Kind.COUNTED,
        "",
        "A",
        LocalDateTime.of(2026, 3, 2, 9, 0),
        1,
        preset,
        new Lot("", 1),
        Day.NOMINAL,
        Mishap.NONE,
        "");
  }

  /** The same run on another day. */
  public RunPlan on(Day other) {
    return new RunPlan(
        id, oven, test, replicate, kind, session, bench, started, order, preset, lot, other, mishap,
        redoOf);
  }

  /** Whether it counts. */
  public enum Kind {
    COUNTED,
    TRIAL
  }

  /**
   * A delivery.
   *
   * @param browning how much faster it browns than the recipe's food
   */
  public record Lot(String id, double browning) {}

  /**
   * Room and mains while the run lasts.
   *
   * @param roomCelsius mean temperature of the room
   * @param startKelvin how much warmer than the room the oven still is
   * @param sessionSeconds time of the session at which the run began
   */
  public record Day(double roomCelsius, double startKelvin, Mains mains, double sessionSeconds) {

    /** Room of 21 °C, nominal mains. */
    public static final Day NOMINAL = new Day(21, 0, Mains.steady(Mains.NOMINAL_VOLTS), 0);

    double volts(double runSeconds) {
      return mains.volts(sessionSeconds + runSeconds);
    }
  }

  /** What went wrong. */
  public enum Mishap {
    NONE,
    /** The slices were cut 8 % too thick. */
    THICK_SLICES,
    /** Shaken 21 s late. */
    LATE_SHAKE,
    /** The breaker of the bench fell after six minutes with food inside. */
    BREAKER
  }
}
