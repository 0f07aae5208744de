package ovenproof.bench;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.desk.Attachment;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.NewEntry;
import ovenproof.web.Choice;
import ovenproof.web.FileNames;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Workbench;

/** Files: attached to a run, dropped for sorting, and served as they came in. */
@Controller
class FilesController {
  /** Where files of earlier days lie until someone knows their run. */
  private static final String UNSORTED = "unsorted/";

  private static final long MOST_BYTES = 500_000_000L;
  private static final int MOST_QUESTIONS = 60;

  private final Desk desk;
  private final Workbench workbench;
  private final RunPage page;

  FilesController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.page = new RunPage(desk);
  }

  // ---------- to a run ----------

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
    Workbench.Sheet sheet = workbench.sheet(cid);
    Run run = Bench.run(sheet.campaign(), id);
    List<MultipartFile> sent = files.stream().filter(f -> !f.isEmpty()).toList();
    if (sent.isEmpty()) {
      FormProblems problems = new FormProblems();
      problems.add("files", "No file was sent. Choose one or more, or drop them on the field.");
      return page.again(sheet, cid, run, typed, problems, model::addAttribute);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    List<NewEntry> entries = new ArrayList<>();
    for (MultipartFile file : sent) {
      String name = FileNames.safe(file.getOriginalFilename());
      String path = desk.attach(cid, "runs/" + id + "/" + name, stored(name, file), stamp.who());
      if (!bound(sheet.campaign(), path)) {
        binding(sheet.campaign(), path, run, typed)
            .ifPresent(
                b ->
                    entries.add(
                        new NewEntry(
                            Bench.key(desk, typed) + "-" + entries.size(),
                            b instanceof Photo ? EntryKind.PHOTO : EntryKind.TRACE,
                            b,
                            stamp,
                            null)));
      }
    }
    if (!entries.isEmpty()) {
      desk.append(cid, entries);
    }
    return Bench.toRun(cid, id);
  }

  private EvidenceStore.Stored stored(String name, MultipartFile file) throws IOException {
    try (InputStream in = file.getInputStream()) {
      return desk.evidence().put(name, in, MOST_BYTES);
    }
  }

  private static boolean bound(Campaign c, String path) {
    return c.photos().stream().anyMatch(p -> p.file().equals(path));
  }

  private static Optional<Object> binding(
      Campaign c, String path, Run run, Map<String, String> typed) {
    String batch = typed.getOrDefault("batch", "");
    if (Bench.isPicture(path)) {
      return Optional.of(
          photo(
              c,
              run,
              path,
              Bench.said(typed, "face"),
              batch.matches("[1-9]\\d?") ? Integer.valueOf(batch) : null));
    }
    String channel = Bench.said(typed, "channel");
    String place = Bench.said(typed, "place");
    return channel == null || place == null
        ? Optional.empty()
        : Optional.of(
            new TraceBinding(
                path,
                channel,
                place,
                null,
                run.id(),
                Bench.said(typed, "instrument"),
                null,
                null,
                null,
                0,
                null));
  }

  private static Photo photo(
      Campaign c, Run run, String path, @Nullable String face, @Nullable Integer batch) {
    List<String> faces =
        c.method()
            .test(run.test())
            .map(t -> t.photos() == null ? List.<String>of() : t.photos().faces())
            .orElse(List.of());
    String only = faces.size() == 1 ? faces.get(0) : null;
    return new Photo(
        path,
        run.id(),
        batch == null ? 1 : batch,
        face == null ? only : face,
        null,
        null,
        List.of(),
        null);
  }

  // ---------- dropped together ----------

  /** A file whose run is not known. */
  public record Question(String path, String name, boolean image, String why, List<Choice> runs) {}

  @GetMapping("/c/{cid}/sort")
  @MayUse(Audience.OWNER)
  String sort(@PathVariable String cid, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Campaign.Evidence> open = unsorted(c);
    RunNames names = new RunNames(c);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("count", open.size());
    model.addAttribute(
        "questions",
        open.stream().limit(MOST_QUESTIONS).map(e -> question(c, names, e.path())).toList());
    return "bench/sort";
  }

  /** Dropped, and neither bound to a run nor, by the same bytes, attached to one. */
  static List<Campaign.Evidence> unsorted(Campaign c) {
    Set<String> bound = new HashSet<>();
    c.photos().forEach(p -> bound.add(p.file()));
    c.traces().forEach(t -> bound.add(t.file()));
    Set<String> sorted = new HashSet<>();
    c.evidence().stream()
        .filter(e -> !e.path().startsWith(UNSORTED) || bound.contains(e.path()))
        .forEach(e -> sorted.add(e.sha256()));
    return c.evidence().stream()
        .filter(e -> e.path().startsWith(UNSORTED) && !sorted.contains(e.sha256()))
        .toList();
  }

  private static Question question(Campaign c, RunNames names, String path) {
    String name = path.substring(UNSORTED.length());
    RunNames.Named named = names.read(name);
    List<String> first = named.run() == null ? named.candidates() : List.of(named.run());
    List<Choice> runs =
        Stream.concat(first.stream(), c.runs().stream().map(Run::id))
            .distinct()
            .map(r -> new Choice(r, r))
            .toList();
    String why =
        first.isEmpty()
            ? "Neither its name, a label in it nor its time names one run."
            : first.size() == 1
                ? "Its name says " + first.get(0) + ", a label in it says another run."
                : "Its name fits " + first.size() + " runs.";
    return new Question(path, name, Bench.isShown(path), why, runs);
  }

  /** A person says where a file belongs. */
  @PostMapping("/c/{cid}/sort/answer")
  @MayUse(Audience.OWNER)
  String answer(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    String path = typed.getOrDefault("path", "");
    Attachment file = desk.attachment(cid, path).orElseThrow(() -> Bench.unknown("file"));
    Run run = Bench.run(c, typed.getOrDefault("run", ""));
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Optional<Object> binding = binding(c, path, run, typed);
    if (binding.isPresent() && !bound(c, path)) {
      EntryKind kind = binding.get() instanceof Photo ? EntryKind.PHOTO : EntryKind.TRACE;
      desk.append(
          cid, List.of(new NewEntry(Bench.key(desk, typed), kind, binding.get(), stamp, null)));
    } else if (binding.isEmpty()) {
      EvidenceStore.Stored stored = new EvidenceStore.Stored(file.sha256(), file.bytes());
      String name = path.substring(path.lastIndexOf('/') + 1);
      desk.attach(cid, "runs/" + run.id() + "/" + name, stored, stamp.who());
    }
    return "redirect:/c/" + cid + "/sort";
  }

  // ---------- out again ----------

  /** A file as it came in: pictures are shown, anything else is only saved, never run. */
  @GetMapping("/c/{cid}/files")
  @MayUse(Audience.OWNER)
  ResponseEntity<FileSystemResource> file(@PathVariable String cid, @RequestParam String path) {
    Attachment file = desk.attachment(cid, path).orElseThrow(() -> Bench.unknown("file"));
    String ending = Bench.ending(path);
    boolean picture = Bench.isShown(path);
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
}
