package ovenproof.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.FacePairs.Turned;
import ovenproof.core.photo.PieceClasses.Judged;
import ovenproof.core.photo.PieceClasses.ShadeClass;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;
import ovenproof.method.TestPlan.PhotoPlan;
import ovenproof.method.TestPlan.PhotoPlan.TargetFrom;

/** Reads how the batches of one test are photographed. */
final class PhotoPlanReader {
  static final List<String> PHOTO_KEYS =
      List.of(
          "faces",
          "pieces",
          "target",
          "chart_pitch",
          "turned",
          "area",
          "classes",
          "judged",
          "note");
  static final List<String> SHADE_KEYS = List.of("L", "a", "b", "from");
  static final List<String> CLASS_KEYS = List.of("id", "from");
  private static final double LARGEST_PITCH_MILLIMETRES = 200;

  private final YamlMap photos;

  PhotoPlanReader(YamlMap photos) {
    this.photos = photos;
  }

  PhotoPlan read() {
    photos.only(PHOTO_KEYS);
    List<String> faces =
        photos.list("faces").stream().flatMap(w -> w.key().stream()).distinct().toList();
    if (faces.isEmpty()) {
      photos
          .problems()
          .error(photos.place(), "no faces", "the faces to photograph", "faces: [top]");
    }
    Optional<YamlMap> target = photos.map("target");
    target.ifPresent(t -> t.only(SHADE_KEYS));
    TargetFrom from =
        target
            .flatMap(t -> t.find("from"))
            .flatMap(w -> w.word(TargetFrom.class))
            .orElse(TargetFrom.VALUE);
    List<ShadeClass> classes = classes();
    return new PhotoPlan(
        faces,
        photos.need("pieces").flatMap(w -> w.wholeNumber(1, 1000)).orElse(1),
        target.map(t -> shade(t, from)).orElse(null),
        from,
        pitch(),
        photos.find("turned").flatMap(w -> w.word(Turned.class)).orElse(null),
        area(),
        classes,
        judged(classes),
        photos.textOrNull("note"));
  }

  private static TestPlan.@Nullable Shade shade(YamlMap target, TargetFrom from) {
    if (from == TargetFrom.SHADE_CARD) {
      if (target.has("L") || target.has("a") || target.has("b")) {
        target
            .problems()
            .error(
                target.place("from"),
                "a shade both written and taken from a card",
                "one of them",
                "delete L, a and b, or \"from\"");
      }
      return null;
    }
    return new TestPlan.Shade(
        target.need("L").flatMap(w -> w.number(0, 100)).orElse(0.0),
        target.need("a").flatMap(w -> w.number(-128, 128)).orElse(0.0),
        target.need("b").flatMap(w -> w.number(-128, 128)).orElse(0.0));
  }

  private @Nullable Quantity pitch() {
    Optional<Written> written = photos.find("chart_pitch");
    Quantity pitch = written.flatMap(w -> w.quantity(Dimension.LENGTH)).orElse(null);
    if (pitch != null && !(pitch.contract() > 0 && pitch.contract() <= LARGEST_PITCH_MILLIMETRES)) {
      written
          .orElseThrow()
          .error(
              "from the middle of a patch to the next, above 0 and up to 20 cm",
              "measure it with a ruler: six patches and divide by six");
      return null;
    }
    return pitch;
  }

  private @Nullable ToleratedQuantity area() {
    Optional<Written> written = photos.find("area");
    ToleratedQuantity area = written.flatMap(w -> w.tolerated(Dimension.AREA)).orElse(null);
    if (area != null && !(area.nominal().contract() > 0)) {
      written.orElseThrow().error("an area above 0, such as 80 cm² ± 8 cm²", "");
      return null;
    }
    return area;
  }

  private List<ShadeClass> classes() {
    List<YamlMap> written = photos.maps("classes");
    List<ShadeClass> classes = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      YamlMap map = written.get(i);
      map.only(CLASS_KEYS);
      boolean last = i == written.size() - 1;
      Optional<Written> from = last ? map.find("from") : map.need("from");
      double lightness = from.flatMap(w -> w.number(0, 100)).orElse(0.0);
      if (i > 0 && from.isPresent() && !(lightness < classes.get(i - 1).fromLightness())) {
        from.get()
            .error(
                "an L* below " + number(classes.get(i - 1).fromLightness()),
                "classes stand from palest to darkest; each begins at its lowest L*");
      }
      classes.add(new ShadeClass(Keys.key(map, "id"), lightness));
    }
    Keys.unique(written);
    return falling(classes) ? classes : List.of();
  }

  private static boolean falling(List<ShadeClass> classes) {
    for (int i = 1; i < classes.size(); i++) {
      if (!(classes.get(i).fromLightness() < classes.get(i - 1).fromLightness())) {
        return false;
      }
    }
    return true;
  }

  private Judged judged(List<ShadeClass> classes) {
    Optional<Written> written = photos.find("judged");
    if (written.isPresent() && classes.isEmpty() && !photos.has("classes")) {
      written.get().error("\"classes\" beside it", "say which classes there are");
    }
    return written.flatMap(w -> w.word(Judged.class)).orElse(Judged.MEDIAN);
  }

  private static String number(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
