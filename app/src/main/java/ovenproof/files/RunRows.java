package ovenproof.files;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Written;
import ovenproof.measure.HandCore;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;

/** Reads runs and what happened, was read, weighed and tasted in them. */
final class RunRows {
  private static final Pattern ELAPSED = Pattern.compile("([+−-])\\s*(\\S.*)");
  private static final int MOST_BATCHES = 50;
  private static final int MOST_REPLICATES = 1000;

  private final Context context;
  private final MeasureRegistry registry;
  private final Map<String, RunStart> starts;

  /**
   * Test and start of a run.
   *
   * @param test empty when the run names none that exists
   */
  record RunStart(Optional<TestPlan> test, @Nullable Instant started) {}

  /**
   * @param starts by key of the run
   */
  RunRows(Context context, MeasureRegistry registry, Map<String, RunStart> starts) {
    this.context = context;
    this.registry = registry;
    this.starts = starts;
  }

  Optional<Campaign.SettingCard> settingCard(Row row) {
    return context
        .test(row)
        .flatMap(
            test ->
                context
                    .variant(row, test)
                    .map(
                        variant ->
                            new Campaign.SettingCard(
                                row.raw("product").strip(),
                                test.id(),
                                variant,
                                row.textOrNull("mode"),
                                row.textOrNull("preset"),
                                row.textOrNull("dial"),
                                row.textOrNull("rack"),
                                row.textOrNull("accessory"),
                                row.textOrNull("chosen_by"),
                                row.textOrNull("note"))));
  }

  Optional<Campaign.PlannedRun> planned(Row row) {
    Optional<TestPlan> test = context.test(row);
    Optional<String> variant = test.flatMap(t -> context.variant(row, t));
    Optional<Integer> replicate = replicate(row);
    String session = key(row, "session");
    String bench = key(row, "bench");
    Integer order = row.find("order").flatMap(w -> w.wholeNumber(1, 100_000)).orElse(null);
    if (test.isEmpty() || variant.isEmpty() || replicate.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Campaign.PlannedRun(
            row.raw("product").strip(),
            test.get().id(),
            variant.get(),
            replicate.get(),
            session,
            bench,
            order));
  }

  private static Optional<Integer> replicate(Row row) {
    return row.find("replicate").flatMap(w -> w.wholeNumber(1, MOST_REPLICATES));
  }

  private static @Nullable String key(Row row, String column) {
    return row.find(column).flatMap(Written::key).orElse(null);
  }

  Optional<Run> run(Row row) {
    Optional<String> id = row.find("run").flatMap(Written::key);
    Optional<TestPlan> test = context.test(row);
    Optional<String> variant = test.flatMap(t -> context.variant(row, t));
    Optional<Integer> replicate = replicate(row);
    Run.Kind kind = row.find("kind").flatMap(w -> w.word(Run.Kind.class)).orElse(Run.Kind.COUNTED);
    String session = key(row, "session");
    String bench = key(row, "bench");
    context.time(row, "started");
    Instant causeAt = context.time(row, "cause_at");
    if (id.isEmpty() || test.isEmpty() || variant.isEmpty() || replicate.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Run(
            id.get(),
            row.raw("product").strip(),
            row.textOrNull("specimen"),
            test.get().id(),
            variant.get(),
            replicate.get(),
            kind,
            session,
            bench,
            start(id.get()).started(),
            row.textOrNull("redo_of"),
            row.textOrNull("cause"),
            causeAt,
            row.textOrNull("by"),
            row.textOrNull("note")));
  }

  Optional<Campaign.NotRun> notRun(Row row) {
    Optional<TestPlan> test = context.test(row);
    Optional<Campaign.NotRun.State> state =
        row.find("state").flatMap(w -> w.word(Campaign.NotRun.State.class));
    Optional<Written> named = row.find("variant");
    Optional<String> variant =
        named.isEmpty() ? Optional.empty() : test.flatMap(t -> context.variant(row, t));
    if (test.isEmpty() || state.isEmpty() || (named.isPresent() && variant.isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(
        new Campaign.NotRun(
            row.raw("product").strip(),
            test.get().id(),
            variant.orElse(null),
            state.get(),
            row.raw("reason").strip()));
  }

  Optional<Event> event(Row row) {
    Optional<Event.Type> type = row.find("event").flatMap(w -> w.word(Event.Type.class));
    Instant started = start(row.raw("run").strip()).started();
    Optional<Double> elapsed = elapsed(row);
    Integer batch = batch(row).orElse(null);
    checkValue(row, type);
    if (type.isEmpty() || elapsed.isEmpty() || isUnread(row, "batch", batch)) {
      return Optional.empty();
    }
    return Optional.of(
        new Event(
            row.raw("run").strip(),
            type.get(),
            elapsed.get(),
            started == null ? null : started.plusNanos(Math.round(elapsed.get() * 1e9)),
            batch,
            row.textOrNull("value"),
            row.textOrNull("note"),
            context.origin(row)));
  }

  private static void checkValue(Row row, Optional<Event.Type> type) {
    Optional<Written> value = row.find("value");
    if (type.isEmpty() || value.isEmpty()) {
      return;
    }
    if (type.get() == Event.Type.STOP) {
      value.get().oneOf(Event.STOP_CAUSES, "what ended the run");
    } else if (type.get() == Event.Type.SIGNAL) {
      value.get().quantity(Dimension.TEMPERATURE);
    }
  }

  /** Seconds since the run's start, from {@code +6:30} or from a clock time. */
  private Optional<Double> elapsed(Row row) {
    Optional<Written> written = row.find("time");
    if (written.isEmpty()) {
      return Optional.empty();
    }
    Matcher since = ELAPSED.matcher(written.get().text());
    if (since.matches()) {
      double sign = since.group(1).equals("+") ? 1 : -1;
      return new Written(since.group(2), written.get().place(), context.problems())
          .quantity(Dimension.TIME)
          .map(q -> sign * q.contract());
    }
    if (written.get().text().matches("(\\d+:)?\\d{1,3}:\\d{2}([.,]\\d+)?")) {
      written
          .get()
          .error(
              "a time such as 2026-03-04T10:12:30, or +6:30 since the run's start",
              "write +" + written.get().text() + " if it is the time since the start");
      return Optional.empty();
    }
    return written.get().time(context.zone()).flatMap(at -> sinceStart(row, written.get(), at));
  }

  private Optional<Double> sinceStart(Row row, Written written, Instant at) {
    String run = row.raw("run").strip();
    Instant started = start(run).started();
    if (started == null) {
      if (starts.containsKey(run)) {
        written.error(
            "a time since the run's start, or a run whose start is known",
            "fill in \"started\" of " + run + " in runs.csv, or write +6:30");
      }
      return Optional.empty();
    }
    Duration elapsed = Duration.between(started, at);
    if (elapsed.abs().toHours() >= 24) {
      written.warning("a time within a day of the run's start", "is the date right?");
    }
    return Optional.of(elapsed.toNanos() / 1e9);
  }

  Optional<Deviation> deviation(Row row) {
    return row.find("class")
        .flatMap(w -> w.wholeNumber(1, 3))
        .map(
            c ->
                new Deviation(
                    row.raw("run").strip(),
                    c,
                    row.raw("what").strip(),
                    row.textOrNull("note"),
                    context.origin(row)));
  }

  Optional<Reading> reading(Row row) {
    Optional<TestPlan> test = start(row.raw("run").strip()).test();
    if (test.isEmpty()) {
      return Optional.empty();
    }
    Optional<Dimension> dimension =
        row.find("reading")
            .flatMap(w -> w.oneOf(readings(test.get()), "a reading of the test " + test.get().id()))
            .flatMap(id -> dimension(test.get(), id));
    Optional<Quantity> value =
        dimension.flatMap(d -> row.find("value").flatMap(w -> w.quantity(d)));
    Quantity uncertainty =
        dimension
            .flatMap(
                d -> row.find("uncertainty").flatMap(w -> w.quantity(Context.ofDifferences(d))))
            .orElse(null);
    Integer batch = batch(row).orElse(null);
    String face = face(row, test.get());
    Double elapsed = elapsed(row).orElse(null);
    return value.map(
        v ->
            new Reading(
                row.raw("run").strip(),
                row.raw("reading").strip(),
                batch,
                key(row, "piece"),
                face,
                v,
                uncertainty,
                row.textOrNull("instrument"),
                elapsed,
                row.textOrNull("note"),
                context.origin(row)));
  }

  private List<String> readings(TestPlan test) {
    return test.measures().stream()
        .filter(this::isReading)
        .flatMap(
            use ->
                HandCore.isRead(use)
                    ? Stream.of(use.ofOrId(), HandCore.restOf(use))
                    : Stream.of(use.ofOrId()))
        .distinct()
        .toList();
  }

  private boolean isReading(MeasureUse use) {
    return HandCore.isRead(use)
        || registry.find(use.take()).filter(d -> d.evidence() == EvidenceKind.READING).isPresent();
  }

  /** The dimension of a reading: its use's unit, or that of the registered measure. */
  private Optional<Dimension> dimension(TestPlan test, String reading) {
    if (test.measures().stream()
        .anyMatch(use -> HandCore.isRead(use) && HandCore.restOf(use).equals(reading))) {
      return Optional.of(Dimension.TIME);
    }
    return test.measures().stream()
        .filter(this::isReading)
        .filter(use -> use.ofOrId().equals(reading))
        .findFirst()
        .flatMap(use -> Optional.ofNullable(use.unit()).or(() -> ownUnit(use)))
        .map(Unit::dimension);
  }

  /** The registered unit; a plain reading has none of its own. */
  private Optional<Unit> ownUnit(MeasureUse use) {
    return registry.find(use.take()).map(MeasureDescription::unit).filter(u -> u != Unit.ONE);
  }

  private static @Nullable String face(Row row, TestPlan test) {
    return row.find("face")
        .flatMap(
            w ->
                test.photos() == null || test.photos().faces().isEmpty()
                    ? w.key()
                    : w.oneOf(test.photos().faces(), "a face of the test's photos"))
        .orElse(null);
  }

  private Optional<Integer> batch(Row row) {
    Optional<Written> written = row.find("batch");
    Optional<Integer> batch = written.flatMap(w -> w.wholeNumber(1, MOST_BATCHES));
    Optional<TestPlan> test = start(row.raw("run").strip()).test();
    if (batch.isPresent() && test.isPresent() && batch.get() > test.get().batches()) {
      written.ifPresent(
          w ->
              w.error(
                  "a batch from 1 to " + test.get().batches() + ", as the method says",
                  "correct it, or raise \"batches\" of " + test.get().id() + " in a new version"));
      return Optional.empty();
    }
    return batch;
  }

  Optional<Piece> piece(Row row) {
    Optional<Integer> batch = batch(row);
    Optional<String> piece = row.find("piece").flatMap(Written::key);
    String position = key(row, "position");
    Quantity before = mass(row, "before");
    Quantity after = mass(row, "after");
    if (batch.isEmpty() || piece.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Piece(
            row.raw("run").strip(),
            batch.get(),
            piece.get(),
            position,
            row.textOrNull("lot"),
            before,
            after,
            row.textOrNull("instrument"),
            row.textOrNull("note")));
  }

  private static @Nullable Quantity mass(Row row, String column) {
    return row.find(column).flatMap(w -> w.quantity(Dimension.MASS)).orElse(null);
  }

  Optional<Rating> rating(Row row) {
    Optional<TestPlan> test = start(row.raw("run").strip()).test();
    Optional<String> session = row.find("session").flatMap(Written::key);
    Optional<TestPlan.PanelMark> mark = test.flatMap(t -> mark(row, t));
    Optional<Double> value =
        mark.flatMap(m -> row.find("value").flatMap(w -> w.number(m.lowest(), m.highest())));
    Integer batch = batch(row).orElse(null);
    Integer order = row.find("order").flatMap(w -> w.wholeNumber(1, 1000)).orElse(null);
    Double minutes = minutes(row).orElse(null);
    if (session.isEmpty() || mark.isEmpty() || value.isEmpty() || isUnread(row, "batch", batch)) {
      return Optional.empty();
    }
    return Optional.of(
        new Rating(
            session.get(),
            row.raw("assessor").strip(),
            row.raw("run").strip(),
            batch,
            mark.get().id(),
            value.get(),
            order,
            row.textOrNull("code"),
            minutes,
            row.textOrNull("note"),
            context.origin(row)));
  }

  private static Optional<TestPlan.PanelMark> mark(Row row, TestPlan test) {
    List<String> ids = test.marks().stream().map(TestPlan.PanelMark::id).toList();
    return row.find("mark")
        .flatMap(w -> w.oneOf(ids, "a mark of the test " + test.id()))
        .flatMap(id -> test.marks().stream().filter(m -> m.id().equals(id)).findFirst());
  }

  /** A bare number counts minutes; a time with unit is read as such. */
  private static Optional<Double> minutes(Row row) {
    return row.find("minutes")
        .flatMap(
            w ->
                w.text().matches("[\\d.,]+")
                    ? w.number(0, 1440)
                    : w.quantity(Dimension.TIME).map(q -> q.contract() / 60));
  }

  /** Whether a cell says something that could not be read, which was reported. */
  private static boolean isUnread(Row row, String column, @Nullable Object read) {
    return read == null && row.find(column).isPresent();
  }

  private RunStart start(String run) {
    return starts.getOrDefault(run, new RunStart(Optional.empty(), null));
  }

  /** Tests by id, or nothing when the method could not be read. */
  static Optional<TestPlan> test(Optional<Method> method, Row row) {
    return method.flatMap(m -> m.test(row.raw("test").strip()));
  }
}
