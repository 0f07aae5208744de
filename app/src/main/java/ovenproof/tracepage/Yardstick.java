package ovenproof.tracepage;

import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.thermal.HouseholdOvenIndex;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.Energy;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.publish.figure.Figures;

/**
 * Energy and power beside the cavity's volume. The European formulas for household ovens serve as a
 * yardstick only: countertop ovens carry no such class, and none is printed.
 */
final class Yardstick {

  private Yardstick() {}

  /** A paragraph; empty where the volume of the product or the power is not known. */
  static String words(Campaign campaign, String product, TraceInput input) {
    Double litre = litres(campaign, product);
    Trace power = input.power() == null ? null : input.power().present();
    if (litre == null || power == null || power.size() < 2) {
      return "";
    }
    double watt = Duty.fullPowerWatt(power);
    Double used = new Energy().measure(input, HeatCurve.of(power)).value();
    return "Full power is "
        + Figures.text(watt, Unit.WATT)
        + " for "
        + Figures.text(litre, Unit.LITRE)
        + ", "
        + Figures.text(watt / litre, Unit.WATT_PER_LITRE)
        + ". As a yardstick: (EU) 66/2014 takes "
        + Figures.text(HouseholdOvenIndex.standardKilowattHour(litre), Unit.KILOWATT_HOUR)
        + " for a household oven of this volume and one load of wetted brick"
        + (used == null
            ? ""
            : "; this run, with another load, took " + Figures.text(used, Unit.KILOWATT_HOUR))
        + ". Countertop ovens carry no such class, and none is given here.";
  }

  /** The measured volume, else the nameplate's; null when neither is known. */
  private static @Nullable Double litres(Campaign campaign, String product) {
    return Entry.effective(campaign.facts()).stream()
        .filter(f -> f.product().equals(product))
        .flatMap(Yardstick::volumes)
        .findFirst()
        .map(Quantity::contract)
        .filter(v -> v > 0)
        .orElse(null);
  }

  private static Stream<Quantity> volumes(FactValue fact) {
    return Stream.of(fact.measured(), fact.nameplate())
        .filter(Objects::nonNull)
        .filter(q -> q.unit().dimension() == Dimension.VOLUME);
  }
}
