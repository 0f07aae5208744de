package ovenproof.kitchen.photo;

import java.util.List;
import ovenproof.kitchen.physics.Surface;

/**
 * What lies before the camera, in millimetres on the table: origin at the upper left of the frame,
 * x to the right, y down.
 *
 * @param widthPixels of the picture; its height is two thirds
 * @param widthMillimetre of the table in the frame
 */
public record PhotoScene(
    int widthPixels,
    double widthMillimetre,
    Ground ground,
    List<Item> items,
    ChartPose chart,
    Light light,
    Camera camera,
    long seed) {

  /** What the food lies on. */
  public enum Ground {
    /** Matte blue-grey photo table. */
    TABLE,
    /** A wire rack on that table. */
    WIRE_RACK,
    /** A worn steel tray. */
    TRAY
  }

  /** Outline of a piece. */
  public enum Shape {
    /** Sandwich slice: square with round corners and shoulders. */
    SLICE,
    ROUND,
    /** Long with round ends. */
    CAPSULE,
    /** A tied joint. */
    LOAF
  }

  /**
   * One piece of food.
   *
   * @param turnRadians how it lies
   * @param surface its browning as seen from above
   */
  public record Item(
      String id,
      Material material,
      Shape shape,
      double x,
      double y,
      double width,
      double depth,
      double turnRadians,
      Surface surface) {}

  /**
   * The colour chart.
   *
   * @param x of its middle
   * @param pitch from patch to patch
   */
  public record ChartPose(double x, double y, double pitch, double turnRadians) {

    /** No chart in the frame. */
    public static final ChartPose NONE = new ChartPose(0, 0, 0, 0);

    boolean isPresent() {
      return pitch > 0;
    }
  }

  /**
   * The light on the table.
   *
   * @param level 1 makes a perfect white just white
   * @param right how much brighter the right edge is than the middle, a share
   * @param down how much brighter the lower edge is than the middle
   * @param red gain of red against green: the light's and the phone's white balance together
   * @param blue gain of blue against green
   */
  public record Light(double level, double right, double down, double red, double blue) {

    /** Even daylight, white balance right. */
    public static final Light NEUTRAL = new Light(0.9, 0, 0, 1, 1);
  }

  /**
   * The phone.
   *
   * @param turnRadians how askew it is held
   * @param tiltRight perspective: share by which the right edge is further away
   * @param tiltDown share by which the lower edge is nearer
   * @param noise standard deviation of a pixel at white, share of white
   * @param saturation how much the phone exaggerates colours, 0 for true
   */
  public record Camera(
      double turnRadians, double tiltRight, double tiltDown, double noise, double saturation) {

    /** Straight above, without noise. */
    public static final Camera IDEAL = new Camera(0, 0, 0, 0, 0);
  }

  public PhotoScene {
    if (widthPixels < 60 || widthPixels > 6000) {
      throw new IllegalArgumentException("widthPixels must be 60 to 6000, found " + widthPixels);
    }
    items = List.copyOf(items);
  }

  public int heightPixels() {
    return widthPixels * 2 / 3;
  }
}
