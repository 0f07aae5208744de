package ovenproof.bench;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.measure.HandCore;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.PageFields;
import ovenproof.web.Workbench;

/** One run: its page, and what people enter on it. */
@Controller
class RunController {
  private final Desk desk;
  private final Workbench workbench;
  private final RunPage page;

  RunController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.page = new RunPage(desk);
  }

  @GetMapping("/c/{cid}/runs/{id}")
  @MayUse(Audience.OWNER)
  String run(@PathVariable String cid, @PathVariable String id, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    return page.show(sheet, cid, Bench.run(sheet.campaign(), id), model::addAttribute);
  }

  /** One form in hand: who sent it, for which run, and what is wrong with it. */
  private final class Form {
    final String cid;
    final Workbench.Sheet sheet;
    final Run run;
    final TestPlan test;
    final Map<String, String> typed;
    final FormProblems problems = new FormProblems();
    final NewEntry.Stamp stamp;
    final String key;

    Form(String cid, String id, Map<String, String> typed, HttpServletRequest request) {
      this.cid = cid;
      this.sheet = workbench.sheet(cid);
      this.run = Bench.run(sheet.campaign(), id);
      this.test = Bench.test(sheet.campaign(), run);
      this.typed = typed;
      this.stamp = Moment.of(request, desk.clock().instant());
      this.key = Bench.key(desk, typed);
    }

    Entry.Provenance origin() {
      return new Entry.Provenance(key, stamp.who(), stamp.at(), null);
    }

    String again(PageFields fields) {
      return page.again(sheet, cid, run, typed, problems, fields);
    }

    String save(EntryKind kind, Object body, @Nullable String corrects) {
      desk.append(cid, List.of(new NewEntry(key, kind, body, stamp, corrects)));
      return Bench.toRun(cid, run.id());
    }

    /** The batch chosen; the only one when the test has one. */
    @Nullable Integer batch() {
      String batch = typed.getOrDefault("batch", "");
      return batch.matches("[1-9]\\d?") ? Integer.valueOf(batch) : null;
    }

    Optional<Quantity> optional(String field, Dimension dimension) {
      return Bench.said(typed, field) == null
          ? Optional.empty()
          : problems.quantity(field, typed.get(field), dimension);
    }
  }

  @PostMapping("/c/{cid}/runs/{id}/events")
  @MayUse(Audience.OWNER)
  String event(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Form form = new Form(cid, id, typed, request);
    Event.Type type =
        Event.Type.named(typed.getOrDefault("type", "")).orElseThrow(() -> Bench.unknown("event"));
    Double seconds = elapsed(form);
    String note = Bench.said(typed, "event-note");
    if (type == Event.Type.NOTE && note == null) {
      form.problems.add("event-note", "Nothing here yet. Expected what happened, in words.");
    }
    if (form.problems.any() || seconds == null) {
      return form.again(model::addAttribute);
    }
    Instant started = form.run.started();
    String ended = typed.getOrDefault("ended", "");
    Event event =
        new Event(
            id,
            type,
            seconds,
            started == null ? null : started.plusMillis(Math.round(seconds * 1000)),
            form.batch(),
            type == Event.Type.STOP && Bench.ENDINGS.contains(ended) ? ended : null,
            note,
            form.origin());
    return form.save(EntryKind.EVENT, event, null);
  }

  private static @Nullable Double elapsed(Form form) {
    String typed = form.typed.getOrDefault("at", "");
    if (!typed.isBlank()) {
      return form.problems
          .quantity("at", typed, Dimension.TIME)
          .map(Quantity::contract)
          .orElse(null);
    }
    Instant started = form.run.started();
    if (started == null) {
      form.problems.add(
          "at", "The start of this run has no clock time; type the time since the start.");
      return null;
    }
    return Math.max(0, Duration.between(started, form.stamp.at()).toMillis() / 1000.0);
  }

  /** A reading that the method asks for, and what kind of value it is. */
  private record Typed(String measure, Dimension dimension) {}

  private static Typed typed(TestPlan test, String reading) {
    for (MeasureUse use : test.measures()) {
      if (HandCore.isRead(use) && HandCore.restOf(use).equals(reading)) {
        return new Typed(reading, Dimension.TIME);
      }
      if (HandCore.isRead(use) && use.ofOrId().equals(reading)) {
        return new Typed(reading, Dimension.TEMPERATURE);
      }
    }
    MeasureUse use = test.measure(reading).orElseThrow(() -> Bench.unknown("reading"));
    Unit unit = use.unit() == null ? Unit.ONE : use.unit();
    return new Typed(use.ofOrId(), unit.dimension());
  }

  @PostMapping("/c/{cid}/runs/{id}/readings")
  @MayUse(Audience.OWNER)
  String reading(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Form form = new Form(cid, id, typed, request);
    Typed asked = typed(form.test, typed.getOrDefault("reading", ""));
    Optional<Quantity> value =
        form.problems.quantity("value", typed.get("value"), asked.dimension());
    Optional<Quantity> when = form.optional("read-at", Dimension.TIME);
    if (form.problems.any() || value.isEmpty()) {
      return form.again(model::addAttribute);
    }
    Reading reading =
        new Reading(
            id,
            asked.measure(),
            form.batch(),
            Bench.said(typed, "read-piece"),
            null,
            value.get(),
            null,
            Bench.said(typed, "instrument"),
            when.map(Quantity::contract).orElse(null),
            Bench.said(typed, "read-note"),
            form.origin());
    return form.save(EntryKind.READING, reading, null);
  }

  @PostMapping("/c/{cid}/runs/{id}/marks")
  @MayUse(Audience.OWNER)
  String mark(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Form form = new Form(cid, id, typed, request);
    TestPlan.PanelMark mark =
        form.test.marks().stream()
            .filter(m -> m.id().equals(typed.get("mark")))
            .findFirst()
            .orElseThrow(() -> Bench.unknown("mark"));
    Double points =
        Points.read(form.problems, "points", typed.get("points"), mark.lowest(), mark.highest());
    String assessor =
        form.problems.need("assessor", typed.get("assessor"), "a key for the taster, such as A1");
    if (form.problems.any() || points == null) {
      return form.again(model::addAttribute);
    }
    Rating rating =
        new Rating(
            "at-the-bench",
            assessor,
            id,
            form.batch(),
            mark.id(),
            points,
            null,
            null,
            null,
            null,
            form.origin());
    return form.save(EntryKind.RATING, rating, null);
  }

  /** A piece, or what was not known of it before: what is left empty stays as it was. */
  @PostMapping("/c/{cid}/runs/{id}/pieces")
  @MayUse(Audience.OWNER)
  String piece(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Form form = new Form(cid, id, typed, request);
    String name = form.problems.need("piece", typed.get("piece"), "a key such as s1");
    Optional<Quantity> before = form.optional("before", Dimension.MASS);
    Optional<Quantity> after = form.optional("after", Dimension.MASS);
    if (form.problems.any()) {
      return form.again(model::addAttribute);
    }
    int batch = Objects.requireNonNullElse(form.batch(), 1);
    Optional<StoredEntry> known = known(form.sheet, id, batch, name);
    Piece was = known.map(e -> (Piece) e.body()).orElse(null);
    Piece piece =
        new Piece(
            id,
            batch,
            name,
            orElse(Bench.said(typed, "position"), was == null ? null : was.position()),
            orElse(Bench.said(typed, "lot"), was == null ? null : was.lot()),
            orElse(before.orElse(null), was == null ? null : was.before()),
            orElse(after.orElse(null), was == null ? null : was.after()),
            was == null ? null : was.instrument(),
            was == null ? null : was.note());
    if (piece.equals(was)) {
      return Bench.toRun(cid, id);
    }
    return form.save(EntryKind.PIECE, piece, known.map(StoredEntry::key).orElse(null));
  }

  private static <T> @Nullable T orElse(@Nullable T value, @Nullable T other) {
    return value == null ? other : value;
  }

  /** The entry that holds for a piece: the last one. */
  private static Optional<StoredEntry> known(
      Workbench.Sheet sheet, String run, int batch, String piece) {
    return sheet.entries().stream()
        .filter(
            e ->
                e.body() instanceof Piece p
                    && p.run().equals(run)
                    && p.batch() == batch
                    && p.piece().equals(piece))
        .reduce((a, b) -> b);
  }

  @PostMapping("/c/{cid}/runs/{id}/deviations")
  @MayUse(Audience.OWNER)
  String deviation(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Form form = new Form(cid, id, typed, request);
    String what = form.problems.need("what", typed.get("what"), "what departed from the method");
    String level = typed.getOrDefault("class", "");
    if (!level.matches("[123]")) {
      form.problems.add("class", "Choose 1, 2 or 3.");
    }
    if (form.problems.any()) {
      return form.again(model::addAttribute);
    }
    Deviation deviation = new Deviation(id, Integer.parseInt(level), what, null, form.origin());
    return form.save(EntryKind.DEVIATION, deviation, null);
  }
}
