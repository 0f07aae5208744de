package ovenproof.core.safety;

import java.util.List;
import java.util.Locale;
import ovenproof.core.trace.Trace;

/**
 * Whether the coldest of the probes met the criterion, uncertainty subtracted.
 *
 * @param state what may be said
 * @param why in words, with the figures
 * @param lethalitySeconds F70 of the coldest probe after subtraction
 */
public record CoreSafety(State state, String why, double lethalitySeconds) {

  /** What may be said of a core. */
  public enum State {
    /** The criterion is met by the coldest probe less its uncertainty. */
    REACHED,
    /** Not yet; the record goes on. */
    NOT_YET,
    /** The record is over and it was not met. */
    NOT_REACHED,
    /** The evidence does not tell: no probes, gaps, or only the uncertainty lies between. */
    NOT_SHOWN;

    public String words() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** Whether more is to come. */
  public enum Record {
    RUNNING,
    FINISHED
  }

  /**
   * @param cores probes in the food, in °C, times of one clock
   * @param expandedKelvin U (k = 2) of a reading, placement included; NaN when nobody knows it,
   *     which shows nothing
   */
  public static CoreSafety judge(
      Criterion criterion, List<Trace> cores, double expandedKelvin, Record record) {
    List<Trace> present = cores.stream().map(Trace::present).filter(t -> t.size() >= 2).toList();
    if (present.isEmpty()) {
      return new CoreSafety(State.NOT_SHOWN, "no probe in the food was logged", 0);
    }
    if (Double.isNaN(expandedKelvin)) {
      return unknownError(criterion, present, record);
    }
    double lethality = Lethality.ofColdest(present, expandedKelvin);
    double nominal = Lethality.ofColdest(present, 0);
    if (criterion instanceof Criterion.EquivalentTime wanted) {
      String why =
          text(
              "F70 of the coldest of %d probe(s) is %.2f min after subtracting %.1f K; %.2f min are needed",
              present.size(), lethality / 60, expandedKelvin, wanted.seconds() / 60);
      boolean met = lethality >= wanted.seconds();
      return new CoreSafety(state(met, nominal >= wanted.seconds(), record), why, lethality);
    }
    return judgeFloor(
        (Criterion.FloorWithRest) criterion, present, expandedKelvin, record, lethality);
  }

  /** As read it may fail; it never passes. */
  private static CoreSafety unknownError(Criterion criterion, List<Trace> cores, Record record) {
    CoreSafety asRead = judge(criterion, cores, 0, record);
    State state = asRead.state == State.REACHED ? State.NOT_SHOWN : asRead.state;
    return new CoreSafety(
        state, asRead.why + "; the probes' uncertainty is not known: state it", 0);
  }

  private static CoreSafety judgeFloor(
      Criterion.FloorWithRest wanted,
      List<Trace> cores,
      double expandedKelvin,
      Record record,
      double lethality) {
    double held = longest(cores, wanted.floorCelsius() + expandedKelvin);
    double nominal = longest(cores, wanted.floorCelsius());
    String why =
        held < 0
            ? text(
                "the coldest of %d probe(s) less %.1f K never reached %.1f °C",
                cores.size(), expandedKelvin, wanted.floorCelsius())
            : text(
                "the coldest of %d probe(s) less %.1f K stayed at %.1f °C or above for %.0f s; %.0f s of rest are needed",
                cores.size(), expandedKelvin, wanted.floorCelsius(), held, wanted.restSeconds());
    boolean met = held >= 0 && held >= wanted.restSeconds();
    boolean nominally = nominal >= 0 && nominal >= wanted.restSeconds();
    return new CoreSafety(state(met, nominally, record), why, lethality);
  }

  private static State state(boolean met, boolean metWithoutSubtraction, Record record) {
    if (met) {
      return State.REACHED;
    }
    if (record == Record.RUNNING) {
      return State.NOT_YET;
    }
    return metWithoutSubtraction ? State.NOT_SHOWN : State.NOT_REACHED;
  }

  /**
   * Longest time that every probe is at or above a level at once, over gap-free readings; −1 if
   * never.
   */
  private static double longest(List<Trace> cores, double level) {
    double best = -1;
    double since = Double.NaN;
    double last = Double.NaN;
    Trace clock = cores.get(0);
    double limit = Math.max(30, 3.5 * clock.medianStepSeconds());
    for (double t : clock.seconds()) {
      boolean gap = !Double.isNaN(last) && t - last > limit;
      since = gap ? Double.NaN : since;
      boolean all =
          cores.stream()
              .allMatch(
                  c -> t <= c.lastSecond() && ovenproof.core.trace.TimeMean.at(c, t) >= level);
      since = all ? (Double.isNaN(since) ? t : since) : Double.NaN;
      best = all ? Math.max(best, t - since) : best;
      last = t;
    }
    return best;
  }

  private static String text(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
