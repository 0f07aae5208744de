package ovenproof.kitchen.bench;

import java.util.List;
import ovenproof.kitchen.physics.Factory;
import ovenproof.kitchen.physics.HeatField;
import ovenproof.kitchen.physics.Oven;
import ovenproof.kitchen.physics.Oven.Airflow;
import ovenproof.kitchen.physics.Oven.Cabinet;
import ovenproof.kitchen.physics.Oven.Heater;
import ovenproof.kitchen.physics.Oven.Thermostat;
import ovenproof.kitchen.physics.Oven.Thermostat.Control;
import ovenproof.kitchen.physics.Oven.ToastProgram;
import ovenproof.kitchen.physics.Oven.ToastProgram.ResidualHeat;

/**
 * The eight invented ovens. Each is a set of physical parameters; nothing here says how well it
 * does.
 */
public final class Ovens {

  private static final double SET = 230;

  private Ovens() {}

  /** All eight, in order of their names' keys in the campaign. */
  public static List<Oven> all() {
    Oven alder = alder();
    return List.of(
        alder,
        siskin(),
        rowan(),
        alder.mirrored("hornbeam", "Hornbeam"),
        plover(),
        larch(),
        whimbrel(),
        dunnock());
  }

  /** Well made: fan, duty control, even field. Hornbeam is the same inside, mirrored. */
  private static Oven alder() {
    return Factory.adjusted(
        new Oven(
            "alder",
            "Alder",
            new Cabinet(22, 620, 4900, 15, 4.1, 0.5, 0.27),
            new Heater(1780, 1800, 0.45, 0.52, 0.52, 22),
            new Thermostat(Control.DUTY, 0, 14, 14, 0.25, 4),
            new HeatField(2.5, 2, 0, 0, 0, 1, 0.10),
            new Airflow(22),
            new ToastProgram(366, 24, ResidualHeat.COMPENSATED)),
        SET,
        1);
  }

  /** Good, but its toast program is a plain timer and its signal comes early. */
  private static Oven siskin() {
    return Factory.adjusted(
        new Oven(
            "siskin",
            "Siskin",
            new Cabinet(20, 560, 5200, 14, 4.3, 0.6, 0.30),
            new Heater(1690, 1700, 0.44, 0.52, 0.55, 24),
            new Thermostat(Control.DUTY, 0, 18, 18, 0.25, 18),
            new HeatField(-4, 3, 0, 0, 0, 1, 0.16),
            new Airflow(20),
            new ToastProgram(368, 22, ResidualHeat.IGNORED)),
        SET,
        -4);
  }

  /** A hinge that leaks: the back left corner stays cold. */
  private static Oven rowan() {
    return Factory.adjusted(
        new Oven(
            "rowan",
            "Rowan",
            new Cabinet(23, 600, 5600, 13, 4.5, 0.9, 0.30),
            new Heater(1720, 1800, 0.44, 0.50, 0.5, 25),
            new Thermostat(Control.HYSTERESIS, 0, 8, 16, 0.3, 8),
            new HeatField(3, -3, -46, -0.8, 0.8, 0.5, 0.15),
            new Airflow(20),
            new ToastProgram(430, 26, ResidualHeat.COMPENSATED)),
        SET,
        3);
  }

  /** Its dial tells 18 K too little. */
  private static Oven plover() {
    return Factory.adjusted(
        new Oven(
            "plover",
            "Plover",
            new Cabinet(21, 600, 5300, 14, 4.2, 0.6, 0.31),
            new Heater(1740, 1750, 0.44, 0.50, 0.52, 24),
            new Thermostat(Control.HYSTERESIS, 0, 9, 16, 0.3, 10),
            new HeatField(4, -4, 0, 0, 0, 1, 0.18),
            new Airflow(20),
            new ToastProgram(372, 22, ResidualHeat.IGNORED)),
        SET,
        18);
  }

  /** 29 litres behind thin walls on 1040 W. */
  private static Oven larch() {
    return Factory.adjusted(
        new Oven(
            "larch",
            "Larch",
            new Cabinet(29, 740, 7200, 13, 5.6, 1.2, 0.33),
            new Heater(1040, 1150, 0.42, 0.46, 0.5, 30),
            new Thermostat(Control.HYSTERESIS, 0, 14, 24, 0.3, 25),
            new HeatField(5, 6, 0, 0, 0, 1, 0.24),
            new Airflow(10),
            new ToastProgram(560, 30, ResidualHeat.IGNORED)),
        180,
        -2);
  }

  /** Heavy elements and a slow sensor on the wall: it shoots past and swings. */
  private static Oven whimbrel() {
    return Factory.adjusted(
        new Oven(
            "whimbrel",
            "Whimbrel",
            new Cabinet(19, 520, 4700, 12, 3.9, 0.6, 0.40),
            new Heater(1800, 1800, 0.46, 0.50, 0.56, 75),
            new Thermostat(Control.HYSTERESIS, 0, 16, 60, 0.55, 12),
            new HeatField(-5, 5, 0, 0, 0, 1, 0.30),
            new Airflow(17),
            new ToastProgram(312, 20, ResidualHeat.IGNORED)),
        SET,
        2);
  }

  /** Small, plain, cheap; slow but honest. */
  private static Oven dunnock() {
    return Factory.adjusted(
        new Oven(
            "dunnock",
            "Dunnock",
            new Cabinet(17, 520, 4600, 12, 4.0, 0.8, 0.33),
            new Heater(1380, 1400, 0.44, 0.50, 0.48, 28),
            new Thermostat(Control.HYSTERESIS, 0, 12, 22, 0.3, 14),
            new HeatField(4, 7, 0, 0, 0, 1, 0.22),
            new Airflow(16),
            new ToastProgram(425, 24, ResidualHeat.IGNORED)),
        SET,
        -7);
  }
}
