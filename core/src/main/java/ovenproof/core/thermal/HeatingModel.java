package ovenproof.core.thermal;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SharedWork;
import ovenproof.core.trace.TimeMean;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;

/**
 * A heat-up described by one or two exponentials: T(t) = T∞ − A·e^(−t/τ₁) − B·e^(−t/τ₂), fast (air)
 * and slow (walls).
 *
 * @param order 1 or 2
 * @param fit of T∞, A, ln τ (order 1) or T∞, A, ln τ₁, B, ln τ₂ (order 2)
 * @param startSecond first moment used; the exponentials count from here
 * @param endSecond last moment used
 * @param startCelsius temperature of the first moment
 * @param lead what was read before it
 */
public record HeatingModel(
    Order order,
    CurveFit fit,
    double startSecond,
    double endSecond,
    double startCelsius,
    Lead lead) {

  /**
   * The record before the fitted part: elements and probe are warming up.
   *
   * @param seconds how long
   * @param kelvinSeconds integral of the readings over it, °C × s
   * @param firstCelsius where it began
   */
  public record Lead(double seconds, double kelvinSeconds, double firstCelsius) {
    static Lead of(Trace clean, double untilSecond) {
      double from = clean.seconds()[0];
      double integral = untilSecond > from ? TimeMean.integral(clean, from, untilSecond) : 0;
      return new Lead(Math.max(0, untilSecond - from), integral, clean.values()[0]);
    }
  }

  /** How many exponentials. */
  public enum Order {
    FIRST,
    SECOND
  }

  /** Shortest record in slow time constants; statistics of simulated heaters. */
  static final double SHORTEST_IN_TIME_CONSTANTS = 1.5;

  /** Widest 90 % half-width of the ceiling, as a share of the rise, that is still shown. */
  static final double WIDEST_SHARE = 0.10;

  static final double LEVEL = 0.90;

  private static final CurveModel ONE = (t, p) -> p[0] - p[1] * Math.exp(-t / Math.exp(p[2]));
  private static final CurveModel TWO =
      (t, p) -> p[0] - p[1] * Math.exp(-t / Math.exp(p[2])) - p[3] * Math.exp(-t / Math.exp(p[4]));

  /**
   * A model or the reason why there is none.
   *
   * @param model null when refused
   * @param why empty when there is a model
   */
  public record Outcome(@Nullable HeatingModel model, String why) {}

  /** A fit depends on the curve and on what tells where the elements switched off. */
  /** Compared by plain code: what a record brings is put together at its first use, slowly. */
  private record FitKey(@Nullable Trace power, @Nullable Trace duty)
      implements SharedWork.Key<Outcome> {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof FitKey k
          && Objects.equals(k.power, power)
          && Objects.equals(k.duty, duty);
    }

    @Override
    public int hashCode() {
      return 31 * Objects.hashCode(power) + Objects.hashCode(duty);
    }
  }

  /** Fits the heat-up of the input's centre; once for each curve. */
  public static Outcome fit(TraceInput input, HeatCurve curve) {
    return curve.shared().once(new FitKey(input.power(), input.duty()), k -> fitted(input, curve));
  }

  private static Outcome fitted(TraceInput input, HeatCurve curve) {
    if (curve.clean().size() < 20) {
      return new Outcome(null, "fewer than twenty readings");
    }
    HeatUp heatUp = HeatUp.of(input, curve);
    Trace t = heatUp.trace();
    if (t.size() < 15) {
      return new Outcome(null, "fewer than fifteen readings before the first cut-off");
    }
    double rise = t.values()[t.size() - 1] - t.values()[0];
    if (rise < 20) {
      return new Outcome(null, "the curve rises by less than 20 K before the first cut-off");
    }
    if (curve.gaps().stream()
        .anyMatch(g -> g.startSecond() < t.lastSecond() && g.endSecond() > t.seconds()[0])) {
      return new Outcome(null, "the heat-up has a gap of more than 30 s");
    }
    Optional<HeatingModel> model = best(t, curve.clean());
    return model
        .map(m -> new Outcome(m, m.refusal()))
        .map(o -> o.why.isEmpty() ? o : new Outcome(null, o.why))
        .orElse(new Outcome(null, "no exponential curve fits the heat-up"));
  }

  private static Optional<HeatingModel> best(Trace t, Trace clean) {
    double start = t.seconds()[0];
    double[] x = t.seconds().clone();
    for (int i = 0; i < x.length; i++) {
      x[i] -= start;
    }
    double[] y = t.values();
    Optional<CurveFit> one = first(x, y);
    Optional<CurveFit> two = one.flatMap(f -> second(x, y, f));
    boolean better = two.isPresent() && isBetter(one.get(), two.get(), x.length);
    Optional<CurveFit> chosen = better ? two : one;
    Order order = better ? Order.SECOND : Order.FIRST;
    Lead lead = Lead.of(clean, start);
    return chosen.map(f -> new HeatingModel(order, f, start, t.lastSecond(), y[0], lead));
  }

  private static Optional<CurveFit> first(double[] x, double[] y) {
    int n = x.length;
    double rise = y[n - 1] - y[0];
    double[] start = {y[n - 1] + 0.1 * rise, 1.1 * rise, Math.log(x[n - 1] / 2)};
    return CurveFit.autoregressive(ONE, x, y, start);
  }

  private static Optional<CurveFit> second(double[] x, double[] y, CurveFit one) {
    double tau = Math.exp(one.parameters()[2]);
    double a = one.parameters()[1];
    Optional<CurveFit> best = Optional.empty();
    for (double ratio : new double[] {0.15, 0.35}) {
      double[] start = {
        one.parameters()[0], 0.4 * a, Math.log(ratio * tau), 0.6 * a, Math.log(1.5 * tau)
      };
      Optional<CurveFit> fit =
          CurveFit.autoregressive(TWO, x, y, start).filter(HeatingModel::isPhysical);
      boolean improves =
          fit.isPresent()
              && (best.isEmpty()
                  || fit.get().residualSumOfSquares() < best.get().residualSumOfSquares());
      best = improves ? fit : best;
    }
    return best;
  }

  private static boolean isPhysical(CurveFit fit) {
    double[] p = fit.parameters();
    return p[1] > 0 && p[3] > 0 && p[4] - p[2] > Math.log(1.8) && p[4] < Math.log(1e5) && p[2] > 0;
  }

  /** Bayesian information of the whitened residuals; two exponentials must earn two parameters. */
  private static boolean isBetter(CurveFit one, CurveFit two, int n) {
    double gain = n * Math.log(one.residualSumOfSquares() / two.residualSumOfSquares());
    return gain > 2 * Math.log(n);
  }

  private String refusal() {
    double length = endSecond - startSecond;
    if (length < SHORTEST_IN_TIME_CONSTANTS * slowSeconds()) {
      return String.format(
          Locale.ROOT,
          "the heat-up lasts %.1f slow time constants of %.0f s; %.1f are needed",
          length / slowSeconds(),
          slowSeconds(),
          SHORTEST_IN_TIME_CONSTANTS);
    }
    double half = fit.quantile(LEVEL) * fit.standardError(0);
    double rise = ceilingCelsius() - startCelsius;
    if (!(half <= WIDEST_SHARE * rise)) {
      return String.format(
          Locale.ROOT, "its 90 %% interval would be ± %.0f K, more than a tenth of the rise", half);
    }
    return "";
  }

  public double ceilingCelsius() {
    return fit.parameters()[0];
  }

  /** Standard uncertainty from the fit alone, widened for its few independent readings. */
  public double ceilingU() {
    return widened(fit.standardError(0));
  }

  /** A standard error as a standard uncertainty of a normal with the same 90 % interval. */
  double widened(double standardError) {
    return fit.quantile(LEVEL) / 1.6448536 * standardError;
  }

  /** The slow time constant; the only one of a first-order model. */
  public double slowSeconds() {
    return Math.exp(fit.parameters()[order == Order.FIRST ? 2 : 4]);
  }

  public double slowU() {
    int k = order == Order.FIRST ? 2 : 4;
    return widened(slowSeconds() * fit.standardError(k));
  }

  /** The fast time constant; NaN for a first-order model. */
  public double fastSeconds() {
    return order == Order.FIRST ? Double.NaN : Math.exp(fit.parameters()[2]);
  }

  private CurveModel curve() {
    return order == Order.FIRST ? ONE : TWO;
  }

  /** Model temperature; before the fitted part its straight continuation is not meant. */
  public double temperature(double second) {
    return curve().value(second - startSecond, fit.parameters());
  }

  /** Standard error of the model temperature. */
  public double temperatureU(double second) {
    return fit.standardError(curve().gradient(second - startSecond, fit.parameters()));
  }

  /**
   * Mean remaining time weighted by rise: ∫(T∞ − T)dt / (T∞ − T₀) from the first moment of the
   * heat-up, the effective time constant. What lies before the fitted part is taken as it was read.
   */
  public double effectiveSeconds() {
    return effectiveSeconds(fit.parameters());
  }

  private double effectiveSeconds(double[] p) {
    double remaining = p[1] * Math.exp(p[2]);
    if (order == Order.SECOND) {
      remaining += p[3] * Math.exp(p[4]);
    }
    double before = p[0] * lead.seconds - lead.kelvinSeconds;
    return (before + remaining) / (p[0] - lead.firstCelsius);
  }

  /** C over P: τ / (T∞ − T₀), in s/K, of these parameters. */
  private double capacityPerWatt(double[] p, double ambientCelsius) {
    return effectiveSeconds(p) / (p[0] - ambientCelsius);
  }

  /** Relative standard uncertainty of the heat capacity from the fit; both factors lean on T∞. */
  double capacityShareU(double ambientCelsius) {
    double[] p = fit.parameters();
    CurveModel capacity = (x, q) -> capacityPerWatt(q, ambientCelsius);
    return widened(fit.standardError(capacity.gradient(0, p))) / capacityPerWatt(p, ambientCelsius);
  }

  /**
   * When the model reaches a temperature.
   *
   * @param seconds from the start of the window; infinite when never
   * @param lowSeconds lower end of the 90 % interval
   * @param highSeconds upper end; infinite when never cannot be ruled out
   */
  public record TimeTo(double celsius, double seconds, double lowSeconds, double highSeconds) {
    public boolean isReached() {
      return Double.isFinite(seconds);
    }
  }

  /**
   * @param probeKelvin standard uncertainty of the reading that the fit cannot see (calibration,
   *     placement)
   */
  public TimeTo timeTo(double celsius, double probeKelvin) {
    return new TimeTo(
        celsius,
        crossing(celsius, 0, probeKelvin),
        crossing(celsius, 1, probeKelvin),
        crossing(celsius, -1, probeKelvin));
  }

  /** First time at which the model, moved by so many 90 % half-widths, is there. */
  private double crossing(double celsius, int halfWidths, double probeKelvin) {
    double q = fit.quantile(LEVEL) * halfWidths;
    double z = 1.6448536 * halfWidths;
    double horizon = startSecond + 30 * slowSeconds();
    double low = startSecond;
    if (moved(low, q, z, probeKelvin) >= celsius) {
      return low;
    }
    if (moved(horizon, q, z, probeKelvin) < celsius) {
      return Double.POSITIVE_INFINITY;
    }
    double high = horizon;
    for (int i = 0; i < 80; i++) {
      double middle = (low + high) / 2;
      if (moved(middle, q, z, probeKelvin) < celsius) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private double moved(double second, double q, double z, double probeKelvin) {
    double fitPart = q * temperatureU(second);
    double shift = Math.hypot(fitPart, z * probeKelvin);
    return temperature(second) + Math.signum(q) * shift;
  }
}
