package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;

/**
 * Two questions about batches baked back to back: is the last one different from the first, and is
 * the cold place of the first still cold in the last?
 *
 * <p>The run is the unit: each gives one difference over the places that both batches share, and
 * the differences are tested by Student's t over runs. The cold place is chosen on the first
 * batches and judged on the last ones alone, so that choosing does not flatter the answer.
 */
public final class SecondBatch {

  private static final double CONFIDENCE = 0.90;

  private SecondBatch() {}

  /** Mean lightness of one place in both batches of one run. */
  public record Pair(String run, Position position, double first, double last) {}

  /**
   * An answer.
   *
   * @param estimate L*
   * @param interval 90 %; null with fewer than two runs or without any scatter
   * @param p two-sided; null likewise
   * @param runs how many runs speak
   */
  public record Answer(
      double estimate, @Nullable Interval interval, @Nullable Double p, int runs) {}

  /**
   * Both answers.
   *
   * @param change last − first, positive when the last is paler
   * @param coldPlace the palest place of the first batches; null with fewer than two places
   * @param coldInFirst by how much it was paler than its tray there; null likewise
   * @param coldInLast the same in the last batches; null likewise
   */
  public record Result(
      Answer change,
      @Nullable Position coldPlace,
      @Nullable Double coldInFirst,
      @Nullable Answer coldInLast) {}

  /**
   * Answers both.
   *
   * @param pairs at least one; places that a run lacks in one batch are left out beforehand
   */
  public static Result of(List<Pair> pairs) {
    if (pairs.isEmpty()) {
      throw new IllegalArgumentException("at least one pair is needed");
    }
    Map<String, List<Pair>> byRun = new TreeMap<>();
    pairs.forEach(p -> byRun.computeIfAbsent(p.run(), r -> new ArrayList<>()).add(p));
    Answer change =
        answer(
            byRun.values().stream()
                .mapToDouble(
                    r -> r.stream().mapToDouble(p -> p.last() - p.first()).average().orElseThrow())
                .toArray());
    Position cold = palest(byRun);
    if (cold == null) {
      return new Result(change, null, null, null);
    }
    double[] first = paler(byRun, cold, Which.FIRST);
    double[] last = paler(byRun, cold, Which.LAST);
    double mean = java.util.Arrays.stream(first).average().orElseThrow();
    return new Result(change, cold, mean, answer(last));
  }

  private enum Which {
    FIRST,
    LAST
  }

  private static double value(Pair pair, Which which) {
    return which == Which.FIRST ? pair.first() : pair.last();
  }

  /** How much paler a place is than the other places of its tray, by run. */
  private static double[] paler(Map<String, List<Pair>> byRun, Position place, Which which) {
    return byRun.values().stream()
        .filter(r -> r.size() > 1 && r.stream().anyMatch(p -> p.position().equals(place)))
        .mapToDouble(
            r -> {
              double here =
                  r.stream()
                      .filter(p -> p.position().equals(place))
                      .mapToDouble(p -> value(p, which))
                      .average()
                      .orElseThrow();
              double others =
                  r.stream()
                      .filter(p -> !p.position().equals(place))
                      .mapToDouble(p -> value(p, which))
                      .average()
                      .orElse(here);
              return here - others;
            })
        .toArray();
  }

  private static @Nullable Position palest(Map<String, List<Pair>> byRun) {
    Map<Position, Double> means = new LinkedHashMap<>();
    byRun.values().stream()
        .flatMap(List::stream)
        .map(Pair::position)
        .distinct()
        .forEach(
            place -> {
              double[] paler = paler(byRun, place, Which.FIRST);
              if (paler.length > 0) {
                means.put(place, java.util.Arrays.stream(paler).average().orElseThrow());
              }
            });
    return means.size() < 2
        ? null
        : means.entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse(null);
  }

  private static Answer answer(double[] values) {
    int n = values.length;
    double mean = java.util.Arrays.stream(values).average().orElse(0);
    if (n < 2) {
      return new Answer(mean, null, null, n);
    }
    double squares = java.util.Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    double error = Math.sqrt(squares / (n - 1) / n);
    if (error == 0) {
      return new Answer(mean, null, null, n);
    }
    double half = Distributions.studentQuantile(0.5 + CONFIDENCE / 2, n - 1) * error;
    double p = Distributions.studentTwoSided(Math.abs(mean) / error, n - 1);
    return new Answer(mean, new Interval(mean - half, mean + half), p, n);
  }
}
