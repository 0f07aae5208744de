package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Interval;

/**
 * One criterion of one product, ready to be scored and drawn.
 *
 * @param low unrounded score at the lower bound; NaN when not asked
 * @param lowCurve score as a function of the error at the lower bound; null when no error moves it
 * @param highCurve the same object as {@code lowCurve} when there is one score only
 * @param interval 90 % interval; null when the deviation between runs is unknown
 * @param turns whether the curve turns inside the measurement's interval
 */
record Leaf(
    Criterion criterion,
    NodeScore.State state,
    double low,
    double high,
    @Nullable ShiftedCurve lowCurve,
    @Nullable ShiftedCurve highCurve,
    @Nullable Interval interval,
    @Nullable String note,
    Turn turns) {

  /** Whether the measurement lies on a peak or valley of its curve. */
  enum Turn {
    TURNS,
    PLAIN
  }

  boolean asked() {
    return state != NodeScore.State.NOT_ASKED;
  }

  /** Standard error of the score; NaN without an interval. */
  double standardError() {
    return interval == null ? Double.NaN : interval.width() / (2 * 1.6448536269514722);
  }

  static Leaf of(Criterion criterion, Answer answer, MeanError error, Interval spread) {
    if (answer instanceof Answer.Measured measured) {
      return measured(criterion, measured, error, spread);
    }
    if (answer instanceof Answer.CannotDo cannot) {
      double score = criterion.cannotDo();
      return fixed(
          criterion, NodeScore.State.CANNOT_DO, score, score, "cannot do: " + cannot.reason());
    }
    if (answer instanceof Answer.NotAsked notAsked) {
      return criterion.notAsked() == Criterion.NotAsked.REWEIGHT
          ? new Leaf(
              criterion,
              NodeScore.State.NOT_ASKED,
              Double.NaN,
              Double.NaN,
              null,
              null,
              null,
              "not asked: " + notAsked.reason(),
              Turn.PLAIN)
          : fixed(
              criterion,
              NodeScore.State.MISSING,
              0,
              ValueCurve.BEST,
              "not asked, and the method does not reweight it: " + notAsked.reason());
    }
    String why = answer instanceof Answer.Missing missing ? missing.reason() : "missing";
    return fixed(criterion, NodeScore.State.MISSING, 0, ValueCurve.BEST, "missing: " + why);
  }

  private static Leaf fixed(
      Criterion criterion, NodeScore.State state, double low, double high, String note) {
    return new Leaf(
        criterion, state, low, high, null, null, new Interval(low, high), note, Turn.PLAIN);
  }

  private static Leaf measured(
      Criterion criterion, Answer.Measured measured, MeanError error, Interval spread) {
    double[] worst = representatives(criterion, measured.observations(), Bound.LOW);
    double[] best = representatives(criterion, measured.observations(), Bound.HIGH);
    double low = score(criterion.curve(), worst);
    double high = score(criterion.curve(), best);
    boolean censored = measured.observations().stream().anyMatch(Observation::censored);
    ShiftedCurve lowCurve = new ShiftedCurve(criterion.curve(), worst);
    ShiftedCurve highCurve = censored ? new ShiftedCurve(criterion.curve(), best) : lowCurve;
    Interval interval = null;
    Turn turn = Turn.PLAIN;
    if (error.known()) {
      double half = error.combined().halfWidth(0.90);
      Interval lower = image(criterion, worst, lowCurve, half, error, spread);
      Interval upper = censored ? image(criterion, best, highCurve, half, error, spread) : lower;
      interval =
          new Interval(
              Math.min(low, Math.min(lower.low(), upper.low())),
              Math.max(high, Math.max(lower.high(), upper.high())));
      double mean = Descriptive.of(worst).mean();
      turn = criterion.curve().turnsWithin(mean - half, mean + half) ? Turn.TURNS : Turn.PLAIN;
    }
    return new Leaf(
        criterion,
        low < high ? NodeScore.State.BOUNDED : NodeScore.State.SCORED,
        low,
        high,
        lowCurve,
        highCurve,
        interval,
        note(censored, error),
        turn);
  }

  private static @Nullable String note(boolean censored, MeanError error) {
    if (!error.known()) {
      return "one run: no interval, because neither the field nor the method says how runs differ";
    }
    return censored ? "censored: some runs are known only as above, below or between" : null;
  }

  /** Which bound of what is not known exactly. */
  enum Bound {
    LOW,
    HIGH
  }

  /**
   * The values that give the lowest or highest score. Where runs are averaged first, the mean moves
   * between its own bounds as a whole and is one value.
   */
  private static double[] representatives(
      Criterion criterion, List<Observation> observations, Bound bound) {
    ValueCurve curve = criterion.curve();
    if (criterion.runs() == RunAggregation.AVERAGE_THEN_SCORE) {
      double low = observations.stream().mapToDouble(Observation::low).average().orElseThrow();
      double high = observations.stream().mapToDouble(Observation::high).average().orElseThrow();
      boolean exact = observations.stream().noneMatch(Observation::censored);
      double mean =
          exact
              ? Descriptive.of(observations.stream().mapToDouble(Observation::low).toArray()).mean()
              : extreme(curve, low, high, bound);
      return new double[] {mean};
    }
    List<Double> values = new ArrayList<>();
    for (Observation o : observations) {
      values.add(o.censored() ? extreme(curve, o.low(), o.high(), bound) : o.low());
    }
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double extreme(ValueCurve curve, double low, double high, Bound bound) {
    return bound == Bound.LOW ? curve.worst(low, high) : curve.best(low, high);
  }

  private static double score(ValueCurve curve, double[] values) {
    double[] scores = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      scores[i] = curve.score(values[i]);
    }
    return Descriptive.of(scores).mean();
  }

  /**
   * Image of the measurement's interval. Where runs are scored first, the score estimates the mean
   * score of many runs; it is found for every place of the mean with a deviation between runs from
   * either end of its own 90 % interval, so that the accident of three values that lie close
   * together does not pass for certainty.
   */
  private static Interval image(
      Criterion criterion,
      double[] values,
      ShiftedCurve curve,
      double half,
      MeanError error,
      Interval spread) {
    boolean averaged = criterion.runs() == RunAggregation.AVERAGE_THEN_SCORE;
    if (averaged || values.length == 1 || error.run() == 0) {
      return curve.image(-half, half);
    }
    double mean = Descriptive.of(values).mean();
    Interval calm = criterion.curve().expectedImage(mean - half, mean + half, spread.low());
    Interval wild = criterion.curve().expectedImage(mean - half, mean + half, spread.high());
    return new Interval(Math.min(calm.low(), wild.low()), Math.max(calm.high(), wild.high()));
  }
}
