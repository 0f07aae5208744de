package ovenproof.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.Drift;
import ovenproof.core.trace.TraceFile;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.publish.figure.Figures;

/**
 * The report of {@code trace} for a person at a terminal: how the file was read, what was measured,
 * what that means, and at the end what could not be measured and what would help.
 */
final class TraceReport {
  private static final int WIDTH = 96;

  /** Beyond any use: nobody cooks for it. */
  private static final double LONGEST_LETHALITY_SECONDS = 86_400;

  /** Reasons by the words in them, and the option that does away with them. */
  private static final Map<String, String> HELP =
      Map.of(
          "setting is not known", "--set 230C",
          "room was not logged", "--ambient 21C",
          "no core temperature was asked", "--floor 74C",
          "only one place", "--channel NAME=front-left",
          "no place is called", "--channel NAME=front-left",
          "no probe in the food", "--channel NAME=core-1");

  private TraceReport() {}

  static List<String> lines(
      String name, TraceFile file, @Nullable TraceSession session, List<Measurement> measurements) {
    List<String> lines = new ArrayList<>();
    lines.add(name);
    lines.add("");
    file.layout().explanation().forEach(e -> lines.add("  " + e));
    lines.add(text("  Certainty of this reading: %.0f %%.", 100 * file.layout().certainty()));
    lines.add("");
    (session == null ? file : session.file()).channels().forEach(c -> lines.add(channel(c)));
    if (session != null) {
      lines.add("");
      session.notes().forEach(n -> lines.addAll(wrapped("  ", n)));
      if (!session.curve().isEmpty()) {
        lines.addAll(wrapped("  ", uncertainty(session)));
      }
      lines.add("");
      measurements.stream().filter(m -> !m.isMissing()).forEach(m -> lines.addAll(measurement(m)));
      addParagraph(session.coreWords(), lines);
      addParagraph(session.story(), lines);
      lines.addAll(notMeasured(session, measurements));
    }
    for (var q : file.questions()) {
      lines.add("");
      lines.addAll(
          wrapped("", "? " + q.text() + " Assumed: " + q.assumed() + " (" + q.why() + ")."));
    }
    return lines;
  }

  private static String uncertainty(TraceSession session) {
    return session.input().probe().isKnown()
        ? "± is one standard uncertainty (k = 1), the probe's included."
        : "± is one standard uncertainty of what the trace shows; what its probe errs by comes on"
            + " top (say it with --probe 0.5K).";
  }

  private static void addParagraph(String words, List<String> lines) {
    if (!words.isEmpty()) {
      lines.add("");
      lines.addAll(wrapped("  ", words));
    }
  }

  private static List<String> wrapped(String margin, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(margin);
    for (String word : text.split(" ")) {
      if (line.length() + word.length() + 1 > WIDTH && line.length() > margin.length()) {
        lines.add(line.toString());
        line = new StringBuilder(margin);
      }
      line.append(line.length() > margin.length() ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  private static String channel(Channel c) {
    String state =
        switch (c.state()) {
          case GOOD -> "";
          case SUSPECT -> "suspect";
          case UNUSED -> "unused";
        };
    String unit = c.dimension() == null ? "" : c.unit().symbol();
    return text(
            "  %-22s %-12s %-4s %8d %-8s  %-8s %s",
            c.name(),
            c.quantityWord(),
            unit,
            c.rows(),
            c.rows() == 1 ? "reading" : "readings",
            state,
            c.why())
        .stripTrailing();
  }

  /** A note that would run far beyond the line goes below its value. */
  private static List<String> measurement(Measurement m) {
    boolean said =
        m.id().equals(Drift.DESCRIPTION.id())
            || m.id().equals(SafetyMeasures.LETHALITY.id()) && m.uncertainty() != null;
    String note = said || m.note() == null ? "" : m.note();
    String head = text("  %-32s %-24s", m.label(), shown(m));
    if (head.length() + 1 + note.length() <= WIDTH + 12) {
      return List.of((head + " " + note).stripTrailing());
    }
    List<String> lines = new ArrayList<>(List.of(head.stripTrailing()));
    lines.addAll(wrapped(" ".repeat(35), note));
    return lines;
  }

  // ---------- what could not be measured ----------

  private static List<String> notMeasured(TraceSession session, List<Measurement> measurements) {
    Map<String, List<String>> byReason = new LinkedHashMap<>();
    measurements.stream()
        .filter(Measurement::isMissing)
        .filter(m -> session.couldMeasure(m.id()))
        .forEach(
            m ->
                byReason
                    .computeIfAbsent(reason(String.valueOf(m.note())), r -> new ArrayList<>())
                    .add(m.label()));
    List<String> lines = new ArrayList<>();
    if (!byReason.isEmpty()) {
      lines.add("");
      lines.add("  Not measured:");
      byReason.forEach((reason, names) -> lines.addAll(reasonLines(reason, names)));
    }
    return lines;
  }

  /** Reasons that differ only in what they name are said once. */
  private static String reason(String note) {
    if (note.contains("noted")) {
      return "nobody noted events: a campaign's run has them, a file alone does not";
    }
    if (note.contains("no place is called")) {
      return "no places are called front and back, left and right, top and bottom";
    }
    if (note.matches("(neither )?power (n?or energy )?(was not|was) logged.*")) {
      return "power was not logged";
    }
    int second = note.indexOf("; ", Math.max(0, note.indexOf("are needed")));
    return second < 0 ? note : note.substring(0, second);
  }

  private static List<String> reasonLines(String reason, List<String> names) {
    String help =
        HELP.entrySet().stream()
            .filter(e -> reason.contains(e.getKey()) || e.getKey().equals(asked(reason)))
            .map(e -> " (" + e.getValue() + ")")
            .findFirst()
            .orElse("");
    String what = names.stream().map(TraceReport::lowerFirst).collect(Collectors.joining("; "));
    List<String> lines = wrapped("      ", reason + help + ": " + what);
    lines.set(0, "    – " + lines.get(0).strip());
    return lines;
  }

  private static String asked(String reason) {
    return reason.startsWith("no places are called") ? "no place is called" : "";
  }

  private static String lowerFirst(String label) {
    boolean word = label.length() > 1 && Character.isLowerCase(label.charAt(1));
    return word ? Character.toLowerCase(label.charAt(0)) + label.substring(1) : label;
  }

  // ---------- digits ----------

  private static String shown(Measurement m) {
    Double low = m.low();
    Double high = m.high();
    if (m.censored() == Censoring.ABOVE && low != null) {
      return "over " + plain(low, m.unit());
    }
    if (m.censored() == Censoring.BELOW && high != null) {
      return "under " + plain(high, m.unit());
    }
    if (m.censored() == Censoring.BETWEEN && low != null && high != null) {
      return plain(low, m.unit()) + " to " + plain(high, m.unit());
    }
    Double value = m.value();
    if (m.id().equals(SafetyMeasures.LETHALITY.id()) && value != null) {
      if (value > LONGEST_LETHALITY_SECONDS) {
        return "over 24 h";
      }
      double u = m.uncertainty() == null ? 0 : m.uncertainty();
      return ordinary(Figures.withUncertainty(value / 60, u / 60, Unit.MINUTE));
    }
    return value == null ? "–" : withUncertainty(value, m.uncertainty(), m.unit());
  }

  /**
   * Minutes stay minutes beside an uncertainty. A trace alone shows its noise and not what its
   * probe errs by, so no digit beyond the last that a reader could use is printed.
   */
  private static String withUncertainty(double value, @Nullable Double u, Unit unit) {
    if (u == null || !(u > 0)) {
      return plain(value, unit);
    }
    double shown = Math.max(u, finest(unit));
    if (unit != Unit.SECOND || Math.abs(value) < 60) {
      return ordinary(Figures.withUncertainty(value, shown, unit));
    }
    String known =
        u < 60
            ? text(u < 10 ? "%.1f s" : "%.0f s", shown)
            : Figures.text(new Quantity(u, unit), Rounding.HALF_UP);
    return plain(value, unit) + " ± " + ordinary(known);
  }

  private static double finest(Unit unit) {
    return switch (unit.dimension()) {
      case TEMPERATURE, TEMPERATURE_DIFFERENCE, TIME, VOLTAGE -> 0.1;
      case ENERGY -> 0.001;
      default -> 0;
    };
  }

  /** Temperatures to a tenth: nothing says that they are worse. */
  private static String plain(double value, Unit unit) {
    boolean tenths =
        unit.dimension() == Dimension.TEMPERATURE
            || unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE;
    return tenths ? text("%.1f %s", value, unit.symbol()) : ordinary(Figures.text(value, unit));
  }

  /** A terminal's own blanks and minus signs. */
  private static String ordinary(String printed) {
    return printed.replace(Figures.GAP, " ").replace('−', '-');
  }

  private static String text(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
