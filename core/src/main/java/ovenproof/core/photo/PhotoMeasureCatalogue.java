package ovenproof.core.photo;

import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/** Every measure of a photographed piece, described once. All colours are CIELAB under D50. */
public final class PhotoMeasureCatalogue {

  /** All measures of a picture rest on the same outlines and light, so they change together. */
  private static final int REVISION = 2;

  private static final String CIE = "CIE 15:2018";
  private static final String OWN = "own definition";
  private static final Parameter TARGET =
      new Parameter("target", "The shade wanted, as L*, a*, b* under D50", Dimension.COLOUR, "");
  private static final Parameter NEAR =
      new Parameter(
          "near", "How far from the target L* still counts as near", Dimension.COLOUR, "5");
  private static final Parameter BEYOND =
      new Parameter(
          "beyond", "How far from the target L* counts as pale or dark", Dimension.COLOUR, "8");
  private static final Parameter BLOCK =
      new Parameter("block", "Side of a block", Dimension.LENGTH, "2 mm");
  private static final Parameter MARGIN =
      new Parameter("margin", "Band inside the outline that is left out", Dimension.LENGTH, "2 mm");
  private static final Parameter RIM =
      new Parameter("rim", "Width of the rim inside the margin", Dimension.LENGTH, "5 mm");

  public static final MeasureDescription LIGHTNESS_MEAN =
      of(
          "lightness-mean",
          "Mean L*",
          Unit.LIGHTNESS,
          "How light the piece is: 0 is black, 100 white. Falls steadily as food browns.",
          "mean of L* over the piece without its margin",
          CIE,
          MARGIN);
  public static final MeasureDescription A_MEAN =
      of(
          "a-mean",
          "Mean a*",
          Unit.A_STAR,
          "Red against green.",
          "mean of a* over the piece without its margin",
          CIE,
          MARGIN);
  public static final MeasureDescription B_MEAN =
      of(
          "b-mean",
          "Mean b*",
          Unit.B_STAR,
          "Yellow against blue. Rises to golden and falls again towards burnt.",
          "mean of b* over the piece without its margin",
          CIE,
          MARGIN);
  public static final MeasureDescription SHADE_DIFFERENCE =
      of(
          "shade-difference",
          "Distance from the target shade",
          Unit.DELTA_E00,
          "How far the mean colour is from the target, for an eye. Says nothing about the"
              + " direction: read the lightness difference beside it.",
          "ΔE00 of the mean L*, a*, b* to the target",
          "CIE 142:2001, ISO/CIE 11664-6:2014",
          TARGET,
          MARGIN);
  public static final MeasureDescription LIGHTNESS_DIFFERENCE =
      of(
          "lightness-difference",
          "Lighter (+) or darker (−) than the target",
          Unit.LIGHTNESS,
          "Signed distance in lightness from the target shade.",
          "mean L* − target L*",
          OWN,
          TARGET,
          MARGIN);
  public static final MeasureDescription EVENNESS_SD =
      of(
          "evenness-sd",
          "Unevenness (SD)",
          Unit.LIGHTNESS,
          "How much the shade varies over the piece; 0 is perfectly even. Comparable between"
              + " photographs only with a scale in the frame.",
          "standard deviation of the block means of L*",
          OWN,
          BLOCK,
          MARGIN);
  public static final MeasureDescription EVENNESS_RANGE =
      of(
          "evenness-range",
          "Unevenness (range)",
          Unit.LIGHTNESS,
          "From the darkest to the lightest part, leaving out the outermost twentieths.",
          "95 % minus 5 % quantile of the block means of L*",
          OWN,
          BLOCK,
          MARGIN);
  public static final MeasureDescription SHARE_NEAR_TARGET =
      of(
          "share-near-target",
          "Share near the target",
          Unit.PERCENT,
          "Share of the area whose lightness is close to the target.",
          "area with |L* − target L*| ≤ near, L* smoothed over a block",
          OWN,
          TARGET,
          NEAR,
          BLOCK,
          MARGIN);
  public static final MeasureDescription SHARE_DARK =
      of(
          "share-dark",
          "Share too dark",
          Unit.PERCENT,
          "Share of the area darker than the target by more than the limit.",
          "area with L* < target L* − beyond, L* smoothed over a block",
          OWN,
          TARGET,
          BEYOND,
          BLOCK,
          MARGIN);
  public static final MeasureDescription SHARE_PALE =
      of(
          "share-pale",
          "Share too pale",
          Unit.PERCENT,
          "Share of the area paler than the target by more than the limit.",
          "area with L* > target L* + beyond, L* smoothed over a block",
          OWN,
          TARGET,
          BEYOND,
          BLOCK,
          MARGIN);
  public static final MeasureDescription LARGEST_DARK_PATCH =
      of(
          "largest-dark-patch",
          "Largest dark patch",
          Unit.PERCENT,
          "The largest connected area that is too dark, as a share of the piece.",
          "largest connected area with L* < target L* − beyond",
          OWN,
          TARGET,
          BEYOND,
          BLOCK,
          MARGIN);
  public static final MeasureDescription LARGEST_PALE_PATCH =
      of(
          "largest-pale-patch",
          "Largest pale patch",
          Unit.PERCENT,
          "The largest connected area that is too pale, as a share of the piece.",
          "largest connected area with L* > target L* + beyond",
          OWN,
          TARGET,
          BEYOND,
          BLOCK,
          MARGIN);
  public static final MeasureDescription RIM_DIFFERENCE =
      of(
          "rim-difference",
          "Rim against core",
          Unit.LIGHTNESS,
          "Negative when the edge is darker than the middle.",
          "mean L* of the rim − mean L* of the core",
          OWN,
          RIM,
          MARGIN);
  public static final MeasureDescription TILT_FRONT_BACK =
      of(
          "tilt-front-back",
          "Front against back",
          Unit.LIGHTNESS,
          "How much lighter the front edge is than the back edge; the front is at the bottom of"
              + " the picture unless the photograph is turned.",
          "rise of the fitted plane of L* from the back edge to the front edge of the piece",
          OWN,
          BLOCK,
          MARGIN);
  public static final MeasureDescription TILT_LEFT_RIGHT =
      of(
          "tilt-left-right",
          "Right against left",
          Unit.LIGHTNESS,
          "How much lighter the right edge is than the left edge.",
          "rise of the fitted plane of L* from the left edge to the right edge of the piece",
          OWN,
          BLOCK,
          MARGIN);
  public static final MeasureDescription MOTTLE =
      of(
          "mottle",
          "Mottle",
          Unit.LIGHTNESS,
          "Unevenness that is no tilt: spots and edges.",
          "standard deviation of the block means of L* about the fitted plane",
          OWN,
          BLOCK,
          MARGIN);
  public static final MeasureDescription BROWNING_INDEX =
      of(
          "browning-index",
          "Browning index",
          Unit.BROWNING_INDEX,
          "Shown for comparison with published figures. It is not monotone, burnt reads less than"
              + " golden, so it is never scored alone.",
          "100 (x − 0.31) / 0.172 with x = (a* + 1.75 L*) / (5.645 L* + a* − 3.012 b*) of the"
              + " mean colour",
          "M. P. Buera, R. D. Lozano, C. Petriella 1985/86, quoted in R. Hirschler 2012",
          MARGIN);
  public static final MeasureDescription PIECE_AREA =
      of(
          "piece-area",
          "Area of the piece",
          Unit.SQUARE_CENTIMETRE,
          "Area inside the outline; needs a scale in the frame.",
          "area of the outline in pixels / (pixels per centimetre)²",
          OWN);

  /** All of them, in the order of a table. */
  public static final List<MeasureDescription> ALL =
      List.of(
          LIGHTNESS_MEAN,
          A_MEAN,
          B_MEAN,
          SHADE_DIFFERENCE,
          LIGHTNESS_DIFFERENCE,
          EVENNESS_SD,
          EVENNESS_RANGE,
          SHARE_NEAR_TARGET,
          SHARE_DARK,
          SHARE_PALE,
          LARGEST_DARK_PATCH,
          LARGEST_PALE_PATCH,
          RIM_DIFFERENCE,
          TILT_FRONT_BACK,
          TILT_LEFT_RIGHT,
          MOTTLE,
          BROWNING_INDEX,
          PIECE_AREA);

  private PhotoMeasureCatalogue() {}

  private static MeasureDescription of(
      String id,
      String name,
      Unit unit,
      String help,
      String formula,
      String source,
      Parameter... parameters) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, EvidenceKind.PHOTO, List.of(parameters), REVISION);
  }
}
