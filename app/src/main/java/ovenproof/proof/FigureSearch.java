package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;

/** Finds the figures that a claim may speak of: those that fit its words best. */
final class FigureSearch {
  private final Figures figures;

  FigureSearch(Figures figures) {
    this.figures = figures;
  }

  /** Figures of one product that fit best; several when the words do not decide between them. */
  List<Figure> best(Context context, String product, java.util.function.Predicate<Figure> kind) {
    Map<Figure, Integer> points = new LinkedHashMap<>();
    int best = Integer.MIN_VALUE;
    for (Figure figure : figures.where(kind.and(f -> f.product().equals(product)))) {
      int score = points(context, figure);
      points.put(figure, score);
      best = Math.max(best, score);
    }
    List<Figure> found = new ArrayList<>();
    int top = best;
    points.forEach(
        (figure, score) -> {
          if (score == top) {
            found.add(figure);
          }
        });
    return found;
  }

  /** How well the words around a number fit a figure. */
  private static int points(Context context, Figure figure) {
    int score = 3 * overlap(context.stems(), figure.words());
    if (figure.test() != null && context.tests().contains(figure.test())) {
      score += 8;
    } else if (figure.test() != null && !context.tests().isEmpty()) {
      score -= 6;
    } else if (figure.test() != null && context.inheritedTests().contains(figure.test())) {
      score += 4;
    }
    Integer batch = context.batch();
    if (batch != null) {
      score += batch.equals(figure.batch()) ? 6 : figure.batch() == null ? 0 : -6;
    } else if (figure.batch() != null) {
      score -= 2;
    }
    return score + general(context, figure);
  }

  /**
   * Without a word for the test, a score is the total; without a word for a criterion, the test's.
   */
  private static int general(Context context, Figure figure) {
    return switch (figure.kind()) {
      case TOTAL -> context.tests().isEmpty() ? 6 : 0;
      case TEST_SCORE -> context.tests().isEmpty() && context.inheritedTests().isEmpty() ? -2 : 3;
      case CRITERION_SCORE -> -2;
      case MEASURE, MARK, PRICE -> 0;
    };
  }

  private static int overlap(Set<String> a, Set<String> b) {
    Set<String> common = new HashSet<>(a);
    common.retainAll(b);
    return Math.min(4, common.size());
  }

  /** Same use and batch of every product. */
  List<Figure> field(Figure like) {
    return figures.where(
        f ->
            f.kind() == like.kind()
                && java.util.Objects.equals(f.test(), like.test())
                && f.use().equals(like.use())
                && java.util.Objects.equals(f.batch(), like.batch()));
  }

  /** Figures of any product in a dimension, one per use, that an adjective may speak of. */
  List<Figure> uses(
      Context context, Vocabulary.@Nullable Adjective adjective, String stem, String product) {
    if (adjective != null && adjective.takes().contains("price")) {
      return figures.where(f -> f.kind() == Figure.Kind.PRICE && f.product().equals(product));
    }
    if (adjective != null && adjective.takes().contains("score")) {
      return best(
          context,
          product,
          f -> f.kind() == Figure.Kind.TOTAL || f.kind() == Figure.Kind.TEST_SCORE);
    }
    if (adjective == null) {
      return best(context, product, f -> !f.isScore() && f.words().contains(stem));
    }
    for (String take : adjective.takes()) {
      List<Figure> found = best(context, product, f -> !f.isScore() && takes(f, take));
      if (!found.isEmpty() && context.tests().isEmpty()) {
        return found;
      }
      List<Figure> inTest =
          found.stream()
              .filter(f -> f.test() != null && context.tests().contains(f.test()))
              .toList();
      if (!inTest.isEmpty()) {
        return inTest;
      }
    }
    Dimension dimension = adjective.dimension();
    return dimension == null
        ? List.of()
        : best(context, product, f -> f.unit() != null && f.unit().dimension() == dimension);
  }

  private boolean takes(Figure figure, String take) {
    return figures
        .campaign()
        .method()
        .test(figure.test() == null ? "" : figure.test())
        .flatMap(t -> t.measure(figure.use()))
        .map(u -> u.take().equals(take))
        .orElse(false);
  }
}
