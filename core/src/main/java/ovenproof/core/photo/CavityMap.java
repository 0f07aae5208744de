package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.HolmAdjustment;
import ovenproof.core.statistics.Interval;

/**
 * Hot and cold places of a cavity, told apart from the bread: L* = position + batch + recurring
 * lineage + residual over batches whose pieces were shuffled. The piece is the residual.
 *
 * <p>Least squares with effects that sum to zero over the positions that occur; intervals by t with
 * the residual's degrees of freedom. Whether there is any pattern is one F-test over all positions;
 * whether it is corners, front or left is three contrasts, adjusted by Holm, so that of all that is
 * said about an even oven at most one in twenty is false.
 */
public final class CavityMap {

  private static final double CONFIDENCE = 0.90;
  private static final double RANK_TOLERANCE = 1e-9;

  private CavityMap() {}

  /**
   * A place in the cavity.
   *
   * @param x 0 at the left wall to 1 at the right
   * @param y 0 at the back to 1 at the front
   */
  public record Position(String id, double x, double y) {}

  /** Which way the tray lay for the photograph. */
  public enum Layout {
    AS_BAKED,
    /** Turned by 180°, so that light falling off over the frame does not look like the oven. */
    TURNED
  }

  /**
   * One measured piece.
   *
   * @param batch which load
   * @param lineage sub-lot or rank in the loaf when it recurs over batches; null when unknown
   */
  public record Observation(
      Position position, int batch, @Nullable String lineage, Layout layout, double lightness) {}

  /**
   * Lightness of a place against the mean of all places.
   *
   * @param effect L*; positive is paler
   * @param interval 90 %, for this place alone; null when it cannot be had
   */
  public record PositionEffect(Position position, double effect, @Nullable Interval interval) {}

  /**
   * A question with its answer.
   *
   * @param estimate L*; positive when the first part is paler
   * @param interval 90 %
   * @param p adjusted by Holm over the questions of its kind
   */
  public record Contrast(String question, double estimate, Interval interval, double p) {}

  /**
   * The map.
   *
   * @param effects in the order of position ids
   * @param pattern p of the F-test that all positions are alike; null when it cannot be tested
   * @param places corners against the rest, front against back, left against right
   * @param batches each later batch against the first
   * @param pieceSd residual standard deviation: what pieces differ by; null without degrees of
   *     freedom
   * @param degreesOfFreedom of the residual
   * @param notes what the data cannot say
   */
  public record Result(
      List<PositionEffect> effects,
      @Nullable Double pattern,
      List<Contrast> places,
      List<Contrast> batches,
      @Nullable Double pieceSd,
      int degreesOfFreedom,
      List<String> notes) {}

  /**
   * Fits the map.
   *
   * @param observations at least two positions; an observation per piece
   * @throws IllegalArgumentException with fewer than two positions
   */
  public static Result fit(List<Observation> observations) {
    Design design = new Design(observations);
    if (design.positions.size() < 2) {
      throw new IllegalArgumentException(
          "at least two positions are needed, found " + design.positions.size());
    }
    return design.solve();
  }

  /** Columns: positions less one, then mean, batches less one, lineages less one. */
  private static final class Design {

    private final List<Observation> observations;
    private final List<Position> positions;
    private final List<Integer> batches;
    private final List<String> lineages;
    private final List<String> notes = new ArrayList<>();

    Design(List<Observation> observations) {
      this.observations = List.copyOf(observations);
      Map<String, Position> byId = new TreeMap<>();
      TreeSet<Integer> batchSet = new TreeSet<>();
      for (Observation o : observations) {
        byId.put(o.position().id(), o.position());
        batchSet.add(o.batch());
      }
      this.positions = List.copyOf(byId.values());
      this.batches = List.copyOf(batchSet);
      this.lineages = recurring();
      note();
    }

    /** Lineages seen in at least two batches, when every piece has one. */
    private List<String> recurring() {
      Map<String, TreeSet<Integer>> seen = new TreeMap<>();
      for (Observation o : observations) {
        if (o.lineage() == null) {
          return List.of();
        }
        seen.computeIfAbsent(o.lineage(), k -> new TreeSet<>()).add(o.batch());
      }
      boolean recur = seen.values().stream().allMatch(b -> b.size() >= 2);
      return recur && seen.size() >= 2 ? List.copyOf(seen.keySet()) : List.of();
    }

    private void note() {
      if (batches.size() == 1) {
        notes.add(
            "one tray cannot separate the piece from the oven: bake at least three batches with"
                + " the pieces shuffled");
      } else if (batches.size() == 2) {
        notes.add("two batches: three or more make the intervals far shorter");
      }
      long layouts = observations.stream().map(Observation::layout).distinct().count();
      if (layouts == 1 && batches.size() > 1) {
        notes.add(
            "every tray was photographed the same way round: light falling off over the frame"
                + " would look like the oven; turn half of them by 180°");
      }
    }

    Result solve() {
      double[][] x = rows(lineages);
      RealMatrix matrix = new Array2DRowRealMatrix(x, false);
      SingularValueDecomposition svd = new SingularValueDecomposition(matrix);
      int rank = rank(svd);
      int columns = x[0].length;
      if (rank < columns && !lineages.isEmpty()) {
        notes.add("lineage and position cannot be told apart in this plan: lineage was left out");
        x = rows(List.of());
        matrix = new Array2DRowRealMatrix(x, false);
        svd = new SingularValueDecomposition(matrix);
        rank = rank(svd);
        columns = x[0].length;
      }
      if (rank < columns) {
        notes.add("batches share too few positions to be compared");
      }
      double[] y = observations.stream().mapToDouble(Observation::lightness).toArray();
      double[] b = svd.getSolver().solve(new org.hipparchus.linear.ArrayRealVector(y)).toArray();
      int degrees = y.length - rank;
      double residual = residual(x, y, b);
      double variance = degrees > 0 ? residual / degrees : Double.NaN;
      return report(new Fit(matrix, svd, b, residual, variance, degrees, rank == columns), y);
    }

    private static int rank(SingularValueDecomposition svd) {
      double[] s = svd.getSingularValues();
      return (int) Arrays.stream(s).filter(v -> v > RANK_TOLERANCE * s[0]).count();
    }

    private double[][] rows(List<String> withLineages) {
      int p = positions.size() - 1;
      int q = batches.size() - 1;
      int r = Math.max(0, withLineages.size() - 1);
      double[][] rows = new double[observations.size()][p + 1 + q + r];
      for (int i = 0; i < rows.length; i++) {
        Observation o = observations.get(i);
        sumToZero(rows[i], 0, p, indexOf(o.position().id()));
        rows[i][p] = 1;
        int batch = batches.indexOf(o.batch());
        if (batch > 0) {
          rows[i][p + batch] = 1;
        }
        if (r > 0) {
          sumToZero(rows[i], p + 1 + q, r, withLineages.indexOf(o.lineage()));
        }
      }
      return rows;
    }

    private int indexOf(String id) {
      for (int i = 0; i < positions.size(); i++) {
        if (positions.get(i).id().equals(id)) {
          return i;
        }
      }
      throw new IllegalStateException(id);
    }

    private static void sumToZero(double[] row, int from, int count, int level) {
      for (int k = 0; k < count; k++) {
        row[from + k] = level == count ? -1 : level == k ? 1 : 0;
      }
    }

    private static double residual(double[][] x, double[] y, double[] b) {
      double sum = 0;
      for (int i = 0; i < y.length; i++) {
        double fitted = 0;
        for (int k = 0; k < b.length; k++) {
          fitted += x[i][k] * b[k];
        }
        sum += (y[i] - fitted) * (y[i] - fitted);
      }
      return sum;
    }

    private Result report(Fit fit, double[] y) {
      List<PositionEffect> effects = new ArrayList<>();
      for (int i = 0; i < positions.size(); i++) {
        double[] c = new double[fit.b.length];
        sumToZero(c, 0, positions.size() - 1, i);
        effects.add(new PositionEffect(positions.get(i), fit.value(c), fit.interval(c)));
      }
      List<Contrast> places = fit.usable() ? placeContrasts(fit) : List.of();
      List<Contrast> later = fit.usable() ? batchContrasts(fit) : List.of();
      return new Result(
          effects,
          fit.usable() ? pattern(fit, y) : null,
          places,
          later,
          fit.degrees > 0 ? (Double) Math.sqrt(fit.variance) : null,
          fit.degrees,
          List.copyOf(notes));
    }

    /** F-test against the model without positions. */
    private double pattern(Fit fit, double[] y) {
      int p = positions.size() - 1;
      double[][] full = fit.x.getData();
      double[][] less = new double[full.length][];
      for (int i = 0; i < full.length; i++) {
        less[i] = Arrays.copyOfRange(full[i], p, full[i].length);
      }
      double[] b =
          new SingularValueDecomposition(new Array2DRowRealMatrix(less, false))
              .getSolver()
              .solve(new org.hipparchus.linear.ArrayRealVector(y))
              .toArray();
      double without = residual(less, y, b);
      double f = (without - fit.residual) / p / fit.variance;
      return Distributions.fUpperTail(Math.max(0, f), p, fit.degrees);
    }

    private List<Contrast> placeContrasts(Fit fit) {
      List<Contrast> raw = new ArrayList<>();
      addPlace(raw, fit, "corners against the rest", CavitySides.cornersAgainstRest(positions));
      addPlace(raw, fit, "front against back", CavitySides.frontAgainstBack(positions));
      addPlace(raw, fit, "left against right", CavitySides.leftAgainstRight(positions));
      return adjusted(raw);
    }

    private void addPlace(
        List<Contrast> out,
        Fit fit,
        String question,
        java.util.function.ToIntFunction<Position> side) {
      int[] sides = positions.stream().mapToInt(side).toArray();
      long first = Arrays.stream(sides).filter(s -> s > 0).count();
      long second = Arrays.stream(sides).filter(s -> s < 0).count();
      if (first == 0 || second == 0) {
        return;
      }
      double[] c = new double[fit.b.length];
      for (int i = 0; i < sides.length; i++) {
        double[] one = new double[fit.b.length];
        sumToZero(one, 0, positions.size() - 1, i);
        double weight = sides[i] > 0 ? 1.0 / first : sides[i] < 0 ? -1.0 / second : 0;
        for (int k = 0; k < c.length; k++) {
          c[k] += weight * one[k];
        }
      }
      out.add(fit.contrast(question, c));
    }

    private List<Contrast> batchContrasts(Fit fit) {
      List<Contrast> raw = new ArrayList<>();
      for (int k = 1; k < batches.size(); k++) {
        double[] c = new double[fit.b.length];
        c[positions.size() - 1 + k] = 1;
        raw.add(fit.contrast("batch " + batches.get(k) + " against batch " + batches.get(0), c));
      }
      return adjusted(raw);
    }

    private static List<Contrast> adjusted(List<Contrast> raw) {
      double[] p = HolmAdjustment.adjust(raw.stream().mapToDouble(Contrast::p).toArray());
      List<Contrast> out = new ArrayList<>();
      for (int i = 0; i < p.length; i++) {
        Contrast c = raw.get(i);
        out.add(new Contrast(c.question(), c.estimate(), c.interval(), p[i]));
      }
      return out;
    }
  }

  /** A fitted model. */
  private static final class Fit {

    private final RealMatrix x;
    private final RealMatrix inverse;
    private final double[] b;
    private final double residual;
    private final double variance;
    private final int degrees;
    private final boolean fullRank;

    Fit(
        RealMatrix x,
        SingularValueDecomposition svd,
        double[] b,
        double residual,
        double variance,
        int degrees,
        boolean fullRank) {
      this.x = x;
      RealMatrix pseudo = svd.getSolver().getInverse();
      this.inverse = pseudo.multiplyTransposed(pseudo);
      this.b = b;
      this.residual = residual;
      this.variance = variance;
      this.degrees = degrees;
      this.fullRank = fullRank;
    }

    /** A spread can be tested. */
    boolean usable() {
      return degrees >= 1 && fullRank && variance > 0;
    }

    double value(double[] c) {
      double sum = 0;
      for (int k = 0; k < c.length; k++) {
        sum += c[k] * b[k];
      }
      return sum;
    }

    private double standardError(double[] c) {
      double[] v = inverse.operate(c);
      double sum = 0;
      for (int k = 0; k < c.length; k++) {
        sum += c[k] * v[k];
      }
      return Math.sqrt(Math.max(0, sum) * variance);
    }

    @Nullable Interval interval(double[] c) {
      if (!usable()) {
        return null;
      }
      double half = Distributions.studentQuantile(0.5 + CONFIDENCE / 2, degrees) * standardError(c);
      return new Interval(value(c) - half, value(c) + half);
    }

    Contrast contrast(String question, double[] c) {
      double estimate = value(c);
      double se = standardError(c);
      double half = Distributions.studentQuantile(0.5 + CONFIDENCE / 2, degrees) * se;
      double t = se == 0 ? 0 : Math.abs(estimate) / se;
      double p = Distributions.studentTwoSided(t, degrees);
      return new Contrast(question, estimate, new Interval(estimate - half, estimate + half), p);
    }
  }

  /** Positions from palest to darkest. */
  public static List<PositionEffect> palestFirst(Result result) {
    return result.effects().stream().sorted(Comparator.comparingDouble(e -> -e.effect())).toList();
  }
}
