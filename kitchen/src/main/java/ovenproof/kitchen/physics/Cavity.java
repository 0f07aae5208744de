package ovenproof.kitchen.physics;

/**
 * An oven at work: air, walls, elements and the sensor of its thermostat, moved on in small steps.
 *
 * <p>Two nodes with elements between the mains and them:
 *
 * <pre>
 * Ca dTa/dt = s·Pe + G (Tw − Ta) − leak (Ta − T0) − food
 * Cw dTw/dt = (1 − s) Pe + G (Ta − Tw) − loss (Tw − T0) − food
 * lag dPe/dt = P(V) · on − Pe
 * </pre>
 */
public final class Cavity {

  private static final double DUTY_PERIOD = 20;
  private static final double OPEN_DOOR_WATTS_PER_KELVIN = 26;

  private final Oven oven;
  private double air;
  private double wall;
  private double sensor;
  private double elementWatts;
  private double drawnWatts;
  private boolean on = true;
  private double clock;

  public Cavity(Oven oven, double startCelsius) {
    this.oven = oven;
    this.air = startCelsius;
    this.wall = startCelsius;
    this.sensor = startCelsius;
  }

  /** What is asked of the control during a step. */
  public enum Demand {
    /** Heaters off, whatever the setting. */
    OFF,
    /** Thermostat. */
    HOLD,
    /** Elements on throughout. */
    FULL
  }

  /** Whether heat escapes. */
  public enum Door {
    SHUT,
    OPEN
  }

  /** Heat that the food takes during a step, W. */
  public record FoodHeat(double fromAir, double fromWall, double direct) {
    public static final FoodHeat NONE = new FoodHeat(0, 0, 0);
  }

  /** One step of explicit Euler; {@code dt} well below the fastest time constant (about 30 s). */
  public void step(
      double dt,
      Demand demand,
      double setCelsius,
      double volts,
      double room,
      Door door,
      FoodHeat food) {
    Oven.Cabinet c = oven.cabinet();
    meter(demand, setCelsius);
    drawnWatts = on ? Mains.watts(oven.heater().ratedWatts(), volts) : 0;
    elementWatts += dt * (drawnWatts - elementWatts) / oven.heater().lagSeconds();
    double leak = c.leakWattsPerKelvin() + (door == Door.OPEN ? OPEN_DOOR_WATTS_PER_KELVIN : 0);
    double share = oven.heater().airShare();
    double exchange = c.exchangeWattsPerKelvin() * (wall - air);
    double intoAir = share * elementWatts + exchange - leak * (air - room) - food.fromAir();
    double intoWall =
        (1 - share) * elementWatts
            - exchange
            - c.lossWattsPerKelvin() * (wall - room)
            - food.fromWall()
            - food.direct();
    air += dt * intoAir / c.airHeatCapacity();
    wall += dt * intoWall / c.wallHeatCapacity();
    Oven.Thermostat t = oven.thermostat();
    double felt = (1 - t.wallShare()) * air + t.wallShare() * wall;
    sensor += dt * (felt - sensor) / t.sensorLagSeconds();
    clock += dt;
  }

  private void meter(Demand demand, double setCelsius) {
    if (demand != Demand.HOLD) {
      on = demand == Demand.FULL;
      return;
    }
    Oven.Thermostat t = oven.thermostat();
    double lacking = setCelsius + t.biasKelvin() - sensor;
    if (t.control() == Oven.Thermostat.Control.DUTY) {
      double duty = Math.min(1, Math.max(0, 0.5 + lacking / t.bandKelvin()));
      on = clock % DUTY_PERIOD < duty * DUTY_PERIOD;
    } else if (lacking > t.bandKelvin() / 2) {
      on = true;
    } else if (lacking < -t.bandKelvin() / 2) {
      on = false;
    }
  }

  public double air() {
    return air;
  }

  public double wall() {
    return wall;
  }

  public double sensor() {
    return sensor;
  }

  /** Power from the mains, W. */
  public double drawnWatts() {
    return drawnWatts;
  }

  /** Radiation of the elements on the plane of the rack, W in all. */
  public double beamWatts() {
    return oven.heater().foodShare() * elementWatts;
  }

  /** Whether the oven would say now that it is ready. */
  public boolean saysReady(double setCelsius) {
    Oven.Thermostat t = oven.thermostat();
    return sensor - t.biasKelvin() >= setCelsius - t.signalLeadKelvin();
  }

  /** The hottest outer side. */
  public double skin(double room) {
    return room + oven.cabinet().skinShare() * (wall - room);
  }
}
