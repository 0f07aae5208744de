package ovenproof.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import ovenproof.campaign.Photo;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Unit;
import ovenproof.core.repeatability.BatchTrend;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** Makes one value per run from what was measured inside it, as the method's use says. */
final class RunSummary {
  private final RunEvidence run;
  private final MeasureUse use;

  RunSummary(RunEvidence run, MeasureUse use) {
    this.run = run;
    this.use = use;
  }

  Measurement of(List<Measurement> parts) {
    Subject subject = run.subject();
    Measurement value =
        switch (use.summary()) {
          case MEAN -> parts.size() == 1 ? parts.get(0).withSubject(subject) : mean(parts, subject);
          case LARGEST -> Averaging.largest(parts, subject);
          case SMALLEST -> Averaging.smallest(parts, subject);
          case SPREAD -> Averaging.spread(parts, subject);
          case CHANGE -> change(parts, subject);
          case ABSOLUTE_CHANGE -> absolute(change(parts, subject));
          case SLOPE -> slope(parts, subject);
          case FACE_DIFFERENCE -> faceDifference(parts, subject);
        };
    return named(value);
  }

  private static Measurement mean(List<Measurement> parts, Subject subject) {
    return Averaging.mean(parts, subject);
  }

  private Measurement change(List<Measurement> parts, Subject subject) {
    int last = run.test().batches();
    List<Measurement> later = ofBatch(parts, last);
    List<Measurement> earlier = ofBatch(parts, 1);
    if (last < 2 || later.isEmpty() || earlier.isEmpty()) {
      return parts.get(0).unknownFor(run.subject(), "a change needs the first and the last batch");
    }
    return Averaging.difference(later, earlier, subject);
  }

  /**
   * Errors that all batches share, such as a probe's calibration, drop out of a slope; what is left
   * between the batches is the run's own and gives its uncertainty.
   */
  private Measurement slope(List<Measurement> parts, Subject subject) {
    double[] values = new double[run.test().batches()];
    for (int batch = 1; batch <= values.length; batch++) {
      List<Measurement> own = ofBatch(parts, batch);
      Double value = own.isEmpty() ? null : mean(own, subject).value();
      values[batch - 1] = value == null ? Double.NaN : value;
    }
    long known = Arrays.stream(values).filter(Double::isFinite).count();
    if (known < BatchTrend.FEWEST) {
      return parts
          .get(0)
          .unknownFor(run.subject(), "a slope needs three batches with a value, found " + known);
    }
    return slope(parts.get(0), BatchTrend.of(values));
  }

  private Measurement slope(Measurement like, BatchTrend trend) {
    double half = trend.halfWidth(0.9);
    String note =
        String.format(
            Locale.ROOT,
            "per batch over %d batches; 90 %% interval %.3g to %.3g (Student's t)",
            trend.batches(),
            trend.slopePerBatch() - half,
            trend.slopePerBatch() + half);
    return new Measurement(
            like.id(),
            like.label(),
            run.subject(),
            trend.slopePerBatch(),
            like.unit() == Unit.CELSIUS ? Unit.KELVIN : like.unit(),
            trend.slopeU(),
            List.of(),
            trend.batches(),
            Censoring.NONE,
            null,
            null,
            like.definition(),
            like.revision(),
            note,
            like.evidence())
        .withComponents(List.of(Component.run(trend.slopeU())));
  }

  private static List<Measurement> ofBatch(List<Measurement> parts, int batch) {
    return parts.stream().filter(p -> Integer.valueOf(batch).equals(p.subject().batch())).toList();
  }

  private Measurement faceDifference(List<Measurement> parts, Subject subject) {
    TestPlan.PhotoPlan photos = run.test().photos();
    List<String> faces =
        photos == null
            ? List.of()
            : photos.faces().stream().filter(f -> !f.equals(Photo.BEFORE)).toList();
    if (faces.size() < 2) {
      return parts.get(0).unknownFor(run.subject(), "the method photographs one face only");
    }
    List<Measurement> first = ofFace(parts, faces.get(0));
    List<Measurement> last = ofFace(parts, faces.get(faces.size() - 1));
    if (first.isEmpty() || last.isEmpty()) {
      return parts.get(0).unknownFor(run.subject(), "one of the faces was not photographed");
    }
    return Averaging.difference(first, last, subject);
  }

  private static List<Measurement> ofFace(List<Measurement> parts, String face) {
    return parts.stream().filter(p -> face.equals(p.subject().face())).toList();
  }

  private Measurement absolute(Measurement value) {
    Double v = value.value();
    if (v == null) {
      return value.censored() == Censoring.NONE
          ? value
          : value.unknownFor(run.subject(), "an absolute change of a censored value is not known");
    }
    if (v >= 0) {
      return value;
    }
    return value.negated();
  }

  /** Under the name that the method gives the use. */
  private Measurement named(Measurement m) {
    return use.name() == null ? m : m.withLabel(use.name());
  }
}
