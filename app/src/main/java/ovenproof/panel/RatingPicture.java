package ovenproof.panel;

import java.util.ArrayList;
import java.util.List;
import ovenproof.chart.RatingChart;
import ovenproof.core.panel.AttributeAnalysis;
import ovenproof.core.panel.ProductMean;
import ovenproof.core.panel.Rating;
import ovenproof.core.statistics.Distributions;

/** One attribute as lanes: every mark, each mean with its interval among the products, letters. */
public final class RatingPicture {

  private RatingPicture() {}

  /**
   * @param ratings of all attributes; those of others are passed over
   */
  public static RatingChart.Panel of(AttributeAnalysis attribute, List<Rating> ratings) {
    List<RatingChart.Lane> lanes = new ArrayList<>();
    double df = attribute.pairs().isEmpty() ? Double.NaN : attribute.pairs().get(0).df();
    for (ProductMean product : attribute.products()) {
      double half =
          df > 0
              ? Distributions.studentQuantile(0.975, df) * product.uncertaintyAmongProducts()
              : Double.NaN;
      lanes.add(
          new RatingChart.Lane(
              product.product(),
              product.mean(),
              product.mean() - half,
              product.mean() + half,
              product.groups(),
              marks(ratings, product)));
    }
    return new RatingChart.Panel(attribute.attribute(), lanes);
  }

  private static double[] marks(List<Rating> ratings, ProductMean product) {
    return ratings.stream()
        .filter(
            r -> r.attribute().equals(product.attribute()) && r.product().equals(product.product()))
        .mapToDouble(Rating::value)
        .toArray();
  }
}
