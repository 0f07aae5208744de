package ovenproof.core.panel;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Everything about one attribute.
 *
 * @param method how products were tested, in words
 * @param products in descending order of the mean
 * @param pairs all pairs, in that order; empty when nothing can be tested
 * @param tests products first
 * @param variances where the scatter comes from
 * @param sensitivity what this panel can see; null when unknown
 * @param assessors one check per person, in order of appearance
 * @param warnings what the reader must be told
 */
public record AttributeAnalysis(
    String attribute,
    String method,
    List<ProductMean> products,
    List<PairDifference> pairs,
    List<PanelTest> tests,
    VarianceComponents variances,
    @Nullable Sensitivity sensitivity,
    List<AssessorCheck> assessors,
    List<String> warnings) {

  public AttributeAnalysis {
    products = List.copyOf(products);
    pairs = List.copyOf(pairs);
    tests = List.copyOf(tests);
    assessors = List.copyOf(assessors);
    warnings = List.copyOf(warnings);
  }
}
