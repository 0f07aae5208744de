package ovenproof.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Certified values: NIST Statistical Reference Datasets, nonlinear regression (Misra1a, Chwirut2,
 * Thurber), from both certified starting points.
 */
class NonlinearReferenceTest {

  private static final CurveModel MISRA = (x, b) -> b[0] * (1 - Math.exp(-b[1] * x));
  private static final CurveModel CHWIRUT = (x, b) -> Math.exp(-b[0] * x) / (b[1] + b[2] * x);
  private static final CurveModel THURBER =
      (x, b) ->
          (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));

  static List<Arguments> sets() {
    double[] misra = {2.3894212918E+02, 5.5015643181E-04};
    double[] misraSe = {2.7070075241E+00, 7.2668688436E-06};
    double[] chwirut = {1.6657666537E-01, 5.1653291286E-03, 1.2150007096E-02};
    double[] chwirutSe = {3.8303286810E-02, 6.6621605126E-04, 1.5304234767E-03};
    double[] thurber = {
      1.2881396800E+03,
      1.4910792535E+03,
      5.8323836877E+02,
      7.5416644291E+01,
      9.6629502864E-01,
      3.9797285797E-01,
      4.9727297349E-02
    };
    double[] thurberSe = {
      4.6647963344E+00,
      3.9571156086E+01,
      2.8698696102E+01,
      5.5675370270E+00,
      3.1333340687E-02,
      1.4984928198E-02,
      6.5842344623E-03
    };
    return List.of(
        Arguments.of(
            "misra1a", MISRA, new double[] {500, 0.0001}, misra, misraSe, 1.0187876330E-01),
        Arguments.of(
            "misra1a", MISRA, new double[] {250, 0.0005}, misra, misraSe, 1.0187876330E-01),
        Arguments.of(
            "chwirut2", CHWIRUT, new double[] {0.1, 0.01, 0.02}, chwirut, chwirutSe, 3.1717133040),
        Arguments.of(
            "chwirut2",
            CHWIRUT,
            new double[] {0.15, 0.008, 0.010},
            chwirut,
            chwirutSe,
            3.1717133040),
        Arguments.of(
            "thurber",
            THURBER,
            new double[] {1000, 1000, 400, 40, 0.7, 0.3, 0.03},
            thurber,
            thurberSe,
            13.714600784),
        Arguments.of(
            "thurber",
            THURBER,
            new double[] {1300, 1500, 500, 75, 1, 0.4, 0.05},
            thurber,
            thurberSe,
            13.714600784));
  }

  @ParameterizedTest
  @MethodSource("sets")
  void certifiedEstimatesAndErrorsComeOut(
      String file, CurveModel model, double[] start, double[] estimates, double[] errors, double sd)
      throws IOException {
    double[][] data = data(file);
    CurveFit fit = CurveFit.independent(model, data[1], data[0], start).orElseThrow();
    for (int i = 0; i < estimates.length; i++) {
      assertThat(fit.parameters()[i]).isCloseTo(estimates[i], withinPercentage(1e-4));
      assertThat(fit.standardError(i)).isCloseTo(errors[i], withinPercentage(1e-2));
    }
    assertThat(fit.residualSd()).isCloseTo(sd, withinPercentage(1e-6));
  }

  /** Columns y and x. */
  private static double[][] data(String file) throws IOException {
    try (InputStream in = NonlinearReferenceTest.class.getResourceAsStream(file + ".csv")) {
      List<String> lines =
          new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .skip(1)
              .toList();
      double[][] columns = new double[2][lines.size()];
      for (int i = 0; i < lines.size(); i++) {
        String[] cells = lines.get(i).split(",");
        columns[0][i] = Double.parseDouble(cells[0]);
        columns[1][i] = Double.parseDouble(cells[1]);
      }
      return columns;
    }
  }
}
