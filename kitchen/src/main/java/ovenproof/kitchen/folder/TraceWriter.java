package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import ovenproof.kitchen.bench.Calendar;
import ovenproof.kitchen.bench.RunLog.Channel;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.folder.LogTable.Column;
import ovenproof.kitchen.folder.LogTable.Layout;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Probe;

/** Writes the loggers' files of a session and says which channel shows what. */
final class TraceWriter {

  private static final int STEP = 5;
  private static final Channel[] FRAME = {
    Channel.CENTRE, Channel.FRONT_LEFT, Channel.FRONT_RIGHT, Channel.BACK_LEFT, Channel.BACK_RIGHT
  };
  private static final String[] PLACES = {
    "centre", "front-left", "front-right", "back-left", "back-right"
  };
  private static final Channel[] CORES = {Channel.CORE_1, Channel.CORE_2, Channel.CORE_3};

  /** The clock of the third turkey day's logger was behind by this much, and that was noticed. */
  private static final int SLOW_CLOCK_SECONDS = 47;

  private final Path folder;
  private final ZoneId zone;
  private final Instruments instruments;
  private final Chance chance;
  private final Csv bindings =
      new Csv(
          "file",
          "channel",
          "place",
          "product",
          "run",
          "instrument",
          "from",
          "to",
          "starts",
          "clock_offset",
          "note");

  TraceWriter(Path folder, ZoneId zone, Instruments instruments, Chance chance) throws IOException {
    this.folder = folder;
    this.zone = zone;
    this.instruments = instruments;
    this.chance = chance;
    Files.createDirectories(folder.resolve("traces"));
  }

  Csv bindings() {
    return bindings;
  }

  /** All loggers of one session. */
  void session(String session, List<RunResult> runs) throws IOException {
    TestKind test = runs.get(0).plan().test();
    int replicate = runs.get(0).plan().replicate();
    SessionClock clock = new SessionClock(runs);
    power(session, runs, clock);
    switch (test) {
      case HEAT_UP -> heatUp(session, replicate, runs, clock);
      case TURKEY -> turkey(session, replicate, runs, clock);
      case CAKES, FLATBREAD, CROQUETTES -> air(session, test, runs, clock);
      case TOAST -> {
        // The door is opened too often for an air probe to say much; only power is logged.
      }
    }
  }

  private void power(String session, List<RunResult> runs, SessionClock clock) throws IOException {
    List<Column> columns = new ArrayList<>();
    for (String bench : Calendar.BENCHES) {
      List<RunResult> own = onBench(runs, bench);
      Chance noise = chance.named("meter " + session + bench);
      double[] watts = SessionClock.averaged(clock.flow(own, Channel.WATTS, 0), STEP);
      double[] volts = SessionClock.averaged(volts(own, clock), STEP);
      for (int i = 0; i < watts.length; i++) {
        watts[i] = watts[i] < 1 ? 0.4 : watts[i] * (1 + noise.gaussian(0, 0.0015));
        volts[i] += noise.gaussian(0, 0.15);
      }
      columns.add(new Column(bench + " power", "W", 0, watts));
      columns.add(new Column(bench + " mains", "V", 1, volts));
    }
    String file = "traces/power-" + session + ".tsv";
    Layout layout = Layout.EPOCH_MILLISECONDS;
    write(file, new LogTable(clock.start(), STEP, columns), layout, session);
    for (RunResult run : runs) {
      String bench = run.plan().bench();
      bind(file, bench + " power (W)", "power", run, "meter-" + bench, "");
      bind(file, bench + " mains (V)", "mains", run, "meter-" + bench, "");
    }
  }

  private static double[] volts(List<RunResult> own, SessionClock clock) {
    double[] volts = new double[clock.seconds()];
    if (own.isEmpty()) {
      return volts;
    }
    RunResult first = own.get(0);
    double begun = first.plan().day().sessionSeconds() - clock.offset(first);
    for (int i = 0; i < volts.length; i++) {
      volts[i] = first.plan().day().mains().volts(begun + i);
    }
    return volts;
  }

  private void heatUp(String session, int replicate, List<RunResult> runs, SessionClock clock)
      throws IOException {
    Layout layout =
        switch (replicate) {
          case 1 -> Layout.SEMICOLON_COMMA;
          case 2 -> Layout.PREAMBLE_UNITS_ROW;
          default -> Layout.EPOCH_MILLISECONDS;
        };
    if (replicate == 3) {
      for (String bench : Calendar.BENCHES) {
        perBench(session, bench, onBench(runs, bench), clock, layout);
      }
      return;
    }
    List<Column> columns = new ArrayList<>();
    for (String bench : Calendar.BENCHES) {
      boolean fahrenheit = replicate == 2 && bench.equals("D");
      columns.addAll(frame(session, bench, onBench(runs, bench), clock, fahrenheit));
    }
    columns.add(room(session, runs, clock));
    String file = "traces/heat-up-" + session + ".csv";
    write(file, new LogTable(clock.start(), STEP, columns), layout, session);
    for (RunResult run : runs) {
      bindFrame(file, layout, columns, run);
    }
    bindings.row(
        file,
        LogTable.channel(layout, columns.get(columns.size() - 1)),
        "ambient",
        "",
        "",
        "room-1",
        "",
        "",
        "",
        "",
        "one logger for all benches");
  }

  private void bindFrame(String file, Layout layout, List<Column> columns, RunResult run) {
    String bench = run.plan().bench();
    for (int i = 0; i < FRAME.length; i++) {
      String name = bench + (i + 1);
      Column column = columns.stream().filter(c -> c.name().equals(name)).findFirst().orElseThrow();
      String channel = LogTable.channel(layout, column);
      bind(file, channel, PLACES[i], run, "air-" + name, "");
    }
  }

  /** A small logger for each bench; bound to products from and to a time. */
  private void perBench(
      String session, String bench, List<RunResult> own, SessionClock clock, Layout layout)
      throws IOException {
    List<Column> columns = frame(session, bench, own, clock, false);
    String file = "traces/heat-up-" + session + "-" + bench + ".log";
    write(file, new LogTable(clock.start(), STEP, columns), layout, session);
    for (RunResult run : own) {
      LocalDateTime from = run.plan().started().minusSeconds(60);
      LocalDateTime to = run.plan().started().plusSeconds(run.log().size() + 60L);
      for (int i = 0; i < FRAME.length; i++) {
        bindings.row(
            file,
            LogTable.channel(layout, columns.get(i)),
            PLACES[i],
            run.plan().oven().id(),
            "",
            "air-" + bench + (i + 1),
            stamp(from),
            stamp(to),
            "",
            "",
            "");
      }
    }
  }

  private List<Column> frame(
      String session, String bench, List<RunResult> own, SessionClock clock, boolean fahrenheit) {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < FRAME.length; i++) {
      Probe probe = instruments.probe("air-" + bench + (i + 1));
      double[] shown = shown(session, probe, own, FRAME[i], clock);
      if (fahrenheit) {
        for (int n = 0; n < shown.length; n++) {
          shown[n] = shown[n] * 1.8 + 32;
        }
      }
      columns.add(new Column(bench + (i + 1), fahrenheit ? "°F" : "°C", 1, shown));
    }
    return columns;
  }

  /** What a probe shows: what it feels of air and wall, late, wrong and noisy. */
  private double[] shown(
      String session, Probe probe, List<RunResult> own, Channel channel, SessionClock clock) {
    double room = own.isEmpty() ? 21 : own.get(0).plan().day().roomCelsius();
    double[] air = clock.temperature(own, channel, room);
    double[] felt = air;
    if (probe.wallShare() > 0) {
      double[] wall = clock.temperature(own, Channel.WALL, room);
      felt = new double[air.length];
      for (int i = 0; i < air.length; i++) {
        felt[i] = air[i] + probe.wallShare() * (wall[i] - air[i]);
      }
    }
    double[] samples = SessionClock.sampled(probe.lagged(felt), STEP);
    Chance noise = chance.named("noise " + session + probe.id());
    for (int i = 0; i < samples.length; i++) {
      samples[i] = probe.reading(samples[i], noise);
    }
    return samples;
  }

  private Column room(String session, List<RunResult> runs, SessionClock clock) {
    Probe probe = instruments.probe("room-1");
    double room = runs.stream().mapToDouble(r -> r.plan().day().roomCelsius()).average().orElse(21);
    Chance noise = chance.named("room " + session);
    double[] values = new double[(clock.seconds() + STEP - 1) / STEP];
    double drift = 0;
    for (int i = 0; i < values.length; i++) {
      drift += noise.gaussian(-drift * 0.002, 0.01);
      values[i] = probe.reading(room + drift, noise);
    }
    return new Column("room", "°C", 1, values);
  }

  private void air(String session, TestKind test, List<RunResult> runs, SessionClock clock)
      throws IOException {
    Layout layout =
        switch (test) {
          case CAKES -> Layout.SEMICOLON_COMMA;
          case FLATBREAD -> Layout.ELAPSED_CLOCK;
          default -> Layout.PREAMBLE_UNITS_ROW;
        };
    List<Column> columns = new ArrayList<>();
    for (String bench : Calendar.BENCHES) {
      Probe probe = instruments.probe("air-" + bench + "1");
      double[] shown = shown(session, probe, onBench(runs, bench), Channel.CENTRE, clock);
      columns.add(new Column("air " + bench, "°C", 1, shown));
    }
    String file = "traces/" + test.id() + "-" + session + ".csv";
    write(file, new LogTable(clock.start(), STEP, columns), layout, session);
    for (RunResult run : runs) {
      int bench = run.plan().bench().charAt(0) - 'A';
      String channel = LogTable.channel(layout, columns.get(bench));
      String starts = layout == Layout.ELAPSED_CLOCK ? stamp(clock.start()) : "";
      bindings.row(
          file,
          channel,
          "centre",
          "",
          run.plan().id(),
          "air-" + run.plan().bench() + "1",
          "",
          "",
          starts,
          "",
          "");
    }
  }

  private void turkey(String session, int replicate, List<RunResult> runs, SessionClock clock)
      throws IOException {
    if (replicate == 1) {
      for (RunResult run : runs) {
        turkeyRun(session, run);
      }
      return;
    }
    Layout layout = replicate == 2 ? Layout.SEMICOLON_COMMA : Layout.PREAMBLE_UNITS_ROW;
    int slow = replicate == 3 ? SLOW_CLOCK_SECONDS : 0;
    List<Column> columns = new ArrayList<>();
    for (String bench : Calendar.BENCHES) {
      columns.addAll(cores(session, bench, onBench(runs, bench), clock));
    }
    String file = "traces/turkey-" + session + ".csv";
    write(file, new LogTable(clock.start().minusSeconds(slow), STEP, columns), layout, session);
    for (RunResult run : runs) {
      bindCores(file, layout, columns, run, slow);
    }
  }

  private void bindCores(
      String file, Layout layout, List<Column> columns, RunResult run, int slow) {
    int bench = run.plan().bench().charAt(0) - 'A';
    for (int i = 0; i < 4; i++) {
      String instrument =
          i == 0 ? "air-" + run.plan().bench() + "1" : "core-" + run.plan().bench() + i;
      bindings.row(
          file,
          LogTable.channel(layout, columns.get(4 * bench + i)),
          i == 0 ? "centre" : "core-" + i,
          "",
          run.plan().id(),
          instrument,
          "",
          "",
          "",
          slow == 0 ? "" : slow + " s",
          slow == 0 ? "" : "the logger's clock was behind");
    }
  }

  /** One file for one run, its time counted from heat on. */
  private void turkeyRun(String session, RunResult run) throws IOException {
    String bench = run.plan().bench();
    SessionClock own = new SessionClock(List.of(run));
    List<Column> columns = new ArrayList<>();
    int skip = own.offset(run) / STEP;
    for (Column column : cores(session + run.plan().id(), bench, List.of(run), own)) {
      double[] values = java.util.Arrays.copyOfRange(column.values(), skip, column.values().length);
      columns.add(new Column(column.name(), column.unit(), column.decimals(), values));
    }
    String file = "traces/" + run.plan().id() + ".csv";
    Layout layout = Layout.ELAPSED_SECONDS;
    write(file, new LogTable(run.plan().started(), STEP, columns), layout, session);
    for (int i = 0; i < 4; i++) {
      String instrument = i == 0 ? "air-" + bench + "1" : "core-" + bench + i;
      bind(
          file,
          LogTable.channel(layout, columns.get(i)),
          i == 0 ? "centre" : "core-" + i,
          run,
          instrument,
          "");
    }
  }

  private List<Column> cores(
      String session, String bench, List<RunResult> own, SessionClock clock) {
    List<Column> columns = new ArrayList<>();
    Probe air = instruments.probe("air-" + bench + "1");
    columns.add(
        new Column("oven " + bench, "°C", 1, shown(session, air, own, Channel.CENTRE, clock)));
    for (int i = 0; i < 3; i++) {
      Probe probe = instruments.probe("core-" + bench + (i + 1));
      double[] shown = shown(session, probe, own, CORES[i], clock);
      columns.add(new Column("needle " + bench + (i + 1), "°C", 1, shown));
    }
    return columns;
  }

  private void bind(
      String file, String channel, String place, RunResult run, String instrument, String note) {
    bindings.row(file, channel, place, "", run.plan().id(), instrument, "", "", "", "", note);
  }

  private void write(String file, LogTable table, Layout layout, String title) throws IOException {
    Files.writeString(folder.resolve(file), table.text(layout, zone, title));
  }

  private static List<RunResult> onBench(List<RunResult> runs, String bench) {
    return runs.stream()
        .filter(r -> r.plan().bench().equals(bench))
        .sorted((a, b) -> a.plan().started().compareTo(b.plan().started()))
        .toList();
  }

  static String stamp(LocalDateTime time) {
    return time.format(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss"));
  }
}
