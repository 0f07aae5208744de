package ovenproof.publish.figure;

/**
 * A long curve as a few points, each the mean of its slice, so that pages and cards stay small.
 *
 * @param starts second at which each slice begins
 * @param middles mean second of its finite readings; NaN without any
 * @param means mean of its finite readings; NaN without any
 */
public record SliceMeans(double[] starts, double[] middles, double[] means) {

  /**
   * Means of slices of equal length.
   *
   * @param seconds when each reading was taken
   * @param values readings; NaN where there is none
   * @param points about how many slices to make, at least 1
   */
  public static SliceMeans of(double[] seconds, double[] values, int points) {
    int slice = Math.max(1, seconds.length / points);
    int count = (seconds.length + slice - 1) / slice;
    SliceMeans made = new SliceMeans(new double[count], new double[count], new double[count]);
    for (int i = 0; i < count; i++) {
      made.fill(i, seconds, values, i * slice, Math.min(seconds.length, (i + 1) * slice));
    }
    return made;
  }

  private void fill(int i, double[] seconds, double[] values, int from, int to) {
    double sum = 0;
    double time = 0;
    int n = 0;
    for (int j = from; j < to; j++) {
      if (Double.isFinite(values[j])) {
        sum += values[j];
        time += seconds[j];
        n++;
      }
    }
    starts[i] = seconds[from];
    middles[i] = n == 0 ? Double.NaN : time / n;
    means[i] = n == 0 ? Double.NaN : sum / n;
  }
}
