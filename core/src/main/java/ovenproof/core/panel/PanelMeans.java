package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Unit;

/**
 * A panel's marks as measurements for the verdict.
 *
 * <p>The batch is the experimental unit. A measurement's uncertainty has up to three components,
 * for J persons and B batches:
 *
 * <ul>
 *   <li>{@code run}: batches and repeated judgement, √(σ²_batch/B + σ²_residual/JB), which further
 *       batches reduce;
 *   <li>{@code panel:<session>:<attribute>:<product>}: these people's particular liking of this
 *       product, σ_product×assessor/√J, which further batches do <em>not</em> reduce and which the
 *       runs of one product share;
 *   <li>{@code panel:<session>:<attribute>}: the level at which these people use the scale,
 *       σ_assessor/√J, shared by all products, so that it cancels in every comparison but not in a
 *       score against fixed anchors.
 * </ul>
 *
 * @param products one measurement per product, in order of appearance; n = batches, or 1 when the
 *     table does not tell batches apart
 * @param runs one measurement per batch with persons' levels taken out where each batch can be
 *     linked through people; n = 1. Empty without batches
 * @param warnings what the reader must be told, in plain sentences
 */
public record PanelMeans(
    List<Measurement> products, List<Measurement> runs, List<String> warnings) {

  static final String NO_BATCHES =
      "The table does not tell batches apart: the result speaks of the batches that were served,"
          + " not of what the appliance does the next time. Twelve people eating one batch are one"
          + " observation of the appliance.";

  public PanelMeans {
    products = List.copyOf(products);
    runs = List.copyOf(runs);
    warnings = List.copyOf(warnings);
  }

  /** What a panel's mean mark is, for a method that does not define its own measure. */
  public static MeasureDescription description(String attribute) {
    return new MeasureDescription(
        "panel-mean",
        attribute,
        Unit.POINTS,
        "Mean mark of the panel, adjusted to the same people, sessions and conditions for every"
            + " product. It says how this panel found the food, not how a population would.",
        "least-squares mean over persons; batch within product, product × assessor and residual"
            + " random",
        "Searle, Speed and Milliken, The American Statistician 34, 1980, 216–221",
        EvidenceKind.RATINGS,
        List.of(),
        1);
  }

  /**
   * @param ratings marks of one attribute; {@link Rating#batch()} names the run or batch
   * @param measure what the measurements shall be called
   * @throws IllegalArgumentException if {@code ratings} holds several attributes
   */
  public static PanelMeans of(List<Rating> ratings, MeasureDescription measure) {
    Set<String> attributes = ratings.stream().map(Rating::attribute).collect(Collectors.toSet());
    if (attributes.size() > 1) {
      throw new IllegalArgumentException("ratings must be of one attribute, found " + attributes);
    }
    if (ratings.isEmpty()) {
      return new PanelMeans(List.of(), List.of(), List.of("There are no marks."));
    }
    Observations data = Observations.of(ratings);
    FittedPanel fitted = FittedPanel.fit(data);
    List<String> warnings = new ArrayList<>();
    if (data.batch() == null) {
      warnings.add(NO_BATCHES);
    }
    warnings.addAll(fitted.warnings());
    Naming naming = new Naming(measure, source(ratings), ratings);
    return new PanelMeans(
        productMeasurements(data, fitted, naming), runMeasurements(data, fitted, naming), warnings);
  }

  private record Naming(MeasureDescription measure, String source, List<Rating> ratings) {}

  /** {@code panel:<session>:<attribute>}, sessions joined by a plus sign. */
  private static String source(List<Rating> ratings) {
    TreeSet<String> sessions = new TreeSet<>();
    ratings.forEach(r -> sessions.add(r.session() == null ? "" : r.session()));
    sessions.remove("");
    return "panel:" + String.join("+", sessions) + ":" + ratings.get(0).attribute();
  }

  private static List<Measurement> productMeasurements(
      Observations data, FittedPanel fitted, Naming naming) {
    double[] means = fitted.means();
    double[] errors = fitted.standardErrors();
    List<Measurement> result = new ArrayList<>();
    List<String> names = fitted.data().product().levels();
    for (int i = 0; i < names.size(); i++) {
      String product = names.get(i);
      Measurement mean =
          Measurement.of(naming.measure, Subject.ofProduct(product), means[i])
              .withN(batchesOf(data, product));
      result.add(
          Double.isFinite(errors[i])
              ? mean.withComponents(components(errors[i], data, fitted, naming, product))
              : mean.withNote("no uncertainty: the table does not allow one"));
    }
    return result;
  }

  private static int batchesOf(Observations data, String product) {
    if (data.batch() == null) {
      return 1;
    }
    Set<String> batches = new LinkedHashSet<>();
    for (Rating rating : data.ratings()) {
      if (rating.product().equals(product)) {
        batches.add(rating.session() + "\u0000" + rating.batch());
      }
    }
    return batches.size();
  }

  private static List<Component> components(
      double error, Observations data, FittedPanel fitted, Naming naming, String product) {
    double persons = Math.max(1, data.assessors());
    VarianceComponents variances = fitted.components();
    double taste = positive(variances.interaction()) / persons;
    double own = Math.max(0, error * error - taste);
    List<Component> components = new ArrayList<>();
    components.add(Component.run(Math.sqrt(own)));
    if (taste > 0) {
      double shared = Math.min(taste, error * error);
      components.add(Component.shared(naming.source + ":" + product, Math.sqrt(shared)));
    }
    addLevel(components, variances, persons, naming);
    return components;
  }

  private static void addLevel(
      List<Component> components, VarianceComponents variances, double persons, Naming naming) {
    double level = positive(variances.assessor()) / persons;
    if (level > 0) {
      components.add(Component.shared(naming.source, Math.sqrt(level)));
    }
  }

  private static double positive(double variance) {
    return variance > 0 ? variance : 0;
  }

  private static List<Measurement> runMeasurements(
      Observations data, FittedPanel fitted, Naming naming) {
    Factor runs = Factor.of(naming.ratings, PanelMeans::runKey);
    if (naming.ratings.stream().anyMatch(r -> r.batch() == null)) {
      return List.of();
    }
    double[] means = adjustedRunMeans(data, runs);
    int[] counts = runs.counts();
    List<Measurement> result = new ArrayList<>();
    for (int i = 0; i < runs.size(); i++) {
      Rating rating = firstOf(naming.ratings, runs, i);
      result.add(runMeasurement(rating, means[i], counts[i], data, fitted, naming));
    }
    return result;
  }

  private static String runKey(Rating rating) {
    return rating.product() + "\u0000" + rating.session() + "\u0000" + rating.batch();
  }

  private static Rating firstOf(List<Rating> ratings, Factor factor, int level) {
    for (int i = 0; i < ratings.size(); i++) {
      if (factor.of()[i] == level) {
        return ratings.get(i);
      }
    }
    throw new IllegalArgumentException("level must occur, found " + level);
  }

  private static Measurement runMeasurement(
      Rating rating, double mean, int count, Observations data, FittedPanel fitted, Naming naming) {
    VarianceComponents variances = fitted.components();
    List<Component> components = new ArrayList<>();
    components.add(Component.run(Math.sqrt(positive(variances.residual()) / count)));
    double taste = positive(variances.interaction()) / Math.max(1, data.assessors());
    if (taste > 0) {
      components.add(Component.shared(naming.source + ":" + rating.product(), Math.sqrt(taste)));
    }
    addLevel(components, variances, Math.max(1, data.assessors()), naming);
    Subject subject = new Subject(rating.product(), runName(rating), null, null, null, null);
    Measurement one = Measurement.of(naming.measure, subject, mean);
    return Double.isFinite(variances.residual())
        ? one.withComponents(components)
        : one.withNote("no uncertainty: the table does not allow one");
  }

  private static @Nullable String runName(Rating rating) {
    return rating.batch();
  }

  /** Means of batches as if every person had rated each; plain means where that cannot be told. */
  static double[] adjustedRunMeans(Observations data, Factor runs) {
    Observations byRun = data.withProduct(runs);
    boolean enough = byRun.n() - byRun.assessors() - runs.size() >= 0;
    if (runs.size() < 2 || byRun.assessors() < 2 || !enough || data.isConstant()) {
      return runs.means(data.y());
    }
    MixedModel model = MixedModel.additive(byRun);
    return model.isConnected() ? model.means() : runs.means(data.y());
  }
}
