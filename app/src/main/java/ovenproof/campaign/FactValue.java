package ovenproof.campaign;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/** A fact of a product, nameplate beside measured. */
public record FactValue(
    String product,
    String fact,
    @Nullable Quantity nameplate,
    @Nullable Quantity measured,
    @Nullable Quantity uncertainty,
    @Nullable String instrument,
    @Nullable String photo,
    @Nullable String note,
    Provenance origin)
    implements Entry {

  /** A difference from the nameplate above this share is a finding (common practice). */
  public static final double NAMEPLATE_TOLERANCE = 0.10;

  /** Measured over nameplate, less one; empty where either is missing or they do not compare. */
  public OptionalDouble shareOffNameplate() {
    return shareOff(nameplate, measured);
  }

  /** The same of two quantities that stand in different entries. */
  public static OptionalDouble shareOff(@Nullable Quantity nameplate, @Nullable Quantity measured) {
    return measured == null
            || nameplate == null
            || nameplate.contract() == 0
            || nameplate.unit().dimension() != measured.unit().dimension()
        ? OptionalDouble.empty()
        : OptionalDouble.of(measured.contract() / nameplate.contract() - 1);
  }

  /** Whether what was measured is too far from what the nameplate says. */
  public boolean isOffNameplate() {
    return Math.abs(shareOffNameplate().orElse(0)) > NAMEPLATE_TOLERANCE;
  }
}
