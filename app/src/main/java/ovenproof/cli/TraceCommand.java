package ovenproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.safety.Criterion;
import ovenproof.core.trace.DateOrder;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TimeAxis;
import ovenproof.core.trace.TraceFile;
import ovenproof.evidence.trace.TraceJson;
import ovenproof.evidence.trace.TraceOpener;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.input.OutsideException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ovenproof trace FILE}. */
@Command(
    name = "trace",
    footer = {"", "For example: ovenproof trace examples/logs/oven.csv --set 200C"},
    mixinStandardHelpOptions = true,
    description = "Reads any logger's file; prints how it was read, its channels and measures.")
final class TraceCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "The logger's file: text, JSON or XLSX.")
  private Path file = Path.of("");

  @Option(names = "--set", paramLabel = "230C", description = "What the appliance was set to.")
  private @Nullable String setting;

  @Option(names = "--ambient", paramLabel = "21C", description = "Temperature of the room.")
  private @Nullable String ambient;

  @Option(
      names = "--channel",
      paramLabel = "NAME=PLACE",
      description = "Where a channel's probe is: centre, ambient, core-1, front-left, …")
  private Map<String, String> places = new LinkedHashMap<>();

  @Option(
      names = "--start",
      paramLabel = "12:03:10",
      description = "Heat on: by the logger's clock, or as a time from the first row such as 90s.")
  private @Nullable String start;

  @Option(names = "--interval", paramLabel = "5s", description = "Distance of rows without times.")
  private @Nullable String interval;

  @Option(
      names = "--dates",
      paramLabel = "ORDER",
      description = "day_first, month_first or year_first.")
  private @Nullable DateOrder dates;

  @Option(names = "--temperatures", paramLabel = "C|F", description = "Unit where none is written.")
  private @Nullable String temperatures;

  @Option(
      names = "--counts",
      paramLabel = "s|min|h|ms",
      description = "What a time column counts where the file does not say.")
  private @Nullable String counts;

  @Option(
      names = "--floor",
      paramLabel = "74C",
      description = "Lowest core temperature that the food is held against.")
  private @Nullable String floor;

  @Option(names = "--rest", paramLabel = "3min", description = "Rest that belongs to the floor.")
  private @Nullable String rest;

  @Option(
      names = "--f70",
      paramLabel = "2min",
      description = "Equivalent time at 70 °C, instead of a floor.")
  private @Nullable String equivalent;

  @Option(
      names = "--probe",
      paramLabel = "0.5K",
      description = "Standard uncertainty (k = 1) of the probes; without it no core is shown.")
  private @Nullable String probe;

  @Option(names = "--plot", paramLabel = "out.svg", description = "Draws the curve.")
  private @Nullable Path plot;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    TraceFile read = TraceOpener.open(file, options());
    TraceSession session =
        read.isReadable() ? TraceSession.of(read, choice(read), file.toString()) : null;
    List<Measurement> measurements = session == null ? List.of() : session.measurements();
    print(read, session, measurements);
    if (plot != null && session != null) {
      write(plot, TracePlot.svg(session));
    } else if (plot != null && read.isReadable() && spec != null) {
      spec.commandLine()
          .getErr()
          .println("nothing to draw: the file holds neither temperature nor power");
    }
    return read.isReadable() ? ExitCode.FINE : ExitCode.INPUT;
  }

  private void print(
      TraceFile read, @Nullable TraceSession session, List<Measurement> measurements) {
    if (spec == null) {
      return;
    }
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    read.problems().forEach(p -> err.println(file + ": " + p));
    if (json) {
      Json.print(out, TraceJson.write(file.toString(), read, session, measurements));
      return;
    }
    read.warnings().forEach(w -> err.println("warning: " + w));
    if (read.isReadable()) {
      TraceReport.lines(file.toString(), read, session, measurements).forEach(out::println);
    }
  }

  private ReadOptions options() {
    ReadOptions options = ReadOptions.withDefaults();
    if (interval != null) {
      options = options.withIntervalSeconds(quantity("--interval", interval, Dimension.TIME));
    }
    if (dates != null) {
      options = options.withDateOrder(dates);
    }
    if (temperatures != null) {
      options =
          options.withTemperatureUnit(
              ovenproof.core.quantity.Unit.named(temperatures)
                  .filter(u -> u.dimension() == Dimension.TEMPERATURE)
                  .orElseThrow(
                      () -> usage("--temperatures: found " + temperatures + ", expected C or F")));
    }
    if (counts != null) {
      options =
          options.withCounted(
              ovenproof.core.quantity.Unit.named(counts)
                  .filter(u -> u.dimension() == Dimension.TIME)
                  .orElseThrow(
                      () -> usage("--counts: found " + counts + ", expected s, min, h or ms")));
    }
    return options;
  }

  private TraceSession.Choice choice(TraceFile read) {
    for (String name : places.keySet()) {
      if (read.channel(name).isEmpty()) {
        String known = String.join(", ", read.channels().stream().map(c -> c.name()).toList());
        throw usage("--channel: found " + name + ", expected one of " + known);
      }
    }
    Map<String, String> exact = new LinkedHashMap<>();
    places.forEach((name, place) -> exact.put(read.channel(name).orElseThrow().name(), place));
    return new TraceSession.Choice(
        setting == null ? null : quantity("--set", setting, Dimension.TEMPERATURE),
        ambient == null ? null : quantity("--ambient", ambient, Dimension.TEMPERATURE),
        exact,
        start == null ? null : startSecond(start, read.time()),
        criterion(),
        probe == null ? null : quantity("--probe", probe, Dimension.TEMPERATURE_DIFFERENCE));
  }

  /** One criterion, floor with rest or equivalent time, never both. */
  private @Nullable Criterion criterion() {
    if (floor != null && equivalent != null) {
      throw usage("--floor and --f70: one of the two judges a core, never both");
    }
    if (rest != null && floor == null) {
      throw usage("--rest: a rest belongs to a --floor");
    }
    if (equivalent != null) {
      return new Criterion.EquivalentTime(quantity("--f70", equivalent, Dimension.TIME));
    }
    return floor == null
        ? null
        : new Criterion.FloorWithRest(
            quantity("--floor", floor, Dimension.TEMPERATURE),
            rest == null ? 0 : quantity("--rest", rest, Dimension.TIME));
  }

  private double startSecond(String text, TimeAxis axis) {
    if (!text.matches("\\d{1,2}:\\d{2}(:\\d{2}(\\.\\d+)?)?")) {
      return quantity("--start", text, Dimension.TIME);
    }
    double second =
        java.time.LocalTime.parse(text.indexOf(':') == 1 ? "0" + text : text).toNanoOfDay() / 1e9;
    Long millis = axis.startEpochMillis();
    double first =
        !Double.isNaN(axis.startOfDaySeconds())
            ? axis.startOfDaySeconds()
            : millis == null ? 0 : Math.floorMod(millis, 86_400_000L) / 1000.0;
    double from = second - first;
    return from < 0 ? from + 86_400 : from;
  }

  private double quantity(String option, String text, Dimension dimension) {
    try {
      return QuantityParser.parse(text, dimension).contract();
    } catch (ovenproof.core.quantity.QuantityFormatException e) {
      throw usage(option + ": " + e.getMessage());
    }
  }

  private ParameterException usage(String message) {
    if (spec == null) {
      throw new IllegalArgumentException(message);
    }
    return new ParameterException(spec.commandLine(), message);
  }

  private static void write(Path file, String svg) {
    try {
      Files.writeString(file, svg, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new OutsideException("Could not write " + file + ": " + e.getMessage(), e);
    }
  }
}
