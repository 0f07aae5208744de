package ovenproof.publish.edition;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/**
 * What speaks for a product and what against it, each with the test whose evidence carries it.
 *
 * <p>A test is named only if the product's whole interval lies above, or below, the median score of
 * the field in that test; what could not be done, was stopped at the cap or missed a limit is
 * always named. Without intervals nothing is claimed.
 */
public record ForAndAgainst(List<Point> forIt, List<Point> against) {

  /**
   * One line.
   *
   * @param test id of the test whose evidence carries it; null for a limit of the whole
   */
  public record Point(String sentence, @Nullable String test) {}

  public ForAndAgainst {
    forIt = List.copyOf(forIt);
    against = List.copyOf(against);
  }

  public static ForAndAgainst of(Edition edition, ProductVerdict product) {
    List<Point> forIt = new ArrayList<>();
    List<Point> against = new ArrayList<>();
    for (Node test : product.tests()) {
      BigDecimal median = median(edition, test.id());
      if (median != null) {
        compare(test, median, forIt, against);
      }
    }
    for (GateOutcome gate : product.gates()) {
      if (gate.state() == GateOutcome.State.FIRED || gate.state() == GateOutcome.State.NOT_SHOWN) {
        against.add(new Point(GateWords.sentence(edition, gate), gate.test()));
      }
    }
    return new ForAndAgainst(forIt, against);
  }

  private static void compare(
      Node test, BigDecimal median, List<Point> forIt, List<Point> against) {
    Score score = test.score();
    String middle = "; middle of the field " + Scores.digits(median);
    switch (score.known()) {
      case CANNOT_DO -> against.add(new Point(test.name() + ": cannot do it", test.id()));
      case INTERVAL, AT_MOST, AT_LEAST -> {
        if (score.low() != null && score.low().compareTo(median) > 0) {
          forIt.add(new Point(sentence(test) + middle, test.id()));
        } else if (score.high() != null && score.high().compareTo(median) < 0) {
          against.add(new Point(sentence(test) + middle, test.id()));
        } else if (score.known() == Score.Known.AT_MOST) {
          against.add(new Point(sentence(test) + ", a run ended at its cap", test.id()));
        }
      }
      default -> {
        // Without an interval nothing is claimed.
      }
    }
  }

  private static String sentence(Node test) {
    return test.name()
        + ": "
        + Scores.words(test.score())
        + " ("
        + Scores.interval(test.score())
        + ")";
  }

  /** Middle score of the field in a test; null with fewer than three products. */
  private static @Nullable BigDecimal median(Edition edition, String test) {
    List<BigDecimal> values =
        edition.verdict().products().stream()
            .flatMap(p -> p.test(test).stream())
            .map(n -> n.score().value())
            .filter(Objects::nonNull)
            .sorted()
            .toList();
    if (values.size() < 3) {
      return null;
    }
    BigDecimal upper = values.get(values.size() / 2);
    BigDecimal lower = values.get((values.size() - 1) / 2);
    return upper.add(lower).divide(BigDecimal.valueOf(2));
  }

  /** What the section says, in a line. */
  public String heading() {
    if (forIt.isEmpty() && against.isEmpty()) {
      return "Nothing sets it apart";
    }
    return Words.capital(
        Words.count(forIt.size(), "point for it", "points for it")
            + ", "
            + Words.number(against.size())
            + " against");
  }
}
