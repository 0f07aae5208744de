package ovenproof.proof;

import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Proof.Finding;

/**
 * Whether a product is the first, or in a stated place, of a field by one figure. Sure only where
 * the tier margin separates it.
 */
final class Extremes {
  private final Separation separation;
  private final UnaryOperator<String> names;

  Extremes(Separation separation, UnaryOperator<String> names) {
    this.separation = separation;
    this.names = names;
  }

  /** What a claim of a place is worth, with what stands there instead. */
  record Place(Finding finding, @Nullable String expected, String why) {
    /** What "not the fastest" is worth. */
    Place denied() {
      Finding turned =
          switch (finding) {
            case SUPPORTED -> Finding.CONTRADICTED;
            case CONTRADICTED -> Finding.SUPPORTED;
            case UNCLEAR, UNSUPPORTED -> finding;
          };
      return new Place(turned, expected, why);
    }
  }

  /** "The fastest". */
  Place first(Figure use) {
    List<Figure> ordered = separation.ordered();
    if (Separation.level(use) == null || ordered.size() < 2) {
      return new Place(Finding.UNSUPPORTED, null, "there is nothing to compare it with");
    }
    Figure first = ordered.get(0);
    String lead = shown(first);
    boolean own = first.product().equals(use.product());
    if (!own && separation.signed(first) > separation.signed(use)) {
      return new Place(
          Finding.CONTRADICTED,
          lead,
          "that is "
              + lead
              + "; "
              + names.apply(use.product())
              + " had "
              + ComparisonJudge.shownOrBound(use));
    }
    for (Figure other : ordered) {
      if (!other.product().equals(use.product()) && isTied(use, other)) {
        return new Place(
            Finding.UNCLEAR,
            lead,
            "first by figures, but not separated from " + shown(other) + ": say \"among\"");
      }
    }
    return new Place(
        Finding.SUPPORTED, lead, "separated from all others that were tested: " + lead);
  }

  private boolean isTied(Figure use, Figure other) {
    return use.isSingle()
        ? separation.signed(use) == separation.signed(other)
        : !separation.separated(use, other);
  }

  /** "Among the fastest", "one of the fastest": not separated from the first. */
  Place amongFirst(Figure use) {
    List<Figure> ordered = separation.ordered();
    if (ordered.isEmpty() || Separation.level(use) == null) {
      return new Place(Finding.UNSUPPORTED, null, "it was not measured");
    }
    Figure best = ordered.get(0);
    boolean apart = separation.separated(best, use);
    boolean near = ordered.indexOf(use) < Math.max(2, ordered.size() / 3);
    Finding finding = !apart ? Finding.SUPPORTED : near ? Finding.UNCLEAR : Finding.CONTRADICTED;
    return new Place(
        finding,
        shown(best),
        (apart ? "separated from the first, " : "not separated from the first, ") + shown(best));
  }

  /** "The second fastest": its place by figures, and whether its neighbours are separated. */
  Place inPlace(Figure use, int stated) {
    List<Figure> ordered = separation.ordered();
    int at = ordered.stream().map(Figure::product).toList().indexOf(use.product());
    if (at < 0 || stated > ordered.size()) {
      return new Place(Finding.UNSUPPORTED, null, "it was not measured");
    }
    Figure there = ordered.get(stated - 1);
    if (at != stated - 1) {
      boolean tie = separation.signed(there) == separation.signed(use);
      return new Place(
          tie ? Finding.UNCLEAR : Finding.CONTRADICTED,
          shown(there),
          "by figures that is " + shown(there));
    }
    boolean apart =
        use.isSingle()
            || (at == 0 || separation.separated(ordered.get(at - 1), use))
                && (at == ordered.size() - 1 || separation.separated(use, ordered.get(at + 1)));
    return new Place(
        apart ? Finding.SUPPORTED : Finding.UNCLEAR,
        shown(there),
        apart
            ? "separated from its neighbours"
            : "by figures it is, but not separated from its neighbours");
  }

  private String shown(Figure figure) {
    return names.apply(figure.product()) + " " + ComparisonJudge.shownOrBound(figure);
  }
}
