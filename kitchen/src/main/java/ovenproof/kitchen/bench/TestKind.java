package ovenproof.kitchen.bench;

import java.util.List;
import ovenproof.kitchen.physics.CrustColour;

/** The tests of the invented method that have runs. */
public enum TestKind {
  HEAT_UP("heat-up", 230, null, List.of()),
  TOAST("toast", 250, CrustColour.BREAD, List.of("top", "underside")),
  CAKES("cakes", 175, CrustColour.CAKE, List.of("top", "underside")),
  FLATBREAD("flatbread", 250, CrustColour.FLATBREAD, List.of("top", "underside")),
  TURKEY("turkey", 180, CrustColour.POULTRY, List.of("top")),
  CROQUETTES("croquettes", 200, CrustColour.BREADCRUMB, List.of("top"));

  /** The cavity program of each: all in seconds. */
  public static final double HEAT_UP_SECONDS = 3600;

  public static final double CAKE_SECONDS = 1260;
  public static final double CROQUETTE_SECONDS = 1140;
  public static final double SHAKE_SECONDS = 540;
  public static final double FLATBREAD_CAP = 540;
  public static final double TURKEY_CAP = 3420;
  public static final double TURKEY_STOP_CELSIUS = 76;
  public static final double REST_SECONDS = 600;
  public static final double PREHEAT_CAP = 1200;

  /** Lightness at which the cook takes the flatbread out. */
  public static final double FLATBREAD_LIGHTNESS = 62;

  private final String id;
  private final double setCelsius;
  private final @org.jspecify.annotations.Nullable CrustColour colour;
  private final List<String> faces;

  TestKind(
      String id,
      double setCelsius,
      @org.jspecify.annotations.Nullable CrustColour colour,
      List<String> faces) {
    this.id = id;
    this.setCelsius = setCelsius;
    this.colour = colour;
    this.faces = faces;
  }

  public String id() {
    return id;
  }

  public double setCelsius() {
    return setCelsius;
  }

  /** Faces that are photographed. */
  public List<String> faces() {
    return faces;
  }

  /** How its food browns; not for the test without food. */
  public CrustColour colour() {
    if (colour == null) {
      throw new IllegalStateException(id + " has no food");
    }
    return colour;
  }
}
