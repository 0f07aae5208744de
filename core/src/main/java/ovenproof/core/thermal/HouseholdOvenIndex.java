package ovenproof.core.thermal;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The European formulas for household ovens, as a yardstick only: what a cavity of some volume may
 * use for one standard load. The regulations leave out small cavities (under 250 mm in width and
 * depth, or under 120 mm in height) and portable ovens (under 18 kg), so a countertop oven carries
 * no such class, and none is ever printed here.
 *
 * <p>Source: Commission Regulation (EU) 66/2014, Annex II; rounding as in Commission Delegated
 * Regulation (EU) 65/2014, Annex II. The energy must be that of the wetted brick, not of a dish.
 */
public final class HouseholdOvenIndex {

  private HouseholdOvenIndex() {}

  /**
   * Standard energy of an electric cavity per cycle, in kWh, rounded to two decimals.
   *
   * @param volumeLitre of the cavity, above 0
   */
  public static double standardKilowattHour(double volumeLitre) {
    if (!(volumeLitre > 0)) {
      throw new IllegalArgumentException("volumeLitre is " + volumeLitre + ", must be above 0");
    }
    return rounded(0.0042 * volumeLitre + 0.55, 2);
  }

  /**
   * Energy in per cent of the standard, rounded to one decimal.
   *
   * @param energyKilowattHour of one cycle with the standard load, at least 0
   * @param volumeLitre of the cavity, above 0
   */
  public static double index(double energyKilowattHour, double volumeLitre) {
    if (!(energyKilowattHour >= 0)) {
      throw new IllegalArgumentException(
          "energyKilowattHour is " + energyKilowattHour + ", must be at least 0");
    }
    return rounded(100 * energyKilowattHour / standardKilowattHour(volumeLitre), 1);
  }

  private static double rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue();
  }
}
