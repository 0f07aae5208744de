package ovenproof.publish.footage;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times in a film, as WebVTT and as people write them. */
final class Timecode {
  private static final Pattern WRITTEN =
      Pattern.compile("(?:(\\d{1,3}):)?(\\d{1,3}):(\\d{2})(?:[.,](\\d{1,3}))?");

  private Timecode() {}

  /** {@code 01:05:10.500}, as WebVTT (W3C) has it. */
  static String webVtt(double seconds) {
    long millis = Math.round(seconds * 1000);
    return String.format(
        Locale.ROOT,
        "%02d:%02d:%02d.%03d",
        millis / 3_600_000,
        millis / 60_000 % 60,
        millis / 1000 % 60,
        millis % 1000);
  }

  /** {@code 0:00}, {@code 12:05}, {@code 1:05:10}. */
  static String plain(double seconds) {
    long whole = (long) Math.floor(seconds);
    return whole < 3600
        ? String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60)
        : String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
  }

  /** Seconds of {@code 1:05}, {@code 1:05:10} or {@code 0:02.5}; empty when it is no time. */
  static Optional<Double> parse(String text) {
    Matcher m = WRITTEN.matcher(text.strip());
    if (!m.matches() || Integer.parseInt(m.group(3)) > 59) {
      return Optional.empty();
    }
    int hours = m.group(1) == null ? 0 : Integer.parseInt(m.group(1));
    int minutes = Integer.parseInt(m.group(2));
    if (m.group(1) != null && minutes > 59) {
      return Optional.empty();
    }
    double fraction = m.group(4) == null ? 0 : Double.parseDouble("0." + m.group(4));
    return Optional.of(hours * 3600 + minutes * 60 + Integer.parseInt(m.group(3)) + fraction);
  }
}
