package ovenproof.kitchen.bench;

import ovenproof.kitchen.bench.RunLog.Channel;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Oven;
import ovenproof.kitchen.physics.Probe;

/**
 * One heat-up of an empty oven as a logger shows it, with what is true of it: for tests of anything
 * that reads traces.
 *
 * @param seconds from heat on
 * @param shownCelsius what the logger wrote: late by the probe's lag, wrong by its error, noisy
 * @param probeCelsius what the probe itself was at
 * @param airCelsius what the air at the centre was at
 * @param truth of the air
 */
public record HeatUpTrace(
    double[] seconds,
    double[] shownCelsius,
    double[] probeCelsius,
    double[] airCelsius,
    double[] watts,
    HeatTruth truth) {

  /**
   * An hour at 230 °C.
   *
   * @param stepSeconds between samples, at least 1
   * @param levelCelsius the level whose first crossing the truth tells
   * @param chance luck of dial and logger
   */
  public static HeatUpTrace of(
      Oven oven,
      RunPlan.Day day,
      Probe probe,
      int stepSeconds,
      double levelCelsius,
      Chance chance) {
    if (stepSeconds < 1) {
      throw new IllegalArgumentException("stepSeconds must be at least 1, found " + stepSeconds);
    }
    RunPlan plan = RunPlan.noiseless(oven, TestKind.HEAT_UP, 4).on(day);
    RunResult run = RunSimulation.play(plan, Luck.of(chance.named("dial")));
    double[] air = run.log().channel(Channel.CENTRE);
    double[] wall = run.log().channel(Channel.WALL);
    double[] felt = new double[air.length];
    for (int i = 0; i < felt.length; i++) {
      felt[i] = air[i] + probe.wallShare() * (wall[i] - air[i]);
    }
    double[] lagged = every(stepSeconds, probe.lagged(felt));
    double[] seconds = new double[lagged.length];
    double[] shown = new double[lagged.length];
    Chance noise = chance.named("noise");
    for (int i = 0; i < lagged.length; i++) {
      seconds[i] = i * (double) stepSeconds;
      shown[i] = probe.reading(lagged[i], noise);
    }
    return new HeatUpTrace(
        seconds,
        shown,
        lagged,
        every(stepSeconds, air),
        every(stepSeconds, run.log().channel(Channel.WATTS)),
        HeatTruth.of(run, levelCelsius));
  }

  private static double[] every(int step, double[] each) {
    double[] out = new double[(each.length + step - 1) / step];
    for (int i = 0; i < out.length; i++) {
      out[i] = each[i * step];
    }
    return out;
  }
}
