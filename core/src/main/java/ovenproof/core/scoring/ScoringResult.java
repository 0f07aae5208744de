package ovenproof.core.scoring;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.repeatability.PooledDeviation;

/**
 * A verdict in numbers.
 *
 * @param products in published order: by displayed total, then by name; those without a score last
 * @param comparison of the ranked products; null when there are none
 * @param spreads deviation between runs by variable
 * @param draws how many draws were made
 * @param warnings what a reader of the verdict must know
 */
public record ScoringResult(
    List<ProductScore> products,
    @Nullable Comparison comparison,
    Map<String, PooledDeviation> spreads,
    int draws,
    List<String> warnings) {

  public ScoringResult {
    products = List.copyOf(products);
    spreads = Map.copyOf(spreads);
    warnings = List.copyOf(warnings);
  }

  public Optional<ProductScore> product(String id) {
    return products.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  /** The comparison, if any product could be ranked. */
  public Optional<Comparison> compared() {
    return Optional.ofNullable(comparison);
  }
}
