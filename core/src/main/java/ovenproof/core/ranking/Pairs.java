package ovenproof.core.ranking;

/** What is known of every ordered pair of a field. Immutable. */
public final class Pairs {

  /** Whether a product lies above another by more than the margin. */
  public enum Separation {
    SEPARATED,
    /** Separated, but within three Monte Carlo standard errors of the margin. */
    SEPARATED_ON_THE_EDGE,
    NOT_SEPARATED,
    /** Not separated, but within three Monte Carlo standard errors of the margin. */
    NOT_SEPARATED_ON_THE_EDGE;

    public boolean separated() {
      return this == SEPARATED || this == SEPARATED_ON_THE_EDGE;
    }

    public boolean onTheEdge() {
      return this == SEPARATED_ON_THE_EDGE || this == NOT_SEPARATED_ON_THE_EDGE;
    }
  }

  private final double[][] probabilityLow;
  private final double[][] probabilityHigh;
  private final double[][] gap;
  private final double[][] standardError;
  private final Margin margin;

  Pairs(
      double[][] probabilityLow,
      double[][] probabilityHigh,
      double[][] gap,
      double[][] standardError,
      Margin margin) {
    this.probabilityLow = probabilityLow;
    this.probabilityHigh = probabilityHigh;
    this.gap = gap;
    this.standardError = standardError;
    this.margin = margin;
  }

  public int size() {
    return gap.length;
  }

  /** P(a > b), a tie counting half, with a at its lower bound and b at its upper. */
  public double probabilityLow(int a, int b) {
    return probabilityLow[a][b];
  }

  /** P(a > b) with a at its upper bound and b at its lower. */
  public double probabilityHigh(int a, int b) {
    return probabilityHigh[a][b];
  }

  /** Score of a at its lower bound less score of b at its upper; unrounded. */
  public double gap(int a, int b) {
    return gap[a][b];
  }

  /** Standard error of that difference: root mean square of the drawn error differences. */
  public double standardError(int a, int b) {
    return standardError[a][b];
  }

  /** Difference at which the pair would be separated. */
  public double needed(int a, int b) {
    return margin.c() * standardError[a][b];
  }

  /** Whether a lies above b by more than the margin, at both bounds. */
  public Separation separation(int a, int b) {
    double distance = gap[a][b];
    double error = standardError[a][b];
    boolean separated = distance > 0 && distance > margin.c() * error;
    boolean strictly = distance > 0 && distance > margin.high() * error;
    boolean loosely = distance > 0 && distance > margin.low() * error;
    if (separated) {
      return strictly ? Separation.SEPARATED : Separation.SEPARATED_ON_THE_EDGE;
    }
    return loosely ? Separation.NOT_SEPARATED_ON_THE_EDGE : Separation.NOT_SEPARATED;
  }
}
