package ovenproof.core.quantity;

import java.math.BigDecimal;

/**
 * A value with its unit, as it was written. Comparison and arithmetic go through the contract unit
 * of the dimension ({@link #contract()}).
 *
 * @param value finite
 */
public record Quantity(double value, Unit unit) {

  public Quantity {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value must be finite, found " + value);
    }
  }

  public static Quantity of(double value, Unit unit) {
    return new Quantity(value, unit);
  }

  /** The value in the unit that JSON uses for this dimension. */
  public double contract() {
    return unit.toContract(value);
  }

  /**
   * The same quantity in another unit.
   *
   * @throws IllegalArgumentException if the units are of different dimensions; a temperature never
   *     becomes a difference
   */
  public Quantity to(Unit target) {
    if (target.dimension() != unit.dimension()) {
      throw new IllegalArgumentException(
          unit.symbol()
              + " is "
              + unit.dimension().words()
              + ", not "
              + target.dimension().words());
    }
    return target == unit ? this : new Quantity(target.fromContract(contract()), target);
  }

  /** Shortest decimal and unit, e.g. {@code 230 °C}; no rounding. */
  @Override
  public String toString() {
    String digits = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    return unit == Unit.ONE ? digits : digits + " " + unit.symbol();
  }
}
