package ovenproof.products;

import jakarta.servlet.http.HttpServletRequest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.FeatureState;
import ovenproof.chart.Sign;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.NewEntry;
import ovenproof.web.Choice;
import ovenproof.web.FormKey;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Rows;
import ovenproof.web.Workbench;

/** The feature checklist: which product has what, a feature for all products at once. */
@Controller
class FeaturesController {
  private static final int PRODUCTS_AT_ONCE = 40;
  private final Desk desk;
  private final Workbench workbench;

  FeaturesController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A feature with what is said of every product. */
  public record Row(String feature, List<Cell> cells) {}

  /** What is said of one product, as shape and word. */
  public record Cell(String product, String sign, String words, String note) {}

  /**
   * One product in the form.
   *
   * @param was key of the entry that held when the form was made; empty when nothing was said
   */
  public record Line(String id, String name, String state, String note, String was) {}

  @GetMapping("/c/{cid}/features")
  @MayUse(Audience.OWNER)
  String list(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    String feature = query.getOrDefault("feature", "");
    Rows<Campaign.Product> part = show(cid, query, model);
    model.addAttribute("typed", Map.of("feature", feature));
    model.addAttribute("lines", lines(cid, part, feature, Map.of()));
    return "products/features";
  }

  private Rows<Campaign.Product> show(String cid, Map<String, String> query, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    Rows<Campaign.Product> part =
        Rows.of(c.products(), PRODUCTS_AT_ONCE, address(cid), query, Campaign.Product::name);
    model.addAttribute("part", part);
    FeatureChecklist checklist = FeatureChecklist.of(c);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute(
        "rows",
        checklist.features().stream()
            .map(f -> new Row(f, cells(part.shown(), checklist, f)))
            .toList());
    model.addAttribute("states", Choice.of(FeatureState.State.values()));
    return part;
  }

  private static List<Cell> cells(
      List<Campaign.Product> products, FeatureChecklist checklist, String feature) {
    return products.stream().map(p -> cell(p, checklist.state(p.id(), feature))).toList();
  }

  private static Cell cell(Campaign.Product product, Optional<FeatureState> said) {
    return said.map(
            s ->
                new Cell(
                    product.name(), sign(s.state()).svg(), Choice.words(s.state()), details(s)))
        .orElseGet(() -> new Cell(product.name(), Sign.EMPTY.svg(), "not said", ""));
  }

  private static Sign sign(FeatureState.State state) {
    return switch (state) {
      case YES -> Sign.HOLDS;
      case NO -> Sign.ABSENT;
      case NOT_APPLICABLE -> Sign.CANNOT;
    };
  }

  private static String details(FeatureState said) {
    return String.join(
        ", ",
        Stream.of(said.note(), said.on()).filter(Objects::nonNull).map(String::valueOf).toList());
  }

  private List<Line> lines(
      String cid, Rows<Campaign.Product> part, String feature, Map<String, String> typed) {
    FeatureChecklist checklist = FeatureChecklist.of(workbench.sheet(cid).campaign());
    String listed = checklist.listed(feature.strip()).orElse(feature);
    List<Line> lines = new ArrayList<>();
    for (Campaign.Product p : part.shown()) {
      Optional<FeatureState> held = checklist.state(p.id(), listed);
      lines.add(
          new Line(
              p.id(),
              p.name(),
              typed.getOrDefault("state-" + p.id(), held.map(h -> h.state().name()).orElse("")),
              typed.getOrDefault(
                  "note-" + p.id(), held.map(h -> Objects.toString(h.note(), "")).orElse("")),
              held.map(FeaturesController::key).orElse("")));
    }
    return lines;
  }

  private static String key(FeatureState held) {
    return Objects.toString(held.origin().id(), "");
  }

  @PostMapping("/c/{cid}/features")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    FeatureChecklist checklist = FeatureChecklist.of(c);
    String name = ProductsController.name(problems, "feature", typed);
    String feature = checklist.listed(name).orElse(name);
    LocalDate today = LocalDate.ofInstant(desk.clock().instant(), c.info().zone());
    Optional<LocalDate> on = problems.day("on", typed.get("on"));
    if (on.isPresent() && on.get().isAfter(today)) {
      problems.add("on", on.get() + " is to come; say when it was looked at.");
    }
    String key = FormKey.of(typed, desk.clock());
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    List<NewEntry> entries = new ArrayList<>();
    boolean chosen = false;
    for (Campaign.Product product : c.products()) {
      Optional<FeatureState.State> state = chosen(problems, typed, product.id());
      chosen |= state.isPresent();
      Said said =
          new Said(product.id(), feature, state.orElse(null), on, typed, checklist, problems);
      if (said.isNew()) {
        entries.add(said.entry(key + "-" + entries.size(), on.orElse(today), stamp));
      }
    }
    if (!chosen && !problems.any()) {
      problems.add("states", "Nothing is chosen yet. Choose a state for one product at least.");
    }
    if (problems.any()) {
      return again(cid, typed, problems, model);
    }
    if (!entries.isEmpty()) {
      desk.append(cid, entries);
    }
    return "redirect:" + address(cid);
  }

  private static String address(String cid) {
    return "/c/" + cid + "/features";
  }

  private static Optional<FeatureState.State> chosen(
      FormProblems problems, Map<String, String> typed, String product) {
    String word = typed.getOrDefault("state-" + product, "");
    Optional<FeatureState.State> state =
        Stream.of(FeatureState.State.values()).filter(s -> s.name().equals(word)).findFirst();
    if (!word.isEmpty() && state.isEmpty()) {
      problems.add("state-" + product, "Choose yes, no or not applicable.");
    }
    return state;
  }

  private String again(String cid, Map<String, String> typed, FormProblems problems, Model model) {
    Map<String, String> page = new HashMap<>(typed);
    page.keySet().retainAll(List.of("from", "find"));
    Rows<Campaign.Product> part = show(cid, page, model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", new HashMap<>(typed));
    model.addAttribute("lines", lines(cid, part, typed.getOrDefault("feature", ""), typed));
    return "products/features";
  }

  /** What a form says of one product, beside what holds. */
  private record Said(
      String product,
      String feature,
      FeatureState.@Nullable State state,
      Optional<LocalDate> on,
      Map<String, String> typed,
      FeatureChecklist checklist,
      FormProblems problems) {

    private Optional<FeatureState> held() {
      return checklist.state(product, feature);
    }

    private @Nullable String note() {
      String text = typed.getOrDefault("note-" + product, "").strip();
      return text.isEmpty() ? null : text;
    }

    /** Whether it changes what holds; what stands in the way is said beside the product. */
    boolean isNew() {
      if (state == null) {
        return false;
      }
      Optional<FeatureState> held = held();
      if (held.isEmpty()) {
        return true;
      }
      if (isSame(held.get())) {
        return false;
      }
      if (held.get().origin().id() == null) {
        problems.add(
            "state-" + product,
            "Written in features.csv without a key, so nothing can correct it. Export the folder,"
                + " fill in the column “entry”, and import it again.");
      } else if (!key(held.get()).equals(typed.getOrDefault("was-" + product, ""))) {
        problems.add(
            "state-" + product,
            "Said already: "
                + Choice.words(held.get().state())
                + ". Yours is not saved yet; send it again to put it on top.");
      }
      return true;
    }

    private boolean isSame(FeatureState held) {
      return held.state() == state
          && Objects.equals(held.note(), note())
          && (on.isEmpty() || on.get().equals(held.on()));
    }

    NewEntry entry(String key, LocalDate day, NewEntry.Stamp stamp) {
      String corrects = held().map(h -> h.origin().id()).orElse(null);
      FeatureState said =
          new FeatureState(
              product,
              feature,
              Objects.requireNonNull(state),
              day,
              note(),
              new Entry.Provenance(key, stamp.who(), stamp.at(), corrects));
      return new NewEntry(key, EntryKind.FEATURE, said, stamp, corrects);
    }
  }
}
