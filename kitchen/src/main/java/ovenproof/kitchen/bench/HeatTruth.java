package ovenproof.kitchen.bench;

import java.util.Arrays;
import ovenproof.kitchen.bench.RunLog.Channel;

/**
 * What is true of the air of a heat-up run, read off its own seconds without noise. Times in s from
 * heat on, temperatures in °C; NaN for what did not happen.
 *
 * @param firstCrossing air at the centre first at the level asked for
 * @param steadyMean of the last 20 min
 * @param highest of the run
 * @param overshoot highest of the first 30 min over the steady mean
 * @param spread standard deviation (n − 1) over the five places of their means of the last 20 min
 */
public record HeatTruth(
    double firstCrossing,
    double steadyMean,
    double highest,
    double overshoot,
    double spread,
    double energyKilowattHours) {

  private static final int STEADY_SECONDS = 1200;
  private static final int FIRST_SECONDS = 1800;

  /** Of a run of the heat-up test. */
  public static HeatTruth of(RunResult run, double levelCelsius) {
    RunLog log = run.log();
    double[] centre = log.channel(Channel.CENTRE);
    int first = 0;
    while (first < centre.length && centre[first] < levelCelsius) {
      first++;
    }
    double steady = lastMean(centre);
    double early =
        Arrays.stream(centre, 0, Math.min(FIRST_SECONDS, centre.length)).max().orElse(Double.NaN);
    return new HeatTruth(
        first == centre.length ? Double.NaN : first,
        steady,
        Arrays.stream(centre).max().orElse(Double.NaN),
        early - steady,
        spread(log),
        log.energyKilowattHours(centre.length));
  }

  private static double lastMean(double[] values) {
    int from = Math.max(0, values.length - STEADY_SECONDS);
    return Arrays.stream(values, from, values.length).average().orElse(Double.NaN);
  }

  private static double spread(RunLog log) {
    Channel[] places = {
      Channel.CENTRE, Channel.FRONT_LEFT, Channel.FRONT_RIGHT, Channel.BACK_LEFT, Channel.BACK_RIGHT
    };
    double[] means = Arrays.stream(places).mapToDouble(p -> lastMean(log.channel(p))).toArray();
    double mean = Arrays.stream(means).average().orElse(0);
    double squares = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
    return Math.sqrt(squares / (means.length - 1));
  }
}
