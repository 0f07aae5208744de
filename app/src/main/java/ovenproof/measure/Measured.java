package ovenproof.measure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;

/**
 * Everything that was measured of one campaign: one {@link Value} per use of a measure and run (or
 * product, for facts). Looked up by use and product as often as there are criteria, so it is sorted
 * into shelves once: a thousand products would otherwise be walked through a thousand times.
 */
public final class Measured {
  private final List<Value> values;
  private final List<String> warnings;
  private final Map<Use, List<Value>> ofUse = new HashMap<>();
  private final Map<UseOfProduct, List<Value>> countedOfProduct = new HashMap<>();

  private record Use(String test, String use) {}

  private record UseOfProduct(String test, String use, String product) {}

  /**
   * @param values in the order of the method's tests and measures, then of the runs
   * @param warnings what a reader of the numbers should know, in sentences
   */
  public Measured(List<Value> values, List<String> warnings) {
    this.values = List.copyOf(values);
    this.warnings = List.copyOf(warnings);
    for (Value v : values) {
      ofUse.computeIfAbsent(new Use(v.test(), v.use()), u -> new ArrayList<>()).add(v);
      if (v.counts() == Counts.COUNTED) {
        countedOfProduct
            .computeIfAbsent(
                new UseOfProduct(v.test(), v.use(), v.product()), u -> new ArrayList<>())
            .add(v);
      }
    }
  }

  /** In the order of the method's tests and measures, then of the runs. */
  public List<Value> values() {
    return values;
  }

  /** What a reader of the numbers should know, in sentences. */
  public List<String> warnings() {
    return warnings;
  }

  /**
   * One use of a measure, for one run or product.
   *
   * @param test id of the test
   * @param use id of the measure's use in that test
   * @param product key
   * @param run null for facts
   * @param variant null for facts
   * @param counts whether the run counts for the verdict
   * @param value the run's value: the summary over batches, pieces and faces; missing with its
   *     reason or censored where it is so
   * @param parts what it was made of
   */
  public record Value(
      String test,
      String use,
      String product,
      @Nullable String run,
      @Nullable String variant,
      Counts counts,
      Measurement value,
      List<Measurement> parts) {
    public Value {
      parts = List.copyOf(parts);
    }
  }

  /** Whether a run counts for the verdict. */
  public enum Counts {
    COUNTED,
    /** Trial, void, superseded by a redo, or of a compared variant. */
    LISTED_ONLY
  }

  /** Values of one use of a measure, all products and runs; none when nothing was measured. */
  public List<Value> of(String test, String use) {
    return shelf(ofUse.get(new Use(test, use)));
  }

  /** Counted values of one use of a measure and one product; none when nothing was measured. */
  public List<Value> counted(String test, String use, String product) {
    return shelf(countedOfProduct.get(new UseOfProduct(test, use, product)));
  }

  private static List<Value> shelf(@Nullable List<Value> held) {
    return held == null ? List.of() : Collections.unmodifiableList(held);
  }

  /** The value of one use of a measure in one run. */
  public Optional<Value> ofRun(String test, String use, String run) {
    return of(test, use).stream().filter(v -> run.equals(v.run())).findFirst();
  }

  /** Equal where the same was measured: folder and desk are held against each other by it. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Measured that
        && values.equals(that.values)
        && warnings.equals(that.warnings);
  }

  @Override
  public int hashCode() {
    return Objects.hash(values, warnings);
  }

  @Override
  public String toString() {
    return "Measured[values=" + values + ", warnings=" + warnings + "]";
  }
}
