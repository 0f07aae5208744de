package ovenproof.kitchen.physics;

/**
 * What an oven is made of. Everything it does follows from these numbers.
 *
 * @param id key, such as {@code alder}
 * @param name as printed
 */
public record Oven(
    String id,
    String name,
    Cabinet cabinet,
    Heater heater,
    Thermostat thermostat,
    HeatField field,
    Airflow airflow,
    ToastProgram toast) {

  /**
   * The box.
   *
   * @param litres usable volume
   * @param airHeatCapacity of air, guards and rack, J/K
   * @param wallHeatCapacity of inner walls and glass, J/K
   * @param exchangeWattsPerKelvin between air and walls
   * @param lossWattsPerKelvin from walls to the room
   * @param leakWattsPerKelvin from air to the room, through gaps of the door
   * @param skinShare temperature of the hottest outer side: share of the wall's rise over the room
   */
  public record Cabinet(
      double litres,
      double airHeatCapacity,
      double wallHeatCapacity,
      double exchangeWattsPerKelvin,
      double lossWattsPerKelvin,
      double leakWattsPerKelvin,
      double skinShare) {}

  /**
   * The elements.
   *
   * @param ratedWatts at {@link Mains#NOMINAL_VOLTS}
   * @param nameplateWatts what the label says
   * @param airShare share that goes into the air at once; the rest is radiated to walls and food
   * @param foodShare share that shines on the plane of the rack
   * @param topShare share of that from above
   * @param lagSeconds time constant of the elements: they go on giving heat after they are off
   */
  public record Heater(
      double ratedWatts,
      double nameplateWatts,
      double airShare,
      double foodShare,
      double topShare,
      double lagSeconds) {}

  /**
   * The control.
   *
   * @param biasKelvin what the control believes the sensor reads too low: above 0 the cavity runs
   *     hot
   * @param bandKelvin full hysteresis, or the proportional band of a duty control
   * @param sensorLagSeconds time constant of the sensor
   * @param wallShare how much the sensor feels of the wall instead of the air
   * @param signalLeadKelvin how far below the setting the oven already says that it is ready
   */
  public record Thermostat(
      Control control,
      double biasKelvin,
      double bandKelvin,
      double sensorLagSeconds,
      double wallShare,
      double signalLeadKelvin) {

    /** How heat is metered. */
    public enum Control {
      /** Full on below the band, off above it. */
      HYSTERESIS,
      /** On for a share of each 20 s that falls over the band. */
      DUTY
    }

    public Thermostat withBias(double bias) {
      return new Thermostat(
          control, bias, bandKelvin, sensorLagSeconds, wallShare, signalLeadKelvin);
    }
  }

  /**
   * How air moves.
   *
   * @param filmWattsPerSquareMetreKelvin between air and food
   */
  public record Airflow(double filmWattsPerSquareMetreKelvin) {}

  /**
   * What the toast program does at its middle preset.
   *
   * @param seconds from cold, at preset 4 of 7
   * @param secondsPerPreset each step more or less
   * @param residualHeat what it does when the cavity is still hot
   */
  public record ToastProgram(double seconds, double secondsPerPreset, ResidualHeat residualHeat) {

    /** How a program answers to a cavity that is still hot. */
    public enum ResidualHeat {
      /** A timer: the second batch gets the same time in a hotter cavity. */
      IGNORED,
      /** Shortens the time by what the sensor says. */
      COMPENSATED
    }
  }

  public Oven with(Thermostat other) {
    return new Oven(id, name, cabinet, heater, other, field, airflow, toast);
  }

  /** The same inside under another name, left and right exchanged. */
  public Oven mirrored(String otherId, String otherName) {
    return new Oven(
        otherId, otherName, cabinet, heater, thermostat, field.mirrored(), airflow, toast);
  }

  /** Highest rise over the room that full power holds, K. */
  public double highestRiseKelvin(double volts) {
    Cabinet c = cabinet;
    double power = Mains.watts(heater.ratedWatts(), volts);
    double overWall = 1 / (1 / c.exchangeWattsPerKelvin() + 1 / c.lossWattsPerKelvin());
    double intoAir = heater.airShare() * power;
    double intoWall = power - intoAir;
    double airLoss = c.leakWattsPerKelvin() + overWall;
    double carried =
        c.exchangeWattsPerKelvin() / (c.exchangeWattsPerKelvin() + c.lossWattsPerKelvin());
    return (intoAir + intoWall * carried) / airLoss;
  }
}
