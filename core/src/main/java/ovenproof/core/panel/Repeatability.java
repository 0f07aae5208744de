package ovenproof.core.panel;

import java.util.HashMap;
import java.util.Map;

/**
 * How closely each person marks the same sample again.
 *
 * @param variance of each person's repetitions; NaN without any
 * @param df degrees of freedom of each
 * @param pooled over the panel; NaN without any
 * @param kind what counted as the same sample
 */
record Repeatability(double[] variance, int[] df, double pooled, Kind kind) {

  /** What counted as the same sample again. */
  enum Kind {
    /** Served twice in one session (and batch): a blind duplicate. */
    DUPLICATE,
    /** Served again in another session. */
    ACROSS_SESSIONS,
    NONE
  }

  static Repeatability of(Observations data, Factor assessor) {
    Factor sample = data.product();
    if (data.batch() != null) {
      sample = sample.crossedWith(data.batch());
    }
    Factor within = sample;
    for (Factor block : data.blocks().values()) {
      within = within.crossedWith(block);
    }
    Repeatability duplicate = of(data, assessor, within, Kind.DUPLICATE);
    return duplicate.kind == Kind.NONE
            && data.batch() == null
            && data.blocks().containsKey("session")
        ? of(data, assessor, sample, Kind.ACROSS_SESSIONS)
        : duplicate;
  }

  private static Repeatability of(Observations data, Factor assessor, Factor sample, Kind kind) {
    Map<Long, double[]> sums = new HashMap<>();
    for (int i = 0; i < data.n(); i++) {
      long key = (long) assessor.of()[i] * sample.size() + sample.of()[i];
      double[] sum = sums.computeIfAbsent(key, any -> new double[3]);
      double distance = data.y()[i] - sum[1];
      sum[0]++;
      sum[1] += distance / sum[0];
      sum[2] += distance * (data.y()[i] - sum[1]);
    }
    double[] squares = new double[assessor.size()];
    int[] df = new int[assessor.size()];
    for (Map.Entry<Long, double[]> entry : sums.entrySet()) {
      int person = (int) (entry.getKey() / sample.size());
      squares[person] += entry.getValue()[2];
      df[person] += (int) entry.getValue()[0] - 1;
    }
    return of(squares, df, kind);
  }

  private static Repeatability of(double[] squares, int[] df, Kind kind) {
    double total = 0;
    int degrees = 0;
    double[] variance = new double[squares.length];
    for (int a = 0; a < squares.length; a++) {
      variance[a] = df[a] == 0 ? Double.NaN : squares[a] / df[a];
      total += squares[a];
      degrees += df[a];
    }
    return degrees == 0
        ? new Repeatability(variance, df, Double.NaN, Kind.NONE)
        : new Repeatability(variance, df, total / degrees, kind);
  }
}
