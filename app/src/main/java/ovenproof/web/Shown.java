package ovenproof.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.publish.figure.Figures;

/** Values as pages write them. */
public final class Shown {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm:ss", Locale.ENGLISH);

  private Shown() {}

  /** With ± one standard uncertainty; a bound as a bound; nothing as "none". */
  public static String measurement(Measurement m) {
    if (m.value() != null) {
      return Figures.withUncertainty(m.value(), m.uncertainty(), m.unit());
    }
    return switch (m.censored()) {
      case ABOVE -> "over " + figure(m.low(), m);
      case BELOW -> "under " + figure(m.high(), m);
      case BETWEEN -> figure(m.low(), m) + " to " + figure(m.high(), m);
      case NONE -> "none";
    };
  }

  private static String figure(@Nullable Double value, Measurement m) {
    return value == null ? "–" : Figures.text(value, m.unit());
  }

  public static String time(@Nullable Instant at, ZoneId zone) {
    return at == null ? "–" : TIME.format(at.atZone(zone));
  }

  /** Minutes and seconds since the start. */
  public static String elapsed(double seconds) {
    long whole = Math.round(seconds);
    return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
  }
}
