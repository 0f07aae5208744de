package ovenproof.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.BatchMeasureCatalogue;
import ovenproof.core.photo.BatchMeasures;
import ovenproof.core.photo.BatchMeasures.Judged;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.photo.FacePairs;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.PieceClasses;
import ovenproof.input.InputException;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** Takes measures that need several pieces or several photographs of one run. */
final class BatchTaker implements Taker {
  private static final String UNDERSIDE = "underside";

  private final PhotoLibrary library;
  private final MeasureDescription measure;

  BatchTaker(PhotoLibrary library, MeasureDescription measure) {
    this.library = library;
    this.measure = measure;
  }

  /** Whether a measure is taken of a batch and not of one piece. */
  static boolean takes(MeasureDescription measure) {
    return BatchMeasureCatalogue.ALL.stream().anyMatch(m -> m.id().equals(measure.id()))
        && !measure.id().equals(BatchMeasureCatalogue.LIGHTNESS_MEDIAN.id())
        && !measure.id().equals(BatchMeasureCatalogue.LIGHTNESS_DARKEST_FIFTH.id());
  }

  @Override
  public List<Measurement> take(RunEvidence run, MeasureUse use) {
    try {
      if (is(BatchMeasureCatalogue.CAVITY_SECOND_BATCH)) {
        return List.of(secondBatch(run, use));
      }
      List<Measurement> all = new ArrayList<>();
      for (int batch : run.batches(use)) {
        all.addAll(ofBatch(run, use, batch));
      }
      return all;
    } catch (InputException unreadable) {
      return List.of(
          Measurement.missing(measure, run.subject(), String.valueOf(unreadable.getMessage())));
    }
  }

  private boolean is(MeasureDescription other) {
    return measure.id().equals(other.id());
  }

  private List<Measurement> ofBatch(RunEvidence run, MeasureUse use, int batch) {
    Subject subject = run.subject().withBatch(batch);
    if (is(FacePairs.TOP_MINUS_UNDERSIDE)) {
      return pairs(run, use, batch, first(run, use), UNDERSIDE);
    }
    if (is(FacePairs.BEFORE_MINUS_AFTER)) {
      return pairs(run, use, batch, Photo.BEFORE, first(run, use));
    }
    String face = first(run, use);
    List<Measurement> all = measurements(run, use, batch, face);
    Subject ofFace = subject.withFace(face);
    if (all.isEmpty()) {
      return List.of(Measurement.missing(measure, ofFace, "no photograph of batch " + batch));
    }
    if (is(BatchMeasureCatalogue.WORST_PIECE)) {
      return List.of(worst(ofFace, all));
    }
    if (is(BatchMeasureCatalogue.CLASS_SHARE) || is(BatchMeasureCatalogue.CLASS_AREA)) {
      return List.of(classShare(run, use, ofFace, all));
    }
    return List.of(BatchMeasures.side(measure, ofFace, places(run, batch, all)));
  }

  /** The face that the use names; else the first of a baked piece. */
  private static String first(RunEvidence run, MeasureUse use) {
    String named = use.face();
    return named != null ? named : PhotoSetup.firstFace(run.test());
  }

  private List<Measurement> measurements(
      RunEvidence run, MeasureUse use, int batch, @Nullable String face) {
    List<Measurement> all = new ArrayList<>();
    for (Photo photo : run.campaign().photos()) {
      Integer of = photo.batch() == null ? Integer.valueOf(1) : photo.batch();
      if (photo.run().equals(run.run().id())
          && of == batch
          && Objects.equals(photo.face() == null ? face : photo.face(), face)) {
        Subject subject = run.subject().withBatch(batch).withFace(face);
        all.addAll(library.measurements(photo, run.test(), use, subject));
      }
    }
    return all;
  }

  private static List<Measurement> only(List<Measurement> all, MeasureDescription wanted) {
    return all.stream().filter(m -> m.id().equals(wanted.id())).toList();
  }

  // ---------- pairs ----------

  private List<Measurement> pairs(
      RunEvidence run, MeasureUse use, int batch, String firstFace, String secondFace) {
    Map<String, Measurement> first = byPiece(measurements(run, use, batch, firstFace));
    Map<String, Measurement> second = byPiece(measurements(run, use, batch, secondFace));
    Subject subject = run.subject().withBatch(batch);
    List<Measurement> out = new ArrayList<>();
    first.forEach(
        (piece, value) -> {
          Measurement other = second.get(piece);
          if (other != null) {
            out.add(
                FacePairs.difference(measure, subject.withPiece(piece), value, other)
                    .withEvidence(both(value, other)));
          }
        });
    if (!out.isEmpty()) {
      return out;
    }
    String why =
        first.isEmpty()
            ? "no photograph of the " + firstFace + " of batch " + batch
            : second.isEmpty()
                ? "no photograph of the " + secondFace + " of batch " + batch
                : "the pieces of both photographs have no name in common";
    return List.of(Measurement.missing(measure, subject, why));
  }

  private static Map<String, Measurement> byPiece(List<Measurement> all) {
    Map<String, Measurement> pieces = new LinkedHashMap<>();
    for (Measurement m : only(all, PhotoMeasureCatalogue.LIGHTNESS_MEAN)) {
      String piece = m.subject().piece();
      pieces.putIfAbsent(piece == null ? "" : piece, m);
    }
    return pieces;
  }

  private static List<String> both(Measurement a, Measurement b) {
    return java.util.stream.Stream.of(a, b).flatMap(m -> m.evidence().stream()).distinct().toList();
  }

  // ---------- batches ----------

  private Measurement worst(Subject subject, List<Measurement> all) {
    List<Measurement> lightness = only(all, PhotoMeasureCatalogue.LIGHTNESS_MEAN);
    Double wanted = null;
    for (Measurement difference : only(all, PhotoMeasureCatalogue.LIGHTNESS_DIFFERENCE)) {
      for (Measurement mean : lightness) {
        Double d = difference.value();
        Double l = mean.value();
        if (d != null && l != null && mean.subject().equals(difference.subject())) {
          wanted = l - d;
        }
      }
    }
    return BatchMeasures.worstPiece(subject, lightness, wanted).withEvidence(evidence(all));
  }

  private Measurement classShare(
      RunEvidence run, MeasureUse use, Subject subject, List<Measurement> all) {
    TestPlan.PhotoPlan plan = run.test().photos();
    if (plan == null || plan.classes().isEmpty()) {
      return Measurement.missing(measure, subject, "the method names no classes");
    }
    MeasureDescription deciding =
        plan.judged() == PieceClasses.Judged.MEDIAN
            ? BatchMeasureCatalogue.LIGHTNESS_MEDIAN
            : BatchMeasureCatalogue.LIGHTNESS_DARKEST_FIFTH;
    Map<Subject, Double> areas = new LinkedHashMap<>();
    only(all, PhotoLibrary.OUTLINE_PIXELS)
        .forEach(m -> areas.put(m.subject(), Optional.ofNullable(m.value()).orElse(0.0)));
    List<Judged> pieces =
        only(all, deciding).stream()
            .map(m -> new Judged(m, areas.getOrDefault(m.subject(), 0.0)))
            .toList();
    PieceClasses classes = PieceClasses.of(plan.classes(), plan.judged());
    return BatchMeasures.classShare(measure, subject, classes, use.ofOrId(), pieces)
        .withEvidence(evidence(all));
  }

  private Map<Position, List<Measurement>> places(
      RunEvidence run, int batch, List<Measurement> all) {
    return CavityPlaces.of(run.campaign(), run.test().id())
        .byPlace(
            run.campaign(), run.run().id(), batch, only(all, PhotoMeasureCatalogue.LIGHTNESS_MEAN));
  }

  private Measurement secondBatch(RunEvidence run, MeasureUse use) {
    int last = run.test().batches();
    String face = first(run, use);
    List<Measurement> later = measurements(run, use, last, face);
    List<Measurement> earlier = measurements(run, use, 1, face);
    Subject subject = run.subject().withFace(face);
    if (last < 2 || later.isEmpty() || earlier.isEmpty()) {
      return Measurement.missing(
          measure, subject, "photographs of the first and the last batch are needed");
    }
    return BatchMeasures.secondBatch(subject, places(run, last, later), places(run, 1, earlier))
        .withEvidence(evidence(later));
  }

  private static List<String> evidence(List<Measurement> all) {
    return all.stream().flatMap(m -> m.evidence().stream()).distinct().toList();
  }
}
