package ovenproof.tracepage;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.chart.LineChart.Span;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.desk.Desk;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.CoreCriterion;
import ovenproof.measure.RunTraces;
import ovenproof.measure.RunTraces.Placed;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Workbench;

/** The heat of one run. */
@Controller
class RunTraceController {
  private static final int KEPT = 24;

  /** Runs of the same product that are searched for a model. */
  private static final int MOST_OTHER_RUNS = 6;

  /** Events that are drawn; the others are in the run's own list. */
  private static final List<Event.Type> DRAWN =
      List.of(Event.Type.SIGNAL, Event.Type.LOAD, Event.Type.STOP);

  private final Desk desk;
  private final Workbench workbench;
  private final Map<String, RunHeat> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, RunHeat> eldest) {
          return size() > KEPT;
        }
      };

  RunTraceController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A file behind the picture. */
  public record Source(String file, String channel, String place) {}

  /** A run, the places that were logged in it, and the picture of one of them. */
  private record RunHeat(
      Run run,
      String product,
      TestPlan test,
      String place,
      List<String> places,
      List<Source> sources,
      List<String> warnings,
      @Nullable HeatPicture picture,
      String story,
      String core,
      List<Placed> placed) {}

  @GetMapping("/c/{cid}/runs/{id}/trace")
  @MayUse(Audience.OWNER)
  String page(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String place,
      @RequestParam(required = false) @Nullable Integer at,
      Model model) {
    RunHeat heat = heat(cid, id, place);
    HeatPicture picture = heat.picture();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", workbench.sheet(cid).campaign());
    model.addAttribute("run", heat.run());
    model.addAttribute("test", heat.test());
    model.addAttribute("product", heat.product());
    model.addAttribute("place", heat.place());
    model.addAttribute("places", heat.places());
    model.addAttribute("sources", heat.sources());
    model.addAttribute("warnings", heat.warnings());
    model.addAttribute("picture", picture);
    model.addAttribute("svg", picture == null ? "" : picture.chart().svg());
    model.addAttribute("story", heat.story());
    model.addAttribute("core", heat.core());
    model.addAttribute(
        "yardstick",
        picture == null
            ? ""
            : Yardstick.words(
                workbench.sheet(cid).campaign(), heat.run().product(), picture.input()));
    model.addAttribute("prediction", picture == null ? null : Prediction.of(picture, at));
    model.addAttribute("here", "/c/" + cid + "/runs/" + id + "/trace");
    return "tracepage/run";
  }

  /** The answer to the slider, for a page that changes in place. */
  @GetMapping("/c/{cid}/runs/{id}/trace/prediction")
  @MayUse(Audience.OWNER)
  String prediction(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String place,
      @RequestParam(required = false) @Nullable Integer at,
      Model model) {
    model.addAttribute("prediction", Prediction.of(drawn(cid, id, place), at));
    return "tracepage/prediction :: answer";
  }

  @GetMapping("/c/{cid}/runs/{id}/trace.svg")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> svg(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String place) {
    String svg = drawn(cid, id, place).chart().alone();
    return file(id + "-trace.svg", "image/svg+xml", Raster.svg(svg));
  }

  @GetMapping("/c/{cid}/runs/{id}/trace.png")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> png(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String place) {
    return file(id + "-trace.png", "image/png", Raster.png(drawn(cid, id, place).chart().alone()));
  }

  /** Every line of the picture in full, for looking closer. */
  @GetMapping("/c/{cid}/runs/{id}/trace.json")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> data(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam(defaultValue = "") String place) {
    RunHeat heat = heat(cid, id, place);
    CurveData data = new CurveData("Minutes since the start");
    for (Placed line : heat.placed()) {
      if (line.trace().unit() == Unit.CELSIUS) {
        data.add(line.binding().place(), line.trace(), Unit.CELSIUS);
      }
    }
    for (Placed line : heat.placed()) {
      if (line.trace().unit() == Unit.WATT) {
        data.add(line.binding().place(), line.trace(), Unit.WATT);
      }
    }
    return ResponseEntity.ok()
        .contentType(MediaType.APPLICATION_JSON)
        .header(HttpHeaders.CACHE_CONTROL, "no-cache")
        .body(data.json());
  }

  static ResponseEntity<byte[]> file(String name, String type, byte[] bytes) {
    return ResponseEntity.ok()
        .header(HttpHeaders.CONTENT_TYPE, type)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment()
                .filename(name, StandardCharsets.UTF_8)
                .build()
                .toString())
        .body(bytes);
  }

  private HeatPicture drawn(String cid, String id, String place) {
    HeatPicture picture = heat(cid, id, place).picture();
    if (picture == null) {
      throw unknown("temperature of this run");
    }
    return picture;
  }

  // ---------- putting it together ----------

  private RunHeat heat(String cid, String id, String place) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    String key = cid + "@" + sheet.at().version() + "/" + id + "/" + place;
    synchronized (kept) {
      RunHeat known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    RunHeat fresh = heat(sheet.campaign(), cid, id, place);
    synchronized (kept) {
      kept.put(key, fresh);
    }
    return fresh;
  }

  private RunHeat heat(Campaign c, String cid, String id, String wanted) {
    Run run = c.run(id).orElseThrow(() -> unknown("run"));
    TestPlan test = c.method().test(run.test()).orElseThrow(() -> unknown("test"));
    String product = c.product(run.product()).map(Campaign.Product::name).orElse(run.product());
    RunTraces traces = new RunTraces(c, desk.evidenceOf(cid));
    List<Placed> placed = traces.of(run);
    List<String> places = places(placed);
    String place = places.contains(wanted) ? wanted : places.isEmpty() ? "centre" : places.get(0);
    String title = product + ", " + test.name() + ", run " + run.replicate() + ", " + place;
    HeatPicture picture =
        traces
            .input(run, place)
            .map(input -> HeatPicture.of(title, input, spans(c, run, input)))
            .filter(p -> !p.isEmpty())
            .orElse(null);
    List<Source> sources =
        placed.stream()
            .map(p -> new Source(p.binding().file(), p.binding().channel(), p.binding().place()))
            .distinct()
            .toList();
    return new RunHeat(
        run,
        product,
        test,
        place,
        places,
        sources,
        traces.warnings(),
        picture,
        story(c, run, traces, picture),
        core(c, run, test, traces, places),
        placed);
  }

  /**
   * Where this run's heat-up is too short for a model, another run of the product may carry one.
   */
  private static String story(
      Campaign c, Run run, RunTraces traces, @Nullable HeatPicture picture) {
    if (picture == null) {
      return "";
    }
    Double setting = picture.input().settingCelsius();
    String own = picture.story();
    if (setting == null || picture.model().model() != null || picture.curve().hasReached(setting)) {
      return own;
    }
    double wanted = setting;
    return c.countedRuns().stream()
        .filter(r -> r.product().equals(run.product()) && !r.test().equals(run.test()))
        .limit(MOST_OTHER_RUNS)
        .flatMap(
            other ->
                traces
                    .input(other, "centre")
                    .map(input -> TraceSession.reach(input, wanted))
                    .filter(words -> !words.isEmpty())
                    .map(words -> own + " By the model of its run " + other.id() + ": " + words)
                    .stream())
        .findFirst()
        .orElse(own);
  }

  /** Whether the food met what the method asks of its core; empty when it asks for nothing. */
  private static String core(
      Campaign c, Run run, TestPlan test, RunTraces traces, List<String> places) {
    Optional<CoreCriterion> asked = CoreCriterion.of(test);
    Optional<TraceInput> food =
        places.stream()
            .filter(p -> p.startsWith("core"))
            .findFirst()
            .flatMap(needle -> traces.input(run, needle));
    return asked
        .flatMap(
            a ->
                food.map(input -> a.words(input, c.eventsOf(run.id())))
                    .or(() -> a.handWords(c, test, run)))
        .orElse("");
  }

  /** Where temperatures were logged, the middle of the cavity first, then the food. */
  private static List<String> places(List<Placed> placed) {
    return placed.stream()
        .filter(p -> p.trace().unit() == Unit.CELSIUS)
        .map(p -> p.binding().place())
        .distinct()
        .sorted(
            java.util.Comparator.comparingInt(
                    (String p) -> p.equals("centre") ? 0 : p.startsWith("core") ? 1 : 2)
                .thenComparing(p -> p))
        .toList();
  }

  private static List<Span> spans(Campaign c, Run run, TraceInput input) {
    Trace centre = input.centre().present();
    double last = centre.size() == 0 ? 0 : centre.lastSecond();
    List<Span> spans = new ArrayList<>();
    double opened = Double.NaN;
    for (Event event : c.eventsOf(run.id())) {
      double at = event.elapsedSeconds();
      if (event.type() == Event.Type.DOOR_OPEN) {
        opened = at;
      } else if (event.type() == Event.Type.DOOR_CLOSE && Double.isFinite(opened)) {
        spans.add(new Span("", opened / 60, at / 60));
        opened = Double.NaN;
      } else if (DRAWN.contains(event.type()) && at <= last + 1 && spans.size() < 12) {
        spans.add(new Span(event.type().word(), at / 60, at / 60));
      }
    }
    return spans;
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(
            Place.of("request"),
            "no such " + what,
            "one of this campaign",
            "go back and choose again"));
  }
}
