package ovenproof.products;

import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
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
import ovenproof.desk.Keys;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StaleRevisionException;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Method;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Slug;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** Products: names, prices, facts, rated facts, and who was left out. */
@Controller
class ProductsController {
  private static final double NAMEPLATE_LIMIT = 0.10;
  private final Desk desk;
  private final Workbench workbench;

  ProductsController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A product in the list. */
  public record Row(
      String id, String name, String maker, String price, String acquired, String became) {}

  @GetMapping("/c/{cid}/products")
  @MayUse(Audience.OWNER)
  String list(@PathVariable String cid, Model model) {
    Campaign c = frame(cid, model);
    model.addAttribute("rows", c.products().stream().map(p -> row(c, p)).toList());
    return "products/list";
  }

  private Campaign frame(String cid, Model model) {
    Campaign campaign = workbench.sheet(cid).campaign();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", campaign);
    model.addAttribute("revision", desk.document(cid, Document.FIELD).revision());
    return campaign;
  }

  private static Row row(Campaign c, Campaign.Product p) {
    String price =
        c.prices().stream()
            .filter(x -> x.product().equals(p.id()))
            .max(Comparator.comparing(Campaign.Price::on))
            .map(
                x ->
                    BigDecimal.valueOf(x.amount()).toPlainString()
                        + "\u00a0"
                        + x.currency()
                        + ", "
                        + x.on())
            .orElse("–");
    List<Campaign.Specimen> specimens =
        c.specimens().stream().filter(s -> s.product().equals(p.id())).toList();
    String acquired = words(specimens.stream().map(s -> s.acquired().name()).distinct().toList());
    String became = words(specimens.stream().map(s -> s.became().name()).distinct().toList());
    return new Row(p.id(), p.name(), p.maker() == null ? "–" : p.maker(), price, acquired, became);
  }

  private static String words(List<String> names) {
    String all = String.join(", ", names).toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    return all.isEmpty() || all.equals("unknown") ? "not said" : all;
  }

  /** Saves a change of the field; a form sent after someone else saved is told so, nothing lost. */
  private @Nullable String save(
      String cid,
      Map<String, String> typed,
      FormProblems problems,
      String field,
      Field changed,
      String why,
      HttpServletRequest request) {
    String revision = typed.getOrDefault("revision", "0");
    try {
      desk.saveField(
          cid,
          revision.matches("\\d{1,9}") ? Long.parseLong(revision) : 0,
          changed,
          Who.of(request).word(),
          why);
      return null;
    } catch (StaleRevisionException stale) {
      problems.add(
          field,
          "The products were saved meanwhile by the "
              + stale.current().who()
              + " (revision "
              + stale.current().revision()
              + "). What you typed is still here, theirs stands beside it: send again to put yours on top.");
      return field;
    }
  }

  @PostMapping("/c/{cid}/products")
  @MayUse(Audience.OWNER)
  String add(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = problems.need("name", typed.get("name"), "a name");
    Field field = desk.field(cid);
    boolean there = field.products().stream().anyMatch(p -> p.name().equals(name));
    if (there) {
      problems.add(
          "name",
          "“"
              + name
              + "” is compared already. Two ovens of one name need a difference in their names.");
    }
    if (!problems.any()) {
      String id =
          Slug.of(
              name,
              "product",
              taken -> field.products().stream().anyMatch(p -> p.id().equals(taken)));
      Field changed =
          field
              .withProducts(
                  Field.plus(field.products(), new Campaign.Product(id, name, null, null, null)))
              .withSpecimens(
                  Field.plus(
                      field.specimens(),
                      new Campaign.Specimen(
                          id + "-1",
                          id,
                          null,
                          Campaign.Acquired.UNKNOWN,
                          null,
                          null,
                          Campaign.Became.UNKNOWN,
                          null,
                          null)));
      save(cid, typed, problems, "name", changed, "added " + name, request);
    }
    return problems.any() ? again(cid, typed, problems, model) : "redirect:/c/" + cid + "/products";
  }

  @PostMapping("/c/{cid}/left-out")
  @MayUse(Audience.OWNER)
  String leaveOut(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = problems.need("candidate", typed.get("candidate"), "a name");
    String why = problems.need("why", typed.get("why"), "a reason");
    if (!problems.any()) {
      Field field = desk.field(cid);
      Field changed =
          field.withLeftOut(Field.plus(field.leftOut(), new Campaign.LeftOut(name, why)));
      save(cid, typed, problems, "candidate", changed, "left out " + name, request);
    }
    return problems.any() ? again(cid, typed, problems, model) : "redirect:/c/" + cid + "/products";
  }

  private String again(String cid, Map<String, String> typed, FormProblems problems, Model model) {
    list(cid, model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    return "products/list";
  }

  // ---------- one product ----------

  /** A fact, nameplate beside measured. */
  public record FactRow(
      String id, String name, String nameplate, String measured, String difference) {}

  /** A rated fact with what was chosen. */
  public record RatedRow(String id, String name, String said, List<Step> steps) {}

  /** A step that can be chosen. */
  public record Step(String key, String words) {}

  @GetMapping("/c/{cid}/products/{id}")
  @MayUse(Audience.OWNER)
  String product(@PathVariable String cid, @PathVariable String id, Model model) {
    Campaign c = frame(cid, model);
    Campaign.Product product = found(c, id);
    model.addAttribute("product", product);
    model.addAttribute("prices", c.prices().stream().filter(p -> p.product().equals(id)).toList());
    model.addAttribute("facts", c.method().facts().stream().map(f -> fact(c, id, f)).toList());
    model.addAttribute(
        "ratedFacts", c.method().ratedFacts().stream().map(f -> rated(c, id, f)).toList());
    Map<String, String> typed = new HashMap<>();
    typed.put("name", product.name());
    typed.put("maker", product.maker());
    typed.put("note", product.note());
    model.addAttribute("typed", typed);
    return "products/product";
  }

  private static Campaign.Product found(Campaign c, String id) {
    return c.product(id)
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of(id), "no such product", "a product of this campaign", "")));
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
    if (nameplate == null
        || measured == null
        || nameplate.contract() == 0
        || nameplate.unit().dimension() != measured.unit().dimension()) {
      return "";
    }
    double share = measured.contract() / nameplate.contract() - 1;
    String percent = Rounding.HALF_UP.text(100 * share, 0) + "\u00a0%";
    return Math.abs(share) > NAMEPLATE_LIMIT ? percent + ", more than 10 % off" : percent;
  }

  private static RatedRow rated(Campaign c, String product, Method.RatedFact fact) {
    List<String> said = new ArrayList<>();
    for (RatedStep step : Entry.effective(c.ratedSteps())) {
      if (step.product().equals(product) && step.fact().equals(fact.id())) {
        said.add(step.step() + " (" + step.rater() + ")");
      }
    }
    // Independent means independent: until all have chosen, only the number of choices is shown.
    String shown =
        said.size() >= fact.raters()
            ? String.join(", ", said)
            : said.size() + " of " + fact.raters() + " chosen; shown when all have";
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < fact.steps().size(); i++) {
      steps.add(new Step(fact.id() + "/" + i, i + ": " + fact.steps().get(i)));
    }
    return new RatedRow(fact.id(), fact.name(), shown, steps);
  }

  @PostMapping("/c/{cid}/products/{id}")
  @MayUse(Audience.OWNER)
  String rename(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = problems.need("name", typed.get("name"), "a name");
    if (!problems.any()) {
      Field field = desk.field(cid);
      Field changed =
          field.withProducts(
              Field.changed(
                  field.products(),
                  p ->
                      p.id().equals(id)
                          ? new Campaign.Product(
                              id, name, said(typed, "maker"), p.kind(), said(typed, "note"))
                          : p));
      save(cid, typed, problems, "name", changed, "data of " + name, request);
    }
    return problems.any() ? againOne(cid, id, typed, problems, model) : one(cid, id);
  }

  private static @Nullable String said(Map<String, String> typed, String field) {
    String text = typed.getOrDefault(field, "").strip();
    return text.isEmpty() ? null : text;
  }

  private static String one(String cid, String id) {
    return "redirect:/c/" + cid + "/products/" + id;
  }

  private String againOne(
      String cid, String id, Map<String, String> typed, FormProblems problems, Model model) {
    product(cid, id, model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    return "products/product";
  }

  @PostMapping("/c/{cid}/products/{id}/prices")
  @MayUse(Audience.OWNER)
  String price(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
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
    if (!problems.any()) {
      Field field = desk.field(cid);
      LocalDate today = LocalDate.ofInstant(desk.clock().instant(), field.info().zone());
      Campaign.Price price =
          new Campaign.Price(
              id, Double.parseDouble(amount), field.info().currency(), today, said(typed, "where"));
      if (!field.prices().contains(price)) {
        save(
            cid,
            typed,
            problems,
            "amount",
            field.withPrices(Field.plus(field.prices(), price)),
            "price of " + id,
            request);
      }
    }
    return problems.any() ? againOne(cid, id, typed, problems, model) : one(cid, id);
  }

  @PostMapping("/c/{cid}/products/{id}/facts")
  @MayUse(Audience.OWNER)
  String saveFact(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    Method.Fact fact =
        c.method().facts().stream()
            .filter(f -> f.id().equals(typed.get("fact")))
            .findFirst()
            .orElseThrow(
                () ->
                    new InputException(
                        Problem.error(
                            Place.of("fact"), "no such fact", "a fact of the method", "")));
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
    String key = typed.getOrDefault("key", "");
    if (problems.any() || !Keys.isKey(key)) {
      return againOne(cid, id, typed, problems, model);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    FactValue value =
        new FactValue(
            id,
            fact.id(),
            nameplate.orElse(null),
            measured.orElse(null),
            null,
            null,
            null,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.FACT, value, stamp, null)));
    return one(cid, id);
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
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    String rater = problems.need("rater", typed.get("rater"), "who chooses");
    String[] choice = typed.getOrDefault("choice", "").split("/", 2);
    boolean known =
        choice.length == 2
            && choice[1].matches("[0-4]")
            && c.method().ratedFacts().stream().anyMatch(f -> f.id().equals(choice[0]));
    if (!known) {
      problems.add("choice", "Choose one of the steps.");
    }
    boolean twice =
        known
            && Entry.effective(c.ratedSteps()).stream()
                .anyMatch(
                    s ->
                        s.product().equals(id)
                            && s.fact().equals(choice[0])
                            && s.rater().equals(rater));
    String key = typed.getOrDefault("key", "");
    if (twice && desk.entries(cid).stream().noneMatch(e -> e.key().equals(key))) {
      problems.add(
          "rater",
          "“"
              + rater
              + "” has chosen for this already. A second opinion comes from a second person.");
    }
    if (problems.any() || !Keys.isKey(key)) {
      return againOne(cid, id, typed, problems, model);
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    RatedStep step =
        new RatedStep(
            id,
            choice[0],
            rater,
            Integer.parseInt(choice[1]),
            said(typed, "reason"),
            null,
            null,
            new Entry.Provenance(key, stamp.who(), stamp.at(), null));
    desk.append(cid, List.of(new NewEntry(key, EntryKind.RATED, step, stamp, null)));
    return one(cid, id);
  }
}
