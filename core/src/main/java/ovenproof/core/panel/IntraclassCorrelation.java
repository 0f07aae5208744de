package ovenproof.core.panel;

import java.util.List;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;

/**
 * How far marks can be trusted to tell products apart: the six coefficients of Shrout and Fleiss,
 * Psychological Bulletin 86, 1979, 420–428.
 *
 * @param form which of the six
 * @param coefficient 1 is perfect; below 0 is possible and means none
 * @param f the F ratio behind it
 * @param numerator degrees of freedom
 * @param denominator degrees of freedom
 * @param p P(F ≥ f)
 * @param interval 95 % confidence
 */
public record IntraclassCorrelation(
    Form form,
    double coefficient,
    double f,
    double numerator,
    double denominator,
    double p,
    Interval interval) {

  /** Which people, and one of them or their mean. */
  public enum Form {
    /** Each product by other people, one mark. */
    ONE_WAY_SINGLE("ICC(1,1)"),
    /** The same people, seen as a sample of many; one mark; their levels count as error. */
    AGREEMENT_SINGLE("ICC(2,1)"),
    /** These very people; one mark; their levels do not count. */
    CONSISTENCY_SINGLE("ICC(3,1)"),
    ONE_WAY_MEAN("ICC(1,k)"),
    AGREEMENT_MEAN("ICC(2,k)"),
    CONSISTENCY_MEAN("ICC(3,k)");

    private final String symbol;

    Form(String symbol) {
      this.symbol = symbol;
    }

    /** The authors' symbol. */
    public String symbol() {
      return symbol;
    }
  }

  private static final double TAIL = 0.975;

  /**
   * The six forms in the order of {@link Form}.
   *
   * @param marks one row per product, one column per person; at least two of each, none missing
   * @return empty when the marks do not vary within the products at all
   */
  public static List<IntraclassCorrelation> of(double[][] marks) {
    int n = marks.length;
    int k = n == 0 ? 0 : marks[0].length;
    if (n < 2 || k < 2) {
      throw new IllegalArgumentException(
          "marks must have at least two rows and columns, found " + n + " × " + k);
    }
    MeanSquares ms = MeanSquares.of(marks);
    if (!(ms.within > 0) || !(ms.error > 0)) {
      return List.of();
    }
    return List.of(
        oneWay(ms, Form.ONE_WAY_SINGLE),
        agreement(ms, Form.AGREEMENT_SINGLE),
        consistency(ms, Form.CONSISTENCY_SINGLE),
        oneWay(ms, Form.ONE_WAY_MEAN),
        agreement(ms, Form.AGREEMENT_MEAN),
        consistency(ms, Form.CONSISTENCY_MEAN));
  }

  private record MeanSquares(
      double n, double k, double between, double within, double judges, double error) {

    static MeanSquares of(double[][] marks) {
      int n = marks.length;
      int k = marks[0].length;
      double grand = 0;
      double[] rows = new double[n];
      double[] columns = new double[k];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < k; j++) {
          rows[i] += marks[i][j] / k;
          columns[j] += marks[i][j] / n;
          grand += marks[i][j] / n / k;
        }
      }
      double between = 0;
      double judges = 0;
      double within = 0;
      double error = 0;
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < k; j++) {
          between += square(rows[i] - grand);
          judges += square(columns[j] - grand);
          within += square(marks[i][j] - rows[i]);
          error += square(marks[i][j] - rows[i] - columns[j] + grand);
        }
      }
      return new MeanSquares(
          n,
          k,
          between / (n - 1),
          within / (n * (k - 1.0)),
          judges / (k - 1),
          error / ((n - 1.0) * (k - 1)));
    }

    private static double square(double x) {
      return x * x;
    }
  }

  private static IntraclassCorrelation oneWay(MeanSquares ms, Form form) {
    double f = ms.between / ms.within;
    double denominator = ms.n * (ms.k - 1);
    boolean single = form == Form.ONE_WAY_SINGLE;
    return fromF(form, f, ms, denominator, single);
  }

  private static IntraclassCorrelation consistency(MeanSquares ms, Form form) {
    double f = ms.between / ms.error;
    double denominator = (ms.n - 1) * (ms.k - 1);
    return fromF(form, f, ms, denominator, form == Form.CONSISTENCY_SINGLE);
  }

  private static IntraclassCorrelation fromF(
      Form form, double f, MeanSquares ms, double denominator, boolean single) {
    double low = f / Distributions.fQuantile(TAIL, ms.n - 1, denominator);
    double high = f * Distributions.fQuantile(TAIL, denominator, ms.n - 1);
    Interval interval = new Interval(fromRatio(low, ms.k, single), fromRatio(high, ms.k, single));
    return new IntraclassCorrelation(
        form,
        fromRatio(f, ms.k, single),
        f,
        ms.n - 1,
        denominator,
        Distributions.fUpperTail(f, ms.n - 1, denominator),
        interval);
  }

  private static double fromRatio(double f, double k, boolean single) {
    return single ? (f - 1) / (f + k - 1) : 1 - 1 / f;
  }

  private static IntraclassCorrelation agreement(MeanSquares ms, Form form) {
    double n = ms.n;
    double k = ms.k;
    double single =
        (ms.between - ms.error)
            / (ms.between + (k - 1) * ms.error + k * (ms.judges - ms.error) / n);
    Interval one = agreementInterval(ms, single);
    boolean mean = form == Form.AGREEMENT_MEAN;
    double coefficient =
        mean ? (ms.between - ms.error) / (ms.between + (ms.judges - ms.error) / n) : single;
    double f = ms.between / ms.error;
    double denominator = (n - 1) * (k - 1);
    return new IntraclassCorrelation(
        form,
        coefficient,
        f,
        n - 1,
        denominator,
        Distributions.fUpperTail(f, n - 1, denominator),
        mean ? new Interval(stepUp(one.low(), k), stepUp(one.high(), k)) : one);
  }

  private static double stepUp(double coefficient, double k) {
    double spread = 1 + (k - 1) * coefficient;
    return spread > 0 ? k * coefficient / spread : Double.NEGATIVE_INFINITY;
  }

  /** Satterthwaite's degrees of freedom as in the article's appendix. */
  private static Interval agreementInterval(MeanSquares ms, double rho) {
    double n = ms.n;
    double k = ms.k;
    double fj = ms.judges / ms.error;
    double a = k * rho * fj;
    double b = n * (1 + (k - 1) * rho) - k * rho;
    double v = (k - 1) * (n - 1) * (a + b) * (a + b) / ((n - 1) * a * a + b * b);
    if (!(v > 0)) {
      return new Interval(-1, 1);
    }
    double upper = Distributions.fQuantile(TAIL, n - 1, v);
    double lower = Distributions.fQuantile(TAIL, v, n - 1);
    double spread = k * ms.judges + (k * n - k - n) * ms.error;
    double low = n * (ms.between - upper * ms.error) / (upper * spread + n * ms.between);
    double high = n * (lower * ms.between - ms.error) / (spread + n * lower * ms.between);
    return low <= high ? new Interval(low, high) : new Interval(-1, 1);
  }
}
