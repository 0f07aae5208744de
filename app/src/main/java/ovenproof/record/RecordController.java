package ovenproof.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.InquiryStep;
import ovenproof.campaign.Photo;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.StoredEntry;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** Who did what, the newest first: entries, revisions and files. */
@Controller
class RecordController {
  private static final int PAGE = 200;
  private final Desk desk;
  private final Workbench workbench;

  RecordController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  private record Done(Instant at, String who, String what, String key) {}

  /** A line of the page. */
  public record Line(String when, String who, String what, String key) {}

  @GetMapping("/c/{cid}/record")
  @MayUse(Audience.OWNER)
  String record(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign campaign = sheet.campaign();
    List<Done> done = new ArrayList<>();
    for (StoredEntry e : sheet.entries()) {
      String what = words(e.body()) + (e.corrects() == null ? "" : "; corrects " + e.corrects());
      done.add(new Done(e.receivedAt(), e.who(), what, e.key()));
    }
    for (String name : List.of(Document.METHOD, Document.FIELD, Document.VERDICT, Document.DRAFT)) {
      for (Document d : desk.revisions(cid, name)) {
        String why = d.why() == null ? "" : ": " + d.why();
        done.add(new Done(d.at(), d.who(), name + ", revision " + d.revision() + why, ""));
      }
    }
    desk.attachments(cid)
        .forEach(
            a ->
                done.add(
                    new Done(
                        a.at(), a.who(), "attached " + a.path(), a.sha256().substring(0, 12))));
    done.sort(Comparator.comparing(Done::at).reversed());
    Rows<Done> part =
        Rows.of(
            done,
            PAGE,
            "/c/" + cid + "/record",
            query,
            d -> d.who() + " " + d.what() + " " + d.key());
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", campaign);
    model.addAttribute("count", done.size());
    model.addAttribute("part", part);
    model.addAttribute(
        "lines",
        part.shown().stream()
            .map(
                d ->
                    new Line(
                        Shown.time(d.at(), campaign.info().zone()), d.who(), d.what(), d.key()))
            .toList());
    return "record/record";
  }

  private static String words(Object body) {
    if (body instanceof Run r) {
      return "began run "
          + r.id()
          + (r.redoOf() == null ? "" : ", redo of " + r.redoOf() + ": " + r.cause());
    } else if (body instanceof Event e) {
      return e.run() + ": " + e.type().word() + " at " + Shown.elapsed(e.elapsedSeconds());
    } else if (body instanceof Reading r) {
      return r.run() + ": read " + r.measure() + " " + r.value();
    } else if (body instanceof Rating r) {
      return r.run() + ": marked " + r.mark() + " " + r.value();
    } else if (body instanceof Deviation d) {
      return d.run() + ": deviation of class " + d.deviationClass() + ", " + d.what();
    } else if (body instanceof FactValue f) {
      return f.product() + ": fact " + f.fact();
    } else if (body instanceof RatedStep r) {
      return r.product() + ": rated " + r.fact() + " as step " + r.step();
    } else if (body instanceof FeatureState f) {
      return f.product()
          + ": feature "
          + f.feature()
          + ", "
          + f.state().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    } else if (body instanceof InquiryStep i) {
      return "inquiry " + i.inquiry() + ": " + i.kind().word();
    } else if (body instanceof Photo p) {
      return p.run() + ": photo " + p.file();
    }
    return body.getClass().getSimpleName().toLowerCase(java.util.Locale.ROOT);
  }
}
