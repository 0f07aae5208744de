package ovenproof.files;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Photo;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Words;

/** The rows of every table of a campaign, as text. */
final class CampaignTables {
  private final Campaign campaign;
  private final ZoneId zone;

  CampaignTables(Campaign campaign) {
    this.campaign = campaign;
    this.zone = campaign.info().zone();
  }

  /** Rows by table; cells by column name, empty where nothing is said. */
  Map<Table, List<Map<String, String>>> rows() {
    Map<Table, List<Map<String, String>>> rows = new LinkedHashMap<>();
    rows.put(Tables.PRODUCTS, campaign.products().stream().map(this::product).toList());
    rows.put(Tables.LEFT_OUT, campaign.leftOut().stream().map(this::leftOut).toList());
    rows.put(Tables.SPECIMENS, campaign.specimens().stream().map(this::specimen).toList());
    rows.put(Tables.PRICES, campaign.prices().stream().map(this::price).toList());
    rows.put(Tables.FACTS, campaign.facts().stream().map(this::fact).toList());
    rows.put(Tables.RATED, campaign.ratedSteps().stream().map(this::rated).toList());
    rows.put(Tables.FEATURES, campaign.features().stream().map(this::feature).toList());
    rows.put(Tables.SETTINGS, campaign.settingCards().stream().map(this::setting).toList());
    rows.put(Tables.PLAN, campaign.plan().stream().map(this::planned).toList());
    rows.put(Tables.RUNS, campaign.runs().stream().map(this::run).toList());
    rows.put(Tables.NOT_RUN, campaign.notRun().stream().map(this::notRun).toList());
    rows.put(Tables.EVENTS, campaign.events().stream().map(this::event).toList());
    rows.put(Tables.DEVIATIONS, campaign.deviations().stream().map(this::deviation).toList());
    rows.put(Tables.READINGS, campaign.readings().stream().map(this::reading).toList());
    rows.put(Tables.LOTS, campaign.lots().stream().map(this::lot).toList());
    rows.put(Tables.PIECES, campaign.pieces().stream().map(this::piece).toList());
    rows.put(Tables.RATINGS, campaign.ratings().stream().map(this::rating).toList());
    rows.put(Tables.INSTRUMENTS, campaign.instruments().stream().map(this::instrument).toList());
    rows.put(Tables.CALIBRATIONS, campaign.calibrations().stream().map(this::calibration).toList());
    rows.put(Tables.TRACES, campaign.traces().stream().map(this::trace).toList());
    rows.put(Tables.PHOTOS, campaign.photos().stream().map(this::photo).toList());
    return rows;
  }

  /** Pairs of column and value; null is not said. */
  private Map<String, String> cells(@Nullable Object... pairs) {
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      Object value = pairs[i + 1];
      if (value != null) {
        cells.put(String.valueOf(pairs[i]), text(value));
      }
    }
    return cells;
  }

  private String text(Object value) {
    if (value instanceof Instant time) {
      return time(time);
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Enum<?> word) {
      return Words.of(word);
    }
    return value.toString();
  }

  private static String number(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** Local time where the clock showed it once, else with its offset. */
  private String time(Instant at) {
    LocalDateTime local = LocalDateTime.ofInstant(at, zone);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    String seconds = local.getSecond() == 0 && local.getNano() == 0 ? ":00" : "";
    return local + seconds + (offsets.size() == 1 ? "" : zone.getRules().getOffset(at).toString());
  }

  /** {@code +6:30} for whole seconds, {@code +390.5 s} else. */
  private static @Nullable String elapsed(@Nullable Double seconds) {
    if (seconds == null) {
      return null;
    }
    String sign = seconds < 0 ? "-" : "+";
    double size = Math.abs(seconds);
    if (size != Math.rint(size) || size > 359_999) {
      return sign + number(size) + " s";
    }
    long whole = (long) size;
    String hours = whole >= 3600 ? whole / 3600 + ":" : "";
    String minutes = whole >= 3600 ? "%02d:%02d" : "%d:%02d";
    return sign
        + hours
        + String.format(java.util.Locale.ROOT, minutes, whole / 60 % 60, whole % 60);
  }

  private Map<String, String> product(Campaign.Product p) {
    return cells(
        "product", p.id(), "name", p.name(), "maker", p.maker(), "kind", p.kind(), "note",
        p.note());
  }

  private Map<String, String> leftOut(Campaign.LeftOut l) {
    return cells("name", l.name(), "why", l.why());
  }

  private Map<String, String> specimen(Campaign.Specimen s) {
    return cells(
        "specimen",
        s.id(),
        "product",
        s.product(),
        "serial",
        s.serial(),
        "acquired",
        s.acquired(),
        "from",
        s.from(),
        "on",
        s.on(),
        "became",
        s.became(),
        "became_on",
        s.becameOn(),
        "note",
        s.note());
  }

  private Map<String, String> price(Campaign.Price p) {
    return cells(
        "product",
        p.product(),
        "price",
        p.amount(),
        "on",
        p.on(),
        "currency",
        p.currency(),
        "where",
        p.where());
  }

  private Map<String, String> fact(ovenproof.campaign.FactValue f) {
    return entry(
        f,
        "product",
        f.product(),
        "fact",
        f.fact(),
        "nameplate",
        f.nameplate(),
        "measured",
        f.measured(),
        "uncertainty",
        f.uncertainty(),
        "instrument",
        f.instrument(),
        "photo",
        f.photo(),
        "note",
        f.note());
  }

  private Map<String, String> rated(ovenproof.campaign.RatedStep r) {
    return entry(
        r,
        "product",
        r.product(),
        "fact",
        r.fact(),
        "rater",
        r.rater(),
        "step",
        r.step(),
        "reason",
        r.reason(),
        "photo",
        r.photo(),
        "note",
        r.note());
  }

  private Map<String, String> feature(ovenproof.campaign.FeatureState f) {
    return entry(
        f,
        "product",
        f.product(),
        "feature",
        f.feature(),
        "state",
        f.state(),
        "on",
        f.on(),
        "note",
        f.note());
  }

  private Map<String, String> entry(Entry entry, @Nullable Object... pairs) {
    Map<String, String> cells = cells(pairs);
    Entry.Provenance origin = entry.origin();
    cells.putAll(
        cells(
            "entry",
            origin.id(),
            "by",
            origin.by(),
            "at",
            origin.at(),
            "corrects",
            origin.corrects()));
    return cells;
  }

  private Map<String, String> setting(Campaign.SettingCard s) {
    return cells(
        "product",
        s.product(),
        "test",
        s.test(),
        "variant",
        s.variant(),
        "mode",
        s.mode(),
        "preset",
        s.preset(),
        "dial",
        s.dial(),
        "rack",
        s.rack(),
        "accessory",
        s.accessory(),
        "chosen_by",
        s.chosenBy(),
        "note",
        s.note());
  }

  private Map<String, String> planned(Campaign.PlannedRun p) {
    return cells(
        "product",
        p.product(),
        "test",
        p.test(),
        "replicate",
        p.replicate(),
        "variant",
        p.variant(),
        "session",
        p.session(),
        "bench",
        p.bench(),
        "order",
        p.order());
  }

  private Map<String, String> run(ovenproof.campaign.Run r) {
    return cells(
        "run",
        r.id(),
        "product",
        r.product(),
        "test",
        r.test(),
        "replicate",
        r.replicate(),
        "variant",
        r.variant(),
        "specimen",
        r.specimen(),
        "kind",
        r.kind(),
        "session",
        r.session(),
        "bench",
        r.bench(),
        "started",
        r.started(),
        "redo_of",
        r.redoOf(),
        "cause",
        r.cause(),
        "cause_at",
        r.causeAt(),
        "by",
        r.by(),
        "note",
        r.note());
  }

  private Map<String, String> notRun(Campaign.NotRun n) {
    return cells(
        "product",
        n.product(),
        "test",
        n.test(),
        "state",
        n.state(),
        "reason",
        n.reason(),
        "variant",
        n.variant());
  }

  private Map<String, String> event(ovenproof.campaign.Event e) {
    return entry(
        e,
        "run",
        e.run(),
        "event",
        e.type(),
        "time",
        elapsed(e.elapsedSeconds()),
        "batch",
        e.batch(),
        "value",
        e.value(),
        "note",
        e.note());
  }

  private Map<String, String> deviation(ovenproof.campaign.Deviation d) {
    return entry(
        d, "run", d.run(), "class", d.deviationClass(), "what", d.what(), "note", d.note());
  }

  private Map<String, String> reading(ovenproof.campaign.Reading r) {
    return entry(
        r,
        "run",
        r.run(),
        "reading",
        r.measure(),
        "value",
        r.value(),
        "batch",
        r.batch(),
        "piece",
        r.piece(),
        "face",
        r.face(),
        "uncertainty",
        r.uncertainty(),
        "instrument",
        r.instrument(),
        "time",
        elapsed(r.elapsedSeconds()),
        "note",
        r.note());
  }

  private Map<String, String> lot(Campaign.Lot l) {
    return cells("lot", l.id(), "food", l.food(), "bought", l.bought(), "note", l.note());
  }

  private Map<String, String> piece(ovenproof.campaign.Piece p) {
    return cells(
        "run",
        p.run(),
        "batch",
        p.batch(),
        "piece",
        p.piece(),
        "position",
        p.position(),
        "lot",
        p.lot(),
        "before",
        p.before(),
        "after",
        p.after(),
        "instrument",
        p.instrument(),
        "note",
        p.note());
  }

  private Map<String, String> rating(ovenproof.campaign.Rating r) {
    return entry(
        r,
        "session",
        r.session(),
        "assessor",
        r.assessor(),
        "run",
        r.run(),
        "mark",
        r.mark(),
        "value",
        r.value(),
        "batch",
        r.batch(),
        "order",
        r.order(),
        "code",
        r.code(),
        "minutes",
        r.minutesSinceRemoval(),
        "note",
        r.note());
  }

  private Map<String, String> instrument(Campaign.Instrument i) {
    return cells(
        "instrument",
        i.id(),
        "name",
        i.name(),
        "kind",
        i.kind(),
        "quantity",
        i.quantity(),
        "resolution",
        inUnit(i.resolution(), i.quantity()),
        "uncertainty",
        inUnit(i.standardUncertainty(), i.quantity()),
        "response_time",
        i.responseTimeSeconds() == null ? null : Quantity.of(i.responseTimeSeconds(), Unit.SECOND),
        "note",
        i.note());
  }

  private Map<String, String> calibration(Campaign.Calibration c) {
    String quantity =
        campaign.instruments().stream()
            .filter(i -> i.id().equals(c.instrument()))
            .map(Campaign.Instrument::quantity)
            .findFirst()
            .orElse(null);
    return cells(
        "instrument",
        c.instrument(),
        "on",
        c.on(),
        "correction",
        inUnit(c.correction(), quantity),
        "uncertainty",
        inUnit(c.uncertainty(), quantity),
        "reference",
        c.reference(),
        "note",
        c.note());
  }

  /** A contract value with its unit: of the differences of what an instrument measures. */
  private static @Nullable Object inUnit(@Nullable Double value, @Nullable String quantity) {
    if (value == null || quantity == null) {
      return value;
    }
    return Words.named(Dimension.class, quantity)
        .map(Context::ofDifferences)
        .flatMap(
            d ->
                Arrays.stream(Unit.values())
                    .filter(u -> u.dimension() == d && u.contractUnit() == u)
                    .findFirst())
        .<Object>map(unit -> Quantity.of(value, unit))
        .orElse(value);
  }

  private Map<String, String> trace(ovenproof.campaign.TraceBinding t) {
    ovenproof.campaign.TraceBinding.ReadAs as = t.readAs();
    return cells(
        "file",
        t.file(),
        "channel",
        t.channel(),
        "place",
        t.place(),
        "product",
        t.product(),
        "run",
        t.run(),
        "instrument",
        t.instrument(),
        "from",
        t.from(),
        "to",
        t.to(),
        "starts",
        t.starts(),
        "clock_offset",
        t.clockOffsetSeconds() == 0 ? null : Quantity.of(t.clockOffsetSeconds(), Unit.SECOND),
        "interval",
        as == null || as.intervalSeconds() == null
            ? null
            : Quantity.of(as.intervalSeconds(), Unit.SECOND),
        "temperatures",
        as == null || as.temperatures() == null ? null : as.temperatures().symbol(),
        "counts",
        as == null || as.counts() == null ? null : as.counts().symbol(),
        "dates",
        as == null ? null : as.dates(),
        "note",
        t.note());
  }

  private Map<String, String> photo(Photo p) {
    String boxes = p.boxes().stream().map(CampaignTables::box).collect(Collectors.joining(" "));
    String outlines =
        p.outlines().stream().map(CampaignTables::outline).collect(Collectors.joining(" "));
    return cells(
        "file",
        p.file(),
        "run",
        p.run(),
        "batch",
        p.batch(),
        "face",
        p.face(),
        "taken",
        p.taken(),
        "camera",
        p.camera(),
        "boxes",
        boxes.isEmpty() ? null : boxes,
        "outlines",
        outlines.isEmpty() ? null : outlines,
        "chart_pitch",
        p.frame().chartPitch(),
        "chart_corners",
        p.frame().chartCorners().isEmpty() ? null : corners(p.frame().chartCorners()),
        "front",
        p.frame().front(),
        "note",
        p.note());
  }

  private static String box(Photo.Box box) {
    return box.piece() + ":" + box.x() + "," + box.y() + "," + box.width() + "," + box.height();
  }

  private static String corners(List<Photo.Corner> corners) {
    return corners.stream().map(c -> c.x() + "," + c.y()).collect(Collectors.joining(" "));
  }

  private static String outline(Photo.Drawn drawn) {
    return drawn.piece()
        + ":"
        + drawn.corners().stream().map(c -> c.x() + "," + c.y()).collect(Collectors.joining(","));
  }
}
