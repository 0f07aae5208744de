package ovenproof.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.CavityMap.PositionEffect;
import ovenproof.core.statistics.Interval;

/**
 * The floor of an oven from above, back wall on top: one bead for each place where a piece lay, on
 * a small axis of its own. Nothing is painted between places.
 *
 * @param most where the axes of every product end, to both sides of no effect
 */
public record CavityChart(List<Place> places, double most) {
  private static final int ROW = 96;
  private static final int BASE = 42;
  private static final double EDGE_PERCENT = 3;
  private static final double WIDEST_PERCENT = 34;

  /** Paler to darker. */
  private static final int[] PALETTE = {
    0x2f6fae, 0x6ea0cf, 0xaecbe6, 0xeef0ee, 0xe3c39f, 0xb98654, 0x7d4f26
  };

  public CavityChart {
    places = List.copyOf(places);
  }

  /**
   * A place.
   *
   * @param x 0 at the left wall to 1 at the right
   * @param y 0 at the back to 1 at the front
   * @param effect against the mean of all places; positive is paler
   * @param low end of the interval; null when there is none
   */
  public record Place(
      String name, double x, double y, double effect, @Nullable Double low, @Nullable Double high) {

    /** A fitted position. */
    public static Place of(PositionEffect effect) {
      Interval interval = effect.interval();
      return new Place(
          effect.position().id(),
          effect.position().x(),
          effect.position().y(),
          effect.effect(),
          interval == null ? null : Double.valueOf(interval.low()),
          interval == null ? null : Double.valueOf(interval.high()));
    }

    /** Whether no effect lies outside the interval. */
    public boolean stands() {
      return low != null && high != null && (low > 0 || high < 0);
    }
  }

  /** The picture with its sentence. */
  public String svg(String sentence) {
    List<Double> depths = places.stream().map(Place::y).distinct().sorted().toList();
    long across = places.stream().map(Place::x).distinct().count();
    double width = Math.min(WIDEST_PERCENT, (100 - 2 * EDGE_PERCENT) / Math.max(1, across) - 6);
    Svg svg =
        new Svg()
            .open(
                "svg",
                "class",
                "chart cavity",
                "height",
                Math.max(1, depths.size()) * ROW + 6,
                "role",
                "img",
                "aria-label",
                sentence);
    for (Place place : places) {
      place(svg, place, depths.indexOf(place.y()) * ROW + BASE, width);
    }
    return svg.close().toString();
  }

  private void place(Svg svg, Place place, int y, double width) {
    double middle = EDGE_PERCENT + width / 2 + place.x() * (100 - 2 * EDGE_PERCENT - width);
    String centre = Svg.percent(middle);
    svg.empty(
        "line",
        "class",
        "wire",
        "x1",
        Svg.percent(middle - width / 2),
        "x2",
        Svg.percent(middle + width / 2),
        "y1",
        y,
        "y2",
        y);
    svg.empty("line", "class", "axis", "x1", centre, "x2", centre, "y1", y - 24, "y2", y + 5);
    if (place.low() != null && place.high() != null) {
      tray(svg, at(middle, width, place.low()), at(middle, width, place.high()), y);
    }
    svg.empty(
        "circle",
        "class",
        "ring",
        "cx",
        Svg.percent(at(middle, width, place.effect())),
        "cy",
        y - 12,
        "r",
        "10.5",
        "fill",
        fill(place.effect()));
    svg.text(
        signed(place.effect()),
        "class",
        place.stands() ? "strong" : null,
        "x",
        centre,
        "y",
        y + 24,
        "text-anchor",
        "middle");
  }

  private static void tray(Svg svg, double low, double high, int y) {
    String left = Svg.percent(low);
    String right = Svg.percent(high);
    svg.empty("line", "class", "rail other", "x1", left, "x2", right, "y1", y, "y2", y);
    svg.empty("line", "class", "rail other", "x1", left, "x2", left, "y1", y + 1.5, "y2", y - 9);
    svg.empty("line", "class", "rail other", "x1", right, "x2", right, "y1", y + 1.5, "y2", y - 9);
  }

  private double at(double middle, double width, double effect) {
    double held = Math.max(-most, Math.min(most, effect));
    return middle + held / most * width / 2;
  }

  private String fill(double effect) {
    double held = Math.max(-most, Math.min(most, effect));
    double at = (most - held) / (2 * most) * (PALETTE.length - 1);
    int below = (int) Math.min(PALETTE.length - 2, Math.floor(at));
    double share = at - below;
    int colour = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int low = PALETTE[below] >> shift & 0xff;
      int high = PALETTE[below + 1] >> shift & 0xff;
      colour |= (int) Math.round(low + share * (high - low)) << shift;
    }
    return String.format(Locale.ROOT, "#%06x", colour);
  }

  /** With a real minus, and a plus where it is positive. */
  public static String signed(double value) {
    String digits = String.format(Locale.ROOT, "%.1f", Math.abs(value));
    return digits.equals("0.0") ? digits : (value < 0 ? "−" : "+") + digits;
  }

  /** A common end for all products: the farthest effect or end of an interval, rounded up. */
  public static double most(List<CavityChart.Place> all) {
    double farthest =
        all.stream()
            .flatMap(
                p ->
                    java.util.stream.Stream.of(p.effect(), p.low(), p.high())
                        .filter(java.util.Objects::nonNull))
            .mapToDouble(Math::abs)
            .max()
            .orElse(1);
    double step = farthest > 12 ? 5 : 2;
    return Math.max(step, Math.ceil(farthest / step) * step);
  }

  /** The places as a sentence, palest first. */
  public static String listed(List<Place> places) {
    return places.stream()
        .sorted(java.util.Comparator.comparingDouble(p -> -p.effect()))
        .map(p -> p.name() + " " + signed(p.effect()))
        .collect(Collectors.joining(", "));
  }
}
