package ovenproof.prep;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.SettingCard;
import ovenproof.campaign.Run;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.Field;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.TestPlan;
import ovenproof.web.Choice;
import ovenproof.web.FieldDocument;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** Setting cards: how each product is set for each test, and how the setting was chosen. */
@Controller
class SettingsController {
  private static final int AT_ONCE = 100;
  private static final Map<String, String> LABELS = labels();
  private final Desk desk;
  private final Workbench workbench;
  private final FieldDocument fields;

  SettingsController(Desk desk, Workbench workbench, FieldDocument fields) {
    this.desk = desk;
    this.workbench = workbench;
    this.fields = fields;
  }

  private static Map<String, String> labels() {
    Map<String, String> labels = new LinkedHashMap<>();
    labels.put("mode", "Mode");
    labels.put("preset", "Preset");
    labels.put("dial", "Dial");
    labels.put("rack", "Rack");
    labels.put("accessory", "Accessory");
    labels.put("chosenBy", "How it was chosen");
    labels.put("note", "Note");
    return labels;
  }

  /** A product's cards. */
  public record Row(String product, String name, List<Cell> cells) {}

  /** A card in short, or that there is none. */
  public record Cell(String test, String variant, String words) {}

  /** A column: a test, or one of its variants. */
  public record Column(String test, String variant, String name) {}

  @GetMapping("/c/{cid}/settings")
  @MayUse(Audience.OWNER)
  String settings(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Column> columns = columns(c);
    Map<String, SettingCard> cards = new HashMap<>();
    c.settingCards().forEach(s -> cards.put(s.product() + "/" + s.test() + "/" + s.variant(), s));
    List<Row> rows = new ArrayList<>();
    for (Campaign.Product p : c.products()) {
      rows.add(
          new Row(
              p.id(),
              p.name(),
              columns.stream()
                  .map(
                      t -> {
                        SettingCard card = cards.get(p.id() + "/" + t.test() + "/" + t.variant());
                        return new Cell(t.test(), t.variant(), card == null ? "" : words(card));
                      })
                  .toList()));
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("columns", columns);
    Rows<Row> part = Rows.of(rows, AT_ONCE, "/c/" + cid + "/settings", query, Row::name);
    model.addAttribute("part", part);
    model.addAttribute("rows", part.shown());
    model.addAttribute(
        "missing",
        rows.stream().flatMap(r -> r.cells().stream()).filter(x -> x.words().isEmpty()).count());
    return "prep/settings";
  }

  private static List<Column> columns(Campaign c) {
    return c.method().tests().stream()
        .filter(t -> t.replicates() > 0)
        .flatMap(
            t ->
                t.variants().stream()
                    .map(
                        v ->
                            new Column(
                                t.id(),
                                v.id(),
                                t.variants().size() == 1 ? t.name() : t.name() + ", " + v.name())))
        .toList();
  }

  private static String words(SettingCard s) {
    String words =
        Stream.of(
                s.mode(),
                s.preset() == null ? null : "preset " + s.preset(),
                s.dial() == null ? null : "dial " + s.dial(),
                s.rack() == null ? null : "rack " + s.rack(),
                s.accessory())
            .filter(Objects::nonNull)
            .collect(Collectors.joining(", "));
    return words.isEmpty() ? "a card without a setting" : words;
  }

  @GetMapping("/c/{cid}/settings/{product}/{test}")
  @MayUse(Audience.OWNER)
  String card(
      @PathVariable String cid,
      @PathVariable String product,
      @PathVariable String test,
      @RequestParam(defaultValue = "") String variant,
      Model model) {
    Campaign c = frame(cid, product, test, model);
    TestPlan plan = c.method().test(test).orElseThrow();
    String chosen = variant.isEmpty() ? plan.scoredVariant().id() : variant;
    Map<String, String> typed =
        new HashMap<>(values(card(c.settingCards(), product, test, chosen)));
    typed.put("variant", chosen);
    model.addAttribute("typed", typed);
    model.addAttribute("revision", desk.document(cid, Document.FIELD).revision());
    return "prep/card";
  }

  private Campaign frame(String cid, String product, String test, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    TestPlan plan = c.method().test(test).orElseThrow(() -> unknown("test"));
    Campaign.Product p = c.product(product).orElseThrow(() -> unknown("product"));
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("product", p);
    model.addAttribute("test", plan);
    model.addAttribute(
        "variants", plan.variants().stream().map(v -> new Choice(v.id(), v.name())).toList());
    long trials =
        c.runs().stream()
            .filter(
                r ->
                    r.kind() == Run.Kind.TRIAL
                        && r.product().equals(product)
                        && r.test().equals(test))
            .count();
    model.addAttribute("trials", trials);
    return c;
  }

  private static Optional<SettingCard> card(
      List<SettingCard> cards, String product, String test, String variant) {
    return cards.stream()
        .filter(
            s ->
                s.product().equals(product) && s.test().equals(test) && s.variant().equals(variant))
        .findFirst();
  }

  private static Map<String, String> values(Optional<SettingCard> card) {
    Map<String, String> values = new LinkedHashMap<>();
    card.ifPresent(
        s -> {
          put(values, "mode", s.mode());
          put(values, "preset", s.preset());
          put(values, "dial", s.dial());
          put(values, "rack", s.rack());
          put(values, "accessory", s.accessory());
          put(values, "chosenBy", s.chosenBy());
          put(values, "note", s.note());
        });
    return values;
  }

  private static void put(Map<String, String> values, String field, @Nullable String value) {
    if (value != null) {
      values.put(field, value);
    }
  }

  @PostMapping("/c/{cid}/settings/{product}/{test}")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @PathVariable String product,
      @PathVariable String test,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = frame(cid, product, test, model);
    String variant = typed.getOrDefault("variant", "");
    FormProblems problems = new FormProblems();
    TestPlan plan = c.method().test(test).orElseThrow();
    if (plan.variants().stream().noneMatch(v -> v.id().equals(variant))) {
      problems.add("variant", "Choose one of the variants.");
    }
    if (LABELS.keySet().stream().allMatch(f -> said(typed, f) == null)) {
      problems.add("mode", "Nothing here yet. Expected the mode, a preset or what the dial says.");
    }
    problems.dial("dial", typed.get("dial"));
    if (!problems.any()) {
      SettingCard card = card(product, test, variant, typed);
      Optional<FieldDocument.Conflict> conflict =
          fields.change(
              cid,
              typed,
              f -> labelled(values(card(f.settingCards(), product, test, variant))),
              f -> f.withSettingCards(replaced(f, card)),
              Who.of(request).word(),
              "setting card of " + product + ", " + test);
      if (conflict.isEmpty()) {
        return "redirect:/c/" + cid + "/settings";
      }
      conflict.get().show(model);
    } else {
      model.addAttribute("revision", typed.getOrDefault("revision", "0"));
    }
    model.addAttribute("typed", typed);
    model.addAttribute("problems", problems.byField());
    return "prep/card";
  }

  private static SettingCard card(
      String product, String test, String variant, Map<String, String> typed) {
    return new SettingCard(
        product,
        test,
        variant,
        said(typed, "mode"),
        said(typed, "preset"),
        said(typed, "dial"),
        said(typed, "rack"),
        said(typed, "accessory"),
        said(typed, "chosenBy"),
        said(typed, "note"));
  }

  private static List<SettingCard> replaced(Field field, SettingCard card) {
    boolean there =
        card(field.settingCards(), card.product(), card.test(), card.variant()).isPresent();
    return there
        ? Field.changed(
            field.settingCards(),
            s ->
                s.product().equals(card.product())
                        && s.test().equals(card.test())
                        && s.variant().equals(card.variant())
                    ? card
                    : s)
        : Field.plus(field.settingCards(), card);
  }

  private static Map<String, String> labelled(Map<String, String> values) {
    Map<String, String> labelled = new LinkedHashMap<>();
    values.forEach((field, value) -> labelled.put(LABELS.getOrDefault(field, field), value));
    return labelled;
  }

  private static @Nullable String said(Map<String, String> typed, String field) {
    String text = typed.getOrDefault(field, "").strip();
    return text.isEmpty() ? null : text;
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
