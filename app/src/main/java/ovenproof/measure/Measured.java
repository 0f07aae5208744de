package ovenproof.measure;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;

/**
 * Everything that was measured of one campaign: one {@link Value} per use of a measure and run (or
 * product, for facts).
 *
 * @param values in the order of the method's tests and measures, then of the runs
 * @param warnings what a reader of the numbers should know, in sentences
 */
public record Measured(List<Value> values, List<String> warnings) {

  public Measured {
    values = List.copyOf(values);
    warnings = List.copyOf(warnings);
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

  /** Values of one use of a measure, all products and runs. */
  public List<Value> of(String test, String use) {
    return values.stream().filter(v -> v.test().equals(test) && v.use().equals(use)).toList();
  }

  /** Counted values of one use of a measure and one product. */
  public List<Value> counted(String test, String use, String product) {
    return of(test, use).stream()
        .filter(v -> v.product().equals(product) && v.counts() == Counts.COUNTED)
        .toList();
  }

  /** The value of one use of a measure in one run. */
  public Optional<Value> ofRun(String test, String use, String run) {
    return of(test, use).stream().filter(v -> run.equals(v.run())).findFirst();
  }
}
