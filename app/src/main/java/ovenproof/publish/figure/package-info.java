/**
 * How a number is printed and spoken, in both unit systems.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.figure.Figures}.
 *
 * <p><b>The trap.</b> Rounding twice: 74.4 °C is 166 °F, but the 74 °C on the page would give 165.
 * A value is converted from what is stored and rounded once, last.
 */
@NullMarked
package ovenproof.publish.figure;

import org.jspecify.annotations.NullMarked;
