package ovenproof.core.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Published digits. Everything is decided on decimals, half up, because binary doubles misround one
 * exact tie in seven; a value is rounded once, from what is stored, after the conversion of its
 * unit.
 */
public enum Rounding {
  /** Half up, away from zero at the tie: 0.25 → 0.3, −0.25 → −0.3. */
  HALF_UP(RoundingMode.HALF_UP),
  /** For floors: a minimum temperature is never rounded below itself. 62.8 °C → 63 °C. */
  FLOOR_UP(RoundingMode.CEILING),
  /** For ceilings: a highest allowed value is never rounded above itself. */
  LIMIT_DOWN(RoundingMode.FLOOR);

  private final RoundingMode mode;

  Rounding(RoundingMode mode) {
    this.mode = mode;
  }

  /**
   * The value with so many decimals.
   *
   * <p>The double is first read as its shortest decimal ({@code Double.toString}), so that 2.675
   * counts as the tie that a person sees. A floor is compared to 9 significant decimals, so that
   * 74.00000000001 from a conversion stays 74.
   */
  public BigDecimal apply(double value, int decimals) {
    BigDecimal decimal = BigDecimal.valueOf(value);
    if (this != HALF_UP) {
      decimal = decimal.setScale(9, RoundingMode.HALF_UP);
    }
    return decimal.setScale(decimals, mode);
  }

  /** The value with so many decimals, as published: a real minus sign, no negative zero. */
  public String text(double value, int decimals) {
    BigDecimal rounded = apply(value, decimals);
    if (rounded.signum() == 0) {
      rounded = rounded.abs();
    }
    return rounded.toPlainString().replace('-', '−');
  }
}
