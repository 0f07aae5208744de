package ovenproof.core.panel;

/**
 * One product's place on one attribute.
 *
 * @param product which
 * @param attribute which
 * @param mean adjusted to the same people, sessions and conditions for all
 * @param uncertainty standard uncertainty (k = 1), the panel's level included; NaN when unknown
 * @param uncertaintyAmongProducts without the panel's level, which cancels between products; the
 *     one to draw when products stand side by side
 * @param marks marks behind it
 * @param batches experimental units behind it; 0 when the table does not tell them apart
 * @param weightedMean with the declared weights of the people; equals the plain mean of people's
 *     means without a declared weighting; NaN when people are not named
 * @param groups letters: products that share one were not shown to differ; empty without a test
 */
public record ProductMean(
    String product,
    String attribute,
    double mean,
    double uncertainty,
    double uncertaintyAmongProducts,
    int marks,
    int batches,
    double weightedMean,
    String groups) {}
