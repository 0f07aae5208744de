package ovenproof.verdict;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.scoring.Answer;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.Observation;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.statistics.Interval;
import ovenproof.verdict.Verdict.Score;
import ovenproof.verdict.Verdict.Score.Known;

/** From computed scores to scores as shown: digits, and what they mean. */
final class ShownScores {
  private final ScoringCase scoringCase;

  ShownScores(ScoringCase scoringCase) {
    this.scoringCase = scoringCase;
  }

  Score of(NodeScore node, Candidate product) {
    Known known = known(node, product);
    BigDecimal value =
        switch (known) {
          case BOUNDS, NOT_ASKED, NONE -> null;
          case AT_MOST -> node.displayedHigh();
          default -> node.displayedLow();
        };
    return new Score(
        value,
        end(node, node.displayedLow(), BigDecimal::min),
        end(node, node.displayedHigh(), BigDecimal::max),
        known,
        Double.isNaN(node.standardError()) ? null : node.standardError(),
        node.note());
  }

  private Known known(NodeScore node, Candidate product) {
    if (node.state() == NodeScore.State.NOT_ASKED) {
      return Known.NOT_ASKED;
    }
    if (!node.scored()) {
      return Known.NONE;
    }
    if (node.bounded()) {
      return bound(node, product);
    }
    if (node.state() == NodeScore.State.CANNOT_DO) {
      return Known.CANNOT_DO;
    }
    return node.interval() == null ? Known.VALUE_ONLY : Known.INTERVAL;
  }

  /** One-sided when every part that is open is open to the same side. */
  private Known bound(NodeScore node, Candidate product) {
    if (node.children().isEmpty()) {
      return criterionBound(node, product);
    }
    List<Known> open =
        node.children().stream()
            .filter(c -> c.share() > 0 && c.low() < c.high())
            .map(c -> bound(c, product))
            .distinct()
            .toList();
    return open.size() == 1 ? open.get(0) : Known.BOUNDS;
  }

  private Known criterionBound(NodeScore node, Candidate product) {
    boolean measured =
        scoringCase.node(node.id()).orElseThrow() instanceof Criterion criterion
            && product.answer(criterion.variable()) instanceof Answer.Measured;
    if (!measured) {
      return Known.BOUNDS;
    }
    Criterion criterion = (Criterion) scoringCase.node(node.id()).orElseThrow();
    Answer.Measured answer = (Answer.Measured) product.answer(criterion.variable());
    List<Known> sides =
        answer.observations().stream()
            .filter(Observation::censored)
            .map(o -> side(criterion.curve(), o))
            .distinct()
            .toList();
    return sides.size() == 1 ? sides.get(0) : Known.BOUNDS;
  }

  private static Known side(ValueCurve curve, Observation observation) {
    boolean above = Double.isInfinite(observation.high());
    boolean below = Double.isInfinite(observation.low());
    if (above == below) {
      return Known.BOUNDS;
    }
    Interval image = curve.image(observation.low(), observation.high());
    double atTheBound = curve.score(above ? observation.low() : observation.high());
    if (atTheBound == image.high()) {
      return Known.AT_MOST;
    }
    return atTheBound == image.low() ? Known.AT_LEAST : Known.BOUNDS;
  }

  /** An end of the interval, or of the bounds where there is none, never inside the score. */
  private @Nullable BigDecimal end(
      NodeScore node,
      @Nullable BigDecimal shown,
      java.util.function.BinaryOperator<BigDecimal> outer) {
    Interval interval = node.interval();
    if (shown == null) {
      return null;
    }
    if (interval == null) {
      return node.bounded() ? shown : null;
    }
    boolean low = outer.apply(BigDecimal.ZERO, BigDecimal.ONE).signum() == 0;
    double end = low ? interval.low() : interval.high();
    return outer.apply(Rounding.HALF_UP.apply(end, scoringCase.rules().decimals()), shown);
  }
}
