package ovenproof.draft;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.Job;
import ovenproof.desk.JobKind;
import ovenproof.desk.Jobs;
import ovenproof.draft.Publication.Part;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proofreader;
import ovenproof.publish.card.CardFolder;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionChange;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.publish.edition.Words;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.WaitingPage;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/**
 * The review: what would change, publishing it, its frozen editions, what an editor takes along.
 */
@Controller
class PublishController implements JobKind {
  private static final int LONGEST_REASON = 500;
  private static final Map<String, String> TYPES =
      Map.ofEntries(
          Map.entry("html", "text/html; charset=UTF-8"),
          Map.entry("css", "text/css; charset=UTF-8"),
          Map.entry("svg", "image/svg+xml"),
          Map.entry("png", "image/png"),
          Map.entry("jpg", "image/jpeg"),
          Map.entry("woff2", "font/woff2"),
          Map.entry("json", "application/json"),
          Map.entry("csv", "text/csv; charset=UTF-8"));

  private final Desk desk;
  private final Workbench workbench;
  private final Publication publication;

  PublishController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.publication = new Publication(desk, workbench);
  }

  @Override
  public String kind() {
    return Publication.KIND;
  }

  @Override
  public String run(Job job, Jobs.Running running) {
    return publication.run(job, running);
  }

  /** An edition as the page lists it. */
  public record Line(int number, String day, String sentence, String effect, String frozen) {}

  @GetMapping("/c/{cid}/publish")
  @MayUse(Audience.OWNER)
  String publish(@PathVariable String cid, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    if (!sheet.ready()) {
      return WaitingPage.show(sheet, "Publish", model::addAttribute);
    }
    Optional<Edition> edition = SheetEdition.of(desk, sheet);
    EditionHistory history = publication.editions(cid);
    model.addAttribute("scored", edition.isPresent());
    model.addAttribute("headline", edition.map(e -> new Findings(e).headline()).orElse(""));
    model.addAttribute("first", history.editions().isEmpty());
    model.addAttribute("change", edition.flatMap(e -> change(history, e)).orElse(null));
    model.addAttribute("draft", edition.map(e -> draft(cid, e)).orElse(List.of()));
    model.addAttribute("editions", lines(cid, history));
    boolean kit = publication.exists(cid, Part.KIT);
    Path cards = publication.folder(cid, Part.KIT).resolve("cards");
    model.addAttribute("kit", kit);
    model.addAttribute("fragments", kit ? publication.fragments(cid) : List.of());
    model.addAttribute("cards", kit ? CardFolder.changedSince(cards) : List.of());
    return "draft/publish";
  }

  /** What a further edition would change; empty for a first one and where nothing would. */
  private static Optional<EditionChange> change(EditionHistory history, Edition edition) {
    FrozenEdition newest = history.newest();
    if (newest == null) {
      return Optional.empty();
    }
    FrozenEdition next = FrozenEdition.of(edition, newest.number() + 1, null);
    return newest.printsTheSameAs(next)
        ? Optional.empty()
        : Optional.of(EditionChange.between(newest, next));
  }

  private static List<Line> lines(String cid, EditionHistory history) {
    List<EditionChange> changes = history.changes();
    List<Line> lines = new ArrayList<>();
    for (int i = history.editions().size() - 1; i >= 0; i--) {
      FrozenEdition edition = history.editions().get(i);
      Optional<EditionChange> change =
          changes.stream().filter(c -> c.after().number() == edition.number()).findFirst();
      lines.add(
          new Line(
              edition.number(),
              Words.day(edition.published()),
              change.map(EditionChange::sentence).orElse("The first edition."),
              change.map(EditionChange::effectOnRanks).orElse(""),
              "/c/" + cid + "/site/editions/" + edition.number() + "/index.html"));
    }
    return lines;
  }

  /** What the draft says that must be looked at before anything goes out. */
  private List<String> draft(String cid, Edition edition) {
    Optional<KeptDraft> kept =
        desk.find(cid, Document.DRAFT)
            .map(d -> KeptDraft.of(d.body()))
            .filter(k -> !k.text().isBlank());
    if (kept.isEmpty()) {
      return List.of();
    }
    Proofreader proofreader =
        new Proofreader(edition.campaign(), edition.measured(), edition.verdict());
    DraftReading reading = DraftReading.of(kept.get(), new FigureBook(edition), proofreader);
    List<String> said = new ArrayList<>();
    count(said, reading.unknown().size(), "name that no figure has", "names that no figure has");
    count(said, reading.moved().size(), "figure moved", "figures moved");
    count(
        said,
        reading.stale().size(),
        "sentence whose evidence moved",
        "sentences whose evidence moved");
    int wrong = (int) reading.count(Finding.CONTRADICTED);
    count(said, wrong, "claim is contradicted", "claims are contradicted");
    return said;
  }

  private static void count(List<String> said, int number, String one, String many) {
    if (number > 0) {
      said.add(Words.capital(Words.count(number, one, many)));
    }
  }

  @PostMapping("/c/{cid}/publish")
  @MayUse(Audience.OWNER)
  String begin(
      @PathVariable String cid,
      @RequestParam(defaultValue = "") String why,
      HttpServletRequest request) {
    workbench.sheet(cid);
    String reason = why.strip().replaceAll("\\s+", " ");
    String kept = reason.substring(0, Math.min(LONGEST_REASON, reason.length()));
    Job job = desk.jobs().submit(Publication.KIND, cid, kept, Who.of(request).word());
    return "redirect:/jobs/" + job.id();
  }

  @GetMapping({"/c/{cid}/site", "/c/{cid}/site/"})
  @MayUse(Audience.OWNER)
  String site(@PathVariable String cid) {
    return "redirect:/c/" + cid + "/site/index.html";
  }

  @GetMapping("/c/{cid}/site/{*path}")
  @MayUse(Audience.OWNER)
  ResponseEntity<Resource> page(@PathVariable String cid, @PathVariable String path) {
    return file(cid, Part.SITE, path);
  }

  @GetMapping("/c/{cid}/kit/{*path}")
  @MayUse(Audience.OWNER)
  ResponseEntity<Resource> kit(@PathVariable String cid, @PathVariable String path) {
    return file(cid, Part.KIT, path);
  }

  private ResponseEntity<Resource> file(String cid, Part part, String path) {
    workbench.sheet(cid);
    return publication
        .file(cid, part, path.replaceFirst("^/", ""))
        .<ResponseEntity<Resource>>map(
            f ->
                ResponseEntity.ok()
                    .header(HttpHeaders.CONTENT_TYPE, type(f))
                    .body(new FileSystemResource(f)))
        .orElseGet(() -> ResponseEntity.notFound().build());
  }

  /** Fragments are shown as text, HTML among them: they are there to be copied. */
  private static String type(Path file) {
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    Path folder = file.getParent();
    boolean fragment = folder != null && folder.endsWith("fragments");
    return fragment
        ? "text/plain; charset=UTF-8"
        : TYPES.getOrDefault(ending, "text/plain; charset=UTF-8");
  }

  @GetMapping("/c/{cid}/publish/{part}.zip")
  @MayUse(Audience.OWNER)
  void zip(@PathVariable String cid, @PathVariable String part, HttpServletResponse response)
      throws IOException {
    workbench.sheet(cid);
    Part wanted = part.equals(Part.KIT.word()) ? Part.KIT : Part.SITE;
    if (!part.equals(wanted.word()) || !publication.exists(cid, wanted)) {
      response.sendError(HttpServletResponse.SC_NOT_FOUND);
      return;
    }
    response.setContentType("application/zip");
    response.setHeader(
        HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + cid + "-" + part + ".zip\"");
    publication.zip(cid, wanted, response.getOutputStream());
  }
}
