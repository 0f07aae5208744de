package ovenproof.core.thermal;

import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;

/**
 * The part of a record in which the elements are on without a break: from the steepest rise to the
 * first cut-off.
 *
 * @param trace equidistant block means of the centre, times from the start of the window
 * @param cutOffSecond first cut-off, NaN when the record ends without one
 */
record HeatUp(Trace trace, double cutOffSecond) {

  /** More points tell a smooth curve no more about its shape. */
  private static final int MOST_POINTS = 240;

  static HeatUp of(TraceInput input, HeatCurve curve) {
    Trace clean = curve.clean();
    double cutOff = cutOff(input, curve);
    double end = Double.isNaN(cutOff) ? clean.lastSecond() : cutOff;
    double start = steepest(curve.smooth(), end);
    return new HeatUp(blocks(clean, start, end), cutOff);
  }

  boolean isCut() {
    return !Double.isNaN(cutOffSecond);
  }

  private static double cutOff(TraceInput input, HeatCurve curve) {
    double electric = electricCutOff(input);
    double turned = turn(curve);
    return Double.isNaN(electric)
        ? turned
        : Double.isNaN(turned) ? electric : Math.min(electric, turned);
  }

  /** First time the power falls below half of its full value after having been there. */
  private static double electricCutOff(TraceInput input) {
    Trace power = input.power() != null ? input.power().present() : null;
    double full = power == null ? 0 : Duty.fullPowerWatt(power);
    if (power == null || full <= 0) {
      power = input.duty() == null ? null : input.duty().present();
      full = 100;
    }
    if (power == null) {
      return Double.NaN;
    }
    boolean on = false;
    for (int i = 0; i < power.size(); i++) {
      on |= power.values()[i] > 0.9 * full;
      if (on && power.values()[i] < 0.5 * full) {
        return power.seconds()[i];
      }
    }
    return Double.NaN;
  }

  /**
   * Where a curve that turns down was still surely heated: a twentieth of the rise, and at least 5
   * K, below its first peak.
   */
  private static double turn(HeatCurve curve) {
    double[] t = curve.smooth().seconds();
    double[] v = curve.smooth().values();
    double hysteresis = Math.max(3, 8 * curve.smoothNoiseKelvin());
    int peak = 0;
    for (int i = 1; i < v.length; i++) {
      peak = v[i] > v[peak] ? i : peak;
      if (v[i] < v[peak] - hysteresis && v[peak] - v[0] > 20) {
        double level = v[peak] - Math.max(5, 0.05 * (v[peak] - v[0]));
        int k = peak;
        while (k > 0 && v[k] > level) {
          k--;
        }
        return t[k];
      }
    }
    return Double.NaN;
  }

  /** Middle of the steepest 30 s of the first third: before it, elements and probe warm up. */
  private static double steepest(Trace trace, double end) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    double best = 0;
    double bestTime = t.length == 0 ? 0 : t[0];
    double width = Math.max(30, 3 * trace.medianStepSeconds());
    int j = 0;
    for (int i = 0; i < t.length && t[i] < end / 3; i++) {
      while (j < t.length - 1 && t[j] < t[i] + width) {
        j++;
      }
      double slope = t[j] > t[i] ? (v[j] - v[i]) / (t[j] - t[i]) : 0;
      if (slope > best * 1.02) {
        best = slope;
        bestTime = (t[i] + t[j]) / 2;
      }
    }
    return bestTime;
  }

  private static Trace blocks(Trace trace, double start, double end) {
    double step = Math.max(trace.medianStepSeconds(), (end - start) / MOST_POINTS);
    int n = step <= 0 ? 0 : (int) Math.floor((end - start) / step);
    double[] t = new double[Math.max(0, n)];
    double[] v = new double[Math.max(0, n)];
    int next = 0;
    for (int i = 0; i < n; i++) {
      Double mean = mean(trace, start + i * step, start + (i + 1) * step);
      if (mean != null) {
        t[next] = start + (i + 0.5) * step;
        v[next++] = mean;
      }
    }
    return new Trace(
        trace.channel(),
        java.util.Arrays.copyOf(t, next),
        java.util.Arrays.copyOf(v, next),
        trace.unit());
  }

  private static @Nullable Double mean(Trace trace, double from, double to) {
    double m = ovenproof.core.trace.TimeMean.of(trace, from, to);
    return Double.isFinite(m) ? m : null;
  }
}
