package ovenproof.measure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Calibration;
import ovenproof.campaign.Campaign.Instrument;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Reading;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.MeasureUse;

/** Values that people typed: readings of instruments, and weights before and after. */
final class ReadingMeasures {

  private ReadingMeasures() {}

  /** Every effective reading of the use's id, corrected by its instrument's last calibration. */
  static List<Measurement> readings(RunEvidence run, MeasureUse use) {
    MeasureDescription measure = described(use);
    List<Measurement> found = new ArrayList<>();
    for (Reading reading : Entry.effective(run.campaign().readings())) {
      if (matches(reading, run, use)) {
        found.add(measurement(run, measure, reading));
      }
    }
    return found.isEmpty()
        ? List.of(Measurement.missing(measure, run.subject(), "no reading was typed"))
        : found;
  }

  private static boolean matches(Reading reading, RunEvidence run, MeasureUse use) {
    return reading.run().equals(run.run().id())
        && reading.measure().equals(use.ofOrId())
        && (use.batch() == null || use.batch().equals(reading.batch()))
        && (use.face() == null || use.face().equals(reading.face()));
  }

  private static MeasureDescription described(MeasureUse use) {
    MeasureDescription base = EntryMeasures.READING;
    Unit unit = use.unit() == null ? base.unit() : use.unit().contractUnit();
    return new MeasureDescription(
        base.id(),
        use.name() == null ? use.id() : use.name(),
        unit,
        base.help(),
        base.formula(),
        base.source(),
        base.evidence(),
        base.parameters(),
        base.revision());
  }

  private static Measurement measurement(
      RunEvidence run, MeasureDescription measure, Reading reading) {
    Subject subject =
        run.subject()
            .withBatch(reading.batch())
            .withPiece(reading.piece())
            .withFace(reading.face());
    InstrumentError error =
        InstrumentError.of(run.campaign(), reading.instrument(), run.run().started());
    List<Component> components = new ArrayList<>(error.components());
    Quantity own = reading.uncertainty();
    if (own != null) {
      components.add(Component.run(Math.abs(own.contract())));
    }
    Measurement value =
        Measurement.of(measure, subject, reading.value().contract() + error.correction())
            .withNote(reading.note())
            .withEvidence(List.of("reading " + reading.measure() + " of " + run.run().id()));
    return components.isEmpty() ? value : value.withComponents(components);
  }

  /** What an instrument adds to a reading: correction, and the components that go with it. */
  record InstrumentError(double correction, List<Component> components) {

    static InstrumentError of(
        Campaign campaign, @Nullable String instrumentId, java.time.@Nullable Instant when) {
      if (instrumentId == null) {
        return new InstrumentError(0, List.of());
      }
      List<Component> components = new ArrayList<>();
      double correction = 0;
      Optional<Calibration> calibration = latest(campaign, instrumentId, when);
      Optional<Instrument> instrument =
          campaign.instruments().stream().filter(i -> i.id().equals(instrumentId)).findFirst();
      if (calibration.isPresent()) {
        correction = calibration.get().correction();
        components.add(
            Component.shared(calibration.get().source(), calibration.get().uncertainty()));
      } else {
        instrument
            .map(Instrument::standardUncertainty)
            .ifPresent(u -> components.add(Component.shared("instrument:" + instrumentId, u)));
      }
      instrument
          .map(Instrument::resolution)
          .filter(resolution -> resolution > 0)
          .ifPresent(r -> components.add(Component.run(r / Math.sqrt(12))));
      return new InstrumentError(correction, components);
    }

    private static Optional<Calibration> latest(
        Campaign campaign, String instrument, java.time.@Nullable Instant when) {
      LocalDate day =
          when == null ? LocalDate.MAX : when.atZone(campaign.info().zone()).toLocalDate();
      return campaign.calibrations().stream()
          .filter(c -> c.instrument().equals(instrument) && !c.on().isAfter(day))
          .max(Comparator.comparing(Calibration::on));
    }
  }

  /** Mass loss of each weighed piece, or of the batch weighed as one. */
  static List<Measurement> massLoss(RunEvidence run, MeasureUse use) {
    List<Measurement> losses = new ArrayList<>();
    for (Piece piece : run.campaign().pieces()) {
      boolean wanted =
          piece.run().equals(run.run().id())
              && (use.batch() == null || use.batch() == piece.batch())
              && (piece.before() != null || piece.after() != null);
      if (wanted) {
        losses.add(massLoss(run, piece));
      }
    }
    return losses.isEmpty()
        ? List.of(
            Measurement.missing(EntryMeasures.MASS_LOSS, run.subject(), "nothing was weighed"))
        : losses;
  }

  private static Measurement massLoss(RunEvidence run, Piece piece) {
    Subject subject = run.subject().withBatch(piece.batch()).withPiece(piece.piece());
    Quantity before = piece.before();
    Quantity after = piece.after();
    if (before == null || after == null || !(before.contract() > 0)) {
      String side = before == null ? "before" : after == null ? "after" : "properly before";
      return Measurement.missing(EntryMeasures.MASS_LOSS, subject, "not weighed " + side);
    }
    InstrumentError scale =
        InstrumentError.of(run.campaign(), piece.instrument(), run.run().started());
    double raw = before.contract() + scale.correction();
    double cooked = after.contract() + scale.correction();
    Measurement loss =
        Measurement.of(EntryMeasures.MASS_LOSS, subject, 100 * (raw - cooked) / raw)
            .withEvidence(List.of("weights of " + run.run().id()));
    List<Component> components = lossComponents(scale, raw, cooked);
    return components.isEmpty() ? loss : loss.withComponents(components);
  }

  /**
   * What the scale reads too high shifts both weighings alike, so most of it cancels: ∂loss/∂shift
   * = −100 (raw − cooked)/raw². The rounding of each weighing does not: ∂loss/∂raw = 100
   * cooked/raw², ∂loss/∂cooked = −100/raw.
   */
  private static List<Component> lossComponents(InstrumentError scale, double raw, double cooked) {
    List<Component> components = new ArrayList<>();
    double own = 0;
    for (Component component : scale.components()) {
      if (component.isShared()) {
        double sensitivity = -100 * (raw - cooked) / (raw * raw);
        components.add(Component.shared(component.source(), sensitivity * component.u()));
      } else {
        own = Math.hypot(own, component.u());
      }
    }
    double u = own * Math.hypot(100 * cooked / (raw * raw), 100 / raw);
    if (u > 0) {
      components.add(Component.run(u));
    }
    return components;
  }
}
