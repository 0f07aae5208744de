package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The marks of one attribute with their groupings.
 *
 * @param y the marks
 * @param product product of each mark
 * @param assessor person of each mark; null when nobody is named
 * @param batch experimental unit of each mark, nested in product and session; null when unknown or
 *     when no product has more than one
 * @param blocks fixed nuisance factors by name (session, conditions), only those with two or more
 *     levels
 */
record Observations(
    List<Rating> ratings,
    double[] y,
    Factor product,
    @Nullable Factor assessor,
    @Nullable Factor batch,
    Map<String, Factor> blocks) {

  static Observations of(List<Rating> ratings) {
    double[] y = ratings.stream().mapToDouble(Rating::value).toArray();
    Factor product = Factor.of(ratings, Rating::product);
    boolean named = ratings.stream().allMatch(r -> r.assessor() != null);
    Factor assessor = named ? Factor.of(ratings, Rating::assessor) : null;
    return new Observations(
        ratings, y, product, assessor, batches(ratings, product), blocks(ratings));
  }

  private static @Nullable Factor batches(List<Rating> ratings, Factor product) {
    if (ratings.isEmpty() || ratings.stream().anyMatch(r -> r.batch() == null)) {
      return null;
    }
    Factor batch = Factor.of(ratings, Observations::batchKey);
    return batch.size() > product.size() ? batch : null;
  }

  private static String batchKey(Rating rating) {
    String session = rating.session() == null ? "" : rating.session();
    return rating.product() + "\u0000" + session + "\u0000" + rating.batch();
  }

  private static Map<String, Factor> blocks(List<Rating> ratings) {
    Map<String, Factor> blocks = new LinkedHashMap<>();
    addBlock(blocks, "session", Factor.of(ratings, Rating::session));
    TreeSet<String> names = new TreeSet<>();
    ratings.forEach(r -> names.addAll(r.conditions().keySet()));
    for (String name : names) {
      addBlock(blocks, name, Factor.of(ratings, r -> r.conditions().get(name)));
    }
    return blocks;
  }

  private static void addBlock(Map<String, Factor> blocks, String name, Factor factor) {
    if (factor.size() > 1) {
      blocks.put(name, factor);
    }
  }

  int n() {
    return y.length;
  }

  /** Number of people; 0 when nobody is named. */
  int assessors() {
    return assessor == null ? 0 : assessor.size();
  }

  boolean isConstant() {
    for (double value : y) {
      if (value != y[0]) {
        return false;
      }
    }
    return true;
  }

  /** The same marks without names: for tables in which each person rated one product. */
  Observations withoutAssessors() {
    return new Observations(ratings, y, product, null, batch, blocks);
  }

  /** The same with one more fixed nuisance factor. */
  Observations withBlock(String name, Factor factor) {
    Map<String, Factor> more = new LinkedHashMap<>(blocks);
    more.put(name, factor);
    return new Observations(ratings, y, product, assessor, batch, more);
  }

  /** The same with another grouping in the place of the products. */
  Observations withProduct(Factor factor) {
    return new Observations(ratings, y, factor, assessor, null, Map.of());
  }

  /** One mark per person and product: the mean of what the person gave it. */
  Observations averagedPerAssessorAndProduct() {
    if (assessor == null) {
      return this;
    }
    Factor cell = assessor.crossedWith(product);
    double[] means = cell.means(y);
    List<Rating> averaged = new ArrayList<>();
    boolean[] done = new boolean[cell.size()];
    for (int i = 0; i < y.length; i++) {
      if (!done[cell.of()[i]]) {
        done[cell.of()[i]] = true;
        Rating r = ratings.get(i);
        averaged.add(
            new Rating(
                r.assessor(),
                r.product(),
                null,
                null,
                r.attribute(),
                means[cell.of()[i]],
                null,
                Map.of()));
      }
    }
    return of(averaged);
  }
}
