package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.BatchMeasureCatalogue;
import ovenproof.core.photo.BatchMeasures;
import ovenproof.core.photo.FacePairs;
import ovenproof.core.photo.FacePairs.Turned;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.PieceShade;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.core.quantity.Unit;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** Photographs of a campaign, each decoded and measured once per set of parameters. */
final class PhotoLibrary {
  /** The outlined area in pixels: the weight of a piece where no scale is known. */
  static final MeasureDescription OUTLINE_PIXELS =
      new MeasureDescription(
          "outline-pixels",
          "Outlined pixels",
          Unit.ONE,
          "The size of the piece on the picture.",
          "area of the outline in pixels",
          "own definition",
          MeasureDescription.EvidenceKind.PHOTO,
          List.of(),
          1);

  private static final List<MeasureDescription> TAKEN =
      Stream.of(
              PhotoMeasureCatalogue.ALL.stream(),
              Stream.of(
                  BatchMeasureCatalogue.LIGHTNESS_MEDIAN,
                  BatchMeasureCatalogue.LIGHTNESS_DARKEST_FIFTH,
                  OUTLINE_PIXELS))
          .flatMap(s -> s)
          .toList();

  private final EvidenceSource evidence;
  private final MeasurementCache cache;
  private final ShadeCards cards;
  private final Map<MeasurementKey, List<Measurement>> known = new ConcurrentHashMap<>();
  private final ConcurrentLinkedQueue<String> warnings = new ConcurrentLinkedQueue<>();

  PhotoLibrary(Campaign campaign, EvidenceSource evidence, MeasurementCache cache) {
    this.evidence = evidence;
    this.cache = cache;
    this.cards = new ShadeCards(campaign, evidence);
  }

  List<String> warnings() {
    return warnings.stream().distinct().sorted().toList();
  }

  /** Every measure of every piece of a photograph. */
  List<Measurement> measurements(
      Photo photo, TestPlan test, @Nullable MeasureUse use, Subject subject) {
    PhotoSetup setup =
        PhotoSetup.of(photo, test, use, cards.target(photo, test), cards.others(photo));
    MeasurementKey key = key(photo, test, setup, subject);
    List<Measurement> found = known.get(key);
    if (found == null) {
      found = cache.get(key, () -> measure(photo, test, setup, subject));
      known.put(key, found);
      miscounted(found);
      sizes(photo, test, found);
    }
    return found;
  }

  private List<Measurement> measure(Photo photo, TestPlan test, PhotoSetup setup, Subject subject) {
    PhotoFile file =
        PhotoFile.open(evidence.bytes(photo.file(), PhotoFile.LARGEST_BYTES), photo.file());
    PhotoAnalysis analysis = setup.read(photo, file.picture());
    List<String> names = PhotoSetup.names(photo);
    int found = analysis.pieces().size();
    if (names.isEmpty() && found != setup.expected()) {
      return miscount(photo, found, setup.expected(), subject);
    }
    List<Measurement> all = new ArrayList<>();
    for (int i = 0; i < found; i++) {
      PhotoAnalysis.Piece piece = analysis.pieces().get(i);
      Subject of = subject.withPiece(names.isEmpty() ? piece.id() : names.get(i));
      all.addAll(of(photo, test, piece.shade(), of));
    }
    return all;
  }

  /** A count that does not fit is to be resolved by a person, never guessed. */
  private static List<Measurement> miscount(Photo photo, int found, int expected, Subject subject) {
    String why =
        photo.file()
            + ": "
            + found
            + " of "
            + expected
            + " pieces found; mend the outlines on the photo page, or say where they lie with"
            + " boxes in photos.csv";
    return TAKEN.stream().map(measure -> Measurement.missing(measure, subject, why)).toList();
  }

  private void miscounted(List<Measurement> found) {
    found.stream()
        .filter(m -> m.isMissing() && m.subject().piece() == null)
        .map(Measurement::note)
        .filter(java.util.Objects::nonNull)
        .findFirst()
        .ifPresent(warnings::add);
  }

  /** A piece of another size than the method expects is probably not outlined rightly. */
  private void sizes(Photo photo, TestPlan test, List<Measurement> found) {
    TestPlan.PhotoPlan plan = test.photos();
    ToleratedQuantity wanted = plan == null ? null : plan.area();
    if (wanted == null || Photo.SHADE_CARD.equals(photo.face())) {
      return;
    }
    for (Measurement m : found) {
      Double area = m.value();
      if (m.id().equals(PhotoMeasureCatalogue.PIECE_AREA.id())
          && area != null
          && !wanted.allows(Quantity.of(area, Unit.SQUARE_CENTIMETRE))) {
        warnings.add(
            String.format(
                Locale.ROOT,
                "%s: piece %s covers %.0f cm², expected %s: look at its outline on the photo page",
                photo.file(),
                m.subject().piece(),
                area,
                wanted));
      }
    }
  }

  private List<Measurement> of(Photo photo, TestPlan test, PieceShade shade, Subject subject) {
    List<String> file = List.of(photo.file() + " sha256:" + fingerprint(photo));
    List<Measurement> all = new ArrayList<>(shade.measurements(subject));
    all.addAll(BatchMeasures.ofPiece(shade, subject));
    all.add(
        Measurement.of(OUTLINE_PIXELS, subject, shade.outline().area())
            .withComponents(List.of(Component.run(0))));
    Turned turned = test.photos() == null ? null : test.photos().turned();
    List<Measurement> seen =
        turned != null && "underside".equals(photo.face())
            ? FacePairs.asFromAbove(all, turned)
            : all;
    return seen.stream().map(m -> m.withEvidence(file)).toList();
  }

  private MeasurementKey key(Photo photo, TestPlan test, PhotoSetup setup, Subject subject) {
    List<String> parts = new ArrayList<>();
    parts.add("photo");
    for (MeasureDescription measure : TAKEN) {
      parts.add(measure.id() + "@" + measure.revision());
    }
    parts.add(fingerprint(photo));
    parts.add(photo.toString());
    parts.add(setup.toString());
    TestPlan.PhotoPlan plan = test.photos();
    parts.add(String.valueOf(plan == null ? null : plan.turned()));
    parts.add(subject.toString());
    return MeasurementKey.of(parts);
  }

  private String fingerprint(Photo photo) {
    return evidence.fingerprint(photo.file()).orElse("missing");
  }
}
