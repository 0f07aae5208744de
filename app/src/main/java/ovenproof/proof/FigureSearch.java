package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/** Finds the figures that a claim may speak of: those that fit its words best. */
final class FigureSearch {
  /** Fits closer than this are a tie: the words do not decide. */
  private static final double TIE = 0.5;

  private final Figures figures;

  FigureSearch(Figures figures) {
    this.figures = figures;
  }

  /** A figure with how well the words around a claim fit it. */
  record Fit(Figure figure, double points) {}

  /** All figures of one product and kind, best fit first. */
  List<Fit> fits(Focus focus, String product, Predicate<Figure> kind) {
    return fits(focus, product, kind, f -> 0);
  }

  /**
   * The same with points of its own for each figure.
   *
   * @param more added to what the words give
   */
  List<Fit> fits(
      Focus focus, String product, Predicate<Figure> kind, ToDoubleFunction<Figure> more) {
    List<Fit> fits = new ArrayList<>();
    for (Figure figure : figures.of(product)) {
      if (kind.test(figure)) {
        fits.add(new Fit(figure, points(focus, figure) + more.applyAsDouble(figure)));
      }
    }
    boolean marked = fits.stream().anyMatch(f -> isNamedMark(focus, f.figure()));
    if (marked) {
      fits.replaceAll(
          f ->
              f.figure().kind() == Figure.Kind.TOTAL
                  ? new Fit(f.figure(), f.points() - UNNAMED)
                  : f);
    }
    fits.sort(Comparator.comparingDouble(Fit::points).reversed());
    return fits;
  }

  /** What a total loses where the words name what was marked. */
  private static final double UNNAMED = 5;

  /** "Display: Larch 0.5": the sentence names what was rated or tasted. */
  private static boolean isNamedMark(Focus focus, Figure figure) {
    return figure.kind() == Figure.Kind.MARK
        && Stems.ofAll(figure.label()).stream().allMatch(s -> focus.weight(s) >= 0.9);
  }

  /** Figures of one product that fit best; several when the words do not decide between them. */
  List<Figure> best(Focus focus, String product, Predicate<Figure> kind) {
    return top(fits(focus, product, kind));
  }

  static List<Figure> top(List<Fit> fits) {
    return fits.stream()
        .filter(f -> f.points() > fits.get(0).points() - TIE)
        .map(Fit::figure)
        .toList();
  }

  /** How well the words around a claim fit a figure. */
  private static double points(Focus focus, Figure figure) {
    return words(focus, figure)
        + test(focus, figure)
        + batch(focus, figure)
        + general(focus, figure);
  }

  /** The three closest words count. */
  private static double words(Focus focus, Figure figure) {
    double[] best = new double[3];
    for (String stem : figure.words()) {
      double weight = focus.weight(stem) * (GENERAL.contains(stem) ? 0.35 : 1);
      for (int i = 0; i < best.length; i++) {
        if (weight > best[i]) {
          double pushed = best[i];
          best[i] = weight;
          weight = pushed;
        }
      }
    }
    return best[0] + 0.8 * best[1] + 0.6 * best[2];
  }

  private static double test(Focus focus, Figure figure) {
    String test = figure.test();
    if (test == null) {
      return 0;
    }
    if (!focus.tests().isEmpty()) {
      boolean named = focus.tests().contains(test);
      double cue = focus.cues().contains(test) ? 3 : 0;
      return named ? (focus.inClause() ? 8 : 3.5) : focus.inClause() ? -8 : cue - 1.5;
    }
    double hint = focus.above().contains(test) ? 3.2 : focus.before().contains(test) ? 1.5 : 0;
    return focus.cues().contains(test) ? Math.max(hint, 4.5) : hint;
  }

  private static double batch(Focus focus, Figure figure) {
    Integer batch = focus.batch();
    if (batch != null && batch > 1 && figure.take().endsWith(":change")) {
      return 6;
    }
    if (batch != null) {
      return batch.equals(figure.batch()) ? 6 : figure.batch() == null ? 0 : -6;
    }
    return figure.batch() != null ? -2 : 0;
  }

  /**
   * Without a word for the test, a score is the total; without a word for a criterion, the test's.
   */
  private static double general(Focus focus, Figure figure) {
    boolean none = focus.tests().isEmpty() && focus.above().isEmpty();
    return switch (figure.kind()) {
      case TOTAL ->
          named(focus) && !focus.inClause()
              ? 9
              : focus.tests().isEmpty()
                  ? (focus.above().isEmpty() ? 6 : 2)
                  : focus.inClause() ? 0 : 2;
      case TEST_SCORE -> none ? -2 : 1.5;
      case CRITERION_SCORE -> named(focus, figure) ? 1 : -2;
      case NAMEPLATE -> plate(focus) ? 3 : -4;
      case MEASURE ->
          face(focus, figure)
              + (named(focus, figure) ? 1 : figure.take().equals("signal-time") ? -1 : 0);
      case MARK -> named(focus, figure) ? 1 : 0;
      case FACT, PRICE -> 0;
    };
  }

  /** "Its total", "overall": in the clause itself. */
  private static boolean named(Focus focus) {
    return TOTALS.stream().anyMatch(w -> focus.weight(w) >= 2.9);
  }

  private static final java.util.Set<String> TOTALS = Stems.ofAll("total overall");

  /** The underside is meant only where it is named. */
  private static double face(Focus focus, Figure figure) {
    boolean below = figure.words().contains(UNDERSIDE) && !figure.take().endsWith(":faces");
    boolean named =
        focus.weight(UNDERSIDE) > 0
            || focus.weight(Stems.of("bottom")) > 0
            || focus.weight(Stems.of("below")) > 0
            || focus.weight(Stems.of("base")) > 0;
    return below ? (named ? 2 : -4) : 0;
  }

  /** Words of any timed or measured thing; they decide nothing where better ones stand. */
  private static final java.util.Set<String> GENERAL =
      Stems.ofAll("took take takes taken time needed needs minutes done temperature got get mean");

  private static final String UNDERSIDE = Stems.of("underside");

  private static final java.util.Set<String> SCORE_WORDS = Stems.ofAll("score scored points");

  /** Whether a word of its own stands near, not only a word for scores. */
  private static boolean named(Focus focus, Figure figure) {
    return figure.words().stream()
        .anyMatch(w -> !SCORE_WORDS.contains(w) && !GENERAL.contains(w) && focus.weight(w) > 1.6);
  }

  private static boolean plate(Focus focus) {
    return Vocabulary.PLATE.stream().anyMatch(s -> focus.weight(s) >= 3);
  }

  /** Same use and batch of every product. */
  List<Figure> field(Figure like) {
    return figures.where(
        f ->
            f.kind() == like.kind()
                && Objects.equals(f.test(), like.test())
                && f.use().equals(like.use())
                && Objects.equals(f.batch(), like.batch()));
  }

  /** Figures of a product that an adjective, or a word like "crispness", may compare. */
  List<Figure> uses(
      Focus focus, Vocabulary.@Nullable Adjective adjective, String stem, String product) {
    return uses(focus, adjective, stem, product, Optional.empty());
  }

  /**
   * The same where a number beside the adjective may tell what is compared.
   *
   * @param unit of that number; figures of its kind go first, if there are any
   */
  List<Figure> uses(
      Focus focus,
      Vocabulary.@Nullable Adjective adjective,
      String stem,
      String product,
      Optional<Unit> unit) {
    if (adjective == null) {
      return best(focus, product, f -> f.kind() == Figure.Kind.MARK && f.words().contains(stem));
    }
    List<Fit> fits = new ArrayList<>();
    for (Figure figure : figures.of(product)) {
      int place = place(adjective, figure);
      if (place >= 0) {
        fits.add(new Fit(figure, points(focus, figure) - 0.75 * place));
      }
    }
    List<Fit> ofUnit =
        fits.stream()
            .filter(f -> unit.isPresent() && ComparedFigures.sameKind(unit.get(), f.figure()))
            .toList();
    if (!ofUnit.isEmpty()) {
      fits.retainAll(ofUnit);
    }
    fits.sort(Comparator.comparingDouble(Fit::points).reversed());
    return fits.isEmpty() ? List.of() : top(fits);
  }

  /** Where a figure stands among what an adjective means, or −1. */
  private static int place(Vocabulary.Adjective adjective, Figure figure) {
    if (figure.kind() == Figure.Kind.NAMEPLATE) {
      return -1;
    }
    for (int i = 0; i < adjective.takes().size(); i++) {
      String take = adjective.takes().get(i);
      boolean fact = take.startsWith("fact:");
      boolean fits =
          fact
              ? figure.kind() == Figure.Kind.FACT
                  && figure.words().containsAll(Stems.ofAll(take.substring(5)))
              : take.equals("score")
                  ? figure.kind() == Figure.Kind.TOTAL || figure.kind() == Figure.Kind.TEST_SCORE
                  : figure.take().equals(take);
      if (fits) {
        return i;
      }
    }
    return -1;
  }
}
