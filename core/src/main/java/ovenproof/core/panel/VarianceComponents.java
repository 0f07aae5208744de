package ovenproof.core.panel;

/**
 * Where the scatter of the marks comes from, as variances in squared scale points. NaN: not
 * separable in this table.
 *
 * @param batch between batches of one product
 * @param interaction persons who disagree about which product is better (product × assessor)
 * @param residual one person, one batch, again
 * @param assessor persons who use higher or lower marks throughout; cancels between products
 */
public record VarianceComponents(
    double batch, double interaction, double residual, double assessor) {}
