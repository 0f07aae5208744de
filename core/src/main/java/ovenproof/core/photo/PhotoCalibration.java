package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the colours of one picture are read, and how far that may be trusted.
 *
 * @param kind by chart, by grey card, or not at all
 * @param colours the reading
 * @param trust uncertainties, shared and own
 * @param deltaE00Mean mean ΔE00 of the chart's patches after correction; null without chart
 * @param deltaE00Max the largest of them; null without chart
 * @param leaveOneOutMean mean ΔE00 of each patch corrected by the others; null without chart
 * @param method how it was done, in words
 * @param withinGate whether mean and largest keep to the gate; false without chart
 * @param warnings what a person should know
 */
public record PhotoCalibration(
    Kind kind,
    PixelColours colours,
    ColourTrust trust,
    @Nullable Double deltaE00Mean,
    @Nullable Double deltaE00Max,
    @Nullable Double leaveOneOutMean,
    String method,
    boolean withinGate,
    List<String> warnings) {

  /** What the colours rest on. */
  public enum Kind {
    /** Comparable with every other photograph calibrated by chart. */
    CHART,
    /** Neutral and exposed alike; saturated colours still differ between cameras. */
    GREY_CARD,
    /** Comparable within the photograph only. */
    NONE
  }

  public PhotoCalibration {
    warnings = List.copyOf(warnings);
  }

  /** The picture as the camera made it. */
  public static PhotoCalibration none(String source) {
    return new PhotoCalibration(
        Kind.NONE,
        PixelColours.uncorrected(),
        ColourTrust.uncalibrated(source),
        null,
        null,
        null,
        "as the camera made it, read as sRGB",
        false,
        List.of());
  }

  /**
   * By a grey card that a person outlined.
   *
   * @param cardLightness L* of the card; 49.5 for the usual 18 % (common practice)
   * @throws IllegalArgumentException if the outline holds no pixel that is neither black nor
   *     clipped
   */
  public static PhotoCalibration greyCard(
      Picture picture, Outline card, double cardLightness, String source) {
    return GreyCard.calibrate(picture, card, cardLightness, source);
  }

  /** The same with the light over the frame evened out. */
  PhotoCalibration under(LightField field, double remainingGradient) {
    return new PhotoCalibration(
        kind,
        colours.under(field),
        trust.withLightGradient(remainingGradient),
        deltaE00Mean,
        deltaE00Max,
        leaveOneOutMean,
        method + ", light evened out by the ground",
        withinGate,
        warnings);
  }

  PhotoCalibration withTrust(ColourTrust newTrust) {
    return new PhotoCalibration(
        kind,
        colours,
        newTrust,
        deltaE00Mean,
        deltaE00Max,
        leaveOneOutMean,
        method,
        withinGate,
        warnings);
  }

  /** What may be compared with what, in a sentence. */
  public String comparability() {
    return switch (kind) {
      case CHART ->
          withinGate
              ? "comparable with other photographs calibrated by chart"
              : "the chart was read but its colours do not come out within the gate: compare with"
                  + " care";
      case GREY_CARD ->
          "by grey card: lightness is comparable with other photographs, hue and chroma only with"
              + " the same camera";
      case NONE ->
          "no chart: pieces compare within this photograph only; the numbers are not comparable"
              + " with other photographs";
    };
  }
}
