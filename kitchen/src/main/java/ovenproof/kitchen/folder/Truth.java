package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ovenproof.core.colour.Lab;
import ovenproof.kitchen.bench.Calendar;
import ovenproof.kitchen.bench.HeatTruth;
import ovenproof.kitchen.bench.RunLog.Channel;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.bench.RunResult.Stop;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.panel.Palate;
import ovenproof.kitchen.panel.TastingPanel;
import ovenproof.kitchen.physics.Mains;
import ovenproof.kitchen.physics.Oven;
import ovenproof.kitchen.physics.Probe;

/**
 * {@code truth.json}: what nobody in the kitchen knows. Every figure says what it is of: the air,
 * the probe, a surface, the core.
 */
final class Truth {

  /** The level of the first crossing: what the demo's method asks for. */
  static final double PREHEAT_CELSIUS = 220;

  private final Season season;
  private final Instruments instruments;
  private final TastingPanel panel;
  private final Map<String, List<Map<String, Object>>> shades = new TreeMap<>();

  Truth(Season season, Instruments instruments, TastingPanel panel) {
    this.season = season;
    this.instruments = instruments;
    this.panel = panel;
  }

  /** The true colour of a piece as it lay before the camera. */
  void shade(String file, Map<String, Object> piece) {
    shades.computeIfAbsent(file, f -> new ArrayList<>()).add(piece);
  }

  void write(Path file) throws IOException {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("format", 1);
    all.put("invented", true);
    all.put("means", meanings());
    all.put("story", story());
    all.put("products", products());
    all.put("instruments", errors());
    all.put("assessors", assessors());
    all.put("lots", new TreeMap<>(Map.of("bread-1", 1.0, "bread-2", lotFactor())));
    all.put("runs", runs());
    all.put("photos", shades);
    Files.writeString(file, Json.of(all));
  }

  private static Map<String, Object> meanings() {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("units", "s, °C (K for differences), W, kWh, g, mm, %, L*a*b* under D50");
    m.put("noiseless", "230 V, room of 21 °C, mean food and hands; what replicates scatter about");
    m.put("air", "air at the centre of the rack plane, not what a probe shows");
    m.put("core", "meat where the probe's tip is, not the probe");
    m.put("surface", "mean L*a*b* of the true surface before light, camera and JPEG");
    m.put("seen", "the same from above in even light: round food and bumps are darker at the side");
    m.put("marks", "what an ideal taster without level, batch luck or noise would give");
    m.put("correction", "minus the true error of the instrument: add it to readings");
    return m;
  }

  private static Map<String, Object> story() {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("tie", List.of("alder", "hornbeam"));
    m.put("too-weak", "larch");
    m.put("cold-corner", "rowan");
    m.put("dial", "plover");
    m.put("overshoots", "whimbrel");
    m.put("harsh-taster", "taster-4");
    m.put("low-mains-day", Calendar.LOW_MAINS_DAY + 1);
    m.put("changed-lot", "bread-2");
    m.put("redo", "cakes-whimbrel-2b");
    return m;
  }

  private Map<String, Object> products() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (Oven oven : season.ovens()) {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("parameters", parameters(oven));
      Map<String, Object> tests = new LinkedHashMap<>();
      for (TestKind test : TestKind.values()) {
        tests.put(test.id(), noiseless(season.noiseless(oven.id(), test)));
      }
      m.put("noiseless", tests);
      all.put(oven.id(), m);
    }
    return all;
  }

  private static Map<String, Object> parameters(Oven oven) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("ratedWatts", oven.heater().ratedWatts());
    m.put("lossWattsPerKelvin", oven.cabinet().lossWattsPerKelvin());
    m.put("leakWattsPerKelvin", oven.cabinet().leakWattsPerKelvin());
    m.put("exchangeWattsPerKelvin", oven.cabinet().exchangeWattsPerKelvin());
    m.put("airJoulePerKelvin", oven.cabinet().airHeatCapacity());
    m.put("wallJoulePerKelvin", oven.cabinet().wallHeatCapacity());
    m.put("elementLagSeconds", oven.heater().lagSeconds());
    m.put("highestAir", 21 + oven.highestRiseKelvin(Mains.NOMINAL_VOLTS));
    m.put("cornerKelvin", oven.field().cornerKelvin());
    m.put("control", oven.thermostat().control().name().toLowerCase(java.util.Locale.ROOT));
    return m;
  }

  private Map<String, Object> noiseless(RunResult run) {
    Map<String, Object> m = new LinkedHashMap<>(figures(run));
    if (run.plan().test() != TestKind.HEAT_UP) {
      m.put("marks", marks(run));
    }
    return m;
  }

  private static Map<String, Object> marks(RunResult run) {
    Map<String, Object> m = new LinkedHashMap<>();
    double[] marks = Palate.trueMarks(run);
    List<String> names = Palate.marks(run.plan().test());
    for (int i = 0; i < marks.length; i++) {
      m.put(names.get(i), marks[i]);
    }
    return m;
  }

  private Map<String, Object> runs() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (RunResult run : season.runs()) {
      Map<String, Object> m = new LinkedHashMap<>();
      RunPlan plan = run.plan();
      m.put("room", plan.day().roomCelsius());
      m.put("volts", Arrays.stream(run.log().channel(Channel.VOLTS)).average().orElse(0));
      m.put("mishap", plan.mishap().name().toLowerCase(java.util.Locale.ROOT));
      m.putAll(figures(run));
      if (!run.aborted() && plan.test() != TestKind.HEAT_UP) {
        m.put("marks", marks(run));
      }
      all.put(plan.id(), m);
    }
    return all;
  }

  private static Map<String, Object> figures(RunResult run) {
    return run.plan().test() == TestKind.HEAT_UP ? heat(run) : food(run);
  }

  private static Map<String, Object> heat(RunResult run) {
    HeatTruth t = HeatTruth.of(run, PREHEAT_CELSIUS);
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("of", "air");
    m.put("preheat-first", t.firstCrossing());
    m.put("steady-mean", t.steadyMean());
    m.put("offset", t.steadyMean() - TestKind.HEAT_UP.setCelsius());
    m.put("highest", t.highest());
    m.put("overshoot", t.overshoot());
    m.put("spread", t.spread());
    m.put("energy", t.energyKilowattHours());
    m.put("skin", run.skinCelsius());
    return m;
  }

  private static Map<String, Object> food(RunResult run) {
    Map<String, Object> m = new LinkedHashMap<>();
    List<Object> stops = new ArrayList<>();
    for (Stop stop : run.stops()) {
      stops.add(
          new TreeMap<>(
              Map.of("batch", stop.batch(), "seconds", stop.secondsFromLoad(), "why", stop.why())));
    }
    m.put("stops", stops);
    if (run.plan().test() == TestKind.TURKEY) {
      m.put("core-highest", coldestHighest(run));
    }
    List<Object> batches = new ArrayList<>();
    run.batches().forEach(b -> batches.add(batch(run, b)));
    m.put("batches", batches);
    return m;
  }

  private static double coldestHighest(RunResult run) {
    int load = (int) (run.stops().get(0).atSecond() - run.stops().get(0).secondsFromLoad()) + 2;
    double lowest = Double.POSITIVE_INFINITY;
    for (Channel channel : List.of(Channel.CORE_1, Channel.CORE_2, Channel.CORE_3)) {
      double[] core = run.log().channel(channel);
      double highest = Arrays.stream(core, load, core.length).max().orElse(Double.NaN);
      lowest = Math.min(lowest, highest);
    }
    return lowest;
  }

  private static Map<String, Object> batch(RunResult run, BatchResult batch) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("batch", batch.batch());
    m.put("mass-loss", 100 * batch.lossShare());
    List<Object> pieces = new ArrayList<>();
    for (PieceResult piece : batch.pieces()) {
      Map<String, Object> p = new LinkedHashMap<>();
      p.put("piece", piece.id());
      p.put("position", piece.position());
      p.put("before", piece.gramBefore());
      p.put("after", piece.gramAfter());
      p.put("top", lab(run, piece.top().mean()));
      p.put("underside", lab(run, piece.underside().mean()));
      p.put("crust", piece.crustMillimetre());
      p.put("core", piece.coreCelsius());
      pieces.add(p);
    }
    m.put("pieces", pieces);
    return m;
  }

  /** Colour at the mean browning of the face; the photographs' own means stand under photos. */
  private static List<Double> lab(RunResult run, double browning) {
    Lab lab = run.plan().test().colour().at(browning);
    return List.of(lab.lightness(), lab.a(), lab.b());
  }

  private Map<String, Object> errors() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (Probe probe : instruments.probes().values()) {
      all.put(
          probe.id(),
          new TreeMap<>(
              Map.of("correction", -probe.errorKelvin(), "lag", probe.timeConstantSeconds())));
    }
    return all;
  }

  private Map<String, Object> assessors() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (int i = 0; i < panel.assessors().size(); i++) {
      all.put(panel.assessors().get(i), Map.of("level", panel.levels().get(i)));
    }
    return all;
  }

  private double lotFactor() {
    return season.runs().stream()
        .map(r -> r.plan().lot())
        .filter(l -> l.id().equals("bread-2"))
        .mapToDouble(RunPlan.Lot::browning)
        .findFirst()
        .orElse(1);
  }
}
