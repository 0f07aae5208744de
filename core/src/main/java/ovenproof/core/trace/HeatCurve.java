package ovenproof.core.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A temperature curve prepared once for all measures: spikes taken out, gaps listed, cycles and the
 * steady part found.
 *
 * @param raw as read
 * @param clean without spikes and missing values
 * @param smooth the same times, smoothed over 15 s or five samples where noise calls for it
 * @param spikes readings taken out
 * @param gaps longer than 30 s
 * @param noiseKelvin standard deviation of the noise of single readings
 * @param smoothNoiseKelvin of the smoothed ones
 * @param resolutionKelvin smallest step between different readings
 * @param cycleNoiseKelvin of the readings that the peaks of the cycles were found in
 * @param cycles of the hold
 * @param steady null when there is no steady part
 * @param whyNotSteady the reason, empty when there is one
 * @param shared work that several measures need, such as the fit of a model, done once
 */
public record HeatCurve(
    Trace raw,
    Trace clean,
    Trace smooth,
    int spikes,
    List<Gap> gaps,
    double noiseKelvin,
    double smoothNoiseKelvin,
    double resolutionKelvin,
    double cycleNoiseKelvin,
    Cycles cycles,
    @Nullable SteadyState steady,
    String whyNotSteady,
    SharedWork shared) {

  private static final double SMOOTHED_SECONDS = 15;

  /** What rises less was hot already, or is no oven. */
  private static final double LEAST_RISE_KELVIN = 20;

  /** Below this noise smoothing would only round the corners. */
  private static final double NOISE_WORTH_SMOOTHING_KELVIN = 0.02;

  public static HeatCurve of(Trace raw) {
    Trace present = raw.present();
    HampelFilter.Cleaned cleaned = HampelFilter.withDefaults().clean(present);
    Trace clean = cleaned.trace().present();
    double step = clean.medianStepSeconds();
    List<Gap> gaps = Gap.in(clean.seconds(), step);
    double resolution = resolution(clean.values());
    double noise = Medians.noise(clean.values());
    @Nullable SavitzkyGolay filter = filter(step);
    Trace smooth = clean;
    double smoothNoise = noise;
    if (filter != null && noise > NOISE_WORTH_SMOOTHING_KELVIN && clean.size() > 20) {
      smooth = clean.withValues(filter.smooth(clean.values()));
      smoothNoise = noise * filter.noiseGain();
    }
    Cycles cycles = cycles(smooth, smoothNoise);
    double cycleNoise = smoothNoise;
    // A window that is long against a cycle cuts its peaks off: then it gets a shorter one, or
    // none.
    double width = cycles.size() == 0 ? SMOOTHED_SECONDS : cycles.medianPeriodSeconds() / 12;
    if (smooth != clean && width < SMOOTHED_SECONDS) {
      SavitzkyGolay narrow = 5 * step > width ? null : window(width, step);
      Trace finer = narrow == null ? clean : clean.withValues(narrow.smooth(clean.values()));
      cycleNoise = narrow == null ? noise : noise * narrow.noiseGain();
      cycles = cycles(finer, cycleNoise);
    }
    if (cycles.size() == 0 && smooth == clean && noise > Cycles.HYSTERESIS_KELVIN / 6) {
      // Few readings in a cycle look like noise; only that they come as regularly tells them apart.
      Cycles coarse = cycles(clean, 0).ifRegular();
      if (coarse.size() > 0) {
        cycles = coarse;
        noise = coarse.readingScatter();
        smoothNoise = noise;
        cycleNoise = noise;
      }
    }
    SteadySearch.Found found = new SteadySearch(clean, gaps).search(cycles);
    return new HeatCurve(
        raw,
        clean,
        smooth,
        cleaned.spikes(),
        gaps,
        noise,
        smoothNoise,
        resolution,
        cycleNoise,
        cycles,
        found.state(),
        found.why(),
        new SharedWork());
  }

  private static Cycles cycles(Trace smooth, double noise) {
    return Cycles.find(
            smooth.seconds(), smooth.values(), Math.max(Cycles.HYSTERESIS_KELVIN, 6 * noise))
        .ofOneHold();
  }

  private static SavitzkyGolay window(double width, double step) {
    int half = (int) Math.min(25, Math.max(2, Math.round(width / 2 / step)));
    return SavitzkyGolay.of(2 * half + 1, 2, 0);
  }

  /** 15 s wide; a logger too slow for five samples in half a minute is taken as it is. */
  private static @Nullable SavitzkyGolay filter(double stepSeconds) {
    if (stepSeconds <= 0 || 5 * stepSeconds > 30) {
      return null;
    }
    return window(SMOOTHED_SECONDS, stepSeconds);
  }

  private static double resolution(double[] values) {
    double smallest = Double.POSITIVE_INFINITY;
    int n = Math.min(values.length, 5000);
    for (int i = 1; i < n; i++) {
      double d = Math.abs(values[i] - values[i - 1]);
      if (d > 1e-9 && d < smallest) {
        smallest = d;
      }
    }
    return Double.isInfinite(smallest) ? 0 : smallest;
  }

  /** Why there is no heat-up to measure; null when the curve rises from where it began. */
  static @Nullable String notHeated(HeatCurve curve, SteadyState steady) {
    double rise = steady.meanCelsius() - curve.clean.values()[0];
    return rise < LEAST_RISE_KELVIN
        ? "the curve rises by less than 20 K: no heat-up from cold in the window"
        : null;
  }

  /** Whether the smoothed curve is ever at a temperature. */
  public boolean hasReached(double celsius) {
    return Highest.of(smooth) >= celsius;
  }

  public boolean isEmpty() {
    return clean.size() == 0;
  }

  /** Noise and resolution of a smoothed reading together, as a standard deviation. */
  double readingU() {
    return Math.hypot(smoothNoiseKelvin, resolutionKelvin / Math.sqrt(12));
  }

  /** The same of a reading that a peak or trough was found in. */
  double cycleReadingU() {
    return Math.hypot(cycleNoiseKelvin, resolutionKelvin / Math.sqrt(12));
  }

  /** Cycles inside the steady part. */
  Cycles steadyCycles() {
    return steady == null
        ? new Cycles(List.of())
        : cycles.within(steady.startSecond(), steady.endSecond());
  }

  public int cycleCount() {
    return cycles.size();
  }

  @Nullable Gap gapBetween(double fromSecond, double toSecond) {
    return gaps.stream().filter(g -> g.touches(fromSecond, toSecond)).findFirst().orElse(null);
  }
}
