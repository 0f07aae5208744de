package ovenproof.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PhotoAnalyser;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.PixelBox;
import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * How one photograph of a campaign is read: what the method says of the test, the person of the
 * frame, and the day's shade card of the target.
 *
 * @param settings target, limits and front
 * @param expected how many pieces there are
 * @param chartPitchMillimetres null when nobody said it: then there is no scale
 * @param others around the pieces of other runs in the frame
 */
record PhotoSetup(
    ShadeSettings settings,
    int expected,
    @Nullable Double chartPitchMillimetres,
    List<Photo.Box> others) {

  static PhotoSetup of(
      Photo photo,
      TestPlan test,
      @Nullable MeasureUse use,
      @Nullable Lab target,
      List<Photo.Box> others) {
    ShadeSettings settings = ShadeSettings.withDefaults().withTarget(target);
    if (photo.frame().front() != null) {
      settings = settings.withFront(photo.frame().front());
    }
    if (use != null) {
      settings =
          settings.withLimits(
              colour(use, "near", settings.nearLightness()),
              colour(use, "beyond", settings.beyondLightness()));
    }
    return new PhotoSetup(settings, expected(photo, test), pitch(photo, test), others);
  }

  private static double colour(MeasureUse use, String parameter, double fallback) {
    String written = use.parameters().get(parameter);
    return written == null ? fallback : QuantityParser.parse(written, Dimension.COLOUR).contract();
  }

  private static int expected(Photo photo, TestPlan test) {
    int byHand = names(photo).size();
    if (byHand > 0) {
      return byHand;
    }
    return Photo.SHADE_CARD.equals(photo.face()) ? 1 : planned(test);
  }

  /** How many pieces the method expects; 1 when it does not say. */
  static int planned(TestPlan test) {
    TestPlan.PhotoPlan plan = test.photos();
    return Math.max(1, plan == null ? 1 : plan.pieces());
  }

  /** The first face that a baked piece shows; the top when the method does not say. */
  static String firstFace(TestPlan test) {
    List<String> faces = test.photos() == null ? List.of() : test.photos().faces();
    return faces.stream().filter(f -> !f.equals(Photo.BEFORE)).findFirst().orElse("top");
  }

  private static @Nullable Double pitch(Photo photo, TestPlan test) {
    TestPlan.PhotoPlan plan = test.photos();
    Quantity own = photo.frame().chartPitch();
    Quantity pitch = own != null ? own : plan == null ? null : plan.chartPitch();
    return pitch == null ? null : Double.valueOf(pitch.contract());
  }

  /** The photograph seen so: outlines hold before boxes, and both before a search. */
  PhotoAnalysis read(Photo photo, Picture picture) {
    String source = source(photo);
    PhotoAnalyser analyser = analyser(photo, picture, 1).with(settings).expecting(expected);
    if (chartPitchMillimetres != null) {
      analyser = analyser.withChartPitch(chartPitchMillimetres);
    }
    List<PixelBox> besides = others.stream().map(box -> inside(picture, box)).toList();
    if (!photo.outlines().isEmpty()) {
      List<Outline> outlines =
          photo.outlines().stream().map(d -> new Outline(points(d.corners(), picture, 1))).toList();
      return analyser.measure(picture, outlines, besides, source);
    }
    if (!photo.boxes().isEmpty()) {
      List<PixelBox> boxes = photo.boxes().stream().map(box -> inside(picture, box)).toList();
      return analyser.measureInside(picture, boxes, besides, source);
    }
    return analyser.analyse(picture, source);
  }

  /** The colours of a photograph, by the chart that is found or was marked in it. */
  static PhotoCalibration calibration(Photo photo, Picture picture) {
    return calibration(photo, picture, 1);
  }

  /**
   * The same from a reduced picture.
   *
   * @param factor by which it was reduced
   */
  static PhotoCalibration calibration(Photo photo, Picture reduced, int factor) {
    return analyser(photo, reduced, factor).calibrate(reduced, source(photo));
  }

  private static PhotoAnalyser analyser(Photo photo, Picture picture, int factor) {
    return PhotoAnalyser.withDefaults()
        .withChartAt(points(photo.frame().chartCorners(), picture, factor));
  }

  private static String source(Photo photo) {
    return "camera:" + (photo.camera() == null ? photo.file() : photo.camera());
  }

  /** Corners in a picture that was reduced by a factor. */
  private static List<PixelPoint> points(List<Photo.Corner> corners, Picture picture, int factor) {
    return corners.stream()
        .map(
            c ->
                new PixelPoint(
                    Math.min(c.x() / (double) factor, picture.width()),
                    Math.min(c.y() / (double) factor, picture.height())))
        .toList();
  }

  /** What of a drawn box lies in the picture. */
  private static PixelBox inside(Picture picture, Photo.Box box) {
    int left = Math.max(0, Math.min(picture.width() - 1, box.x()));
    int top = Math.max(0, Math.min(picture.height() - 1, box.y()));
    int right = Math.min(picture.width(), box.x() + box.width());
    int bottom = Math.min(picture.height(), box.y() + box.height());
    return new PixelBox(left, top, Math.max(1, right - left), Math.max(1, bottom - top));
  }

  /** What the person calls the pieces, in the order in which they are read; empty when none. */
  static List<String> names(Photo photo) {
    return photo.outlines().isEmpty()
        ? photo.boxes().stream().map(Photo.Box::piece).toList()
        : photo.outlines().stream().map(Photo.Drawn::piece).toList();
  }
}
