package ovenproof.proof;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What was said before a sentence.
 *
 * @param product that "it" stands for
 * @param isFirm whether the heading or the paragraph's first words name it
 * @param joint products that "they" stands for
 * @param others products that were named in the sentence before
 * @param pair the two that were last named together
 * @param topic product that "it" last stood for
 * @param isSole whether the sentence before named just one
 * @param isStale whether the paragraph has named none so far
 */
record Said(
    @Nullable String product,
    boolean isFirm,
    Set<String> joint,
    Set<String> others,
    Set<String> testsAbove,
    Set<String> testsBefore,
    Map<String, Double> stems,
    List<String> pair,
    @Nullable String topic,
    boolean isStale,
    boolean isSole) {}
