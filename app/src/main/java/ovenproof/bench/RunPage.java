package ovenproof.bench;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.chart.Sign;
import ovenproof.core.quantity.Quantity;
import ovenproof.desk.Desk;
import ovenproof.desk.StoredEntry;
import ovenproof.home.RunState;
import ovenproof.measure.CoreCriterion;
import ovenproof.measure.HandCore;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.web.Choice;
import ovenproof.web.FormProblems;
import ovenproof.web.PageFields;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** Fills the page of one run: everything that was entered, attached and measured. */
final class RunPage {
  private static final String ONE_RUN = " (one run: no interval, no rank)";
  private static final List<Tap> TAPS =
      taps(
          Event.Type.LOAD,
          Event.Type.SIGNAL,
          Event.Type.DOOR_OPEN,
          Event.Type.DOOR_CLOSE,
          Event.Type.TURN,
          Event.Type.SHAKE,
          Event.Type.REMOVE,
          Event.Type.NOTE);
  private static final List<Tap> RARE =
      taps(
          Event.Type.PROBE_IN,
          Event.Type.PROBE_OUT,
          Event.Type.POWER_OFF,
          Event.Type.PHOTO,
          Event.Type.TASTE);

  private final Desk desk;
  private final MeasureRegistry measures = MeasureRegistry.all();

  RunPage(Desk desk) {
    this.desk = desk;
  }

  /** A button. */
  public record Tap(String word, String label) {}

  /** An event on the page. */
  public record EventLine(String key, String time, String word, String value, String by) {}

  /** A reading or mark on the page. */
  public record ValueLine(String key, String word, String value, String by) {}

  /** A piece on the page. */
  public record PieceLine(
      String batch, String piece, String position, String lot, String before, String after) {}

  /** A measurement on the page. */
  public record MeasureLine(String use, String name, String value, String note) {}

  /**
   * A file on the page.
   *
   * @param image whether browsers show it
   */
  public record FileLine(String path, boolean image, String words) {}

  /** A deviation on the page. */
  public record DeviationLine(String key, String sign, String words, String what, String by) {}

  private static List<Tap> taps(Event.Type... types) {
    return Stream.of(types)
        .map(
            t -> {
              String words = t.word().replace('-', ' ');
              return new Tap(t.word(), Character.toUpperCase(words.charAt(0)) + words.substring(1));
            })
        .toList();
  }

  String show(Workbench.Sheet sheet, String cid, Run run, PageFields model) {
    Campaign c = sheet.campaign();
    TestPlan test = Bench.test(c, run);
    model.put("cid", cid);
    model.put("campaign", c);
    model.put("run", run);
    model.put("test", test);
    head(sheet, run, model);
    forms(c, run, test, model);
    entries(sheet, run, model);
    model.put("pieces", pieces(c, run));
    model.put("files", files(c, run));
    boolean ready = sheet.ready();
    model.put("ready", ready);
    model.put("measurements", ready ? measurements(sheet, run, test) : List.of());
    model.put("firstScore", ready ? firstScore(sheet, run, test) : null);
    return "bench/run";
  }

  /** The page with what was typed and what is wrong with it. */
  String again(
      Workbench.Sheet sheet,
      String cid,
      Run run,
      Map<String, String> typed,
      FormProblems problems,
      PageFields model) {
    show(sheet, cid, run, model);
    model.put("problems", problems.byField());
    model.put("typed", typed);
    return "bench/run";
  }

  private void head(Workbench.Sheet sheet, Run run, PageFields model) {
    Campaign c = sheet.campaign();
    RunState state = RunState.all(sheet).of(run);
    model.put(
        "product", c.product(run.product()).map(Campaign.Product::name).orElse(run.product()));
    model.put("state", c.whyNotCounted(run).orElse(state.words()));
    model.put("sign", state.sign().svg());
    model.put("running", state == RunState.RUNNING && run.started() != null);
    model.put("redoable", state == RunState.COUNTED || state == RunState.VOID);
    Instant now = desk.clock().instant();
    Instant started = run.started() == null ? now : run.started();
    model.put("startedMillis", started.toEpochMilli());
    model.put("elapsed", Shown.elapsed(Math.max(0, Duration.between(started, now).toSeconds())));
    model.put("about", about(c, run));
    model.put(
        "redoneAs",
        c.runs().stream()
            .filter(r -> run.id().equals(r.redoOf()))
            .map(Run::id)
            .findFirst()
            .orElse(null));
  }

  private static List<String> about(Campaign c, Run run) {
    List<String> about = new ArrayList<>();
    about.add("begun " + Shown.time(run.started(), c.info().zone()));
    c.settingCards().stream()
        .filter(
            s ->
                s.product().equals(run.product())
                    && s.test().equals(run.test())
                    && s.variant().equals(run.variant()))
        .findFirst()
        .ifPresent(s -> about.add("set to " + setting(s)));
    add(about, "specimen ", run.specimen());
    add(about, "session ", run.session());
    add(about, "bench ", run.bench());
    add(about, "by ", run.by());
    add(about, "", run.note());
    return about;
  }

  private static String setting(Campaign.SettingCard s) {
    return Stream.of(
            s.mode(),
            s.preset() == null ? null : "preset " + s.preset(),
            s.dial(),
            s.rack() == null ? null : "rack " + s.rack(),
            s.accessory())
        .filter(Objects::nonNull)
        .collect(Collectors.joining(", "));
  }

  private static void add(List<String> words, String before, @Nullable String value) {
    if (value != null) {
      words.add(before + value);
    }
  }

  private void forms(Campaign c, Run run, TestPlan test, PageFields model) {
    model.put("endings", Bench.ENDINGS);
    model.put("taps", TAPS);
    model.put("rare", RARE);
    model.put("faces", test.photos() == null ? List.of() : choices(test.photos().faces()));
    model.put(
        "batches",
        test.batches() > 1
            ? IntStream.rangeClosed(1, test.batches())
                .mapToObj(n -> new Choice(String.valueOf(n), "batch " + n))
                .toList()
            : List.of());
    model.put("instruments", choices(c.instruments().stream().map(i -> i.id()).toList()));
    model.put("lots", choices(c.lots().stream().map(Campaign.Lot::id).toList()));
    model.put("readings", test.measures().stream().flatMap(this::readings).toList());
    model.put("marks", test.marks().stream().map(m -> new Choice(m.id(), m.name())).toList());
    model.put("sample", sample(test));
    model.put("core", CoreCriterion.of(test).flatMap(a -> a.handWords(c, test, run)).orElse(""));
  }

  /** What is typed for a measure; a core by hand thermometer needs its rest as well. */
  private Stream<Choice> readings(MeasureUse m) {
    if (HandCore.isRead(m)) {
      return Stream.of(
          new Choice(m.ofOrId(), name(m) + ", °C, with its place"),
          new Choice(HandCore.restOf(m), name(m) + ": rest, min"));
    }
    String unit = m.unit() == null ? "" : ", " + m.unit().symbol();
    return m.take().equals("reading") ? Stream.of(new Choice(m.id(), name(m) + unit)) : Stream.of();
  }

  private static List<Choice> choices(List<String> words) {
    return words.stream().map(w -> new Choice(w, w)).toList();
  }

  private static String sample(TestPlan test) {
    TestPlan.Sample sample = test.sample();
    if (sample == null) {
      return "";
    }
    return sample.food()
        + ", "
        + sample.pieces()
        + (sample.pieces() == 1 ? " piece" : " pieces")
        + (sample.mass() == null ? "" : " of " + sample.mass())
        + (test.batches() > 1 ? ", " + test.batches() + " batches" : "");
  }

  private String name(MeasureUse use) {
    String own = use.name();
    return own != null ? own : measures.find(use.take()).map(m -> m.name()).orElse(use.id());
  }

  // ---------- what was entered ----------

  private void entries(Workbench.Sheet sheet, Run run, PageFields model) {
    List<EventLine> events = new ArrayList<>();
    List<ValueLine> values = new ArrayList<>();
    List<DeviationLine> deviations = new ArrayList<>();
    Set<String> mended = new HashSet<>();
    sheet.entries().forEach(e -> mended.add(String.valueOf(e.corrects())));
    for (StoredEntry e : sheet.entries()) {
      if (mended.contains(e.key())) {
        continue;
      }
      if (e.body() instanceof Event event && event.run().equals(run.id())) {
        events.add(line(e, event));
      } else if (e.body() instanceof Reading r && r.run().equals(run.id())) {
        String where = where(r.batch(), r.piece(), r.face());
        values.add(new ValueLine(e.key(), r.measure() + where, value(r), e.who()));
      } else if (e.body() instanceof Rating r && r.run().equals(run.id())) {
        String points =
            java.math.BigDecimal.valueOf(r.value()).stripTrailingZeros().toPlainString();
        String word = r.mark() + ", " + r.assessor() + where(r.batch(), null, null);
        values.add(new ValueLine(e.key(), word, points, e.who()));
      } else if (e.body() instanceof Deviation d && d.run().equals(run.id())) {
        String sign = Sign.ofDeviationClass(d.deviationClass()).svg();
        String words = "class " + d.deviationClass();
        deviations.add(new DeviationLine(e.key(), sign, words, d.what(), e.who()));
      }
    }
    model.put("events", events);
    model.put("typedValues", values);
    model.put("deviations", deviations);
  }

  private static EventLine line(StoredEntry e, Event event) {
    String batch = event.batch() == null ? null : "batch " + event.batch();
    String words =
        Stream.of(event.value(), batch, event.note())
            .filter(Objects::nonNull)
            .collect(Collectors.joining("; "));
    return new EventLine(
        e.key(), Shown.elapsed(event.elapsedSeconds()), event.type().word(), words, e.who());
  }

  private static String where(
      @Nullable Integer batch, @Nullable String piece, @Nullable String face) {
    return (batch == null ? "" : ", batch " + batch)
        + (piece == null ? "" : ", " + piece)
        + (face == null ? "" : ", " + face);
  }

  private static String value(Reading r) {
    return r.value()
        + (r.uncertainty() == null ? "" : " ± " + r.uncertainty())
        + (r.elapsedSeconds() == null ? "" : " at " + Shown.elapsed(r.elapsedSeconds()));
  }

  private static List<PieceLine> pieces(Campaign c, Run run) {
    return c.pieces().stream().filter(p -> p.run().equals(run.id())).map(RunPage::line).toList();
  }

  private static PieceLine line(Piece p) {
    return new PieceLine(
        String.valueOf(p.batch()),
        p.piece(),
        Objects.requireNonNullElse(p.position(), "–"),
        Objects.requireNonNullElse(p.lot(), "–"),
        text(p.before()),
        text(p.after()));
  }

  private static String text(@Nullable Quantity quantity) {
    return quantity == null ? "–" : quantity.toString();
  }

  static List<FileLine> files(Campaign c, Run run) {
    List<FileLine> files = new ArrayList<>();
    for (Photo p : c.photos()) {
      if (p.run().equals(run.id())) {
        String words = (p.face() == null ? "photo" : p.face()) + where(p.batch(), null, null);
        files.add(new FileLine(p.file(), Bench.isShown(p.file()), words));
      }
    }
    for (TraceBinding t : c.traces()) {
      if (run.id().equals(t.run()) || (t.run() == null && run.product().equals(t.product()))) {
        files.add(new FileLine(t.file(), false, t.channel() + " as " + t.place()));
      }
    }
    Set<String> bound = files.stream().map(FileLine::path).collect(Collectors.toSet());
    String own = "runs/" + run.id() + "/";
    for (Campaign.Evidence e : c.evidence()) {
      if (e.path().startsWith(own) && !bound.contains(e.path())) {
        files.add(new FileLine(e.path(), Bench.isShown(e.path()), "attached only"));
      }
    }
    return files;
  }

  // ---------- what was measured ----------

  private List<MeasureLine> measurements(Workbench.Sheet sheet, Run run, TestPlan test) {
    List<MeasureLine> lines = new ArrayList<>();
    for (MeasureUse use : test.measures()) {
      sheet
          .measured()
          .ofRun(test.id(), use.id(), run.id())
          .ifPresent(
              v -> {
                String note = v.value().note() == null ? v.value().definition() : v.value().note();
                lines.add(new MeasureLine(use.id(), name(use), Shown.measurement(v.value()), note));
              });
    }
    return lines;
  }

  /** What Start promised: the test's score, with what one run cannot say. */
  private static @Nullable String firstScore(Workbench.Sheet sheet, Run run, TestPlan test) {
    if (run.product().isEmpty() || sheet.campaign().products().size() > 1) {
      return null;
    }
    long runs =
        sheet.campaign().countedRuns().stream()
            .filter(r -> r.product().equals(run.product()) && r.test().equals(test.id()))
            .count();
    return sheet
        .verdict()
        .flatMap(v -> v.product(run.product()))
        .flatMap(p -> p.test(test.id()))
        .map(n -> test.name() + ": " + Scores.sentence(n.score()) + (runs == 1 ? ONE_RUN : ""))
        .orElse(null);
  }

  /** Every key of a run's file, for telling what is attached already. */
  static Optional<Photo> photo(Campaign c, String path) {
    return c.photos().stream().filter(p -> p.file().equals(path)).findFirst();
  }
}
