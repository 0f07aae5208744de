package ovenproof.files;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
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

  private Cells cells() {
    return new Cells(zone);
  }

  private Map<String, String> product(Campaign.Product p) {
    return cells()
        .with("product", p.id())
        .with("name", p.name())
        .with("maker", p.maker())
        .with("kind", p.kind())
        .with("note", p.note())
        .row();
  }

  private Map<String, String> leftOut(Campaign.LeftOut l) {
    return cells().with("name", l.name()).with("why", l.why()).row();
  }

  private Map<String, String> specimen(Campaign.Specimen s) {
    return cells()
        .with("specimen", s.id())
        .with("product", s.product())
        .with("serial", s.serial())
        .with("acquired", s.acquired())
        .with("from", s.from())
        .with("on", s.on())
        .with("became", s.became())
        .with("became_on", s.becameOn())
        .with("note", s.note())
        .row();
  }

  private Map<String, String> price(Campaign.Price p) {
    return cells()
        .with("product", p.product())
        .with("price", p.amount())
        .with("on", p.on())
        .with("currency", p.currency())
        .with("where", p.where())
        .row();
  }

  private Map<String, String> fact(FactValue f) {
    return entry(f)
        .with("product", f.product())
        .with("fact", f.fact())
        .with("nameplate", f.nameplate())
        .with("measured", f.measured())
        .with("uncertainty", f.uncertainty())
        .with("instrument", f.instrument())
        .with("photo", f.photo())
        .with("note", f.note())
        .row();
  }

  private Map<String, String> rated(RatedStep r) {
    return entry(r)
        .with("product", r.product())
        .with("fact", r.fact())
        .with("rater", r.rater())
        .with("step", r.step())
        .with("reason", r.reason())
        .with("photo", r.photo())
        .with("note", r.note())
        .row();
  }

  private Map<String, String> feature(FeatureState f) {
    return entry(f)
        .with("product", f.product())
        .with("feature", f.feature())
        .with("state", f.state())
        .with("on", f.on())
        .with("note", f.note())
        .row();
  }

  /** The cells of an entry's origin; {@link Cells#row} puts them behind the others. */
  private Cells entry(Entry entry) {
    Entry.Provenance origin = entry.origin();
    return cells()
        .behind("entry", origin.id())
        .behind("by", origin.by())
        .behind("at", origin.at())
        .behind("corrects", origin.corrects());
  }

  private Map<String, String> setting(Campaign.SettingCard s) {
    return cells()
        .with("product", s.product())
        .with("test", s.test())
        .with("variant", s.variant())
        .with("mode", s.mode())
        .with("preset", s.preset())
        .with("dial", s.dial())
        .with("rack", s.rack())
        .with("accessory", s.accessory())
        .with("chosen_by", s.chosenBy())
        .with("note", s.note())
        .row();
  }

  private Map<String, String> planned(Campaign.PlannedRun p) {
    return cells()
        .with("product", p.product())
        .with("test", p.test())
        .with("replicate", p.replicate())
        .with("variant", p.variant())
        .with("session", p.session())
        .with("bench", p.bench())
        .with("order", p.order())
        .row();
  }

  private Map<String, String> run(Run r) {
    return cells()
        .with("run", r.id())
        .with("product", r.product())
        .with("test", r.test())
        .with("replicate", r.replicate())
        .with("variant", r.variant())
        .with("specimen", r.specimen())
        .with("kind", r.kind())
        .with("session", r.session())
        .with("bench", r.bench())
        .with("started", r.started())
        .with("redo_of", r.redoOf())
        .with("cause", r.cause())
        .with("cause_at", r.causeAt())
        .with("by", r.by())
        .with("note", r.note())
        .row();
  }

  private Map<String, String> notRun(Campaign.NotRun n) {
    return cells()
        .with("product", n.product())
        .with("test", n.test())
        .with("state", n.state())
        .with("reason", n.reason())
        .with("variant", n.variant())
        .row();
  }

  private Map<String, String> event(Event e) {
    return entry(e)
        .with("run", e.run())
        .with("event", e.type())
        .with("time", Cells.elapsed(e.elapsedSeconds()))
        .with("batch", e.batch())
        .with("value", e.value())
        .with("note", e.note())
        .row();
  }

  private Map<String, String> deviation(Deviation d) {
    return entry(d)
        .with("run", d.run())
        .with("class", d.deviationClass())
        .with("what", d.what())
        .with("note", d.note())
        .row();
  }

  private Map<String, String> reading(Reading r) {
    return entry(r)
        .with("run", r.run())
        .with("reading", r.measure())
        .with("value", r.value())
        .with("batch", r.batch())
        .with("piece", r.piece())
        .with("face", r.face())
        .with("uncertainty", r.uncertainty())
        .with("instrument", r.instrument())
        .with("time", Cells.elapsed(r.elapsedSeconds()))
        .with("note", r.note())
        .row();
  }

  private Map<String, String> lot(Campaign.Lot l) {
    return cells()
        .with("lot", l.id())
        .with("food", l.food())
        .with("bought", l.bought())
        .with("note", l.note())
        .row();
  }

  private Map<String, String> piece(Piece p) {
    return cells()
        .with("run", p.run())
        .with("batch", p.batch())
        .with("piece", p.piece())
        .with("position", p.position())
        .with("lot", p.lot())
        .with("before", p.before())
        .with("after", p.after())
        .with("instrument", p.instrument())
        .with("note", p.note())
        .row();
  }

  private Map<String, String> rating(Rating r) {
    return entry(r)
        .with("session", r.session())
        .with("assessor", r.assessor())
        .with("run", r.run())
        .with("mark", r.mark())
        .with("value", r.value())
        .with("batch", r.batch())
        .with("order", r.order())
        .with("code", r.code())
        .with("minutes", r.minutesSinceRemoval())
        .with("note", r.note())
        .row();
  }

  private Map<String, String> instrument(Campaign.Instrument i) {
    return cells()
        .with("instrument", i.id())
        .with("name", i.name())
        .with("kind", i.kind())
        .with("quantity", i.quantity())
        .with("resolution", inUnit(i.resolution(), i.quantity()))
        .with("uncertainty", inUnit(i.standardUncertainty(), i.quantity()))
        .with(
            "response_time",
            i.responseTimeSeconds() == null
                ? null
                : Quantity.of(i.responseTimeSeconds(), Unit.SECOND))
        .with("note", i.note())
        .row();
  }

  private Map<String, String> calibration(Campaign.Calibration c) {
    String quantity =
        campaign.instruments().stream()
            .filter(i -> i.id().equals(c.instrument()))
            .map(Campaign.Instrument::quantity)
            .findFirst()
            .orElse(null);
    return cells()
        .with("instrument", c.instrument())
        .with("on", c.on())
        .with("correction", inUnit(c.correction(), quantity))
        .with("uncertainty", inUnit(c.uncertainty(), quantity))
        .with("reference", c.reference())
        .with("note", c.note())
        .row();
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

  private Map<String, String> trace(TraceBinding t) {
    TraceBinding.ReadAs as = t.readAs();
    return cells()
        .with("file", t.file())
        .with("channel", t.channel())
        .with("place", t.place())
        .with("product", t.product())
        .with("run", t.run())
        .with("instrument", t.instrument())
        .with("from", t.from())
        .with("to", t.to())
        .with("starts", t.starts())
        .with(
            "clock_offset",
            t.clockOffsetSeconds() == 0 ? null : Quantity.of(t.clockOffsetSeconds(), Unit.SECOND))
        .with(
            "interval",
            as == null || as.intervalSeconds() == null
                ? null
                : Quantity.of(as.intervalSeconds(), Unit.SECOND))
        .with(
            "temperatures",
            as == null || as.temperatures() == null ? null : as.temperatures().symbol())
        .with("counts", as == null || as.counts() == null ? null : as.counts().symbol())
        .with("dates", as == null ? null : as.dates())
        .with("note", t.note())
        .row();
  }

  Map<String, String> photo(Photo p) {
    String boxes = p.boxes().stream().map(CampaignTables::box).collect(Collectors.joining(" "));
    String outlines =
        p.outlines().stream().map(CampaignTables::outline).collect(Collectors.joining(" "));
    return cells()
        .with("file", p.file())
        .with("run", p.run())
        .with("batch", p.batch())
        .with("face", p.face())
        .with("taken", p.taken())
        .with("camera", p.camera())
        .with("boxes", boxes.isEmpty() ? null : boxes)
        .with("outlines", outlines.isEmpty() ? null : outlines)
        .with("chart_pitch", p.frame().chartPitch())
        .with(
            "chart_corners",
            p.frame().chartCorners().isEmpty() ? null : corners(p.frame().chartCorners()))
        .with("front", p.frame().front())
        .with("note", p.note())
        .row();
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
