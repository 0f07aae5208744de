package ovenproof.core.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;

/**
 * Why the flatbread stayed pale: one paragraph in which every figure comes from the record or the
 * model.
 *
 * @param settingCelsius what was dialled
 * @param highestCelsius highest reading
 * @param lengthSeconds of the record
 * @param steadyCelsius steady mean, NaN when there is none
 * @param model null when the record does not carry one
 * @param why reason of the missing model
 * @param balance null when no power was logged
 * @param ceiling the ceiling temperature, from the hold where the heat-up carries no model; null
 *     for none
 * @param probeKelvin standard uncertainty of the probe
 */
public record ReachStory(
    double settingCelsius,
    double highestCelsius,
    double lengthSeconds,
    double steadyCelsius,
    @Nullable HeatingModel model,
    String why,
    @Nullable HeatBalance balance,
    @Nullable Measurement ceiling,
    double probeKelvin) {

  /** Change of browning per kelvin at the crust near 160 °C: about 4 % (Zanoni et al. 1995). */
  private static final double ACTIVATION_JOULE_PER_MOL = 64_151;

  private static final double GAS_CONSTANT = 8.314;

  public String paragraph() {
    List<String> sentences = new ArrayList<>();
    sentences.add(reached());
    if (model != null) {
      sentences.add(ceiling(model));
      sentences.addAll(power());
    } else if (ceiling != null && ceiling.value() != null) {
      sentences.add(fromHold(ceiling));
    } else if (!why.isEmpty()) {
      sentences.add("How hot it could get is not shown by this record: " + why + ".");
    }
    double shortfall =
        settingCelsius - (Double.isNaN(steadyCelsius) ? highestCelsius : steadyCelsius);
    if (shortfall >= 3) {
      sentences.add(browning(shortfall));
    }
    return String.join(" ", sentences);
  }

  /** How hot it could get, the setting's time and power; empty without a model. */
  public String reach() {
    HeatingModel fitted = model;
    if (fitted == null) {
      return "";
    }
    List<String> sentences = new ArrayList<>(List.of(ceiling(fitted)));
    sentences.addAll(power());
    return String.join(" ", sentences);
  }

  private String reached() {
    String minutes = text("%.0f min", lengthSeconds / 60);
    if (highestCelsius >= settingCelsius) {
      String held = Double.isNaN(steadyCelsius) ? "" : text(" and held %.0f °C", steadyCelsius);
      return text("It reached the %.0f °C it was set to", settingCelsius) + held + ".";
    }
    return text(
        "Set to %.0f °C, it reached %.0f °C in %s, %.0f K short.",
        settingCelsius, highestCelsius, minutes, settingCelsius - highestCelsius);
  }

  private String ceiling(HeatingModel m) {
    double half = 1.6448536 * Math.hypot(m.ceilingU(), probeKelvin);
    String ceiling =
        text(
            "With the elements on for ever it would level off at %.0f °C (90 %% interval %.0f to %.0f)",
            m.ceilingCelsius(), m.ceilingCelsius() - half, m.ceilingCelsius() + half);
    HeatingModel.TimeTo time = m.timeTo(settingCelsius, probeKelvin);
    if (!time.isReached()) {
      return ceiling + ": the setting is out of its reach, and waiting longer does not help.";
    }
    return ceiling
        + text(", so the setting takes %.0f min", time.seconds() / 60)
        + (Double.isFinite(time.highSeconds())
            ? text(" (%.0f to %.0f).", time.lowSeconds() / 60, time.highSeconds() / 60)
            : text(" (at least %.0f, perhaps never).", time.lowSeconds() / 60));
  }

  /** The hold alone tells it more coarsely. */
  private String fromHold(Measurement top) {
    Double value = top.value();
    Double u = top.uncertainty();
    double celsius = value == null ? Double.NaN : value;
    double half = u == null ? 0 : 1.6448536 * u;
    String reach =
        highestCelsius >= settingCelsius
            ? ""
            : celsius - half > settingCelsius
                ? ": the setting is within its reach, given time"
                : celsius + half < settingCelsius
                    ? ": the setting is out of its reach, and waiting longer does not help"
                    : ", with the setting in between: whether more time would do is not shown";
    return text(
            "By the power that holding takes it would level off at about %.0f °C with the elements"
                + " on for ever (90 %% interval %.0f to %.0f)",
            celsius, celsius - half, celsius + half)
        + reach
        + ".";
  }

  private List<String> power() {
    HeatBalance b = balance;
    if (b == null) {
      return List.of();
    }
    double needed = b.powerToHoldWatt(settingCelsius);
    double missing = needed - b.powerWatt();
    String sentence =
        text(
            "It loses %.1f W for every kelvin above the room, so holding %.0f °C takes %.0f W; it has %.0f W",
            b.lossWattPerKelvin(), settingCelsius, needed, b.powerWatt());
    return List.of(missing > 0 ? sentence + text(", %.0f W too few.", missing) : sentence + ".");
  }

  /** Arrhenius ratio of rates at 160 °C and that many kelvin below. */
  private String browning(double shortfall) {
    double hot = 433.15;
    double cool = hot - shortfall;
    double ratio = Math.exp(-ACTIVATION_JOULE_PER_MOL / GAS_CONSTANT * (1 / cool - 1 / hot));
    return text(
        "A crust %.0f K cooler, as far as it follows the air, browns at %s of the rate"
            + " (bread crust kinetics, near 160 °C): the food comes out paler in the same time.",
        shortfall, ratio < 0.02 ? "less than 2 %" : text("about %.0f %%", 100 * ratio));
  }

  private static String text(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
