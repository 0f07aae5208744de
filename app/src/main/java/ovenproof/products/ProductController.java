package ovenproof.products;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.RatedStep;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.EntryKind;
import ovenproof.desk.Field;
import ovenproof.desk.NewEntry;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Method;
import ovenproof.web.Choice;
import ovenproof.web.FieldDocument;
import ovenproof.web.FormKey;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** One product: its data, appliances, prices, facts, rated facts and files. */
@Controller
class ProductController {
  private static final long MOST_BYTES = 500_000_000L;
  private static final String SHOWN = "(?i).*\\.(jpe?g|png|webp)";

  private final Desk desk;
  private final Workbench workbench;
  private final FieldDocument fields;

  ProductController(Desk desk, Workbench workbench, FieldDocument fields) {
    this.desk = desk;
    this.workbench = workbench;
    this.fields = fields;
  }

  /** A fact, nameplate beside measured. */
  public record FactRow(
      String id, String name, String nameplate, String measured, String difference) {}

  /** A rated fact with what was chosen. */
  public record RatedRow(String id, String name, String said, List<Step> steps) {}

  /** A step that can be chosen. */
  public record Step(String key, String words) {}

  /** A file of the product. */
  public record FileLine(String path, String name, boolean image) {}

  @GetMapping("/c/{cid}/products/{id}")
  @MayUse(Audience.OWNER)
  String product(@PathVariable String cid, @PathVariable String id, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    Campaign.Product product = found(c, id);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("revision", desk.document(cid, Document.FIELD).revision());
    model.addAttribute("product", product);
    model.addAttribute("prices", c.prices().stream().filter(p -> p.product().equals(id)).toList());
    model.addAttribute("facts", c.method().facts().stream().map(f -> fact(c, id, f)).toList());
    model.addAttribute(
        "ratedFacts", c.method().ratedFacts().stream().map(f -> rated(c, id, f)).toList());
    model.addAttribute(
        "specimens", c.specimens().stream().filter(s -> s.product().equals(id)).toList());
    model.addAttribute("acquired", Choice.of(Campaign.Acquired.values()));
    model.addAttribute("became", Choice.of(Campaign.Became.values()));
    model.addAttribute("instruments", choices(c.instruments().stream().map(i -> i.id()).toList()));
    List<FileLine> files = files(c, id);
    model.addAttribute("files", files);
    model.addAttribute(
        "pictures",
        files.stream().filter(FileLine::image).map(f -> new Choice(f.path(), f.name())).toList());
    Map<String, String> typed = new HashMap<>();
    typed.put("name", product.name());
    typed.put("maker", product.maker());
    typed.put("kind", product.kind());
    typed.put("note", product.note());
    model.addAttribute("typed", typed);
    return "products/product";
  }

  private static List<Choice> choices(List<String> words) {
    return words.stream().map(w -> new Choice(w, w)).toList();
  }

  private static List<FileLine> files(Campaign c, String product) {
    String own = "products/" + product + "/";
    return c.evidence().stream()
        .filter(e -> e.path().startsWith(own))
        .map(e -> new FileLine(e.path(), e.path().substring(own.length()), e.path().matches(SHOWN)))
        .toList();
  }

  private static Campaign.Product found(Campaign c, String id) {
    return c.product(id).orElseThrow(() -> unknown("product"));
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(Place.of(what), "no such " + what, "one of this campaign", "go back"));
  }

  private static FactRow fact(Campaign c, String product, Method.Fact fact) {
    Quantity nameplate = null;
    Quantity measured = null;
    for (FactValue value : Entry.effective(c.facts())) {
      if (value.product().equals(product) && value.fact().equals(fact.id())) {
        nameplate = value.nameplate() == null ? nameplate : value.nameplate();
        measured = value.measured() == null ? measured : value.measured();
      }
    }
    return new FactRow(
        fact.id(),
        fact.name(),
        nameplate == null ? "–" : nameplate.toString(),
        measured == null ? "–" : measured.toString(),
        difference(nameplate, measured));
  }

  private static String difference(@Nullable Quantity nameplate, @Nullable Quantity measured) {
    OptionalDouble off = FactValue.shareOff(nameplate, measured);
    if (off.isEmpty()) {
      return "";
    }
    double share = off.getAsDouble();
    String percent = Rounding.HALF_UP.text(100 * share, 0) + "\u00a0%";
    return Math.abs(share) > FactValue.NAMEPLATE_TOLERANCE
        ? percent + ", more than 10 % off"
        : percent;
  }

  private static RatedRow rated(Campaign c, String product, Method.RatedFact fact) {
    List<RatedStep> chosen =
        Entry.effective(c.ratedSteps()).stream()
            .filter(s -> s.product().equals(product) && s.fact().equals(fact.id()))
            .toList();
    List<String> said = chosen.stream().map(s -> s.step() + " (" + s.rater() + ")").toList();
    // Independent means independent: until all have chosen, only the number of choices is shown.
    String shown =
        said.size() >= fact.raters()
            ? String.join(", ", said) + (RatedStep.disagree(chosen) ? ": the raters disagree" : "")
            : said.size() + " of " + fact.raters() + " chosen; shown when all have";
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < fact.steps().size(); i++) {
      steps.add(new Step(fact.id() + "/" + i, i + ": " + fact.steps().get(i)));
    }
    return new RatedRow(fact.id(), fact.name(), shown, steps);
  }

  // ---------- what the document says ----------

  @PostMapping("/c/{cid}/products/{id}")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = ProductsController.name(problems, "name", typed);
    return change(
        cid,
        id,
        typed,
        problems,
        f -> product(f, id),
        f ->
            f.withProducts(
                Field.changed(
                    f.products(),
                    p ->
                        p.id().equals(id)
                            ? new Campaign.Product(
                                id,
                                name,
                                said(typed, "maker"),
                                said(typed, "kind"),
                                said(typed, "note"))
                            : p)),
        "data of " + name,
        model,
        request);
  }

  private static Map<String, String> product(Field field, String id) {
    Map<String, String> values = new LinkedHashMap<>();
    field.products().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .ifPresent(
            p -> {
              values.put("Name", p.name());
              values.put("Maker", Objects.requireNonNullElse(p.maker(), ""));
              values.put("Kind", Objects.requireNonNullElse(p.kind(), ""));
              values.put("Note", Objects.requireNonNullElse(p.note(), ""));
            });
    return values;
  }

  private String change(
      String cid,
      String id,
      Map<String, String> typed,
      FormProblems problems,
      FieldDocument.Part part,
      UnaryOperator<Field> change,
      String why,
      Model model,
      HttpServletRequest request) {
    if (problems.any()) {
      return again(cid, id, typed, problems, model);
    }
    Optional<FieldDocument.Conflict> conflict =
        fields.change(cid, typed, part, change, Who.of(request).word(), why);
    if (conflict.isPresent()) {
      again(cid, id, typed, problems, model);
      conflict.get().show(model);
      return "products/product";
    }
    return one(cid, id);
  }

  @PostMapping("/c/{cid}/products/{id}/specimens/add")
  @MayUse(Audience.OWNER)
  String addSpecimen(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    found(workbench.sheet(cid).campaign(), id);
    return change(
        cid,
        id,
        typed,
        new FormProblems(),
        FieldDocument.ADDS,
        f -> f.withSpecimens(Field.plus(f.specimens(), ProductsController.specimen(f, id))),
        "another specimen of " + id,
        model,
        request);
  }

  @PostMapping("/c/{cid}/products/{id}/specimens")
  @MayUse(Audience.OWNER)
  String specimen(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    String key = typed.getOrDefault("specimen", "");
    FormProblems problems = new FormProblems();
    Optional<LocalDate> on = problems.day("on", typed.get("on"));
    Optional<LocalDate> becameOn = problems.day("became-on", typed.get("became-on"));
    if (on.isPresent() && becameOn.isPresent() && becameOn.get().isBefore(on.get())) {
      problems.add("became-on", "That is before it was acquired, on " + on.get() + ".");
    }
    Campaign.Specimen said =
        new Campaign.Specimen(
            key,
            id,
            said(typed, "serial"),
            Choice.named(
                Campaign.Acquired.values(), typed.get("acquired"), Campaign.Acquired.UNKNOWN),
            said(typed, "from"),
            on.orElse(null),
            Choice.named(Campaign.Became.values(), typed.get("became"), Campaign.Became.UNKNOWN),
            becameOn.orElse(null),
            said(typed, "specimen-note"));
    return change(
        cid,
        id,
        typed,
        problems,
        f -> specimen(f, key),
        f ->
            f.withSpecimens(
                Field.changed(
                    f.specimens(), s -> s.id().equals(key) && s.product().equals(id) ? said : s)),
        "specimen " + key,
        model,
        request);
  }

  private static Map<String, String> specimen(Field field, String id) {
    Map<String, String> values = new LinkedHashMap<>();
    field.specimens().stream()
        .filter(s -> s.id().equals(id))
        .findFirst()
        .ifPresent(
            s -> {
              values.put("Serial number", Objects.requireNonNullElse(s.serial(), ""));
              values.put("How acquired", Choice.words(s.acquired()));
              values.put("From", Objects.requireNonNullElse(s.from(), ""));
              values.put("Acquired on", s.on() == null ? "" : s.on().toString());
              values.put("What became of it", Choice.words(s.became()));
              values.put("Since", s.becameOn() == null ? "" : s.becameOn().toString());
              values.put("Note", Objects.requireNonNullElse(s.note(), ""));
            });
    return values;
  }

  @PostMapping("/c/{cid}/products/{id}/prices")
  @MayUse(Audience.OWNER)
  String price(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    found(c, id);
    FormProblems problems = new FormProblems();
    String amount =
        problems
            .need("amount", typed.get("amount"), "a number, for example 129.95")
            .replace(',', '.');
    if (!amount.isEmpty() && !amount.matches("\\d{1,7}(\\.\\d{1,2})?")) {
      problems.add(
          "amount",
          "Found “"
              + typed.get("amount")
              + "”, expected a number with at most two decimals, for example 129.95.");
    }
    LocalDate today = LocalDate.ofInstant(desk.clock().instant(), c.info().zone());
    LocalDate on = problems.day("price-on", typed.get("price-on")).orElse(today);
    if (on.isAfter(today)) {
      problems.add("price-on", on + " is to come; a price is one that was seen.");
    }
    if (problems.any()) {
      return again(cid, id, typed, problems, model);
    }
    Campaign.Price price =
        new Campaign.Price(
            id, Double.parseDouble(amount), c.info().currency(), on, said(typed, "where"));
    return change(
        cid,
        id,
        typed,
        problems,
        FieldDocument.ADDS,
        f -> f.prices().contains(price) ? f : f.withPrices(Field.plus(f.prices(), price)),
        "price of " + id,
        model,
        request);
  }

  // ---------- what is entered ----------

  @PostMapping("/c/{cid}/products/{id}/facts")
  @MayUse(Audience.OWNER)
  String saveFact(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    found(c, id);
    FormProblems problems = new FormProblems();
    Method.Fact fact =
        c.method().facts().stream()
            .filter(f -> f.id().equals(typed.get("fact")))
            .findFirst()
            .orElseThrow(() -> unknown("fact"));
    Optional<Quantity> nameplate = optional(problems, "nameplate", typed, fact);
    Optional<Quantity> measured = optional(problems, "measured", typed, fact);
    if (!problems.any() && nameplate.isEmpty() && measured.isEmpty()) {
      problems.add(
          "measured",
          "Nothing here yet. Expected "
              + fact.unit().dimension().words()
              + ", for example "
              + fact.unit().dimension().example()
              + ".");
    }
    String key = FormKey.of(typed, desk.clock());
    Optional<FactValue> before = before(c, id, fact.id(), key);
    if (before.isPresent() && before.get().origin().id() == null) {
      problems.add(
          "measured",
          "Written in facts.csv without a key, so nothing can correct it. Export the folder, fill in"
              + " the column “entry”, and import it again.");
    }
    if (problems.any()) {
      return again(cid, id, typed, problems, model);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String corrects = before.map(v -> v.origin().id()).orElse(null);
    FactValue value =
        new FactValue(
            id,
            fact.id(),
            nameplate.or(() -> before.map(FactValue::nameplate)).orElse(null),
            measured.or(() -> before.map(FactValue::measured)).orElse(null),
            measured.isPresent() ? null : before.map(FactValue::uncertainty).orElse(null),
            either(said(typed, "instrument"), before.map(FactValue::instrument)),
            either(said(typed, "fact-photo"), before.map(FactValue::photo)),
            before.map(FactValue::note).orElse(null),
            new Entry.Provenance(key, stamp.who(), stamp.at(), corrects));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.FACT, value, stamp, corrects)));
    return one(cid, id);
  }

  /**
   * What holds of the fact so far, but for this very form sent twice: the new entry corrects it.
   */
  private static Optional<FactValue> before(Campaign c, String product, String fact, String key) {
    return Entry.effective(c.facts()).stream()
        .filter(v -> v.product().equals(product) && v.fact().equals(fact))
        .filter(v -> !key.equals(v.origin().id()))
        .reduce((first, later) -> later);
  }

  private static @Nullable String either(@Nullable String typed, Optional<String> before) {
    return typed != null ? typed : before.orElse(null);
  }

  private static Optional<Quantity> optional(
      FormProblems problems, String field, Map<String, String> typed, Method.Fact fact) {
    return said(typed, field) == null
        ? Optional.empty()
        : problems.quantity(field, typed.get(field), fact.unit().dimension());
  }

  @PostMapping("/c/{cid}/products/{id}/rated")
  @MayUse(Audience.OWNER)
  String rate(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    found(c, id);
    FormProblems problems = new FormProblems();
    String rater = problems.need("rater", typed.get("rater"), "who chooses");
    String reason = problems.need("reason", typed.get("reason"), "what was seen, in a sentence");
    String[] choice = typed.getOrDefault("choice", "").split("/", 2);
    boolean known =
        choice.length == 2
            && choice[1].matches("[0-4]")
            && c.method().ratedFacts().stream().anyMatch(f -> f.id().equals(choice[0]));
    if (!known) {
      problems.add("choice", "Choose one of the steps.");
    }
    String key = FormKey.of(typed, desk.clock());
    boolean sent = sheet.entries().stream().anyMatch(e -> e.key().equals(key));
    if (known && !sent && chosen(c, id, choice[0], rater)) {
      problems.add(
          "rater",
          "“"
              + rater
              + "” has chosen for this already. A second opinion comes from a second person.");
    }
    if (problems.any()) {
      return again(cid, id, typed, problems, model);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    RatedStep step =
        new RatedStep(
            id,
            choice[0],
            rater,
            Integer.parseInt(choice[1]),
            reason,
            said(typed, "rated-photo"),
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.RATED, step, stamp, null)));
    return one(cid, id);
  }

  private static boolean chosen(Campaign c, String product, String fact, String rater) {
    return Entry.effective(c.ratedSteps()).stream()
        .anyMatch(
            s ->
                s.product().equals(product)
                    && s.fact().equals(fact)
                    && s.rater().equalsIgnoreCase(rater));
  }

  /** Photographs and papers of the product: the nameplate, the box, the manual. */
  @PostMapping("/c/{cid}/products/{id}/files")
  @MayUse(Audience.OWNER)
  String attach(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam("files") List<MultipartFile> files,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request)
      throws IOException {
    found(workbench.sheet(cid).campaign(), id);
    List<MultipartFile> sent = files.stream().filter(f -> !f.isEmpty()).toList();
    if (sent.isEmpty()) {
      FormProblems problems = new FormProblems();
      problems.add("files", "No file was sent. Choose one or more, or drop them on the field.");
      return again(cid, id, typed, problems, model);
    }
    for (MultipartFile file : sent) {
      String name = ovenproof.web.FileNames.safe(file.getOriginalFilename());
      try (InputStream in = file.getInputStream()) {
        desk.attach(
            cid,
            "products/" + id + "/" + name,
            desk.evidence().put(name, in, MOST_BYTES),
            Who.of(request).word());
      }
    }
    return one(cid, id);
  }

  // ---------- shared ----------

  private static @Nullable String said(Map<String, String> typed, String field) {
    String text = typed.getOrDefault(field, "").strip();
    return text.isEmpty() ? null : text;
  }

  private static String one(String cid, String id) {
    return "redirect:/c/" + cid + "/products/" + id;
  }

  /** What was typed in one form, with what the others show of the product. */
  private String again(
      String cid, String id, Map<String, String> typed, FormProblems problems, Model model) {
    product(cid, id, model);
    Map<String, String> both = new HashMap<>();
    Campaign.Product product = found(workbench.sheet(cid).campaign(), id);
    both.put("name", product.name());
    both.put("maker", product.maker());
    both.put("kind", product.kind());
    both.put("note", product.note());
    both.putAll(typed);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", both);
    return "products/product";
  }
}
