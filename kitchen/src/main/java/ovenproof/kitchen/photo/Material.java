package ovenproof.kitchen.photo;

import ovenproof.kitchen.physics.CrustColour;

/**
 * How a kind of food looks.
 *
 * @param pores how deep the pores of the crumb look, 0 for none
 * @param mottle how unevenly it browns from spot to spot, share of its browning
 * @param grain roughness of the surface in the light
 * @param dome how much it bulges, 0 flat to 1
 * @param blisters browning on top of blisters
 */
public enum Material {
  BREAD_SLICE(CrustColour.BREAD, 0.27, 0.24, 0.30, 0.02, 0),
  CAKE_TOP(CrustColour.CAKE, 0.05, 0.20, 0.26, 0.30, 0),
  CAKE_BASE(CrustColour.CAKE, 0.10, 0.20, 0.22, 0.03, 0),
  FLATBREAD(CrustColour.FLATBREAD, 0.03, 0.30, 0.30, 0.05, 0.30),
  CROQUETTE(CrustColour.BREADCRUMB, 0.02, 0.34, 0.62, 0.55, 0),
  ROAST(CrustColour.POULTRY, 0.0, 0.30, 0.30, 0.60, 0.10);

  private final CrustColour colour;
  private final double pores;
  private final double mottle;
  private final double grain;
  private final double dome;
  private final double blisters;

  Material(
      CrustColour colour, double pores, double mottle, double grain, double dome, double blisters) {
    this.colour = colour;
    this.pores = pores;
    this.mottle = mottle;
    this.grain = grain;
    this.dome = dome;
    this.blisters = blisters;
  }

  public CrustColour colour() {
    return colour;
  }

  double pores() {
    return pores;
  }

  double mottle() {
    return mottle;
  }

  double grain() {
    return grain;
  }

  double dome() {
    return dome;
  }

  double blisters() {
    return blisters;
  }
}
