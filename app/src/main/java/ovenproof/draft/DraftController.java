package ovenproof.draft;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.chart.Sign;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.StaleRevisionException;
import ovenproof.draft.DraftReading.Found;
import ovenproof.draft.KeptDraft.Confirmation;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proofreader;
import ovenproof.publish.edition.Edition;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.WaitingPage;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** The draft: text, preview with its findings, what moved since somebody looked. */
@Controller
class DraftController {
  private static final int LONGEST = 1_600_000;
  private static final int FIGURES_AT_ONCE = 600;

  private final Desk desk;
  private final Workbench workbench;

  DraftController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A finding as the page shows it. */
  public record Line(
      int number, String state, String words, String sign, String place, Found found) {}

  @GetMapping("/c/{cid}/draft")
  @MayUse(Audience.OWNER)
  String draft(@PathVariable String cid, Model model) {
    Optional<Document> document = desk.find(cid, Document.DRAFT);
    KeptDraft kept = document.map(d -> KeptDraft.of(d.body())).orElse(KeptDraft.empty());
    long revision = document.map(Document::revision).orElse(0L);
    return page(cid, kept, kept, revision, model);
  }

  /** Fills the page; the waiting page while the evidence is measured. */
  private String page(String cid, KeptDraft shown, KeptDraft kept, long revision, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    if (!sheet.scored()) {
      return WaitingPage.show(sheet, "Publish", model::addAttribute);
    }
    model.addAttribute("revision", revision);
    model.addAttribute("text", shown.text());
    model.addAttribute("stale", null);
    List<Document> revisions = desk.revisions(cid, Document.DRAFT);
    model.addAttribute(
        "revisions",
        revisions.stream()
            .limit(20)
            .map(
                d ->
                    "Revision "
                        + d.revision()
                        + ", "
                        + Shown.time(d.at(), sheet.campaign().info().zone())
                        + ", "
                        + d.who())
            .toList());
    model.addAttribute("kept", kept);
    read(sheet, with(kept, shown.text()), model);
    return "draft/draft";
  }

  private static KeptDraft with(KeptDraft kept, String text) {
    return new KeptDraft(text, kept.figures(), kept.sentences(), kept.confirmed());
  }

  /** Puts reading, preview and figures into the model. */
  private Optional<DraftReading> read(Workbench.Sheet sheet, KeptDraft draft, Model model) {
    Optional<Edition> edition = SheetEdition.of(desk, sheet);
    model.addAttribute("reading", null);
    model.addAttribute("figures", List.of());
    if (edition.isEmpty()) {
      return Optional.empty();
    }
    FigureBook book = new FigureBook(edition.get());
    Proofreader proofreader =
        new Proofreader(
            edition.get().campaign(), edition.get().measured(), edition.get().verdict());
    DraftReading reading = DraftReading.of(draft, book, proofreader);
    model.addAttribute("figures", book.all().stream().limit(FIGURES_AT_ONCE).toList());
    model.addAttribute("figuresInAll", book.all().size());
    model.addAttribute("reading", reading);
    model.addAttribute("html", DraftPreview.html(reading));
    model.addAttribute("lines", lines(reading));
    model.addAttribute("supported", reading.count(Finding.SUPPORTED) + reading.confirmed());
    model.addAttribute("contradicted", reading.count(Finding.CONTRADICTED));
    model.addAttribute("unclear", reading.count(Finding.UNCLEAR));
    model.addAttribute("unsupported", reading.count(Finding.UNSUPPORTED));
    return Optional.of(reading);
  }

  private static List<Line> lines(DraftReading reading) {
    return reading.found().stream()
        .sorted(Comparator.comparingInt(DraftController::weight).thenComparingInt(Found::number))
        .map(
            f ->
                new Line(
                    f.number(),
                    DraftPreview.state(f),
                    DraftPreview.words(f),
                    sign(f).svg(),
                    "line " + f.claim().line(),
                    f))
        .toList();
  }

  private static int weight(Found found) {
    if (found.isConfirmed()) {
      return 4;
    }
    return switch (found.claim().finding()) {
      case CONTRADICTED -> 0;
      case UNSUPPORTED -> 1;
      case UNCLEAR -> 2;
      case SUPPORTED -> 3;
    };
  }

  private static Sign sign(Found found) {
    if (found.isConfirmed()) {
      return Sign.HOLDS;
    }
    return switch (found.claim().finding()) {
      case CONTRADICTED -> Sign.FAILS;
      case UNSUPPORTED -> Sign.NAKED;
      case UNCLEAR -> Sign.ON_THE_LIP;
      case SUPPORTED -> Sign.HOLDS;
    };
  }

  /** The preview alone, while somebody writes; nothing is saved. */
  @PostMapping("/c/{cid}/draft/preview")
  @MayUse(Audience.OWNER)
  String preview(@PathVariable String cid, @RequestParam String text, Model model) {
    KeptDraft kept =
        desk.find(cid, Document.DRAFT).map(d -> KeptDraft.of(d.body())).orElse(KeptDraft.empty());
    String whole = text.replace("\r\n", "\n");
    page(cid, with(kept, whole.substring(0, Math.min(LONGEST, whole.length()))), kept, 0, model);
    return "draft/draft :: proof";
  }

  @PostMapping("/c/{cid}/draft")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    String text = typed.getOrDefault("text", "").replace("\r\n", "\n");
    long revision = number(typed.get("revision"));
    Optional<Document> before = desk.find(cid, Document.DRAFT);
    KeptDraft kept = before.map(d -> KeptDraft.of(d.body())).orElse(KeptDraft.empty());
    Workbench.Sheet sheet = workbench.sheet(cid);
    if (!sheet.scored()) {
      // The text must not wait for the evidence: it is kept as it is, unread.
      return store(cid, revision, with(kept, text), kept, model, request, response);
    }
    KeptDraft now =
        read(sheet, with(kept, text), model)
            .map(r -> "seen".equals(typed.get("do")) ? seen(r) : r.savedUnseen(kept))
            .orElse(with(kept, text));
    return store(cid, revision, now, kept, model, request, response);
  }

  /** Everything as it is now; confirmations whose figure moved fall away. */
  private static KeptDraft seen(DraftReading reading) {
    Map<String, Confirmation> holding = new TreeMap<>();
    reading.found().stream()
        .filter(Found::isConfirmed)
        .forEach(f -> holding.put(f.key(), Objects.requireNonNull(f.confirmation())));
    return new KeptDraft(
        reading.now().text(), reading.now().figures(), reading.now().sentences(), holding);
  }

  private String store(
      String cid,
      long revision,
      KeptDraft draft,
      KeptDraft before,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    try {
      desk.saveText(cid, Document.DRAFT, revision, draft.body(), Who.of(request).word(), null);
      return "redirect:/c/" + cid + "/draft";
    } catch (StaleRevisionException stale) {
      response.setStatus(HttpStatus.CONFLICT.value());
      String view = page(cid, draft, before, stale.current().revision(), model);
      model.addAttribute("stale", stale.current());
      model.addAttribute("theirs", KeptDraft.of(stale.current().body()).text());
      return view;
    }
  }

  /** Ties a claim to a figure by name: kept with the draft until one of them changes. */
  @PostMapping("/c/{cid}/draft/confirm")
  @MayUse(Audience.OWNER)
  String confirm(
      @PathVariable String cid,
      @RequestParam String claim,
      @RequestParam String figure,
      @RequestParam String revision,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    KeptDraft kept =
        desk.find(cid, Document.DRAFT).map(d -> KeptDraft.of(d.body())).orElse(KeptDraft.empty());
    Workbench.Sheet sheet = workbench.sheet(cid);
    if (!sheet.scored()) {
      return "redirect:/c/" + cid + "/draft";
    }
    Optional<FigureBook.Shown> shown =
        SheetEdition.of(desk, sheet).flatMap(e -> new FigureBook(e).find(figure.strip()));
    if (shown.isEmpty()) {
      String view = page(cid, kept, kept, number(revision), model);
      model.addAttribute(
          "problems",
          Map.of("figure", "Found no figure “" + figure + "”. Expected a name from the list."));
      response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
      return view;
    }
    Map<String, Confirmation> confirmed = new TreeMap<>(kept.confirmed());
    confirmed.put(
        claim, new Confirmation(shown.get().name(), shown.get().text(), Who.of(request).word()));
    return store(
        cid,
        number(revision),
        new KeptDraft(kept.text(), kept.figures(), kept.sentences(), confirmed),
        kept,
        model,
        request,
        response);
  }

  private static long number(@org.jspecify.annotations.Nullable String text) {
    return text != null && text.matches("\\d{1,9}") ? Long.parseLong(text) : 0;
  }
}
