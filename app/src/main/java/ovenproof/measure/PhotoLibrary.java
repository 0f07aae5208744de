package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.colour.Lab;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PhotoAnalyser;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.PieceShade;
import ovenproof.core.photo.PixelBox;
import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** Photographs of a campaign, each decoded and measured once per set of parameters. */
final class PhotoLibrary {
  private final EvidenceSource evidence;
  private final MeasurementCache cache;
  private final Map<MeasurementKey, List<Measurement>> known = new ConcurrentHashMap<>();
  private final ConcurrentLinkedQueue<String> warnings = new ConcurrentLinkedQueue<>();

  PhotoLibrary(EvidenceSource evidence, MeasurementCache cache) {
    this.evidence = evidence;
    this.cache = cache;
  }

  List<String> warnings() {
    return warnings.stream().distinct().sorted().toList();
  }

  /** Every measure of every piece of a photograph. */
  List<Measurement> measurements(Photo photo, TestPlan test, MeasureUse use, Subject subject) {
    ShadeSettings settings = settings(test, use);
    MeasurementKey key = key(photo, settings, expected(test, photo), subject);
    List<Measurement> found = known.get(key);
    if (found == null) {
      int expected = expected(test, photo);
      found = cache.get(key, () -> measure(photo, settings, expected, subject));
      known.put(key, found);
    }
    return found;
  }

  private List<Measurement> measure(
      Photo photo, ShadeSettings settings, int expected, Subject subject) {
    PhotoFile file =
        PhotoFile.open(evidence.bytes(photo.file(), PhotoFile.LARGEST_BYTES), photo.file());
    String source = "camera:" + (photo.camera() == null ? photo.file() : photo.camera());
    PhotoAnalyser analyser = PhotoAnalyser.withDefaults().with(settings).expecting(expected);
    if (photo.boxes().isEmpty() && photo.outlines().isEmpty()) {
      return counted(photo, analyser.analyse(file.picture(), source), expected, subject);
    }
    PhotoAnalysis byHand = byHand(photo, file.picture(), analyser, source);
    List<String> names = names(photo);
    List<Measurement> all = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      Subject piece = subject.withPiece(names.get(i));
      all.addAll(of(photo, byHand.pieces().get(i).shade(), piece));
    }
    return all;
  }

  /** A count that does not fit is to be resolved by a person, never guessed. */
  private List<Measurement> counted(
      Photo photo, PhotoAnalysis analysis, int expected, Subject subject) {
    int found = analysis.pieces().size();
    if (found != expected) {
      String why =
          photo.file()
              + ": "
              + found
              + " of "
              + expected
              + " pieces found; mend the outlines on the photo page, or say where they lie with"
              + " boxes in photos.csv";
      warnings.add(why);
      return PhotoMeasureCatalogue.ALL.stream()
          .map(measure -> Measurement.missing(measure, subject, why))
          .toList();
    }
    List<Measurement> all = new ArrayList<>();
    analysis.pieces().forEach(p -> all.addAll(of(photo, p.shade(), subject.withPiece(p.id()))));
    return all;
  }

  private List<Measurement> of(Photo photo, PieceShade shade, Subject subject) {
    List<String> file = List.of(photo.file() + " sha256:" + fingerprint(photo));
    return shade.measurements(subject).stream().map(m -> m.withEvidence(file)).toList();
  }

  /** Measures what a person framed or outlined: outlines hold before boxes. */
  static PhotoAnalysis byHand(Photo photo, Picture picture, PhotoAnalyser analyser, String source) {
    if (photo.outlines().isEmpty()) {
      List<PixelBox> boxes = photo.boxes().stream().map(box -> inside(picture, box)).toList();
      return analyser.measureInside(picture, boxes, source);
    }
    List<Outline> outlines =
        photo.outlines().stream().map(drawn -> mended(drawn, picture)).toList();
    return analyser.measure(picture, outlines, source);
  }

  private static Outline mended(Photo.Drawn drawn, Picture picture) {
    return new Outline(
        drawn.corners().stream()
            .map(
                c ->
                    new PixelPoint(
                        Math.min(c.x(), picture.width()), Math.min(c.y(), picture.height())))
            .toList());
  }

  /** What the person calls the pieces, in the order of {@link #byHand}. */
  static List<String> names(Photo photo) {
    return photo.outlines().isEmpty()
        ? photo.boxes().stream().map(Photo.Box::piece).toList()
        : photo.outlines().stream().map(Photo.Drawn::piece).toList();
  }

  /** What of a drawn box lies in the picture. */
  private static PixelBox inside(Picture picture, Photo.Box box) {
    int left = Math.max(0, Math.min(picture.width() - 1, box.x()));
    int top = Math.max(0, Math.min(picture.height() - 1, box.y()));
    int right = Math.min(picture.width(), box.x() + box.width());
    int bottom = Math.min(picture.height(), box.y() + box.height());
    return new PixelBox(left, top, Math.max(1, right - left), Math.max(1, bottom - top));
  }

  static ShadeSettings settings(TestPlan test, @Nullable MeasureUse use) {
    ShadeSettings settings = ShadeSettings.withDefaults();
    TestPlan.PhotoPlan plan = test.photos();
    TestPlan.Shade target = plan == null ? null : plan.target();
    if (target != null) {
      settings = settings.withTarget(Lab.d50(target.lightness(), target.a(), target.b()));
    }
    if (use == null) {
      return settings;
    }
    return settings.withLimits(
        colour(use, "near", settings.nearLightness()),
        colour(use, "beyond", settings.beyondLightness()));
  }

  static int expected(TestPlan test, Photo photo) {
    TestPlan.PhotoPlan plan = test.photos();
    int planned = plan == null ? 1 : plan.pieces();
    int byHand = names(photo).size();
    return Math.max(1, byHand == 0 ? planned : byHand);
  }

  private static double colour(MeasureUse use, String parameter, double fallback) {
    String written = use.parameters().get(parameter);
    return written == null ? fallback : QuantityParser.parse(written, Dimension.COLOUR).contract();
  }

  private MeasurementKey key(Photo photo, ShadeSettings settings, int expected, Subject subject) {
    List<String> parts = new ArrayList<>();
    parts.add("photo");
    for (MeasureDescription measure : PhotoMeasureCatalogue.ALL) {
      parts.add(measure.id() + "@" + measure.revision());
    }
    parts.add(fingerprint(photo));
    parts.add(photo.toString());
    parts.add(settings.toString());
    parts.add(Integer.toString(expected));
    parts.add(subject.toString());
    return MeasurementKey.of(parts);
  }

  private String fingerprint(Photo photo) {
    return evidence.fingerprint(photo.file()).orElse("missing");
  }
}
