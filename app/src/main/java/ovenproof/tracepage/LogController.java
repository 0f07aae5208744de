package ovenproof.tracepage;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.TraceBinding;
import ovenproof.campaign.TraceBinding.ReadAs;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Workbench;

/** One logger's file: how it was read, what it leaves open, whose heat it shows. */
@Controller
class LogController {
  private static final long MOST_BYTES = 512L << 20;

  private final Desk desk;
  private final Workbench workbench;

  LogController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A binding on the page. */
  public record Bound(
      String channel, String place, String whose, @Nullable String run, String note) {}

  @GetMapping("/c/{cid}/log")
  @MayUse(Audience.OWNER)
  String page(@PathVariable String cid, @RequestParam String path, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    ReadAs as = answers(cid, path);
    LogFile log = LogFile.of(path, bytes(cid, path), as);
    HeatPicture picture = log.picture();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("path", path);
    model.addAttribute("log", log);
    model.addAttribute("svg", picture == null ? "" : picture.chart().svg());
    model.addAttribute("lines", picture == null ? List.of() : picture.lines());
    model.addAttribute("bound", bound(c, path));
    model.addAttribute("targets", RunChoice.all(c));
    model.addAttribute("places", LogFile.PLACES);
    return "tracepage/log";
  }

  @GetMapping("/c/{cid}/log.svg")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> svg(@PathVariable String cid, @RequestParam String path) {
    return RunTraceController.file(
        stem(path) + ".svg", "image/svg+xml", Raster.svg(drawn(cid, path).chart().alone()));
  }

  @GetMapping("/c/{cid}/log.png")
  @MayUse(Audience.OWNER)
  ResponseEntity<byte[]> png(@PathVariable String cid, @RequestParam String path) {
    return RunTraceController.file(
        stem(path) + ".png", "image/png", Raster.png(drawn(cid, path).chart().alone()));
  }

  private HeatPicture drawn(String cid, String path) {
    ReadAs as = answers(cid, path);
    HeatPicture picture = LogFile.of(path, bytes(cid, path), as).picture();
    if (picture == null) {
      throw unknown("temperature in this file");
    }
    return picture;
  }

  private static String stem(String path) {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  // ---------- corrections ----------

  /** What a person says of the reading: an entry for each binding of the file, which it mends. */
  @PostMapping("/c/{cid}/log/reading")
  @MayUse(Audience.OWNER)
  String reading(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    ReadAs as = LogFile.answers(typed, problems);
    List<Stored> bindings = bindings(cid, path);
    if (bindings.isEmpty()) {
      problems.add(
          "reading", "Say first whose heat it is: an answer is kept with that. Nothing was saved.");
    }
    if (problems.any()) {
      page(cid, path, model);
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return "tracepage/log";
    }
    String why = note(typed, "reading mended by a person");
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String key = key(typed);
    List<NewEntry> entries = new ArrayList<>();
    for (Stored stored : bindings) {
      TraceBinding mended = stored.binding().withReading(as.saysNothing() ? null : as, why);
      entries.add(
          new NewEntry(key + "-" + entries.size(), EntryKind.TRACE, mended, stamp, stored.key()));
    }
    desk.append(cid, entries);
    return to(cid, path);
  }

  /** Whose heat a channel is. */
  @PostMapping("/c/{cid}/log/binding")
  @MayUse(Audience.OWNER)
  String binding(
      @PathVariable String cid,
      @RequestParam String path,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    String channel = problems.need("channel", typed.get("channel"), "a channel of the file");
    String place = problems.need("place", typed.get("place"), "where the probe sat");
    Optional<RunChoice> whose = RunChoice.find(c, typed.getOrDefault("whose", ""));
    if (whose.isEmpty()) {
      problems.add("whose", "Nothing chosen yet. Expected a run, a product or the room.");
    }
    bytes(cid, path);
    if (problems.any()) {
      page(cid, path, model);
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return "tracepage/log";
    }
    ReadAs as = answers(cid, path);
    RunChoice to = whose.orElseThrow();
    TraceBinding bound =
        new TraceBinding(
            path, channel, place, to.product(), to.run(), null, null, null, null, 0, as, null);
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    desk.append(cid, List.of(new NewEntry(key(typed), EntryKind.TRACE, bound, stamp, null)));
    return to(cid, path);
  }

  /** A binding that holds, and the entry it came with. */
  private record Stored(String key, TraceBinding binding) {
    @Nullable ReadAs readAs() {
      return binding.readAs();
    }
  }

  /** What people said of the reading; null when nobody did. */
  private @Nullable ReadAs answers(String cid, String path) {
    List<Stored> bindings = bindings(cid, path);
    return bindings.isEmpty() ? null : bindings.get(0).readAs();
  }

  /** Bindings of a file that no later entry replaces; those with an answer first. */
  private List<Stored> bindings(String cid, String path) {
    List<StoredEntry> all = desk.entries(cid);
    Set<String> mended =
        all.stream().map(e -> String.valueOf(e.corrects())).collect(Collectors.toSet());
    return all.stream()
        .filter(e -> !mended.contains(e.key()))
        .filter(e -> e.body() instanceof TraceBinding b && b.file().equals(path))
        .map(e -> new Stored(e.key(), (TraceBinding) e.body()))
        .sorted(java.util.Comparator.comparing(s -> s.readAs() == null))
        .toList();
  }

  private static List<Bound> bound(Campaign c, String path) {
    return c.traces().stream()
        .filter(t -> t.file().equals(path))
        .map(
            t ->
                new Bound(
                    t.channel(),
                    t.place(),
                    t.run() != null
                        ? t.run()
                        : t.product() == null
                            ? "the room"
                            : c.product(t.product()).map(Campaign.Product::name).orElse("?"),
                    t.run(),
                    t.note() == null ? "" : t.note()))
        .toList();
  }

  private byte[] bytes(String cid, String path) {
    return desk.evidenceOf(cid).bytes(path, MOST_BYTES);
  }

  private String key(Map<String, String> typed) {
    String key = typed.getOrDefault("key", "");
    return Keys.isKey(key) ? key : Keys.next(desk.clock());
  }

  private static String note(Map<String, String> typed, String fallback) {
    String note = typed.getOrDefault("note", "").strip();
    return note.isEmpty() ? fallback : note;
  }

  private static String to(String cid, String path) {
    return "redirect:/c/"
        + cid
        + "/log?path="
        + URLEncoder.encode(path, StandardCharsets.UTF_8).replace("{", "%7B");
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(Place.of("request"), "no " + what, "a logger's file", "choose another"));
  }
}
