/**
 * Which physical quantity is meant, in which unit, and how it is written for people.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.quantity.QuantityParser} reads what people write;
 * {@link ovenproof.core.quantity.Quantity} converts; {@link ovenproof.core.quantity.Rounding}
 * decides published digits.
 *
 * <p><b>The trap.</b> A temperature and a difference of temperatures are different quantities: 18
 * °F on a dial is −8 °C, a dial that is 18 °F off is 10 K off. They are different {@link
 * ovenproof.core.quantity.Dimension dimensions} here, and differences are written in K.
 */
@NullMarked
package ovenproof.core.quantity;

import org.jspecify.annotations.NullMarked;
