package ovenproof.core.photo;

import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.White;

/**
 * What a method says about measuring shade.
 *
 * @param target the shade wanted, under D50; null when the method names none: then nothing is near,
 *     dark or pale
 * @param nearLightness |ΔL*| up to which area counts as near the target; common practice is 5
 * @param beyondLightness |ΔL*| beyond which area counts as dark or pale; common practice is 8
 * @param blockMillimetres side of a block; 2 by judgement: smaller shows the camera's noise, larger
 *     hides spots
 * @param marginMillimetres left out inside the outline, where pixels show the side of the piece or
 *     mix with the ground
 * @param rimMillimetres width of the rim, counted from the margin inwards
 * @param front which side of the upright picture was the front of the appliance
 */
public record ShadeSettings(
    @Nullable Lab target,
    double nearLightness,
    double beyondLightness,
    double blockMillimetres,
    double marginMillimetres,
    double rimMillimetres,
    Front front) {

  /** The side of the picture towards the door of the appliance. */
  public enum Front {
    BOTTOM,
    LEFT,
    TOP,
    RIGHT
  }

  public ShadeSettings {
    if (target != null && target.white() != White.D50) {
      throw new IllegalArgumentException("target must refer to D50, found " + target.white());
    }
    requirePositive("nearLightness", nearLightness);
    requirePositive("beyondLightness", beyondLightness);
    requirePositive("blockMillimetres", blockMillimetres);
    requirePositive("rimMillimetres", rimMillimetres);
    if (!(marginMillimetres >= 0)) {
      throw new IllegalArgumentException(
          "marginMillimetres must be at least 0, found " + marginMillimetres);
    }
  }

  private static void requirePositive(String name, double value) {
    if (!(value > 0)) {
      throw new IllegalArgumentException(name + " must be above 0, found " + value);
    }
  }

  /** No target; 5, 8, 2 mm blocks, 2 mm margin, 5 mm rim, front at the bottom. */
  public static ShadeSettings withDefaults() {
    return new ShadeSettings(null, 5, 8, 2, 2, 5, Front.BOTTOM);
  }

  public ShadeSettings withTarget(@Nullable Lab newTarget) {
    return new ShadeSettings(
        newTarget,
        nearLightness,
        beyondLightness,
        blockMillimetres,
        marginMillimetres,
        rimMillimetres,
        front);
  }

  public ShadeSettings withLimits(double near, double beyond) {
    return new ShadeSettings(
        target, near, beyond, blockMillimetres, marginMillimetres, rimMillimetres, front);
  }

  public ShadeSettings withFront(Front newFront) {
    return new ShadeSettings(
        target,
        nearLightness,
        beyondLightness,
        blockMillimetres,
        marginMillimetres,
        rimMillimetres,
        newFront);
  }
}
