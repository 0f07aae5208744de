package ovenproof.kitchen.physics;

/**
 * A thermocouple: late by its time constant, wrong by its wire, noisy by its logger, and warmed a
 * little by what it sees.
 *
 * @param id key
 * @param timeConstantSeconds in moving air
 * @param errorKelvin what it reads too high, the same in everything measured with it
 * @param noiseKelvin standard deviation of a sample
 * @param wallShare how much it feels of the walls' radiation instead of the air
 */
public record Probe(
    String id,
    double timeConstantSeconds,
    double errorKelvin,
    double noiseKelvin,
    double wallShare) {

  /**
   * What the probe itself is at, second by second: first-order lag behind what it feels.
   *
   * @param feltCelsius one value each second
   */
  public double[] lagged(double[] feltCelsius) {
    double[] out = new double[feltCelsius.length];
    double state = feltCelsius.length == 0 ? 0 : feltCelsius[0];
    double share = -Math.expm1(-1 / timeConstantSeconds);
    for (int i = 0; i < out.length; i++) {
      state += share * (feltCelsius[i] - state);
      out[i] = state;
    }
    return out;
  }

  /** What the logger writes for a probe at this temperature. */
  public double reading(double probeCelsius, Chance chance) {
    return probeCelsius + errorKelvin + chance.gaussian(0, noiseKelvin);
  }
}
