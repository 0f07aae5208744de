package ovenproof.tracepage;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.chart.HeatChart;
import ovenproof.chart.LineChart;
import ovenproof.chart.LineChart.Axis;
import ovenproof.chart.LineChart.Level;
import ovenproof.chart.LineChart.LevelStyle;
import ovenproof.chart.LineChart.Series;
import ovenproof.chart.LineChart.Style;
import ovenproof.chart.Scale;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Trace;
import ovenproof.desk.Attachment;
import ovenproof.desk.Desk;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.RunTraces;
import ovenproof.measure.RunTraces.Placed;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** Traces of a campaign, and one test over all its products on one axis. */
@Controller
class TestTracesController {
  private static final int HEIGHT = 460;
  private static final int KEPT = 8;

  /** A page of eight products with three runs each keeps below its limit with this many. */
  private static final int POINTS = 220;

  private final Desk desk;
  private final Workbench workbench;
  private final Map<String, List<RunLine>> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, List<RunLine>> eldest) {
          return size() > KEPT;
        }
      };

  TestTracesController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A test whose runs were logged. */
  public record LoggedTest(String id, String name, int runs) {}

  /** A logger's file. */
  public record LogLine(String path, String words) {}

  @GetMapping("/c/{cid}/traces")
  @MayUse(Audience.OWNER)
  String index(@PathVariable String cid, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<LoggedTest> tests = new ArrayList<>();
    for (TestPlan test : c.method().tests()) {
      long runs =
          c.runs().stream()
              .filter(r -> r.test().equals(test.id()))
              .filter(r -> c.traces().stream().anyMatch(t -> isOf(t, r)))
              .count();
      if (runs > 0) {
        tests.add(new LoggedTest(test.id(), test.name(), (int) runs));
      }
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("tests", tests);
    model.addAttribute("logs", logs(cid, c));
    return "tracepage/traces";
  }

  private static boolean isOf(TraceBinding binding, Run run) {
    return binding.run() == null
        ? run.product().equals(binding.product())
        : binding.run().equals(run.id());
  }

  /** Files that are bound, or whose name says that a logger may have written them. */
  private List<LogLine> logs(String cid, Campaign c) {
    Map<String, Long> uses = new TreeMap<>();
    for (TraceBinding binding : c.traces()) {
      uses.merge(binding.file(), 1L, Long::sum);
    }
    for (Attachment file : desk.attachments(cid)) {
      if (Incoming.isLog(file.path())) {
        uses.putIfAbsent(file.path(), 0L);
      }
    }
    return uses.entrySet().stream()
        .map(
            e ->
                new LogLine(
                    e.getKey(),
                    e.getValue() == 0
                        ? "attached only: nobody said yet whose heat it is"
                        : e.getValue() + (e.getValue() == 1 ? " channel used" : " channels used")))
        .toList();
  }

  // ---------- one test ----------

  /** A run's line. */
  private record RunLine(Run run, Trace trace) {}

  /** A row of the table under the picture. */
  public record Row(
      String run,
      String product,
      String productId,
      int replicate,
      String highest,
      String after,
      String counted) {}

  @GetMapping("/c/{cid}/tests/{test}/traces")
  @MayUse(Audience.OWNER)
  String test(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String product,
      @RequestParam(defaultValue = "") String place,
      Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    List<String> places = places(c, test);
    String at = places.contains(place) ? place : places.isEmpty() ? "centre" : places.get(0);
    List<RunLine> lines = lines(cid, plan, at);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("test", plan);
    model.addAttribute("place", at);
    model.addAttribute("places", places);
    model.addAttribute("chosen", product);
    model.addAttribute("svg", lines.isEmpty() ? "" : chart(c, plan, at, lines, product).svg());
    model.addAttribute("rows", lines.stream().map(l -> row(c, l)).toList());
    return "tracepage/test";
  }

  @GetMapping("/c/{cid}/tests/{test}/traces.svg")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> svg(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String product,
      @RequestParam(defaultValue = "centre") String place) {
    return RunTraceController.file(
        test + "-traces.svg", "image/svg+xml", Raster.svg(alone(cid, test, place, product)));
  }

  @GetMapping("/c/{cid}/tests/{test}/traces.png")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> png(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String product,
      @RequestParam(defaultValue = "centre") String place) {
    return RunTraceController.file(
        test + "-traces.png", "image/png", Raster.png(alone(cid, test, place, product)));
  }

  @GetMapping("/c/{cid}/tests/{test}/traces.json")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> data(
      @PathVariable String cid,
      @PathVariable String test,
      @RequestParam(defaultValue = "centre") String place) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    CurveData data = new CurveData("Minutes since the start");
    for (RunLine line : lines(cid, plan, place)) {
      data.add(name(c, line) + " " + line.run().replicate(), line.trace(), Unit.CELSIUS);
    }
    return ResponseEntity.ok()
        .contentType(MediaType.APPLICATION_JSON)
        .header(HttpHeaders.CACHE_CONTROL, "no-cache")
        .body(data.json());
  }

  private String alone(String cid, String test, String place, String product) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    List<RunLine> lines = lines(cid, plan, place);
    if (lines.isEmpty()) {
      throw unknown("trace of this test");
    }
    return chart(c, plan, place, lines, product).alone();
  }

  private List<RunLine> lines(String cid, TestPlan test, String place) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    String key = cid + "@" + sheet.at().version() + "/" + test.id() + "/" + place;
    synchronized (kept) {
      List<RunLine> known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    List<RunLine> fresh = read(sheet.campaign(), cid, test, place);
    synchronized (kept) {
      kept.put(key, fresh);
    }
    return fresh;
  }

  private List<RunLine> read(Campaign c, String cid, TestPlan test, String place) {
    RunTraces traces = new RunTraces(c, desk.evidenceOf(cid));
    List<RunLine> lines = new ArrayList<>();
    for (Campaign.Product product : c.products()) {
      for (Run run : c.runs()) {
        boolean wanted =
            run.test().equals(test.id())
                && run.product().equals(product.id())
                && run.kind() == Run.Kind.COUNTED;
        if (wanted) {
          traces.of(run).stream()
              .filter(p -> p.binding().place().equals(place))
              .filter(p -> p.trace().unit() == Unit.CELSIUS)
              .findFirst()
              .map(Placed::trace)
              .ifPresent(t -> lines.add(new RunLine(run, t)));
        }
      }
    }
    return lines;
  }

  private static List<String> places(Campaign c, String test) {
    return c.traces().stream()
        .filter(t -> c.runs().stream().anyMatch(r -> r.test().equals(test) && isOf(t, r)))
        .map(TraceBinding::place)
        .filter(p -> !List.of("power", "energy", "mains", "duty").contains(p))
        .distinct()
        .sorted(
            java.util.Comparator.comparingInt(
                    (String p) -> p.equals("centre") ? 0 : p.startsWith("core") ? 1 : 2)
                .thenComparing(p -> p))
        .toList();
  }

  private static String name(Campaign c, RunLine line) {
    String id = line.run().product();
    return c.product(id).map(Campaign.Product::name).orElse(id);
  }

  private static HeatChart chart(
      Campaign c, TestPlan test, String place, List<RunLine> lines, String chosen) {
    List<Series> series = new ArrayList<>();
    double last = 1;
    double highest = 50;
    String before = "";
    for (RunLine line : lines) {
      String product = line.run().product();
      Style style = product.equals(chosen) ? Style.HEAT : Style.PEER;
      String label = product.equals(before) ? "" : name(c, line);
      before = product;
      Series drawn = series(line.trace(), label, style);
      // The chosen product lies on top.
      series.add(style == Style.HEAT ? series.size() : 0, drawn);
      last = Math.max(last, line.trace().lastSecond() / 60);
      for (double v : line.trace().values()) {
        highest = Double.isFinite(v) ? Math.max(highest, v) : highest;
      }
    }
    List<Level> levels = dial(test);
    for (Level level : levels) {
      highest = Math.max(highest, level.at());
    }
    String sentence =
        test.name() + ", " + place + ", " + lines.size() + " runs on one axis" + extremes(c, lines);
    LineChart chart =
        new LineChart(
            sentence,
            HEIGHT,
            new Axis(Scale.around(new double[] {0, last}, 6), "min"),
            new Axis(Scale.around(new double[] {0, highest}, 5), "°C"),
            series,
            levels,
            List.of());
    return new HeatChart(chart, null, List.of());
  }

  private static List<Level> dial(TestPlan test) {
    if (test.setting() == null || test.setting().dial() == null) {
      return List.of();
    }
    Quantity dial = test.setting().dial();
    return dial.unit().dimension() == Dimension.TEMPERATURE
        ? List.of(
            new Level(
                "set " + HeatPicture.celsius(dial.contract()), dial.contract(), LevelStyle.DIAL))
        : List.of();
  }

  private static Series series(Trace trace, String label, Style style) {
    int n = trace.size();
    int slice = Math.max(1, n / POINTS);
    int count = (n + slice - 1) / slice;
    double[] x = new double[count];
    double[] y = new double[count];
    for (int i = 0; i < count; i++) {
      x[i] = trace.seconds()[i * slice] / 60;
      y[i] = trace.values()[i * slice];
    }
    return new Series(label, style, x, y);
  }

  private static double highest(RunLine line) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double v : line.trace().values()) {
      highest = Double.isFinite(v) ? Math.max(highest, v) : highest;
    }
    return highest;
  }

  private static String extremes(Campaign c, List<RunLine> lines) {
    RunLine hottest = null;
    RunLine coolest = null;
    for (RunLine line : lines) {
      hottest = hottest == null || highest(line) > highest(hottest) ? line : hottest;
      coolest = coolest == null || highest(line) < highest(coolest) ? line : coolest;
    }
    if (hottest == null || lines.size() < 2) {
      return "";
    }
    RunLine cool = Objects.requireNonNull(coolest);
    return ": highest "
        + name(c, hottest)
        + " "
        + HeatPicture.celsius(highest(hottest))
        + ", lowest peak "
        + name(c, cool)
        + " "
        + HeatPicture.celsius(highest(cool));
  }

  private static Row row(Campaign c, RunLine line) {
    double highest = highest(line);
    double second = 0;
    for (int i = 0; i < line.trace().size(); i++) {
      if (line.trace().values()[i] == highest) {
        second = line.trace().seconds()[i];
        break;
      }
    }
    @Nullable String why = c.whyNotCounted(line.run()).orElse(null);
    return new Row(
        line.run().id(),
        name(c, line),
        line.run().product(),
        line.run().replicate(),
        Double.isFinite(highest) ? HeatPicture.celsius(highest) : "none",
        Shown.elapsed(second),
        why == null ? "counted" : why);
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(
            Place.of("request"), "no such " + what, "one of this campaign", "go back and choose"));
  }
}
