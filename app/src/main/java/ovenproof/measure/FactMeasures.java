package ovenproof.measure;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.RatedStep;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.statistics.Descriptive;
import ovenproof.method.MeasureUse;

/** Facts of a product, measured or rated. */
final class FactMeasures {

  private FactMeasures() {}

  /** The measured fact; a nameplate alone measures nothing. */
  static Measurement fact(Campaign campaign, String product, MeasureUse use) {
    MeasureDescription measure = describedFact(campaign, use);
    Subject subject = Subject.ofProduct(product);
    Optional<FactValue> fact =
        Entry.effective(campaign.facts()).stream()
            .filter(f -> f.product().equals(product) && f.fact().equals(use.ofOrId()))
            .reduce((a, b) -> b);
    Quantity measured = fact.map(FactValue::measured).orElse(null);
    if (measured == null) {
      boolean plate = fact.map(FactValue::nameplate).isPresent();
      return Measurement.missing(
          measure, subject, plate ? "only the nameplate is known" : "not measured");
    }
    Measurement value =
        Measurement.of(measure, subject, measured.contract())
            .withEvidence(List.of(row("facts.csv", product, use.ofOrId())));
    Quantity u = fact.map(FactValue::uncertainty).orElse(null);
    return u == null ? value : value.withComponents(List.of(Component.run(Math.abs(u.contract()))));
  }

  private static MeasureDescription describedFact(Campaign campaign, MeasureUse use) {
    MeasureDescription base = EntryMeasures.FACT;
    return campaign.method().facts().stream()
        .filter(f -> f.id().equals(use.ofOrId()))
        .findFirst()
        .map(f -> rename(base, f.name(), f.unit().contractUnit()))
        .orElse(base);
  }

  /** Mean of the steps that raters chose independently. */
  static Measurement rated(Campaign campaign, String product, MeasureUse use) {
    String name =
        campaign.method().ratedFacts().stream()
            .filter(f -> f.id().equals(use.ofOrId()))
            .findFirst()
            .map(f -> f.name())
            .orElse(use.id());
    MeasureDescription measure = rename(EntryMeasures.RATED, name, Unit.POINTS);
    Subject subject = Subject.ofProduct(product);
    List<RatedStep> chosen =
        Entry.effective(campaign.ratedSteps()).stream()
            .filter(r -> r.product().equals(product) && r.fact().equals(use.ofOrId()))
            .toList();
    double[] steps = chosen.stream().mapToDouble(RatedStep::step).toArray();
    if (steps.length == 0) {
      return Measurement.missing(measure, subject, "nobody rated it");
    }
    Measurement mean =
        Measurement.of(measure, subject, Descriptive.of(steps).mean())
            .withN(steps.length)
            .withEvidence(List.of(row("rated.csv", product, use.ofOrId())))
            .withNote(raters(chosen));
    return mean.withComponents(List.of(Component.run(raterUncertainty(steps))));
  }

  /** How the raters differ; null when two or more chose the same step. */
  private static @Nullable String raters(List<RatedStep> chosen) {
    if (chosen.size() == 1) {
      return "one person only";
    }
    List<String> steps =
        chosen.stream().map(RatedStep::step).sorted().distinct().map(String::valueOf).toList();
    if (steps.size() == 1) {
      return null;
    }
    String words = "steps " + String.join(" and ", steps);
    return RatedStep.disagree(chosen) ? "the raters disagree: " + words : words;
  }

  /** How evidence names a row of a table: its file and the keys that find it. */
  static String row(String file, String product, String what) {
    return file + "#" + product + "/" + what;
  }

  /**
   * Half a step is the least that two people can agree to (judgement): steps are whole numbers, so
   * a mean of equal ratings is still known to no better than the rounding, 1/√12 of a step each.
   */
  private static double raterUncertainty(double[] steps) {
    double rounding = 1 / Math.sqrt(12.0 * steps.length);
    double between =
        steps.length < 2 ? 0 : Descriptive.of(steps).standardDeviation() / Math.sqrt(steps.length);
    return Math.hypot(rounding, between);
  }

  static MeasureDescription rename(MeasureDescription base, String name, Unit unit) {
    return new MeasureDescription(
        base.id(),
        name,
        unit,
        base.help(),
        base.formula(),
        base.source(),
        base.evidence(),
        base.parameters(),
        base.revision());
  }
}
