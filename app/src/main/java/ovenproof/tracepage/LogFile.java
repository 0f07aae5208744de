package ovenproof.tracepage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.TraceBinding.ReadAs;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.DateOrder;
import ovenproof.core.trace.Question;
import ovenproof.core.trace.TimeAxis;
import ovenproof.core.trace.TraceFile;
import ovenproof.evidence.trace.TraceOpener;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.measure.RunTraces;
import ovenproof.publish.figure.Figures;

/**
 * A logger's file as a page explains it.
 *
 * @param file as read, with the person's answers
 * @param as the answers
 * @param picture null when it holds no temperature
 */
public record LogFile(
    String name, TraceFile file, ReadAs as, @Nullable HeatPicture picture, String story) {

  /** What a person may say of a channel. */
  public static final List<String> PLACES =
      List.of(
          "centre",
          "front-left",
          "front-right",
          "back-left",
          "back-right",
          "top",
          "bottom",
          "core-1",
          "core-2",
          "core-3",
          "ambient",
          "power",
          "energy",
          "mains",
          "duty");

  static final ReadAs NOTHING = new ReadAs(null, null, null);

  /** A column of the table of channels. */
  public record ChannelLine(
      String name,
      String quantity,
      String unit,
      int rows,
      int gaps,
      String state,
      String why,
      String suggested) {}

  /**
   * A question with every reading it allows.
   *
   * @param field name of the form's field; empty when an answer cannot be stored
   */
  public record Asked(
      String field, String text, String why, String assumed, List<Answer> answers, boolean typed) {}

  /** One reading, and whether it is the one in use. */
  public record Answer(String value, String words, boolean chosen) {}

  /** Reads it. Never throws for what a logger may have written. */
  static LogFile of(String name, byte[] bytes, @Nullable ReadAs answers) {
    ReadAs as = answers == null ? NOTHING : answers;
    TraceFile file = TraceOpener.read(bytes, RunTraces.options(as));
    TraceSession session =
        file.isReadable() ? TraceSession.of(file, TraceSession.Choice.NONE, name) : null;
    HeatPicture picture = session == null ? null : HeatPicture.of(name, session.input(), List.of());
    return new LogFile(
        name,
        file,
        as,
        picture == null || picture.isEmpty() ? null : picture,
        session == null ? "" : session.story());
  }

  public List<String> explanation() {
    return file.layout().explanation();
  }

  public String certainty() {
    return String.format(Locale.ROOT, "%.0f %%", 100 * file.layout().certainty());
  }

  /** From when to when, as far as the file has a clock. */
  public String span() {
    double[] seconds = file.time().seconds();
    String length =
        seconds.length == 0 ? "no rows" : Figures.text(seconds[seconds.length - 1], Unit.SECOND);
    return file.rows() + " rows over " + length + ", one each " + step();
  }

  private String step() {
    return String.format(Locale.ROOT, "%.3g s", file.time().medianStepSeconds());
  }

  public List<ChannelLine> channels() {
    List<ChannelLine> lines = new ArrayList<>();
    int cores = 0;
    boolean centre = file.channels().stream().anyMatch(c -> c.role() == Channel.Role.CENTRE);
    for (Channel c : file.channels()) {
      String place = suggested(c, cores, centre);
      cores += place.startsWith("core") ? 1 : 0;
      centre |= place.equals("centre");
      lines.add(
          new ChannelLine(
              c.name(),
              c.quantityWord(),
              c.dimension() == null ? "" : c.unit().symbol(),
              c.rows(),
              c.gaps(),
              c.state().name().toLowerCase(Locale.ROOT),
              c.why(),
              place));
    }
    return lines;
  }

  private static String suggested(Channel c, int cores, boolean centreTaken) {
    if (c.state() == Channel.State.UNUSED) {
      return "";
    }
    String word = c.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    if (PLACES.contains(word)) {
      return word;
    }
    return switch (c.role()) {
      case CENTRE -> "centre";
      case CORE -> "core-" + Math.min(3, cores + 1);
      case AMBIENT -> "ambient";
      case DUTY -> "duty";
      case MEASURED ->
          c.dimension() == Dimension.POWER
              ? "power"
              : c.dimension() == Dimension.ENERGY
                  ? "energy"
                  : c.isMeasuredTemperature() && !centreTaken ? "centre" : "";
      default -> "";
    };
  }

  /** What the file leaves open, and what a person has answered. */
  public List<Asked> questions() {
    List<Asked> asked = new ArrayList<>(file.questions().stream().map(this::asked).toList());
    // A question that was answered is no longer asked; it stays here, so that it can be answered
    // otherwise.
    if (as.dates() != null) {
      asked.add(dates("Answered: the order of day and month.", "a person said so", ""));
    }
    if (as.temperatures() != null) {
      asked.add(temperatures("Answered: the unit of the temperatures.", "a person said so", ""));
    }
    if (as.counts() != null) {
      asked.add(counts("Answered: what the time column counts.", "a person said so", ""));
    }
    if (as.intervalSeconds() != null) {
      asked.add(
          new Asked(
              "interval",
              "Answered: the distance of the rows.",
              "a person said so",
              as.intervalSeconds() + " s",
              List.of(),
              true));
    }
    return asked;
  }

  private Asked asked(Question q) {
    return switch (q.id()) {
      case "date-order" -> dates(q.text(), q.why(), q.assumed());
      case "time-unit" -> counts(q.text(), q.why(), q.assumed());
      case "temperature-unit" -> temperatures(q.text(), q.why(), q.assumed());
      case "interval" -> new Asked("interval", q.text(), q.why(), q.assumed(), List.of(), true);
      default ->
          new Asked(
              "",
              q.text(),
              q.why(),
              q.assumed(),
              q.readings().stream().map(r -> new Answer(r, r, r.equals(q.assumed()))).toList(),
              false);
    };
  }

  private Asked dates(String text, String why, String assumed) {
    boolean first =
        as.dates() != null ? as.dates() == DateOrder.DAY_FIRST : assumed.startsWith("day");
    return new Asked(
        "dates",
        text,
        why,
        first ? "day first" : "month first",
        List.of(
            new Answer("day-first", "day first", first),
            new Answer("month-first", "month first", !first)),
        false);
  }

  private Asked temperatures(String text, String why, String assumed) {
    Unit now = as.temperatures();
    String unit = now == null ? assumed : now.symbol();
    return new Asked(
        "temperatures",
        text,
        why,
        unit,
        List.of(new Answer("C", "°C", unit.equals("°C")), new Answer("F", "°F", unit.equals("°F"))),
        false);
  }

  private static final Map<String, Unit> COUNTED =
      Map.of("seconds", Unit.SECOND, "minutes", Unit.MINUTE, "hours", Unit.HOUR);

  private Asked counts(String text, String why, String assumed) {
    Unit said = as.counts();
    Unit now = said == null ? COUNTED.getOrDefault(assumed, Unit.SECOND) : said;
    List<Answer> answers =
        java.util.stream.Stream.of("seconds", "minutes", "hours", "milliseconds")
            .map(w -> new Answer(w, w, now == counted(w)))
            .toList();
    String words =
        answers.stream().filter(Answer::chosen).map(Answer::words).findFirst().orElse(now.symbol());
    return new Asked("counts", text, why, words, answers, false);
  }

  private static Unit counted(String word) {
    return COUNTED.getOrDefault(word, Unit.MILLISECOND);
  }

  /** Whether the file's rows have times of any kind. */
  public boolean timed() {
    return file.time().form() != TimeAxis.Form.NONE;
  }

  /**
   * The answers in a form's fields.
   *
   * @param typed fields {@code dates}, {@code temperatures}, {@code counts}, {@code interval}
   */
  static ReadAs answers(Map<String, String> typed, ovenproof.web.FormProblems problems) {
    DateOrder dates =
        switch (typed.getOrDefault("dates", "")) {
          case "day-first" -> DateOrder.DAY_FIRST;
          case "month-first" -> DateOrder.MONTH_FIRST;
          default -> null;
        };
    Unit unit =
        switch (typed.getOrDefault("temperatures", "")) {
          case "C" -> Unit.CELSIUS;
          case "F" -> Unit.FAHRENHEIT;
          default -> null;
        };
    Double interval = null;
    String written = typed.getOrDefault("interval", "");
    if (!written.isBlank()) {
      String withUnit = written.strip().matches("[0-9.,]+") ? written.strip() + " s" : written;
      interval =
          problems
              .quantity("interval", withUnit, Dimension.TIME)
              .map(q -> q.contract())
              .orElse(null);
      if (interval != null && !(interval > 0)) {
        problems.add("interval", "Found " + written + ", expected a time above 0, such as 5 s.");
        interval = null;
      }
    }
    String counts = typed.getOrDefault("counts", "");
    return new ReadAs(interval, unit, dates, counts.isBlank() ? null : counted(counts));
  }
}
