package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Value for money: who is on the Pareto front of displayed score and price, and what the others
 * would have to cost.
 *
 * <p>Score divided by price is not computed: it rewards the cheapest, however bad.
 */
public final class PriceFront {

  private PriceFront() {}

  /** Whether somebody scores as much for less, or more for as much. */
  public enum Place {
    ON_THE_FRONT,
    DEARER_THAN_AS_GOOD,
    /** No price, or no single score. */
    NOT_COMPARED
  }

  /**
   * One product's place.
   *
   * @param beatenBy the cheapest product that scores at least as much; empty on the front
   * @param tiesAt price at which it would be level with that product; NaN on the front
   * @param cheapestOfTier whether no product of its tier costs less: tiers, not digits, are what is
   *     shown to differ
   */
  public record Value(
      String product,
      double price,
      Place place,
      String beatenBy,
      double tiesAt,
      TierPrice cheapestOfTier) {}

  /** Price within the tier. */
  public enum TierPrice {
    CHEAPEST,
    NOT_CHEAPEST,
    UNRANKED
  }

  /**
   * Places in published order.
   *
   * @param prices by product, above 0, of one currency and date
   */
  public static List<Value> of(ScoringResult result, Map<String, Double> prices) {
    List<Value> values = new ArrayList<>();
    for (ProductScore product : result.products()) {
      Double price = prices.get(product.id());
      if (price == null || !product.total().scored() || product.total().bounded()) {
        values.add(
            new Value(
                product.id(),
                price == null ? Double.NaN : price,
                Place.NOT_COMPARED,
                "",
                Double.NaN,
                TierPrice.UNRANKED));
      } else {
        values.add(value(result, prices, product, price));
      }
    }
    return values;
  }

  private static Value value(
      ScoringResult result, Map<String, Double> prices, ProductScore product, double price) {
    Optional<ProductScore> beaten =
        result.products().stream()
            .filter(o -> !o.id().equals(product.id()) && prices.containsKey(o.id()))
            .filter(o -> o.total().scored())
            .filter(o -> beats(o, prices.getOrDefault(o.id(), 0.0), product, price))
            .min(Comparator.comparingDouble(o -> prices.getOrDefault(o.id(), 0.0)));
    return new Value(
        product.id(),
        price,
        beaten.isPresent() ? Place.DEARER_THAN_AS_GOOD : Place.ON_THE_FRONT,
        beaten.map(ProductScore::id).orElse(""),
        beaten.map(o -> prices.getOrDefault(o.id(), Double.NaN)).orElse(Double.NaN),
        tierPrice(result, prices, product, price));
  }

  private static boolean beats(
      ProductScore other, double otherPrice, ProductScore product, double price) {
    // A product with bounds counts for what it scores at least.
    double theirs = number(other.total().displayedLow());
    double ours = number(product.total().displayedLow());
    boolean atLeast = theirs >= ours && otherPrice <= price;
    return atLeast && (theirs > ours || otherPrice < price);
  }

  private static double number(java.math.@org.jspecify.annotations.Nullable BigDecimal shown) {
    return shown == null ? Double.NaN : shown.doubleValue();
  }

  private static TierPrice tierPrice(
      ScoringResult result, Map<String, Double> prices, ProductScore product, double price) {
    if (product.tier() == null) {
      return TierPrice.UNRANKED;
    }
    boolean cheaper =
        result.products().stream()
            .filter(o -> Objects.equals(o.tier(), product.tier()))
            .anyMatch(o -> prices.getOrDefault(o.id(), Double.POSITIVE_INFINITY) < price);
    return cheaper ? TierPrice.NOT_CHEAPEST : TierPrice.CHEAPEST;
  }
}
