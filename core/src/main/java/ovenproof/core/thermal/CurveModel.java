package ovenproof.core.thermal;

/** A curve with parameters, as least squares sees it. */
@FunctionalInterface
public interface CurveModel {

  /** Value at {@code x} for these parameters. */
  double value(double x, double[] parameters);

  /** Derivative by each parameter, by central differences of a millionth. */
  default double[] gradient(double x, double[] parameters) {
    double[] gradient = new double[parameters.length];
    double[] moved = parameters.clone();
    for (int k = 0; k < gradient.length; k++) {
      double step = 1e-6 * Math.max(Math.abs(parameters[k]), 1e-6);
      moved[k] = parameters[k] + step;
      double above = value(x, moved);
      moved[k] = parameters[k] - step;
      double below = value(x, moved);
      moved[k] = parameters[k];
      gradient[k] = (above - below) / (2 * step);
    }
    return gradient;
  }
}
