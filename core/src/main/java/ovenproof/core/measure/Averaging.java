package ovenproof.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One value from several of the same measure: pieces of a batch, batches and faces of a run, runs
 * of a product.
 *
 * <p>Components of one shared source are added with their signs before they are squared, because
 * one calibration moves all values together; components of the run are independent and shrink with
 * √n. Missing values are left out and counted in the note; a censored value makes the result
 * censored.
 */
public final class Averaging {

  private Averaging() {}

  /**
   * Arithmetic mean. Keeps n = 1: however many pieces, one run is one observation.
   *
   * @param parts at least one; all missing gives a missing mean with the first reason
   */
  public static Measurement mean(List<Measurement> parts, Subject subject) {
    List<Measurement> present = present(parts);
    if (present.isEmpty()) {
      return allMissing(parts, subject);
    }
    double[] weights = new double[present.size()];
    java.util.Arrays.fill(weights, 1.0 / present.size());
    return combine(present, weights, subject, parts.size() - present.size());
  }

  /**
   * Mean over runs that scatter about their product's own value. The deviation between runs holds
   * what each run's reading adds of its own, so s/√n takes the place of those parts; what runs
   * share stays. n is the number of runs.
   *
   * @param runs at least one; missing ones are left out and counted in the note
   * @param deviationBetweenRuns s &gt; 0 in the unit of the values
   * @return bounds when a run is censored: s says nothing of those
   */
  public static Measurement ofRuns(
      List<Measurement> runs, Subject subject, double deviationBetweenRuns) {
    if (!(deviationBetweenRuns > 0 && deviationBetweenRuns < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "deviationBetweenRuns must be above 0, found " + deviationBetweenRuns);
    }
    Measurement mean = mean(runs, subject);
    int n = present(runs).size();
    if (mean.value() == null) {
      return mean.withN(n);
    }
    List<Component> components =
        new ArrayList<>(mean.components().stream().filter(Component::isShared).toList());
    components.add(Component.run(deviationBetweenRuns / Math.sqrt(n)));
    return mean.withComponents(components).withN(n);
  }

  /**
   * Mean of {@code later} minus mean of {@code earlier}; what both share cancels.
   *
   * @return missing when either side is
   */
  public static Measurement difference(
      List<Measurement> later, List<Measurement> earlier, Subject subject) {
    List<Measurement> plus = present(later);
    List<Measurement> minus = present(earlier);
    if (plus.isEmpty() || minus.isEmpty()) {
      return allMissing(plus.isEmpty() ? later : earlier, subject);
    }
    List<Measurement> all = new ArrayList<>(plus);
    all.addAll(minus);
    double[] weights = new double[all.size()];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = i < plus.size() ? 1.0 / plus.size() : -1.0 / minus.size();
    }
    return combine(all, weights, subject, later.size() + earlier.size() - all.size());
  }

  /** The part with the largest value (or upper bound); missing parts are left out. */
  public static Measurement largest(List<Measurement> parts, Subject subject) {
    return extreme(parts, subject, 1);
  }

  /** The part with the smallest value (or lower bound); missing parts are left out. */
  public static Measurement smallest(List<Measurement> parts, Subject subject) {
    return extreme(parts, subject, -1);
  }

  /**
   * Standard deviation (n − 1) between the parts; missing with fewer than two or with a censored
   * one. Its relative standard uncertainty is 1/√(2(n − 1)), from normal theory.
   */
  public static Measurement spread(List<Measurement> parts, Subject subject) {
    List<Measurement> present = present(parts);
    if (present.size() < 2) {
      return parts.get(0).unknownFor(subject, "a spread needs at least two values");
    }
    double sum = 0;
    for (Measurement part : present) {
      if (part.value() == null) {
        return part.unknownFor(subject, "a value is only known within bounds");
      }
      sum += part.value();
    }
    double mean = sum / present.size();
    double squares = 0;
    for (Measurement part : present) {
      double off = value(part) - mean;
      squares += off * off;
    }
    double deviation = Math.sqrt(squares / (present.size() - 1));
    double u = deviation / Math.sqrt(2.0 * (present.size() - 1));
    return exact(present, subject, deviation, List.of(Component.run(u)), 0);
  }

  private static List<Measurement> present(List<Measurement> parts) {
    return parts.stream().filter(p -> !p.isMissing()).toList();
  }

  private static Measurement combine(
      List<Measurement> parts, double[] weights, Subject subject, int left) {
    Optional<Measurement> censored =
        parts.stream().filter(p -> p.censored() != Censoring.NONE).findFirst();
    if (censored.isPresent()) {
      return bounds(parts, weights, subject);
    }
    double value = 0;
    for (int i = 0; i < weights.length; i++) {
      value += weights[i] * value(parts.get(i));
    }
    return exact(parts, subject, value, components(parts, weights), left);
  }

  private static List<Component> components(List<Measurement> parts, double[] weights) {
    Map<String, Double> shared = new LinkedHashMap<>();
    double runSquares = 0;
    boolean any = false;
    for (int i = 0; i < weights.length; i++) {
      for (Component component : parts.get(i).components()) {
        any = true;
        double u = weights[i] * component.u();
        if (component.isShared()) {
          shared.merge(component.source(), u, Double::sum);
        } else {
          runSquares += u * u;
        }
      }
    }
    List<Component> result = new ArrayList<>();
    shared.forEach((source, u) -> result.add(Component.shared(source, u)));
    if (any) {
      result.add(Component.run(Math.sqrt(runSquares)));
    }
    return result;
  }

  private static Measurement bounds(List<Measurement> parts, double[] weights, Subject subject) {
    Double low = 0.0;
    Double high = 0.0;
    for (int i = 0; i < weights.length; i++) {
      Measurement part = parts.get(i);
      Double partLow = part.value() != null ? part.value() : part.low();
      Double partHigh = part.value() != null ? part.value() : part.high();
      low = plus(low, weights[i], weights[i] > 0 ? partLow : partHigh);
      high = plus(high, weights[i], weights[i] > 0 ? partHigh : partLow);
    }
    Measurement first = parts.get(0);
    if (low == null && high == null) {
      return first.unknownFor(subject, "known within no bounds: parts are censored on both sides");
    }
    Censoring censoring =
        high == null ? Censoring.ABOVE : low == null ? Censoring.BELOW : Censoring.BETWEEN;
    return new Measurement(
        first.id(),
        first.label(),
        subject,
        null,
        first.unit(),
        null,
        List.of(),
        1,
        censoring,
        low,
        high,
        first.definition(),
        first.revision(),
        noteOf(parts),
        evidence(parts));
  }

  private static @Nullable Double plus(
      @Nullable Double sum, double weight, @Nullable Double bound) {
    return sum == null || bound == null ? null : sum + weight * bound;
  }

  private static Measurement extreme(List<Measurement> parts, Subject subject, int sign) {
    List<Measurement> present = present(parts);
    if (present.isEmpty()) {
      return allMissing(parts, subject);
    }
    Measurement best = present.get(0);
    for (Measurement part : present) {
      if (sign * Double.compare(edge(part, sign), edge(best, sign)) > 0) {
        best = part;
      }
    }
    String at = best.subject().toString();
    return best.withSubject(subject)
        .withNote(best.note() == null ? "at " + at : best.note() + "; at " + at)
        .withEvidence(evidence(parts));
  }

  /** For the largest a part open above wins; for the smallest one open below. */
  private static double edge(Measurement part, int sign) {
    if (part.value() != null) {
      return part.value();
    }
    Double bound = sign > 0 ? part.high() : part.low();
    return bound == null ? sign * Double.POSITIVE_INFINITY : bound;
  }

  private static Measurement exact(
      List<Measurement> parts,
      Subject subject,
      double value,
      List<Component> components,
      int left) {
    Measurement first = parts.get(0);
    String note =
        left == 0 ? noteOf(parts) : left + " of " + (parts.size() + left) + " not measured";
    Measurement result =
        new Measurement(
            first.id(),
            first.label(),
            subject,
            value,
            first.unit(),
            null,
            List.of(),
            1,
            Censoring.NONE,
            null,
            null,
            first.definition(),
            first.revision(),
            note,
            evidence(parts));
    return components.isEmpty() ? result : result.withComponents(components);
  }

  private static @Nullable String noteOf(List<Measurement> parts) {
    return parts.stream()
        .map(Measurement::note)
        .filter(java.util.Objects::nonNull)
        .distinct()
        .reduce((a, b) -> a + "; " + b)
        .orElse(null);
  }

  private static Measurement allMissing(List<Measurement> parts, Subject subject) {
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("parts must hold at least one measurement");
    }
    String why = noteOf(parts);
    return parts.get(0).unknownFor(subject, why == null ? "not measured" : why);
  }

  private static List<String> evidence(List<Measurement> parts) {
    return parts.stream().flatMap(p -> p.evidence().stream()).distinct().toList();
  }

  private static double value(Measurement part) {
    return java.util.Objects.requireNonNull(part.value());
  }
}
