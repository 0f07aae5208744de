package ovenproof.proof;

import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the words around one claim point at.
 *
 * @param tests tests named for it, in its clause or else nearest in the sentence
 * @param inClause whether they stand in the claim's own clause
 * @param above tests named before in the paragraph or in the heading; used when {@code tests} is
 *     empty
 * @param before tests last spoken of, further up; a weak hint
 * @param cues tests that a number of the method in the sentence belongs to
 * @param weights stems of the words around, heavier the closer they stand
 */
record Focus(
    Set<String> tests,
    boolean inClause,
    Set<String> above,
    Set<String> before,
    Set<String> cues,
    @Nullable Integer batch,
    Map<String, Double> weights) {

  double weight(String stem) {
    return weights.getOrDefault(stem, 0.0);
  }
}
