/**
 * What a probe can be checked against: thermocouple tables and the boiling point where one stands.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.thermocouple.BoilingPoint} for a check in boiling
 * water; {@link ovenproof.core.thermocouple.ThermocoupleType} for forces.
 *
 * <p><b>The trap.</b> Water boils at 99.97 °C at sea level and at 94.6 °C on 1,600 m: a probe that
 * shows 100 there reads 5 K high. Forces of junctions add; temperatures do not.
 */
@NullMarked
package ovenproof.core.thermocouple;

import org.jspecify.annotations.NullMarked;
