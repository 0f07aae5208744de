package ovenproof.evidence.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.TraceFile;

/** The report of {@code trace} for a person at a terminal. */
public final class TraceReport {

  private TraceReport() {}

  /** Longer names push what follows aside. */
  private static final int WIDEST_NAME = 48;

  public static List<String> lines(
      String name, TraceFile file, @Nullable TraceSession session, List<Measurement> measurements) {
    List<String> lines = new ArrayList<>();
    lines.add(name);
    lines.add("");
    file.layout().explanation().forEach(e -> lines.add("  " + e));
    lines.add(text("  Certainty of this reading: %.0f %%.", 100 * file.layout().certainty()));
    lines.add("");
    List<Channel> channels = (session == null ? file : session.file()).channels();
    int width = channels.stream().mapToInt(c -> c.name().length()).max().orElse(0);
    channels.forEach(c -> lines.add(channel(c, Math.min(Math.max(width, 22), WIDEST_NAME))));
    if (session != null) {
      lines.add("");
      session.notes().forEach(n -> lines.add("  " + n));
      lines.add("");
      measurements.forEach(m -> lines.add(measurement(m)));
      addStory(session, lines);
    }
    for (var q : file.questions()) {
      lines.add("");
      lines.add("? " + q.text() + " Assumed: " + q.assumed() + " (" + q.why() + ").");
    }
    return lines;
  }

  private static void addStory(TraceSession session, List<String> lines) {
    String story = session.story();
    if (!story.isEmpty()) {
      lines.add("");
      lines.addAll(wrapped(story, 78));
    }
  }

  private static List<String> wrapped(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(" ");
    for (String word : text.split(" ")) {
      if (line.length() + word.length() + 1 > width) {
        lines.add(line.toString());
        line = new StringBuilder(" ");
      }
      line.append(' ').append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  private static String channel(Channel c, int width) {
    String state =
        switch (c.state()) {
          case GOOD -> "";
          case SUSPECT -> "suspect";
          case UNUSED -> "unused";
        };
    String unit = c.dimension() == null ? "" : c.unit().symbol();
    return text(
            "  %-" + width + "s %-12s %-4s %8d %-8s  %-8s %s",
            c.name(),
            c.quantityWord(),
            unit,
            c.rows(),
            c.rows() == 1 ? "reading" : "readings",
            state,
            c.why())
        .stripTrailing();
  }

  private static String measurement(Measurement m) {
    String note = m.note() == null ? "" : m.note();
    String value = m.isMissing() ? "–" : shown(m);
    return text("  %-32s %-26s %s", m.label(), value, note).stripTrailing();
  }

  private static String shown(Measurement m) {
    Double low = m.low();
    Double high = m.high();
    if (m.censored() == Censoring.ABOVE && low != null) {
      return "over " + quantity(low, m.unit());
    }
    if (m.censored() == Censoring.BELOW && high != null) {
      return "under " + quantity(high, m.unit());
    }
    if (m.censored() == Censoring.BETWEEN && low != null && high != null) {
      return quantity(low, m.unit()) + " to " + quantity(high, m.unit());
    }
    Double value = m.value();
    Double u = m.uncertainty();
    String text = value == null ? "–" : quantity(value, m.unit());
    return u == null || u == 0 ? text : text + " ± " + uncertainty(u, m.unit());
  }

  private static String quantity(double value, Unit unit) {
    if (unit.dimension() == Dimension.TIME) {
      long s = Math.round(value);
      return s >= 3600
          ? text("%d h %02d min %02d s", s / 3600, s / 60 % 60, s % 60)
          : s >= 60 ? text("%d min %02d s", s / 60, s % 60) : text("%.1f s", value);
    }
    if (unit == Unit.KELVIN_PER_SECOND) {
      return text("%.2f K/h", perHour(value));
    }
    return text(unit == Unit.KILOWATT_HOUR ? "%.3f %s" : "%.1f %s", value, unit.symbol());
  }

  private static String uncertainty(double u, Unit unit) {
    if (unit.dimension() == Dimension.TIME) {
      return u >= 10 ? text("%.0f s", u) : text("%.1f s", u);
    }
    if (unit == Unit.KELVIN_PER_SECOND) {
      return text("%.2f", perHour(u));
    }
    return text(unit == Unit.KILOWATT_HOUR ? "%.3f" : u < 0.1 ? "%.2f" : "%.1f", u);
  }

  /** A drift per second is all zeros to a reader. */
  private static double perHour(double kelvinPerSecond) {
    return new Quantity(kelvinPerSecond, Unit.KELVIN_PER_SECOND).to(Unit.KELVIN_PER_HOUR).value();
  }

  private static String text(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
