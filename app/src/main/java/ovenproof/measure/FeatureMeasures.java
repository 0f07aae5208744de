package ovenproof.measure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.FeatureState;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;

/**
 * The feature checklist of one product: a feature alone, or the share of a list that it has.
 *
 * <p>Four things are kept apart: present, absent, makes no sense for this product, and not looked
 * at. The last leaves a range, never a no.
 */
public final class FeatureMeasures {
  private static final double ALL = Quantity.of(1, Unit.ONE).contract();

  private final Method method;
  private final FeatureChecklist checklist;
  private final String product;

  /**
   * @param checklist of the campaign, made once for all its products
   */
  public FeatureMeasures(Method method, FeatureChecklist checklist, String product) {
    this.method = method;
    this.checklist = checklist;
    this.product = product;
  }

  /** What is known of a feature. */
  public enum Known {
    PRESENT("present"),
    ABSENT("absent"),
    NOT_APPLICABLE("makes no sense for it"),
    NOT_LOOKED_AT("not looked at");

    private final String words;

    Known(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** What the checklist says of a feature of the method. */
  public Known known(Method.Feature feature) {
    return checklist
        .state(product, feature.name())
        .map(FeatureState::state)
        .map(
            state ->
                switch (state) {
                  case YES -> Known.PRESENT;
                  case NO -> Known.ABSENT;
                  case NOT_APPLICABLE -> Known.NOT_APPLICABLE;
                })
        .orElse(Known.NOT_LOOKED_AT);
  }

  /** The features that a use of the checklist takes, in the method's order. */
  public static List<Method.Feature> taken(Method method, MeasureUse use) {
    boolean one = use.take().equals(MeasureUse.FEATURE);
    return method.features().stream()
        .filter(
            f ->
                one
                    ? f.id().equals(use.ofOrId())
                    : f.parts() > 0 && (use.of() == null || use.of().equals(f.group())))
        .toList();
  }

  /**
   * Why a use makes no sense for the product: every feature it takes is not applicable. Empty when
   * one is, or was not looked at.
   */
  public Optional<String> notAsked(MeasureUse use) {
    List<Method.Feature> taken = taken(method, use);
    boolean none =
        !taken.isEmpty() && taken.stream().allMatch(f -> known(f) == Known.NOT_APPLICABLE);
    return none
        ? Optional.of(
            taken.stream().map(Method.Feature::name).collect(Collectors.joining(", "))
                + ": "
                + Known.NOT_APPLICABLE.words())
        : Optional.empty();
  }

  Measurement of(MeasureUse use) {
    List<Method.Feature> taken = taken(method, use);
    Optional<String> notAsked = notAsked(use);
    MeasureDescription measure = described(use, taken);
    Subject subject = Subject.ofProduct(product);
    if (notAsked.isPresent()) {
      return Measurement.missing(measure, subject, notAsked.get());
    }
    if (taken.stream().allMatch(f -> known(f) == Known.NOT_LOOKED_AT)) {
      return Measurement.missing(measure, subject, "nobody looked at it");
    }
    return share(measure, subject, taken).withEvidence(rows(taken));
  }

  /**
   * Without the features that make no sense. One that nobody looked at may turn out present, absent
   * or without sense; the share of the last lies between those of the others.
   */
  private Measurement share(
      MeasureDescription measure, Subject subject, List<Method.Feature> taken) {
    Map<Known, Integer> parts = new EnumMap<>(Known.class);
    taken.forEach(f -> parts.merge(known(f), weight(taken, f), Integer::sum));
    int present = parts.getOrDefault(Known.PRESENT, 0);
    int open = parts.getOrDefault(Known.NOT_LOOKED_AT, 0);
    int apply = present + open + parts.getOrDefault(Known.ABSENT, 0);
    double low = ALL * present / apply;
    Measurement share =
        open == 0
            ? Measurement.of(measure, subject, low)
            : Measurement.between(measure, subject, low, ALL * (present + open) / apply);
    return taken.size() == 1
        ? share.withNote(known(taken.get(0)).words())
        : share
            .withDefinition(
                measure.formula()
                    + ": "
                    + present
                    + (open == 0 ? "" : " to " + (present + open))
                    + " of "
                    + apply)
            .withNote(words(taken));
  }

  /** A feature asked alone counts whole, whatever it weighs in the list. */
  private static int weight(List<Method.Feature> taken, Method.Feature feature) {
    return taken.size() == 1 ? 1 : feature.parts();
  }

  private String words(List<Method.Feature> taken) {
    List<String> words = new ArrayList<>();
    for (Known known : Known.values()) {
      List<String> names =
          taken.stream().filter(f -> known(f) == known).map(Method.Feature::name).toList();
      if (!names.isEmpty()) {
        words.add(known.words() + ": " + String.join(", ", names));
      }
    }
    return String.join("; ", words);
  }

  /** The rows that say it; a product and a feature name one row. */
  private List<String> rows(List<Method.Feature> taken) {
    return taken.stream()
        .flatMap(f -> checklist.state(product, f.name()).stream())
        .map(said -> FactMeasures.row("features.csv", product, said.feature()))
        .toList();
  }

  private static MeasureDescription described(MeasureUse use, List<Method.Feature> taken) {
    if (use.take().equals(MeasureUse.FEATURE)) {
      return taken.isEmpty()
          ? EntryMeasures.FEATURE
          : FactMeasures.rename(EntryMeasures.FEATURE, taken.get(0).name(), Unit.PERCENT);
    }
    return use.name() == null
        ? EntryMeasures.FEATURES
        : FactMeasures.rename(EntryMeasures.FEATURES, use.name(), Unit.PERCENT);
  }
}
