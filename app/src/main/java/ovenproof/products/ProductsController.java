package ovenproof.products;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.core.quantity.Rounding;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.Field;
import ovenproof.web.FieldDocument;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Slug;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** The field: products compared, and candidates left out and why. */
@Controller
class ProductsController {
  private static final int LONGEST_NAME = 300;
  private static final int AT_ONCE = 100;
  private final Desk desk;
  private final Workbench workbench;
  private final FieldDocument fields;

  ProductsController(Desk desk, Workbench workbench, FieldDocument fields) {
    this.desk = desk;
    this.workbench = workbench;
    this.fields = fields;
  }

  /** A product in the list. */
  public record Row(
      String id,
      String name,
      String maker,
      String price,
      String acquired,
      String became,
      String known) {}

  @GetMapping("/c/{cid}/products")
  @MayUse(Audience.OWNER)
  String list(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    Known known = new Known(c);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("revision", desk.document(cid, Document.FIELD).revision());
    model.addAttribute("checklist", checklist(c));
    Rows<Campaign.Product> part =
        Rows.of(
            c.products(),
            AT_ONCE,
            "/c/" + cid + "/products",
            query,
            p -> p.name() + " " + Objects.requireNonNullElse(p.maker(), ""));
    model.addAttribute("part", part);
    model.addAttribute("rows", part.shown().stream().map(p -> row(c, p, known)).toList());
    return "products/list";
  }

  private static String checklist(Campaign c) {
    FeatureChecklist checklist = FeatureChecklist.of(c);
    int listed = checklist.features().size();
    long looked =
        checklist.features().stream()
            .filter(
                f -> c.products().stream().anyMatch(p -> checklist.state(p.id(), f).isPresent()))
            .count();
    return looked == 0
        ? "Nothing is ticked yet: yes, no or not applicable, for all products at once."
        : looked + " of " + listed + (listed == 1 ? " feature" : " features") + " looked at.";
  }

  /** Facts and rated steps that are there, of those that the method asks. */
  private static final class Known {
    private final Campaign campaign;
    private final Set<String> facts = new HashSet<>();
    private final Set<String> rated = new HashSet<>();

    Known(Campaign c) {
      this.campaign = c;
      Entry.effective(c.facts()).forEach(f -> facts.add(f.product() + "/" + f.fact()));
      Entry.effective(c.ratedSteps())
          .forEach(s -> rated.add(s.product() + "/" + s.fact() + "/" + s.rater()));
    }

    String of(String product) {
      long known =
          campaign.method().facts().stream()
              .filter(f -> facts.contains(product + "/" + f.id()))
              .count();
      int asked = campaign.method().ratedFacts().stream().mapToInt(f -> f.raters()).sum();
      long chosen = rated.stream().filter(r -> r.startsWith(product + "/")).count();
      return known
          + " of "
          + campaign.method().facts().size()
          + " facts, "
          + Math.min(chosen, asked)
          + " of "
          + asked
          + " rated steps";
    }
  }

  private static Row row(Campaign c, Campaign.Product p, Known known) {
    String price =
        c.prices().stream()
            .filter(x -> x.product().equals(p.id()))
            .max(Comparator.comparing(Campaign.Price::on))
            .map(
                x -> Rounding.HALF_UP.text(x.amount(), 2) + "\u00a0" + x.currency() + ", " + x.on())
            .orElse("–");
    List<Campaign.Specimen> specimens =
        c.specimens().stream().filter(s -> s.product().equals(p.id())).toList();
    String acquired = words(specimens.stream().map(s -> s.acquired().name()).distinct().toList());
    String became = words(specimens.stream().map(s -> s.became().name()).distinct().toList());
    return new Row(
        p.id(),
        p.name(),
        p.maker() == null ? "–" : p.maker(),
        price,
        acquired,
        became,
        known.of(p.id()));
  }

  private static String words(List<String> names) {
    String all = String.join(", ", names).toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    return all.isEmpty() || all.equals("unknown") ? "not said" : all;
  }

  @PostMapping("/c/{cid}/products")
  @MayUse(Audience.OWNER)
  String add(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = name(problems, "name", typed);
    if (desk.field(cid).products().stream().anyMatch(p -> p.name().equals(name))) {
      problems.add(
          "name",
          "“"
              + name
              + "” is compared already. Two ovens of one name need a difference in their names.");
    }
    if (problems.any()) {
      return again(cid, typed, problems, model);
    }
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f -> with(f, name),
        Who.of(request).word(),
        "added " + name);
    return back(cid);
  }

  /** A name as it is printed: something, and no more than fits a line or two. */
  static String name(FormProblems problems, String field, Map<String, String> typed) {
    String name = problems.need(field, typed.get(field), "a name");
    if (name.length() > LONGEST_NAME) {
      problems.add(field, name.length() + " characters; a name has at most " + LONGEST_NAME + ".");
    }
    return name;
  }

  private static Field with(Field field, String name) {
    String id =
        Slug.of(
            name,
            "product",
            taken -> field.products().stream().anyMatch(p -> p.id().equals(taken)));
    return field
        .withProducts(
            Field.plus(field.products(), new Campaign.Product(id, name, null, null, null)))
        .withSpecimens(Field.plus(field.specimens(), specimen(field, id)));
  }

  /** One more appliance of a product, of which nothing is known yet. */
  static Campaign.Specimen specimen(Field field, String product) {
    int number = 1;
    for (String id = product + "-1"; taken(field, id); id = product + "-" + number) {
      number++;
    }
    return new Campaign.Specimen(
        product + "-" + number,
        product,
        null,
        Campaign.Acquired.UNKNOWN,
        null,
        null,
        Campaign.Became.UNKNOWN,
        null,
        null);
  }

  private static boolean taken(Field field, String id) {
    return field.specimens().stream().anyMatch(s -> s.id().equals(id));
  }

  @PostMapping("/c/{cid}/left-out")
  @MayUse(Audience.OWNER)
  String leaveOut(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String name = name(problems, "candidate", typed);
    String why = problems.need("why", typed.get("why"), "a reason");
    if (problems.any()) {
      return again(cid, typed, problems, model);
    }
    Optional<FieldDocument.Conflict> conflict =
        fields.change(
            cid,
            typed,
            f -> Map.of(name, reason(f, name)),
            f -> leftOut(f, new Campaign.LeftOut(name, why)),
            Who.of(request).word(),
            "left out " + name);
    if (conflict.isPresent()) {
      again(cid, typed, problems, model);
      conflict.get().show(model);
      return "products/list";
    }
    return back(cid);
  }

  private static String reason(Field field, String name) {
    return field.leftOut().stream()
        .filter(l -> l.name().equals(name))
        .map(Campaign.LeftOut::why)
        .findFirst()
        .orElse("");
  }

  /** Named again, a candidate gets the new reason. */
  private static Field leftOut(Field field, Campaign.LeftOut candidate) {
    List<Campaign.LeftOut> others =
        field.leftOut().stream().filter(l -> !l.name().equals(candidate.name())).toList();
    return field.withLeftOut(Field.plus(others, candidate));
  }

  @PostMapping("/c/{cid}/left-out/drop")
  @MayUse(Audience.OWNER)
  String drop(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    String name = typed.getOrDefault("candidate", "");
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f -> f.withLeftOut(f.leftOut().stream().filter(l -> !l.name().equals(name)).toList()),
        Who.of(request).word(),
        "no longer left out: " + name);
    return back(cid);
  }

  private String again(String cid, Map<String, String> typed, FormProblems problems, Model model) {
    list(cid, Map.of(), model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    return "products/list";
  }

  private static String back(String cid) {
    return "redirect:/c/" + cid + "/products";
  }
}
