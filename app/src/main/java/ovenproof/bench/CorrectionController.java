package ovenproof.bench;

import jakarta.servlet.http.HttpServletRequest;
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
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Dimension;
import ovenproof.desk.Desk;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.method.TestPlan;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** Corrections: a new entry that holds instead of an older one, which stays in the record. */
@Controller
class CorrectionController {
  private final Desk desk;
  private final Workbench workbench;

  CorrectionController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** What a correction page shows of an entry. */
  private record Now(String run, String what, String label, String value) {}

  @GetMapping("/c/{cid}/entries/{key}")
  @MayUse(Audience.OWNER)
  String correct(@PathVariable String cid, @PathVariable String key, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    StoredEntry entry = entry(sheet, key);
    Now now = now(entry);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    model.addAttribute("entry", key);
    model.addAttribute("run", now.run());
    model.addAttribute("what", now.what());
    model.addAttribute("label", now.label());
    model.addAttribute("now", now.value());
    model.addAttribute("mended", sheet.entries().stream().anyMatch(e -> key.equals(e.corrects())));
    Map<String, String> typed = new HashMap<>();
    typed.put("value", now.value());
    model.addAttribute("typed", typed);
    return "bench/correct";
  }

  private static Now now(StoredEntry entry) {
    if (entry.body() instanceof Event e) {
      return new Now(
          e.run(), e.type().word(), "Since the start", Shown.elapsed(e.elapsedSeconds()));
    } else if (entry.body() instanceof Reading r) {
      return new Now(r.run(), r.measure(), "Value with its unit", r.value().toString());
    } else if (entry.body() instanceof Rating r) {
      return new Now(r.run(), r.mark(), "Points", String.valueOf(r.value()));
    } else if (entry.body() instanceof Deviation d) {
      return new Now(
          d.run(), "deviation, " + d.what(), "Class", String.valueOf(d.deviationClass()));
    }
    throw Bench.unknown("entry that can be corrected here");
  }

  @PostMapping("/c/{cid}/entries/{key}")
  @MayUse(Audience.OWNER)
  String correct(
      @PathVariable String cid,
      @PathVariable String key,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    StoredEntry entry = entry(sheet, key);
    FormProblems problems = new FormProblems();
    String note = problems.need("note", typed.get("note"), "why it is corrected");
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    String own = Bench.key(desk, typed);
    Entry.Provenance origin = new Entry.Provenance(own, stamp.who(), stamp.at(), key);
    Optional<Object> mended = mended(sheet, entry, typed.get("value"), note, origin, problems);
    Optional<StoredEntry> before =
        sheet.entries().stream().filter(e -> key.equals(e.corrects())).findFirst();
    if (before.isPresent() && !before.get().key().equals(own)) {
      problems.add("value", "It was corrected meanwhile; correct the newer entry instead.");
    }
    if (mended.isEmpty() || problems.any()) {
      correct(cid, key, model);
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      return "bench/correct";
    }
    desk.append(cid, List.of(new NewEntry(own, entry.kind(), mended.get(), stamp, key)));
    return Bench.toRun(cid, now(entry).run());
  }

  private static Optional<Object> mended(
      Workbench.Sheet sheet,
      StoredEntry entry,
      @Nullable String typed,
      String note,
      Entry.Provenance origin,
      FormProblems problems) {
    if (entry.body() instanceof Event e) {
      return problems
          .quantity("value", typed, Dimension.TIME)
          .map(
              q ->
                  new Event(
                      e.run(),
                      e.type(),
                      q.contract(),
                      null,
                      e.batch(),
                      e.value(),
                      e.note() == null ? note : e.note() + "; " + note,
                      origin));
    } else if (entry.body() instanceof Reading r) {
      return problems
          .quantity("value", typed, r.value().unit().dimension())
          .map(
              q ->
                  new Reading(
                      r.run(),
                      r.measure(),
                      r.batch(),
                      r.piece(),
                      r.face(),
                      q,
                      r.uncertainty(),
                      r.instrument(),
                      r.elapsedSeconds(),
                      note,
                      origin));
    } else if (entry.body() instanceof Deviation d) {
      return level(typed, problems)
          .map(level -> new Deviation(d.run(), level, d.what(), note, origin));
    } else if (entry.body() instanceof Rating r) {
      return rating(sheet, r, typed, note, origin, problems);
    }
    throw Bench.unknown("entry that can be corrected here");
  }

  private static Optional<Integer> level(@Nullable String typed, FormProblems problems) {
    String text = problems.need("value", typed, "1, 2 or 3");
    if (text.matches("[123]")) {
      return Optional.of(Integer.valueOf(text));
    }
    problems.add("value", "Found “" + text + "”, expected 1, 2 or 3.");
    return Optional.empty();
  }

  private static Optional<Object> rating(
      Workbench.Sheet sheet,
      Rating r,
      @Nullable String typed,
      String note,
      Entry.Provenance origin,
      FormProblems problems) {
    Campaign c = sheet.campaign();
    Run run = Bench.run(c, r.run());
    TestPlan.PanelMark mark =
        Bench.test(c, run).marks().stream()
            .filter(m -> m.id().equals(r.mark()))
            .findFirst()
            .orElseThrow(() -> Bench.unknown("mark"));
    Double points = Points.read(problems, "value", typed, mark.lowest(), mark.highest());
    return points == null
        ? Optional.empty()
        : Optional.of(
            new Rating(
                r.session(),
                r.assessor(),
                r.run(),
                r.batch(),
                r.mark(),
                points,
                r.order(),
                r.code(),
                r.minutesSinceRemoval(),
                note,
                origin));
  }

  private static StoredEntry entry(Workbench.Sheet sheet, String key) {
    return sheet.entries().stream()
        .filter(e -> e.key().equals(key))
        .findFirst()
        .orElseThrow(() -> Bench.unknown("entry"));
  }
}
