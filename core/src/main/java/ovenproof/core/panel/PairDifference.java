package ovenproof.core.panel;

/**
 * Two products compared.
 *
 * @param difference first minus second
 * @param standardError of the difference
 * @param df degrees of freedom of that
 * @param p adjusted for all pairs (Tukey–Kramer by default)
 */
public record PairDifference(
    String first, String second, double difference, double standardError, double df, double p) {}
