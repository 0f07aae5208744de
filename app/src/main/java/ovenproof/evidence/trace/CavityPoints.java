package ovenproof.evidence.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.FoodContact;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.TimeMean;
import ovenproof.core.trace.Trace;

/**
 * The places of the cavity that a spread is taken over, and the needles among them. A file alone
 * does not say which probe hung in the air: one that is far from the centre and still moves while
 * the centre holds is in food or outside; one that was colder than any room and never hotter than
 * wet food is in food. The same probe written in °C and in °F is one place.
 *
 * @param traces the places
 * @param cores needles in food, from when they are in it
 * @param notes what was left out or taken for food, and why
 */
record CavityPoints(List<Trace> traces, List<Trace> cores, List<String> notes) {

  /** No place of a cavity is so far from its centre and moves so fast while that holds. */
  private static final double FAR_KELVIN = 30;

  private static final double FAST_KELVIN_PER_HOUR = 30;

  /** Two units of one reading differ by their rounding only. */
  private static final double SAME_KELVIN = 1;

  /** Colder than any kitchen: it comes out of a refrigerator. */
  private static final double REFRIGERATED_CELSIUS = 15;

  /** A channel and its part in this run, under the name of its place. */
  record Point(Channel channel, Trace trace) {}

  /**
   * Of the candidates, those that are places of the cavity.
   *
   * @param named channels that a person placed: they are taken as told
   */
  static CavityPoints among(List<Point> candidates, Set<String> named, HeatCurve centre) {
    List<Trace> traces = new ArrayList<>();
    List<Trace> cores = new ArrayList<>();
    List<Point> kept = new ArrayList<>();
    List<String> food = new ArrayList<>();
    List<String> elsewhere = new ArrayList<>();
    for (Point point : candidates) {
      String name = "“" + point.channel.name() + "”";
      boolean told = named.contains(point.channel.name());
      if (!told && isElsewhere(point.trace.present(), centre.steady())) {
        Trace inside = FoodContact.of(point.trace);
        boolean refrigerated = lowest(inside) < REFRIGERATED_CELSIUS;
        (refrigerated ? food : elsewhere).add(name);
        if (refrigerated) {
          cores.add(inside);
        }
      } else if (told || kept.stream().noneMatch(k -> isSame(k, point))) {
        kept.add(point);
        traces.add(point.trace);
      }
    }
    return new CavityPoints(traces, cores, notes(food, elsewhere));
  }

  private static List<String> notes(List<String> food, List<String> elsewhere) {
    List<String> notes = new ArrayList<>();
    if (!food.isEmpty()) {
      notes.add(
          String.join(", ", food)
              + (food.size() == 1 ? " is" : " are")
              + " read as in food: colder than any room first, slow, and still moving while the"
              + " oven holds. If not, say --channel NAME=centre or a place.");
    }
    if (!elsewhere.isEmpty()) {
      notes.add(
          String.join(", ", elsewhere)
              + (elsewhere.size() == 1 ? " is" : " are")
              + " far from the centre and still moving while that holds: not counted among the"
              + " places. If in food, say --channel NAME=core-1.");
    }
    return notes;
  }

  private static double lowest(Trace trace) {
    return java.util.Arrays.stream(trace.present().values()).min().orElse(Double.NaN);
  }

  private static boolean isElsewhere(Trace trace, @Nullable SteadyState steady) {
    if (steady == null || trace.size() < 2) {
      return false;
    }
    double from = steady.startSecond();
    double to = steady.endSecond();
    double middle = (from + to) / 2;
    double first = TimeMean.of(trace, from, middle);
    double second = TimeMean.of(trace, middle, to);
    double perHour = Math.abs(second - first) / ((to - from) / 2) * 3600;
    double away = Math.abs((first + second) / 2 - steady.meanCelsius());
    return away > FAR_KELVIN && perHour > FAST_KELVIN_PER_HOUR;
  }

  private static boolean isSame(Point a, Point b) {
    if (a.channel.unitAsWritten().equals(b.channel.unitAsWritten())
        || a.trace.size() != b.trace.size()) {
      return false;
    }
    double sum = 0;
    int n = 0;
    for (int i = 0; i < a.trace.size(); i++) {
      double difference = Math.abs(a.trace.values()[i] - b.trace.values()[i]);
      if (Double.isFinite(difference)) {
        sum += difference;
        n++;
      }
    }
    return n > 0 && sum / n < SAME_KELVIN;
  }
}
