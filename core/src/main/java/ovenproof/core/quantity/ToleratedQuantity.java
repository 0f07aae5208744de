package ovenproof.core.quantity;

/**
 * A wanted quantity and how far it may be off: {@code 38 g ± 2 g}, {@code 23 °C ± 2 K}.
 *
 * @param tolerance half width of the allowed band, of the dimension of {@code nominal} (for a
 *     temperature: a difference, in K); zero when none was written
 */
public record ToleratedQuantity(Quantity nominal, Quantity tolerance) {

  /** Whether a measured quantity of the same dimension lies inside the band, bounds included. */
  public boolean allows(Quantity measured) {
    double distance = Math.abs(measured.contract() - nominal.contract());
    return distance <= tolerance.contract() * (1 + 1e-12);
  }

  @Override
  public String toString() {
    return tolerance.value() == 0 ? nominal.toString() : nominal + " ± " + tolerance;
  }
}
