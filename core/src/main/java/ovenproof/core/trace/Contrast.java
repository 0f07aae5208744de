package ovenproof.core.trace;

import java.util.List;
import java.util.OptionalDouble;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** One side of the cavity against the other: means over the steady part, by the names of places. */
public final class Contrast implements TraceMeasure {

  /** Which sides are compared; places are told by the words in their names. */
  public enum Sides {
    FRONT_BACK("front", "back"),
    LEFT_RIGHT("left", "right"),
    TOP_BOTTOM("top", "bottom");

    private final String first;
    private final String second;

    Sides(String first, String second) {
      this.first = first;
      this.second = second;
    }

    String id() {
      return first + "-" + second;
    }
  }

  private final Sides sides;
  private final MeasureDescription description;

  public Contrast(Sides sides) {
    this.sides = sides;
    description =
        TraceMeasures.describe(
            sides.id(),
            capital(sides.first) + " minus " + sides.second,
            Unit.KELVIN,
            "How much warmer the "
                + sides.first
                + " is than the "
                + sides.second
                + " when steady. A spread says how uneven, this says where.",
            "mean over the "
                + sides.first
                + " places − mean over the "
                + sides.second
                + " places, time-means in the steady part",
            "common practice");
  }

  private static String capital(String word) {
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }

  @Override
  public MeasureDescription description() {
    return description;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(description, curve.whyNotSteady());
    }
    List<Trace> first = named(input, sides.first);
    List<Trace> second = named(input, sides.second);
    OptionalDouble one = mean(first, steady);
    OptionalDouble other = mean(second, steady);
    if (one.isEmpty() || other.isEmpty()) {
      String side = one.isEmpty() ? sides.first : sides.second;
      return input.missing(description, "no place is called " + side);
    }
    return TraceMeasures.value(
        description,
        input,
        one.getAsDouble() - other.getAsDouble(),
        input
            .probe()
            .ofPlaces(Math.sqrt(1.0 / first.size() + 1.0 / second.size()), steady.standardError()),
        first.size() + " against " + second.size() + " place(s), " + SteadyMean.over(steady));
  }

  private static List<Trace> named(TraceInput input, String word) {
    Side side = Side.valueOf(word.toUpperCase(java.util.Locale.ROOT));
    return input.points().stream().filter(t -> side.isSaid(t.channel())).toList();
  }

  private static OptionalDouble mean(List<Trace> places, SteadyState steady) {
    return places.stream()
        .mapToDouble(t -> TimeMean.of(t.present(), steady.startSecond(), steady.endSecond()))
        .filter(Double::isFinite)
        .average();
  }
}
