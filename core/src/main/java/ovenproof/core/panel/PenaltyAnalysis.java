package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;
import ovenproof.core.statistics.WilsonInterval;

/**
 * What it costs to be too much or too little: just-about-right marks beside liking. The penalty is
 * the mean liking of those who said "just right" minus that of those who said "too much" (or "too
 * little"). Common practice: act when at least 20 % say so and the drop is at least 1 point of
 * nine; and ask at least 30 people, because 20 % of twelve are two.
 *
 * @param product of which product
 * @param attribute the just-about-right attribute
 * @param side too little or too much
 * @param count how many said so
 * @param answers how many answered both questions
 * @param share 95 % interval of the share that says so
 * @param drop mean liking of "just right" minus mean liking of this side; NaN when one side is
 *     empty
 * @param p Welch's test of the drop, two-sided; NaN when a side has fewer than two marks
 * @param finding what to make of it
 */
public record PenaltyAnalysis(
    String product,
    String attribute,
    Side side,
    int count,
    int answers,
    Interval share,
    double drop,
    double p,
    Finding finding) {

  public static final int FEWEST_PEOPLE = 30;
  public static final double ACTION_SHARE = 0.2;
  public static final double ACTION_DROP = 1;

  /** Which way a product missed. */
  public enum Side {
    TOO_LITTLE,
    TOO_MUCH
  }

  /** What a penalty says. */
  public enum Finding {
    /** Fewer than 30 people: shares of so few are not worth acting on. */
    TOO_FEW_PEOPLE,
    ACT,
    NO_CASE
  }

  /** One person's pair of marks. */
  public record Answer(double justRight, double liking) {}

  /**
   * @param middle the mark that means just right, e.g. 3 of 5
   * @return too little and too much; empty without answers
   */
  public static List<PenaltyAnalysis> of(
      String product, String attribute, List<Answer> answers, double middle) {
    List<PenaltyAnalysis> result = new ArrayList<>();
    if (!answers.isEmpty()) {
      for (Side side : Side.values()) {
        result.add(of(product, attribute, answers, middle, side));
      }
    }
    return result;
  }

  /**
   * Every attribute named "just about right", "just right" or "JAR" beside the attribute of liking,
   * product by product. The middle is that of the usual scales: 3 of 5, 4 of 7, 2 of 3, 0 of −2 …
   * 2.
   *
   * @return empty when the ratings hold no such pair
   */
  public static List<PenaltyAnalysis> ofRatings(List<Rating> ratings) {
    Map<String, Map<String, Map<String, Double>>> byAttribute = new LinkedHashMap<>();
    for (Rating r : ratings) {
      byAttribute
          .computeIfAbsent(r.attribute(), any -> new LinkedHashMap<>())
          .computeIfAbsent(r.product(), any -> new LinkedHashMap<>())
          .put(r.assessor() + "\u0000" + r.session() + "\u0000" + r.batch(), r.value());
    }
    List<PenaltyAnalysis> result = new ArrayList<>();
    String liking =
        byAttribute.keySet().stream()
            .filter(a -> isLiking(a) && !isJustRight(a))
            .findFirst()
            .orElse("");
    Map<String, Map<String, Double>> likes = byAttribute.getOrDefault(liking, Map.of());
    byAttribute.forEach(
        (attribute, products) -> {
          if (isJustRight(attribute) && !likes.isEmpty()) {
            double middle = middle(products);
            products.forEach(
                (product, marks) ->
                    result.addAll(
                        of(
                            product,
                            attribute,
                            answers(marks, likes.getOrDefault(product, Map.of())),
                            middle)));
          }
        });
    return result;
  }

  private static boolean isJustRight(String attribute) {
    String folded = attribute.toLowerCase(Locale.ROOT);
    return folded.matches(".*(just (about )?right|\\bjar\\b|_jar|jar_).*");
  }

  private static boolean isLiking(String attribute) {
    return attribute.toLowerCase(Locale.ROOT).matches(".*(liking|overall|hedonic|accept|pleas).*");
  }

  private static double middle(Map<String, Map<String, Double>> products) {
    double[] all =
        products.values().stream()
            .flatMap(m -> m.values().stream())
            .mapToDouble(Double::doubleValue)
            .toArray();
    Descriptive d = Descriptive.of(all);
    if (d.minimum() < 0) {
      return 0;
    }
    return d.maximum() > 5 ? 4 : d.maximum() > 3 ? 3 : 2;
  }

  private static List<Answer> answers(Map<String, Double> marks, Map<String, Double> likes) {
    List<Answer> answers = new ArrayList<>();
    marks.forEach(
        (who, mark) -> {
          Double liking = likes.get(who);
          if (liking != null) {
            answers.add(new Answer(mark, liking));
          }
        });
    return answers;
  }

  private static PenaltyAnalysis of(
      String product, String attribute, List<Answer> answers, double middle, Side side) {
    double[] right = liking(answers.stream().filter(a -> a.justRight == middle).toList());
    double[] off = liking(answers.stream().filter(a -> isOff(a, middle, side)).toList());
    double drop =
        right.length == 0 || off.length == 0
            ? Double.NaN
            : Descriptive.of(right).mean() - Descriptive.of(off).mean();
    Interval share = WilsonInterval.of(off.length, answers.size(), 0.95);
    boolean act = off.length >= ACTION_SHARE * answers.size() && drop >= ACTION_DROP;
    Finding finding =
        answers.size() < FEWEST_PEOPLE
            ? Finding.TOO_FEW_PEOPLE
            : act ? Finding.ACT : Finding.NO_CASE;
    return new PenaltyAnalysis(
        product,
        attribute,
        side,
        off.length,
        answers.size(),
        share,
        drop,
        welch(right, off),
        finding);
  }

  private static boolean isOff(Answer answer, double middle, Side side) {
    return side == Side.TOO_LITTLE ? answer.justRight < middle : answer.justRight > middle;
  }

  private static double[] liking(List<Answer> answers) {
    return answers.stream().mapToDouble(Answer::liking).toArray();
  }

  private static double welch(double[] a, double[] b) {
    if (a.length < 2 || b.length < 2) {
      return Double.NaN;
    }
    Descriptive first = Descriptive.of(a);
    Descriptive second = Descriptive.of(b);
    double va = first.standardError() * first.standardError();
    double vb = second.standardError() * second.standardError();
    if (va + vb == 0) {
      return Double.NaN;
    }
    double degrees = (va + vb) * (va + vb) / (va * va / (a.length - 1) + vb * vb / (b.length - 1));
    return Distributions.studentTwoSided(
        (first.mean() - second.mean()) / Math.sqrt(va + vb), degrees);
  }
}
