package ovenproof.method;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/**
 * One version of a method, as written in {@code method.yaml}.
 *
 * @param id key, e.g. {@code countertop-ovens}
 * @param version as people write it: {@code 3.2}
 * @param population the products it is meant for, in words
 * @param why the reason for the method's main choices
 * @param facts what is measured of a product once
 * @param ratedFacts what two people rate independently on worded steps
 * @param features the checklist: what is looked for on every product
 * @param tests the first level of the value tree, in the order of publication
 * @param scoring how draws, intervals and totals are made
 * @param profiles weights of other readers
 */
public record Method(
    String id,
    String title,
    String version,
    String population,
    @Nullable String why,
    List<Fact> facts,
    List<RatedFact> ratedFacts,
    List<Feature> features,
    List<TestPlan> tests,
    Scoring scoring,
    List<Profile> profiles) {

  public Method {
    facts = List.copyOf(facts);
    ratedFacts = List.copyOf(ratedFacts);
    features = List.copyOf(features);
    tests = List.copyOf(tests);
    profiles = List.copyOf(profiles);
  }

  /** The feature that is written so, by its name or its id, whatever its capitals. */
  public Optional<Feature> feature(String written) {
    String wanted = written.strip();
    return features.stream()
        .filter(f -> f.name().strip().equalsIgnoreCase(wanted))
        .findFirst()
        .or(() -> features.stream().filter(f -> f.id().equalsIgnoreCase(wanted)).findFirst());
  }

  public Optional<TestPlan> test(String testId) {
    return tests.stream().filter(t -> t.id().equals(testId)).findFirst();
  }

  /** A fact of a product: nameplate beside measured. */
  public record Fact(
      String id,
      String name,
      ovenproof.core.quantity.Unit unit,
      @Nullable String how,
      @Nullable String why) {}

  /**
   * A fact that people rate.
   *
   * @param steps what each step 0–4 looks like, in words, index = step
   */
  public record RatedFact(
      String id, String name, List<String> steps, int raters, @Nullable String why) {
    public RatedFact {
      steps = List.copyOf(steps);
    }
  }

  /**
   * A feature that a product has or has not.
   *
   * @param name as it is printed and as {@code features.csv} may write it
   * @param group a list of its own that a measure can ask for alone, e.g. {@code safety}; null when
   *     it stands in no group
   * @param parts its weight in whole parts; 0 is listed and not scored
   */
  public record Feature(
      String id, String name, @Nullable String group, int parts, @Nullable String why) {}

  /**
   * How the verdict is drawn and shown.
   *
   * @param combine how the tests make the total
   * @param seed stored seed of the draws
   * @param draws number of draws
   * @param decimals digits of every displayed score
   * @param unitToUnit declared standard deviation between specimens of one product in points of the
   *     total, or null when intervals speak of the specimen only
   * @param runSpread how deviations between runs are estimated
   */
  public record Scoring(
      Combine combine,
      long seed,
      int draws,
      int decimals,
      @Nullable Double unitToUnit,
      RunSpread runSpread) {
    public static final Scoring DEFAULT =
        new Scoring(Combine.ARITHMETIC, 20260101L, 20_000, 1, null, RunSpread.POOLED);
  }

  /** How deviations between runs are estimated. */
  public enum RunSpread {
    /** One deviation per measure, pooled over the field. */
    POOLED,
    /** Each product's own, pulled towards the field's by empirical Bayes. */
    SHRUNKEN
  }

  /** Weights of another reader: whole parts by test id; tests not named keep their own parts. */
  public record Profile(String id, String name, java.util.Map<String, Integer> parts) {
    public Profile {
      parts = java.util.Map.copyOf(parts);
    }
  }

  /** A dial setting or another amount that the method names, kept as written. */
  public record Setting(
      SettingRule rule, @Nullable String mode, @Nullable Quantity dial, @Nullable String note) {}

  /** How the setting of each product is chosen; printed with every result. */
  public enum SettingRule {
    /** Dial at the nominal value: control and heating are tested together. */
    AS_USER_WOULD,
    /** The dial at which the measured centre mean is the target ± 5 K. */
    MATCHED_CAVITY,
    /** What the maker's instructions say. */
    MAKER_INSTRUCTION,
    /** Found by declared trials, same maximum number for every product. */
    BY_TRIAL
  }
}
