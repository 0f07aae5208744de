package ovenproof.home;

import jakarta.servlet.http.HttpServletRequest;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.desk.Field;
import ovenproof.method.Method;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.web.FormKey;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Slug;
import ovenproof.web.Who;

/** A new campaign without products or runs, from a starter method. */
@Controller
class NewCampaignController {
  private final Desk desk;

  NewCampaignController(Desk desk) {
    this.desk = desk;
  }

  /** A method to begin with, and the names of its tests. */
  public record Starter(String key, String title, String tests) {}

  @GetMapping("/new")
  @MayUse(Audience.OWNER)
  String form(Model model) {
    model.addAttribute("methods", Starters.names().stream().map(this::starter).toList());
    model.addAttribute("machineZone", ZoneId.systemDefault().getId());
    return "home/new";
  }

  private Starter starter(String name) {
    Method method = desk.method(Starters.text(name));
    List<String> tests = method.tests().stream().map(TestPlan::name).toList();
    return new Starter(name, method.title(), tests.stream().collect(Collectors.joining(", ")));
  }

  @PostMapping("/new")
  @MayUse(Audience.OWNER)
  String make(@RequestParam Map<String, String> typed, Model model, HttpServletRequest request) {
    FormProblems problems = new FormProblems();
    String title = problems.need("title", typed.get("title"), "a name");
    String starter = typed.getOrDefault("starter", "");
    if (!Starters.names().contains(starter)) {
      problems.add("starter", "Choose one of the methods; every part of it can be changed.");
    }
    ZoneId zone = zone(problems, said(typed, "zone"));
    String currency = currency(problems, said(typed, "currency"));
    String kitchen = said(typed, "kitchen");
    if (!kitchen.isEmpty()) {
      problems.need("kitchen", kitchen, "a name");
    }
    if (problems.any()) {
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return form(model);
    }
    // The key of the form is part of the campaign's: sent twice it makes one campaign.
    String key = FormKey.of(typed, desk.clock());
    String id =
        Slug.of(title, "campaign", taken -> false) + "-" + Integer.toHexString(key.hashCode());
    if (desk.find(id).isEmpty()) {
      Campaign.Info info =
          new Campaign.Info(
              id,
              title,
              kitchen.isEmpty() ? "This kitchen" : kitchen,
              zone,
              currency,
              Campaign.Provenance.REAL,
              null,
              null,
              null);
      desk.create(Field.of(info), Starters.text(starter), Who.of(request).word());
    }
    return "redirect:/c/" + id + "/products";
  }

  private static String said(Map<String, String> typed, String field) {
    return typed.getOrDefault(field, "").strip();
  }

  private static ZoneId zone(FormProblems problems, String typed) {
    try {
      return typed.isEmpty() ? ZoneId.systemDefault() : ZoneId.of(typed);
    } catch (DateTimeException unknown) {
      problems.add("zone", "Found “" + typed + "”, expected a time zone such as Europe/Dublin.");
      return ZoneId.systemDefault();
    }
  }

  private static String currency(FormProblems problems, String typed) {
    try {
      return typed.isEmpty()
          ? "EUR"
          : Currency.getInstance(typed.toUpperCase(Locale.ROOT)).getCurrencyCode();
    } catch (IllegalArgumentException unknown) {
      problems.add("currency", "Found “" + typed + "”, expected three letters such as EUR or USD.");
      return "EUR";
    }
  }
}
