package ovenproof.bench;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.FileSystemResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.chart.Sign;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.desk.Attachment;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.home.RunState;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Shown;
import ovenproof.web.Slug;
import ovenproof.web.Workbench;

/** Runs: what happened, files, readings, marks, deviations, redoing, corrections. */
@Controller
class BenchController {
  private static final long MOST_BYTES = 500_000_000L;
  private static final Set<String> PICTURES = Set.of("jpg", "jpeg", "png", "webp");
  private static final List<String> ENDINGS =
      List.of("ends-by-itself", "time", "core", "shade", "mass-loss", "cap", "abort");
  private static final List<Tap> TAPS =
      Stream.of(
              Event.Type.LOAD,
              Event.Type.SIGNAL,
              Event.Type.DOOR_OPEN,
              Event.Type.DOOR_CLOSE,
              Event.Type.TURN,
              Event.Type.SHAKE,
              Event.Type.REMOVE,
              Event.Type.NOTE)
          .map(t -> new Tap(t.word(), capital(t.word().replace('-', ' '))))
          .toList();

  private final Desk desk;
  private final Workbench workbench;
  private final MeasureRegistry measures = MeasureRegistry.all();

  BenchController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A button. */
  public record Tap(String word, String label) {}

  /** A run in the list. */
  public record RunLine(
      String id,
      String product,
      String test,
      int replicate,
      String started,
      String sign,
      String state) {}

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  @GetMapping("/c/{cid}/bench")
  @MayUse(Audience.OWNER)
  String bench(
      @PathVariable String cid,
      @RequestParam(defaultValue = "") String product,
      @RequestParam(defaultValue = "") String test,
      Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    RunState.All states = RunState.all(sheet);
    List<RunLine> lines =
        c.runs().stream()
            .filter(r -> product.isEmpty() || r.product().equals(product))
            .filter(r -> test.isEmpty() || r.test().equals(test))
            .map(r -> line(c, r, states.of(r)))
            .toList();
    String productName = c.product(product).map(Campaign.Product::name).orElse("");
    String testName = c.method().test(test).map(TestPlan::name).orElse("");
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("product", product);
    model.addAttribute("test", test);
    model.addAttribute(
        "filter",
        productName + (productName.isEmpty() || testName.isEmpty() ? "" : ", ") + testName);
    model.addAttribute(
        "tests", c.method().tests().stream().filter(t -> t.replicates() > 0).toList());
    model.addAttribute("runs", lines);
    return "bench/bench";
  }

  private static RunLine line(Campaign c, Run run, RunState state) {
    return new RunLine(
        run.id(),
        c.product(run.product()).map(Campaign.Product::name).orElse(run.product()),
        c.method().test(run.test()).map(TestPlan::name).orElse(run.test()),
        run.replicate(),
        Shown.time(run.started(), c.info().zone()),
        state.sign().svg(),
        state.words());
  }

  @PostMapping("/c/{cid}/runs")
  @MayUse(Audience.OWNER)
  String begin(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    Campaign.Product product =
        c.product(typed.getOrDefault("product", "")).orElseThrow(() -> unknown("product"));
    TestPlan test =
        c.method().test(typed.getOrDefault("test", "")).orElseThrow(() -> unknown("test"));
    Run.Kind kind = "TRIAL".equals(typed.get("kind")) ? Run.Kind.TRIAL : Run.Kind.COUNTED;
    return begin(cid, c, product.id(), test, kind, null, null, key(typed), request);
  }

  private String begin(
      String cid,
      Campaign c,
      String product,
      TestPlan test,
      Run.Kind kind,
      @Nullable Run redoOf,
      @Nullable String cause,
      String key,
      HttpServletRequest request) {
    Optional<StoredEntry> sent =
        desk.entries(cid).stream().filter(e -> e.key().equals(key + "-r")).findFirst();
    if (sent.isPresent() && sent.get().body() instanceof Run before) {
      return "redirect:/c/" + cid + "/runs/" + before.id();
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String id = Slug.of(product + "-" + test.id() + "-1", "run", taken -> c.run(taken).isPresent());
    long before =
        c.runs().stream()
            .filter(
                r -> r.product().equals(product) && r.test().equals(test.id()) && r.kind() == kind)
            .count();
    int replicate = redoOf == null ? (int) before + 1 : redoOf.replicate();
    String specimen =
        c.specimens().stream()
            .filter(s -> s.product().equals(product))
            .map(Campaign.Specimen::id)
            .findFirst()
            .orElse(null);
    Run run =
        new Run(
            id,
            product,
            specimen,
            test.id(),
            test.scoredVariant().id(),
            replicate,
            kind,
            null,
            null,
            stamp.at(),
            redoOf == null ? null : redoOf.id(),
            cause,
            cause == null ? null : stamp.at(),
            stamp.who(),
            null);
    Event start =
        new Event(
            id,
            Event.Type.START,
            0,
            stamp.at(),
            null,
            null,
            null,
            new Entry.Provenance(key + "-s", stamp.who(), stamp.at(), null));
    desk.append(
        cid,
        List.of(
            new NewEntry(key + "-r", EntryKind.RUN, run, stamp, null),
            new NewEntry(key + "-s", EntryKind.EVENT, start, stamp, null)));
    return "redirect:/c/" + cid + "/runs/" + id;
  }

  // ---------- one run ----------

  /** An event on the page. */
  public record EventLine(String key, String time, String word, String value, String by) {}

  /** A reading or mark on the page. */
  public record ValueLine(String key, String word, String value, String by) {}

  /** A measurement on the page. */
  public record MeasureLine(String use, String name, String value, String note) {}

  /** A file on the page. */
  public record FileLine(String path, boolean image, String words) {}

  /** A deviation on the page. */
  public record DeviationLine(String sign, String words, String what) {}

  /** A reading that the method asks for. */
  public record Asked(String id, String name) {}

  @GetMapping("/c/{cid}/runs/{id}")
  @MayUse(Audience.OWNER)
  String run(@PathVariable String cid, @PathVariable String id, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    Run run = run(c, id);
    TestPlan test = c.method().test(run.test()).orElseThrow(() -> unknown("test"));
    RunState state = RunState.all(sheet).of(run);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("run", run);
    model.addAttribute("test", test);
    model.addAttribute(
        "product", c.product(run.product()).map(Campaign.Product::name).orElse(run.product()));
    model.addAttribute("state", c.whyNotCounted(run).orElse(state.words()));
    model.addAttribute("sign", state.sign().svg());
    model.addAttribute("running", state == RunState.RUNNING && run.started() != null);
    Instant started = run.started() == null ? desk.clock().instant() : run.started();
    model.addAttribute("startedMillis", started.toEpochMilli());
    model.addAttribute(
        "elapsed",
        Shown.elapsed(Math.max(0, Duration.between(started, desk.clock().instant()).toSeconds())));
    model.addAttribute("endings", ENDINGS);
    model.addAttribute("taps", TAPS);
    model.addAttribute("faces", test.photos() == null ? List.of() : test.photos().faces());
    model.addAttribute("redoable", state == RunState.COUNTED || state == RunState.VOID);
    model.addAttribute(
        "readings",
        test.measures().stream()
            .filter(m -> m.take().equals("reading"))
            .map(
                m ->
                    new Asked(m.id(), name(m) + (m.unit() == null ? "" : ", " + m.unit().symbol())))
            .toList());
    entries(cid, c, run, model);
    boolean ready = sheet.ready();
    model.addAttribute("ready", ready);
    model.addAttribute("measurements", ready ? measurements(sheet, run, test) : List.of());
    model.addAttribute("firstScore", ready ? firstScore(sheet, run, test) : null);
    return "bench/run";
  }

  private static Run run(Campaign c, String id) {
    return c.run(id).orElseThrow(() -> unknown("run"));
  }

  private String name(MeasureUse use) {
    String own = use.name();
    return own != null ? own : measures.find(use.take()).map(m -> m.name()).orElse(use.id());
  }

  private void entries(String cid, Campaign c, Run run, Model model) {
    List<EventLine> events = new ArrayList<>();
    List<ValueLine> values = new ArrayList<>();
    List<DeviationLine> deviations = new ArrayList<>();
    List<StoredEntry> all = desk.entries(cid);
    Set<String> mended = new java.util.HashSet<>();
    all.forEach(e -> mended.add(String.valueOf(e.corrects())));
    for (StoredEntry e : all) {
      if (mended.contains(e.key())) {
        continue;
      }
      if (e.body() instanceof Event event && event.run().equals(run.id())) {
        String words =
            Stream.of(event.value(), event.note())
                .filter(Objects::nonNull)
                .collect(java.util.stream.Collectors.joining("; "));
        events.add(
            new EventLine(
                e.key(),
                Shown.elapsed(event.elapsedSeconds()),
                event.type().word(),
                words,
                e.who()));
      } else if (e.body() instanceof Reading r && r.run().equals(run.id())) {
        values.add(
            new ValueLine(
                e.key(),
                r.measure() + (r.batch() == null ? "" : ", batch " + r.batch()),
                r.value().toString(),
                e.who()));
      } else if (e.body() instanceof Rating r && r.run().equals(run.id())) {
        values.add(
            new ValueLine(
                e.key(),
                r.mark() + ", " + r.assessor(),
                java.math.BigDecimal.valueOf(r.value()).stripTrailingZeros().toPlainString(),
                e.who()));
      } else if (e.body() instanceof Deviation d && d.run().equals(run.id())) {
        deviations.add(
            new DeviationLine(
                Sign.ofDeviationClass(d.deviationClass()).svg(),
                "class " + d.deviationClass(),
                d.what()));
      }
    }
    model.addAttribute("events", events);
    model.addAttribute("typedValues", values);
    model.addAttribute("deviations", deviations);
    model.addAttribute("files", files(c, run));
  }

  private static List<FileLine> files(Campaign c, Run run) {
    List<FileLine> files = new ArrayList<>();
    for (Photo p : c.photos()) {
      if (p.run().equals(run.id())) {
        files.add(
            new FileLine(p.file(), isPicture(p.file()), p.face() == null ? "photo" : p.face()));
      }
    }
    for (TraceBinding t : c.traces()) {
      if (run.id().equals(t.run()) || (t.run() == null && run.product().equals(t.product()))) {
        files.add(new FileLine(t.file(), false, t.channel() + " as " + t.place()));
      }
    }
    String own = "runs/" + run.id() + "/";
    for (Campaign.Evidence e : c.evidence()) {
      if (e.path().startsWith(own) && files.stream().noneMatch(f -> f.path().equals(e.path()))) {
        files.add(new FileLine(e.path(), isPicture(e.path()), "attached only"));
      }
    }
    return files;
  }

  private List<MeasureLine> measurements(Workbench.Sheet sheet, Run run, TestPlan test) {
    List<MeasureLine> lines = new ArrayList<>();
    for (MeasureUse use : test.measures()) {
      sheet
          .measured()
          .ofRun(test.id(), use.id(), run.id())
          .ifPresent(
              v -> {
                String note = v.value().note() == null ? v.value().definition() : v.value().note();
                lines.add(new MeasureLine(use.id(), name(use), Shown.measurement(v.value()), note));
              });
    }
    return lines;
  }

  private static final String ONE_RUN = " (one run: no interval, no rank)";

  /** What Start promised: the test's score, with what one run cannot say. */
  private static @Nullable String firstScore(Workbench.Sheet sheet, Run run, TestPlan test) {
    if (!run.product().isEmpty() && sheet.campaign().products().size() > 1) {
      return null;
    }
    long runs =
        sheet.campaign().countedRuns().stream()
            .filter(r -> r.product().equals(run.product()) && r.test().equals(test.id()))
            .count();
    return sheet
        .verdict()
        .flatMap(v -> v.product(run.product()))
        .flatMap(p -> p.test(test.id()))
        .map(n -> test.name() + ": " + Scores.sentence(n.score()) + (runs == 1 ? ONE_RUN : ""))
        .orElse(null);
  }

  // ---------- what people enter ----------

  @PostMapping("/c/{cid}/runs/{id}/events")
  @MayUse(Audience.OWNER)
  String event(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Run run = run(workbench.sheet(cid).campaign(), id);
    FormProblems problems = new FormProblems();
    Event.Type type =
        Event.Type.named(typed.getOrDefault("type", "")).orElseThrow(() -> unknown("event"));
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Double seconds = elapsed(run, typed.getOrDefault("at", ""), stamp, problems);
    String ended = typed.getOrDefault("ended", "");
    if (problems.any() || seconds == null) {
      return again(cid, id, typed, problems, model);
    }
    String key = key(typed);
    Instant at =
        run.started() == null ? null : run.started().plusMillis(Math.round(seconds * 1000));
    String value = type == Event.Type.STOP && ENDINGS.contains(ended) ? ended : null;
    Event event =
        new Event(
            id,
            type,
            seconds,
            at,
            null,
            value,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.EVENT, event, stamp, null)));
    return toRun(cid, id);
  }

  private static @Nullable Double elapsed(
      Run run, String typed, NewEntry.Stamp stamp, FormProblems problems) {
    if (!typed.isBlank()) {
      return problems.quantity("at", typed, Dimension.TIME).map(Quantity::contract).orElse(null);
    }
    if (run.started() == null) {
      problems.add("at", "The start of this run has no clock time; type the time since the start.");
      return null;
    }
    return Math.max(0, Duration.between(run.started(), stamp.at()).toMillis() / 1000.0);
  }

  @PostMapping("/c/{cid}/runs/{id}/readings")
  @MayUse(Audience.OWNER)
  String reading(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan test = c.method().test(run(c, id).test()).orElseThrow(() -> unknown("test"));
    MeasureUse use =
        test.measure(typed.getOrDefault("reading", "")).orElseThrow(() -> unknown("reading"));
    FormProblems problems = new FormProblems();
    Unit unit = use.unit() == null ? Unit.ONE : use.unit();
    Optional<Quantity> value = problems.quantity("value", typed.get("value"), unit.dimension());
    if (value.isEmpty()) {
      return again(cid, id, typed, problems, model);
    }
    String key = key(typed);
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Reading reading =
        new Reading(
            id,
            use.ofOrId(),
            null,
            null,
            null,
            value.get(),
            null,
            null,
            null,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.READING, reading, stamp, null)));
    return toRun(cid, id);
  }

  @PostMapping("/c/{cid}/runs/{id}/marks")
  @MayUse(Audience.OWNER)
  String mark(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan test = c.method().test(run(c, id).test()).orElseThrow(() -> unknown("test"));
    TestPlan.PanelMark mark =
        test.marks().stream()
            .filter(m -> m.id().equals(typed.get("mark")))
            .findFirst()
            .orElseThrow(() -> unknown("mark"));
    FormProblems problems = new FormProblems();
    Double points = points(problems, "points", typed.get("points"), mark.lowest(), mark.highest());
    String assessor =
        problems.need("assessor", typed.get("assessor"), "a key for the taster, such as A1");
    if (problems.any() || points == null) {
      return again(cid, id, typed, problems, model);
    }
    String key = key(typed);
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Rating rating =
        new Rating(
            "at-the-bench",
            assessor,
            id,
            null,
            mark.id(),
            points,
            null,
            null,
            null,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.RATING, rating, stamp, null)));
    return toRun(cid, id);
  }

  private static @Nullable Double points(
      FormProblems problems, String field, @Nullable String typed, double low, double high) {
    String text =
        problems.need(field, typed, "a number from " + low + " to " + high).replace(',', '.');
    if (!text.matches("\\d{1,3}(\\.\\d{1,3})?")
        || Double.parseDouble(text) < low
        || Double.parseDouble(text) > high) {
      problems.add(
          field, "Found “" + typed + "”, expected a number from " + low + " to " + high + ".");
      return null;
    }
    return Double.valueOf(text);
  }

  @PostMapping("/c/{cid}/runs/{id}/deviations")
  @MayUse(Audience.OWNER)
  String deviation(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    run(workbench.sheet(cid).campaign(), id);
    FormProblems problems = new FormProblems();
    String what = problems.need("what", typed.get("what"), "what departed from the method");
    String level = typed.getOrDefault("class", "");
    if (problems.any() || !level.matches("[123]")) {
      return again(cid, id, typed, problems, model);
    }
    String key = key(typed);
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Deviation deviation =
        new Deviation(
            id,
            Integer.parseInt(level),
            what,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.DEVIATION, deviation, stamp, null)));
    return toRun(cid, id);
  }

  @PostMapping("/c/{cid}/runs/{id}/redo")
  @MayUse(Audience.OWNER)
  String redo(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    Run run = run(c, id);
    FormProblems problems = new FormProblems();
    String cause =
        problems.need(
            "cause", typed.get("cause"), "the cause, before the results of the new run are seen");
    if (problems.any()) {
      return again(cid, id, typed, problems, model);
    }
    TestPlan test = c.method().test(run.test()).orElseThrow(() -> unknown("test"));
    return begin(cid, c, run.product(), test, run.kind(), run, cause, key(typed), request);
  }

  // ---------- files ----------

  @PostMapping("/c/{cid}/runs/{id}/files")
  @MayUse(Audience.OWNER)
  String attach(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam("files") List<MultipartFile> files,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request)
      throws IOException {
    Run run = run(workbench.sheet(cid).campaign(), id);
    FormProblems problems = new FormProblems();
    List<MultipartFile> sent = files.stream().filter(f -> !f.isEmpty()).toList();
    if (sent.isEmpty()) {
      problems.add("files", "No file was sent. Choose one or more, or drop them on the field.");
      return again(cid, id, typed, problems, model);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    List<NewEntry> entries = new ArrayList<>();
    for (MultipartFile file : sent) {
      String name = fileName(file.getOriginalFilename());
      EvidenceStore.Stored stored;
      try (InputStream in = file.getInputStream()) {
        stored = desk.evidence().put(name, in, MOST_BYTES);
      }
      String path = desk.attach(cid, "runs/" + id + "/" + name, stored, stamp.who());
      binding(path, run, typed)
          .ifPresent(
              b ->
                  entries.add(
                      new NewEntry(
                          key(typed) + "-" + entries.size(),
                          b instanceof Photo ? EntryKind.PHOTO : EntryKind.TRACE,
                          b,
                          stamp,
                          null)));
    }
    if (!entries.isEmpty()) {
      desk.append(cid, entries);
    }
    return toRun(cid, id);
  }

  private static Optional<Object> binding(String path, Run run, Map<String, String> typed) {
    if (isPicture(path)) {
      return Optional.of(
          new Photo(path, run.id(), 1, blank(typed.get("face")), null, null, List.of(), null));
    }
    String channel = blank(typed.get("channel"));
    String place = blank(typed.get("place"));
    return channel == null || place == null
        ? Optional.empty()
        : Optional.of(
            new TraceBinding(
                path, channel, place, null, run.id(), null, null, null, null, 0, null));
  }

  private static @Nullable String blank(@Nullable String typed) {
    return typed == null || typed.isBlank() ? null : typed.strip();
  }

  /** The last part of what the browser sends, without what file systems or people trip over. */
  static String fileName(@Nullable String sent) {
    String last =
        sent == null
            ? ""
            : sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
    String safe = last.replaceAll("[^\\p{L}\\p{N}._ -]", "-").replaceAll("^\\.+", "").strip();
    return safe.isEmpty() ? "file" : safe.substring(Math.max(0, safe.length() - 120));
  }

  private static boolean isPicture(String path) {
    return PICTURES.contains(path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT));
  }

  /** A file as it came in: pictures are shown, anything else is only saved, never run. */
  @GetMapping("/c/{cid}/files")
  @MayUse(Audience.OWNER)
  ResponseEntity<FileSystemResource> file(@PathVariable String cid, @RequestParam String path) {
    Attachment file = desk.attachment(cid, path).orElseThrow(() -> unknown("file"));
    String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    boolean picture = isPicture(path);
    String type =
        picture ? "image/" + (ending.equals("jpg") ? "jpeg" : ending) : "application/octet-stream";
    String name = path.substring(path.lastIndexOf('/') + 1);
    ContentDisposition disposition =
        (picture ? ContentDisposition.inline() : ContentDisposition.attachment())
            .filename(name, StandardCharsets.UTF_8)
            .build();
    return ResponseEntity.ok()
        .header(HttpHeaders.CONTENT_TYPE, type)
        .header(HttpHeaders.CONTENT_DISPOSITION, disposition.toString())
        .header(HttpHeaders.CACHE_CONTROL, "private, max-age=3600")
        .eTag("\"" + file.sha256() + "\"")
        .body(new FileSystemResource(desk.evidence().place(file.sha256())));
  }

  // ---------- corrections ----------

  @GetMapping("/c/{cid}/entries/{key}")
  @MayUse(Audience.OWNER)
  String correct(@PathVariable String cid, @PathVariable String key, Model model) {
    StoredEntry entry = entry(cid, key);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", workbench.sheet(cid).campaign());
    model.addAttribute("entry", key);
    if (entry.body() instanceof Event e) {
      correct(
          model, e.run(), e.type().word(), "Since the start", Shown.elapsed(e.elapsedSeconds()));
    } else if (entry.body() instanceof Reading r) {
      correct(model, r.run(), r.measure(), "Value with its unit", r.value().toString());
    } else if (entry.body() instanceof Rating r) {
      correct(model, r.run(), r.mark(), "Points", String.valueOf(r.value()));
    } else {
      throw unknown("entry that can be corrected here");
    }
    return "bench/correct";
  }

  private static void correct(Model model, String run, String what, String label, String now) {
    model.addAttribute("run", run);
    model.addAttribute("what", what);
    model.addAttribute("label", label);
    model.addAttribute("now", now);
    model.addAttribute("typed", Map.of("value", now));
  }

  @PostMapping("/c/{cid}/entries/{key}")
  @MayUse(Audience.OWNER)
  String correct(
      @PathVariable String cid,
      @PathVariable String key,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    StoredEntry entry = entry(cid, key);
    FormProblems problems = new FormProblems();
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String own = key(typed);
    Entry.Provenance origin = new Entry.Provenance(own, stamp.who(), stamp.at(), key);
    String note = blank(typed.get("note"));
    Object mended = mended(cid, entry, typed.get("value"), note, origin, problems);
    if (mended == null) {
      correct(cid, key, model);
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return "bench/correct";
    }
    desk.append(cid, List.of(new NewEntry(own, entry.kind(), mended, stamp, key)));
    String run =
        mended instanceof Event e
            ? e.run()
            : mended instanceof Reading r ? r.run() : ((Rating) mended).run();
    return toRun(cid, run);
  }

  private @Nullable Object mended(
      String cid,
      StoredEntry entry,
      @Nullable String typed,
      @Nullable String note,
      Entry.Provenance origin,
      FormProblems problems) {
    if (entry.body() instanceof Event e) {
      return problems
          .quantity("value", typed, Dimension.TIME)
          .map(
              q ->
                  new Event(
                      e.run(), e.type(), q.contract(), null, e.batch(), e.value(), note, origin))
          .orElse(null);
    }
    if (entry.body() instanceof Reading r) {
      return problems
          .quantity("value", typed, r.value().unit().dimension())
          .map(
              q ->
                  new Reading(
                      r.run(),
                      r.measure(),
                      r.batch(),
                      r.piece(),
                      r.face(),
                      q,
                      r.uncertainty(),
                      r.instrument(),
                      r.elapsedSeconds(),
                      note,
                      origin))
          .orElse(null);
    }
    if (entry.body() instanceof Rating r) {
      Campaign c = workbench.sheet(cid).campaign();
      TestPlan.PanelMark mark =
          c.method().test(run(c, r.run()).test()).stream()
              .flatMap(t -> t.marks().stream())
              .filter(m -> m.id().equals(r.mark()))
              .findFirst()
              .orElseThrow(() -> unknown("mark"));
      Double points = points(problems, "value", typed, mark.lowest(), mark.highest());
      return points == null
          ? null
          : new Rating(
              r.session(),
              r.assessor(),
              r.run(),
              r.batch(),
              r.mark(),
              points,
              r.order(),
              r.code(),
              r.minutesSinceRemoval(),
              note,
              origin);
    }
    throw unknown("entry that can be corrected here");
  }

  private StoredEntry entry(String cid, String key) {
    return desk.entries(cid).stream()
        .filter(e -> e.key().equals(key))
        .findFirst()
        .orElseThrow(() -> unknown("entry"));
  }

  // ---------- shared ----------

  private String again(
      String cid, String id, Map<String, String> typed, FormProblems problems, Model model) {
    run(cid, id, model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    return "bench/run";
  }

  private String key(Map<String, String> typed) {
    String key = typed.getOrDefault("key", "");
    return Keys.isKey(key) ? key : Keys.next(desk.clock());
  }

  private static String toRun(String cid, String id) {
    return "redirect:/c/" + cid + "/runs/" + id;
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
