package ovenproof.core.photo;

import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Unit;

/**
 * Measures that need more than one outline: classes of small pieces, the worst piece, the sides of
 * a tray, pairs of photographs. Computed by {@link BatchMeasures} and {@link FacePairs}.
 */
public final class BatchMeasureCatalogue {

  private static final String OWN = "own definition";

  public static final MeasureDescription LIGHTNESS_MEDIAN =
      of(
          "lightness-median",
          "Median L*",
          Unit.LIGHTNESS,
          "Half of the piece is lighter, half darker. Less moved by one spot than the mean.",
          "median of L* over the cells of the piece",
          "CIE 15:2018",
          1);

  public static final MeasureDescription LIGHTNESS_DARKEST_FIFTH =
      of(
          "lightness-darkest-fifth",
          "L* of the darkest fifth",
          Unit.LIGHTNESS,
          "A piece that is burnt at one end is a dark piece.",
          "mean of L* over the darkest fifth of the cells of the piece",
          OWN,
          1);

  public static final MeasureDescription CLASS_SHARE =
      of(
          "class-share",
          "Share of a class, by count",
          Unit.PERCENT,
          "Share of the pieces that fall in the class that \"of\" names. Its uncertainty is half of"
              + " the 68 % Wilson interval; the 95 % interval stands in the note.",
          "pieces of the class / all pieces",
          "Wilson 1927",
          1);

  public static final MeasureDescription CLASS_AREA =
      of(
          "class-area",
          "Share of a class, by area",
          Unit.PERCENT,
          "Share of the outlined area that belongs to pieces of the class that \"of\" names: large"
              + " pieces weigh more.",
          "area of the pieces of the class / area of all pieces",
          "Wilson 1927, with the effective number of pieces (Σa)²/Σa²",
          1);

  public static final MeasureDescription WORST_PIECE =
      of(
          "worst-piece",
          "Worst piece",
          Unit.LIGHTNESS,
          "How far the worst piece lies from the shade wanted, lighter or darker; from the mean of"
              + " its batch when the method names no shade. Stands beside the mean, which hides it.",
          "largest |mean L* − target L*| of the pieces of a batch",
          OWN,
          1);

  public static final MeasureDescription CAVITY_FRONT_BACK =
      cavity("cavity-front-back", "Front against back of the tray", "front", "back");

  public static final MeasureDescription CAVITY_LEFT_RIGHT =
      cavity("cavity-left-right", "Left against right of the tray", "left", "right");

  public static final MeasureDescription CAVITY_CORNERS =
      cavity("cavity-corners", "Corners of the tray against the rest", "corner", "other");

  public static final MeasureDescription CAVITY_SECOND_BATCH =
      of(
          "cavity-second-batch",
          "Last batch against the first, place by place",
          Unit.LIGHTNESS,
          "Positive when the last batch is paler. Only places baked in both batches count, so a"
              + " batch with fewer pieces is compared fairly.",
          "mean over shared places of L* in the last batch − L* in the first",
          OWN,
          1);

  /** All of them, with those of {@link FacePairs}, in the order of a table. */
  public static final List<MeasureDescription> ALL =
      List.of(
          LIGHTNESS_MEDIAN,
          LIGHTNESS_DARKEST_FIFTH,
          WORST_PIECE,
          CLASS_SHARE,
          CLASS_AREA,
          FacePairs.TOP_MINUS_UNDERSIDE,
          FacePairs.BEFORE_MINUS_AFTER,
          CAVITY_FRONT_BACK,
          CAVITY_LEFT_RIGHT,
          CAVITY_CORNERS,
          CAVITY_SECOND_BATCH);

  private BatchMeasureCatalogue() {}

  private static MeasureDescription cavity(String id, String name, String first, String second) {
    return of(
        id,
        name,
        Unit.LIGHTNESS,
        "Positive when the "
            + first
            + " pieces are paler. One tray cannot separate the piece from the oven: only runs with"
            + " pieces dealt anew show what the oven does.",
        "mean L* of the " + first + " pieces − mean L* of the " + second + " pieces of a batch",
        OWN,
        1);
  }

  private static MeasureDescription of(
      String id, String name, Unit unit, String help, String formula, String source, int revision) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, EvidenceKind.PHOTO, List.of(), revision);
  }
}
