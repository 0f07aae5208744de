package ovenproof.kitchen.bench;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import ovenproof.kitchen.bench.RunPlan.Day;
import ovenproof.kitchen.bench.RunPlan.Kind;
import ovenproof.kitchen.bench.RunPlan.Lot;
import ovenproof.kitchen.bench.RunPlan.Mishap;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Mains;
import ovenproof.kitchen.physics.Oven;

/**
 * Nine days at four benches: two sessions a day, each one test with one replicate of every oven, in
 * two waves of four. Which oven comes when is turned from session to session.
 */
public final class Calendar {

  /** What a session cooks. */
  public record Session(
      String id, TestKind test, int replicate, LocalDateTime start, Mains mains, double room) {}

  public static final String[] BENCHES = {"A", "B", "C", "D"};

  /** Trials are made on the day before the first session. */
  public static final LocalDate TRIAL_DAY = LocalDate.of(2026, 2, 27);

  public static final int LOW_MAINS_DAY = 5;

  private static final LocalDate FIRST_DAY = LocalDate.of(2026, 3, 2);
  private static final TestKind[][] DAYS = {
    {TestKind.HEAT_UP, TestKind.CROQUETTES},
    {TestKind.TOAST, TestKind.CAKES},
    {TestKind.TURKEY, TestKind.FLATBREAD}
  };
  private static final double SAG_VOLTS = 15;
  private static final double LOT_CHANGE = 1.35;

  private final List<Oven> ovens;
  private final Chance chance;
  private final List<Session> sessions = new ArrayList<>();

  public Calendar(List<Oven> ovens, Chance chance) {
    this.ovens = List.copyOf(ovens);
    this.chance = chance;
    for (int day = 0; day < 9; day++) {
      for (int half = 0; half < 2; half++) {
        sessions.add(session(day, half));
      }
    }
  }

  private Session session(int day, int half) {
    LocalDate date = FIRST_DAY.plusDays(day + (day > 4 ? 2 : 0));
    String id = date + (half == 0 ? "-am" : "-pm");
    Chance luck = chance.named("session " + id);
    Mains usual =
        new Mains(luck.gaussian(230, 1.2), luck.uniform(0.4, 1.2), luck.uniform(0, 6.28), 0, 1e9);
    Mains mains = day != LOW_MAINS_DAY ? usual : sagging(usual, half);
    return new Session(
        id,
        DAYS[day % 3][half],
        day / 3 + 1,
        date.atTime(half == 0 ? 9 : 14, 0),
        mains,
        luck.gaussian(21.5, 0.9));
  }

  /** Low from the second wave of the morning on, for the rest of the day. */
  private static Mains sagging(Mains usual, int half) {
    double from = half == 0 ? 6000 : -600;
    return new Mains(usual.level(), usual.swing(), usual.phase(), SAG_VOLTS, from);
  }

  public List<Session> sessions() {
    return List.copyOf(sessions);
  }

  /** One trial of the toast program for each oven, at its middle preset. */
  public List<RunPlan> trials() {
    List<RunPlan> plans = new ArrayList<>();
    Mains mains = new Mains(230.6, 0.7, 1, 0, 1e9);
    for (int i = 0; i < ovens.size(); i++) {
      LocalDateTime start = TRIAL_DAY.atTime(14, 0).plusMinutes(18L * (i / 4) + 4L * (i % 4));
      double late = java.time.Duration.between(TRIAL_DAY.atTime(14, 0), start).toSeconds();
      Oven oven = ovens.get(i);
      plans.add(
          new RunPlan(
              "toast-" + oven.id() + "-trial",
              oven,
              TestKind.TOAST,
              1,
              Kind.TRIAL,
              TRIAL_DAY + "-pm",
              BENCHES[i % 4],
              start,
              i + 1,
              4,
              lot(TestKind.TOAST, 1),
              new Day(21.2, 0.4, mains, late),
              Mishap.NONE,
              ""));
    }
    return plans;
  }

  /**
   * All counted runs, the one that failed and its redo among them.
   *
   * @param presets toast preset of each oven
   */
  public List<RunPlan> runs(Map<String, Integer> presets) {
    List<RunPlan> plans = new ArrayList<>();
    for (int k = 0; k < sessions.size(); k++) {
      Session session = sessions.get(k);
      for (int slot = 0; slot < ovens.size(); slot++) {
        Oven oven = ovens.get((slot * 3 + k * 5) % ovens.size());
        RunPlan plan = run(session, slot, oven, presets);
        plans.add(plan);
        if (plan.mishap() == Mishap.BREAKER) {
          plans.add(redo(session, plan));
        }
      }
    }
    return plans;
  }

  private RunPlan run(Session session, int slot, Oven oven, Map<String, Integer> presets) {
    String id =
        String.format(Locale.ROOT, "%s-%s-%d", session.test().id(), oven.id(), session.replicate());
    Chance luck = chance.named("start " + id);
    double late = late(session.test(), slot) + Math.rint(luck.uniform(0, 90));
    boolean toast = session.test() == TestKind.TOAST;
    return new RunPlan(
        id,
        oven,
        session.test(),
        session.replicate(),
        Kind.COUNTED,
        session.id(),
        BENCHES[slot % 4],
        session.start().plusSeconds((long) late),
        slot + 1,
        toast ? presets.getOrDefault(oven.id(), 4) : 0,
        lot(session.test(), session.replicate()),
        new Day(
            session.room() + luck.gaussian(0, 0.2), luck.uniform(0, 2.4), session.mains(), late),
        mishap(id),
        "");
  }

  private RunPlan redo(Session session, RunPlan failed) {
    double late = late(session.test(), 9);
    return new RunPlan(
        failed.id() + "b",
        failed.oven(),
        failed.test(),
        failed.replicate(),
        Kind.COUNTED,
        session.id(),
        failed.bench(),
        session.start().plusSeconds((long) late),
        9,
        failed.preset(),
        failed.lot(),
        new Day(failed.day().roomCelsius(), 1.9, session.mains(), late),
        Mishap.NONE,
        failed.id());
  }

  /** Seconds from the session's start. */
  private static double late(TestKind test, int slot) {
    double wave =
        switch (test) {
          case HEAT_UP -> 78;
          case TOAST -> 36;
          case CAKES -> 66;
          case FLATBREAD -> 58;
          case TURKEY -> 108;
          case CROQUETTES -> 64;
        };
    return 60 * (wave * (slot / 4) + 6.0 * (slot % 4));
  }

  /** The bread of the third replicate came from another delivery; it is sweeter. */
  private static Lot lot(TestKind test, int replicate) {
    return switch (test) {
      case HEAT_UP -> new Lot("", 1);
      case TOAST -> replicate < 3 ? new Lot("bread-1", 1) : new Lot("bread-2", LOT_CHANGE);
      case CAKES -> new Lot("batter-" + replicate, 1);
      case FLATBREAD -> new Lot("dough-" + replicate, 1);
      case TURKEY -> new Lot("turkey-" + replicate, 1);
      case CROQUETTES -> new Lot("croquettes-1", 1);
    };
  }

  private static Mishap mishap(String run) {
    return switch (run) {
      case "cakes-whimbrel-2" -> Mishap.BREAKER;
      case "toast-dunnock-2" -> Mishap.THICK_SLICES;
      case "croquettes-plover-1" -> Mishap.LATE_SHAKE;
      default -> Mishap.NONE;
    };
  }

  /** Lots with what is true of them: id → food. */
  public static Map<String, String> lots() {
    Map<String, String> lots = new TreeMap<>();
    lots.put("bread-1", "White sandwich bread");
    lots.put("bread-2", "White sandwich bread");
    for (int r = 1; r <= 3; r++) {
      lots.put("batter-" + r, "Plain sponge batter");
      lots.put("dough-" + r, "Flatbread dough");
      lots.put("turkey-" + r, "Turkey breast joints");
    }
    lots.put("croquettes-1", "Frozen potato croquettes");
    return lots;
  }
}
