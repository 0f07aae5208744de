package ovenproof.record;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.io.FileSystemResource;
import org.springframework.core.io.Resource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Inquiry;
import ovenproof.campaign.InquiryStep;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.files.InquiryFile;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.Edition;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Shown;
import ovenproof.web.Slug;
import ovenproof.web.Workbench;

/** Inquiries of makers and readers: what was asked, by when, what was answered, what came of it. */
@Controller
class InquiryController {
  private final Desk desk;
  private final Workbench workbench;

  InquiryController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** An inquiry with its state in words, and its steps. */
  public record Row(Inquiry inquiry, String name, String state, List<String> steps) {}

  @GetMapping("/c/{cid}/inquiries")
  @MayUse(Audience.OWNER)
  String inquiries(@PathVariable String cid, Model model) {
    Campaign campaign = workbench.sheet(cid).campaign();
    LocalDate today = LocalDate.ofInstant(desk.clock().instant(), campaign.info().zone());
    List<Inquiry> all = Inquiry.of(desk.inquiries(cid));
    long open = all.stream().filter(Inquiry::isOpen).count();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", campaign);
    model.addAttribute("today", today);
    model.addAttribute(
        "headline",
        all.isEmpty()
            ? "No inquiries"
            : all.size() + (all.size() == 1 ? " inquiry, " : " inquiries, ") + open + " open");
    model.addAttribute("rows", all.stream().map(i -> row(campaign, today, i)).toList());
    return "record/inquiries";
  }

  private static Row row(Campaign campaign, LocalDate today, Inquiry inquiry) {
    String product = inquiry.product();
    String name =
        product == null
            ? "the review"
            : campaign.product(product).map(Campaign.Product::name).orElse(product);
    List<String> steps =
        inquiry.steps().stream()
            .map(
                s ->
                    Shown.time(s.at(), campaign.info().zone())
                        + ", "
                        + s.by()
                        + ": "
                        + s.kind().word()
                        + (s.outcome() == null ? "" : ", " + s.outcome().word())
                        + (s.words().isBlank() ? "" : ". " + s.words()))
            .toList();
    return new Row(inquiry, name, inquiry.state(today), steps);
  }

  @PostMapping("/c/{cid}/inquiries")
  @MayUse(Audience.OWNER)
  String ask(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    Campaign campaign = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    String words = problems.need("words", typed.get("words"), "what is asked, in their words");
    InquiryStep.From from =
        word(problems, "from", typed.get("from"), InquiryStep.From.class).orElse(null);
    String product = typed.getOrDefault("product", "").strip();
    if (!product.isEmpty() && campaign.product(product).isEmpty()) {
      problems.add("product", "Found “" + product + "”. Expected a product of the campaign.");
    }
    List<String> runs = lines(typed.get("runs"));
    runs.stream()
        .filter(r -> campaign.run(r).isEmpty())
        .findFirst()
        .ifPresent(
            r ->
                problems.add(
                    "runs", "Found no run “" + r + "”. Expected keys of runs, one a line."));
    LocalDate deadline = day(problems, typed.get("deadline"));
    if (problems.any() || from == null) {
      return again(cid, typed, problems, model, response);
    }
    String key = typed.getOrDefault("key", "");
    String id = Slug.of(product + " " + firstWords(words), "inquiry", k -> taken(cid, k, key));
    InquiryStep step =
        new InquiryStep(
            id,
            InquiryStep.Kind.ASKED,
            Moment.of(request, desk.clock().instant()).at(),
            ovenproof.web.Who.of(request).word(),
            from,
            product.isEmpty() ? null : product,
            lines(typed.get("sentences")),
            runs,
            deadline,
            words,
            null,
            null);
    return append(cid, key, step, request);
  }

  /** A key in use by another inquiry; one that was sent twice keeps its own. */
  private boolean taken(String cid, String id, String key) {
    return desk.entries(cid).stream()
        .filter(e -> e.body() instanceof InquiryStep)
        .filter(e -> !e.key().equals(key))
        .anyMatch(e -> ((InquiryStep) e.body()).inquiry().equals(id));
  }

  private static String firstWords(String words) {
    return Arrays.stream(words.split("\\s+")).limit(4).reduce("", (a, b) -> a + " " + b).strip();
  }

  @PostMapping("/c/{cid}/inquiries/{id}")
  @MayUse(Audience.OWNER)
  String step(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    found(cid, id);
    FormProblems problems = new FormProblems();
    InquiryStep.Kind kind =
        word(problems, "kind", typed.get("kind"), InquiryStep.Kind.class).orElse(null);
    InquiryStep.Outcome outcome = null;
    if (kind == InquiryStep.Kind.DECIDED) {
      outcome =
          word(problems, "outcome", typed.get("outcome"), InquiryStep.Outcome.class).orElse(null);
    }
    LocalDate deadline = day(problems, typed.get("deadline"));
    String edition = typed.getOrDefault("edition", "").strip();
    if (!edition.isEmpty() && !edition.matches("[1-9]\\d{0,5}")) {
      problems.add("edition", "Found “" + edition + "”. Expected the number of an edition.");
    }
    if (problems.any() || kind == null || kind == InquiryStep.Kind.ASKED) {
      return again(cid, typed, problems, model, response);
    }
    InquiryStep step =
        new InquiryStep(
            id,
            kind,
            Moment.of(request, desk.clock().instant()).at(),
            ovenproof.web.Who.of(request).word(),
            null,
            null,
            List.of(),
            List.of(),
            deadline,
            typed.getOrDefault("words", "").strip(),
            outcome,
            edition.isEmpty() ? null : Integer.valueOf(edition));
    return append(cid, typed.getOrDefault("key", ""), step, request);
  }

  private String append(String cid, String key, InquiryStep step, HttpServletRequest request) {
    String own = Keys.isKey(key) ? key : Keys.next(desk.clock());
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    desk.append(cid, List.of(new NewEntry(own, EntryKind.INQUIRY, step, stamp, null)));
    return "redirect:/c/" + cid + "/inquiries";
  }

  private String again(
      String cid,
      Map<String, String> typed,
      FormProblems problems,
      Model model,
      HttpServletResponse response) {
    String view = inquiries(cid, model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
    return view;
  }

  private static <E extends Enum<E>> Optional<E> word(
      FormProblems problems, String field, @Nullable String typed, Class<E> words) {
    for (E word : words.getEnumConstants()) {
      if (word.name().equalsIgnoreCase(typed == null ? "" : typed.strip())) {
        return Optional.of(word);
      }
    }
    problems.add(
        field,
        "Expected one of: "
            + String.join(
                ", ",
                Arrays.stream(words.getEnumConstants())
                    .map(w -> w.name().toLowerCase(Locale.ROOT))
                    .toList())
            + ".");
    return Optional.empty();
  }

  private static List<String> lines(@Nullable String typed) {
    return typed == null
        ? List.of()
        : typed.lines().map(String::strip).filter(s -> !s.isEmpty()).toList();
  }

  private static @Nullable LocalDate day(FormProblems problems, @Nullable String typed) {
    if (typed == null || typed.isBlank()) {
      return null;
    }
    try {
      return LocalDate.parse(typed.strip());
    } catch (DateTimeException e) {
      problems.add("deadline", "Found “" + typed + "”. Expected a day, for example 2026-04-15.");
      return null;
    }
  }

  private Inquiry found(String cid, String id) {
    return Inquiry.of(desk.inquiries(cid)).stream()
        .filter(i -> i.id().equals(id))
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(Place.of(id), "no such inquiry", "one of this campaign", "")));
  }

  /** All inquiries as the table of a campaign folder. */
  @GetMapping("/c/{cid}/inquiries.csv")
  @MayUse(Audience.OWNER)
  ResponseEntity<Resource> file(@PathVariable String cid) {
    workbench.sheet(cid);
    byte[] text = InquiryFile.text(desk.inquiries(cid)).getBytes(StandardCharsets.UTF_8);
    return ResponseEntity.ok()
        .header(HttpHeaders.CONTENT_TYPE, "text/csv;charset=UTF-8")
        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"inquiries.csv\"")
        .body(new ByteArrayResource(text));
  }

  /** The evidence pack of the product that an inquiry is about. */
  @GetMapping("/c/{cid}/inquiries/{id}/pack")
  @MayUse(Audience.OWNER)
  ResponseEntity<Resource> pack(@PathVariable String cid, @PathVariable String id) {
    Inquiry inquiry = found(cid, id);
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign campaign = sheet.campaign();
    LocalDate today = LocalDate.ofInstant(desk.clock().instant(), campaign.info().zone());
    Edition edition =
        new Edition(
            campaign,
            desk.evidenceOf(cid),
            sheet.measured(),
            sheet.verdict().orElseThrow(InquiryController::nothingScored),
            Objects.requireNonNullElse(campaign.info().published(), today));
    String product = inquiry.product() == null ? "" : inquiry.product();
    Path zip =
        desk.location()
            .folder()
            .resolve("outgoing")
            .resolve("pack-" + Keys.next(desk.clock()) + ".zip");
    new EvidencePack(edition, product).write(zip, today);
    return ResponseEntity.ok()
        .header(HttpHeaders.CONTENT_TYPE, "application/zip")
        .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"evidence-pack.zip\"")
        .body(new FileSystemResource(zip));
  }

  private static InputException nothingScored() {
    return new InputException(
        Problem.error(
            Place.of("verdict"), "nothing scored yet", "a verdict", "score a test first"));
  }
}
