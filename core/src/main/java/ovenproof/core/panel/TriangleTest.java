package ovenproof.core.panel;

import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;
import ovenproof.core.statistics.WilsonInterval;

/**
 * Three samples, two alike: who finds the odd one? A guess is right once in three (common practice;
 * the binomial test is exact).
 *
 * @param correct right answers
 * @param answers answers in all, each by another person or serving
 * @param p chance of so many or more by guessing alone
 * @param discriminators estimated share of people who really perceive it, 0 … 1
 * @param interval 95 % for that share (Wilson, cut at 0)
 */
public record TriangleTest(
    int correct, int answers, double p, double discriminators, Interval interval) {

  private static final double GUESS = 1.0 / 3;

  /**
   * @param correct 0 … answers
   * @param answers at least 1
   */
  public static TriangleTest of(int correct, int answers) {
    Interval share = WilsonInterval.of(correct, answers, 0.95);
    return new TriangleTest(
        correct,
        answers,
        Distributions.binomialUpperTail(correct, answers, GUESS),
        beyondGuessing(correct / (double) answers),
        new Interval(beyondGuessing(share.low()), beyondGuessing(share.high())));
  }

  /** Fewest right answers that guessing reaches with at most this chance; answers + 1 if none. */
  public static int fewestCorrect(int answers, double significance) {
    int correct = 0;
    while (correct <= answers
        && Distributions.binomialUpperTail(correct, answers, GUESS) > significance) {
      correct++;
    }
    return correct;
  }

  private static double beyondGuessing(double share) {
    return Math.max(0, (share - GUESS) / (1 - GUESS));
  }
}
