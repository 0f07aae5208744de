package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/**
 * What an open door costs: how far the centre drops, and how long until it is back within 5 K of
 * its mean before. Of the first door opened after the start; how long it stood open is the test's
 * business.
 */
public final class DoorRecovery implements TraceMeasure {
  private static final double BEFORE_SECONDS = 120;
  private static final double LOOK_SECONDS = 300;
  private static final double BACK_WITHIN_KELVIN = 5;

  /** Which of the two is measured. */
  public enum Of {
    DROP,
    TIME
  }

  private static final MeasureDescription DROP =
      TraceMeasures.describe(
          "door-drop",
          "Drop at the open door",
          Unit.KELVIN,
          "How far the centre falls below its mean of the two minutes before the door was opened.",
          "mean before − lowest of the five minutes after",
          "common practice");

  private static final MeasureDescription TIME =
      TraceMeasures.describe(
          "door-recovery",
          "Recovery after the door",
          Unit.SECOND,
          "From opening the door until the centre is back within 5 K of its mean before.",
          "first time after the lowest at which T ≥ mean before − 5 K, minus time of opening",
          "common practice");

  private final Of of;

  public DoorRecovery(Of of) {
    this.of = of;
  }

  @Override
  public MeasureDescription description() {
    return of == Of.DROP ? DROP : TIME;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Optional<Happening> door = input.first(Happening.Kind.DOOR_OPEN, 0);
    if (door.isEmpty()) {
      return input.missing(description(), "nobody noted an open door");
    }
    double opened = door.get().second();
    Trace smooth = curve.smooth();
    double before = TimeMean.of(smooth, Math.max(0, opened - BEFORE_SECONDS), opened);
    Integer lowest = lowest(smooth, opened);
    if (!Double.isFinite(before) || lowest == null) {
      return input.missing(description(), "the centre was not logged before and after the door");
    }
    return of == Of.DROP
        ? drop(input, curve, before, smooth.values()[lowest])
        : time(input, curve, before, opened, lowest);
  }

  private static @Nullable Integer lowest(Trace trace, double opened) {
    Integer best = null;
    double[] t = trace.seconds();
    for (int i = trace.firstAtOrAfter(opened); i < t.length && t[i] <= opened + LOOK_SECONDS; i++) {
      if (best == null || trace.values()[i] < trace.values()[best]) {
        best = i;
      }
    }
    return best;
  }

  /** The calibration cancels; noise stays, and what the probe feels of elements and walls. */
  private static Measurement drop(TraceInput input, HeatCurve curve, double before, double low) {
    List<Component> parts = new ArrayList<>(input.probe().radiation().unlike(1));
    parts.add(Component.run(Math.sqrt(2) * curve.readingU()));
    return TraceMeasures.value(DROP, input, Math.max(0, before - low), parts, DROP.formula());
  }

  private static Measurement time(
      TraceInput input, HeatCurve curve, double before, double opened, int lowest) {
    double[] t = curve.smooth().seconds();
    double[] v = curve.smooth().values();
    double wanted = before - BACK_WITHIN_KELVIN;
    int i = lowest;
    while (i < v.length && v[i] < wanted) {
      i++;
    }
    if (i == v.length) {
      return Measurement.above(TIME, input.subject(), t[t.length - 1] - opened)
          .withNote("not back within 5 K before the record ends")
          .withEvidence(input.evidence());
    }
    boolean never = i == lowest;
    double back =
        never ? opened : t[i - 1] + (wanted - v[i - 1]) / (v[i] - v[i - 1]) * (t[i] - t[i - 1]);
    double slope = Math.max(1e-3, Math.abs(LocalSlope.at(curve.clean(), back)));
    Measurement time =
        TraceMeasures.value(
            TIME,
            input,
            back - opened,
            List.of(Component.run(Math.hypot(curve.readingU() / slope, 1))),
            TIME.formula());
    return never ? time.withNote("it never fell by more than 5 K") : time;
  }
}
