/**
 * Calculations only: what a heating curve, a photograph, a rating table or a set of scores says,
 * and how sure one may be.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.measure.Measurement} is what every calculation
 * returns; {@link ovenproof.core.quantity.Quantity} is a number with its unit.
 *
 * <p><b>The trap.</b> A bare number has lost its uncertainty, its n and its origin; nothing public
 * here returns one where a reader might publish it.
 *
 * <p><b>Must not use</b> files, clocks, databases, HTTP, frameworks or mutable shared state.
 */
@NullMarked
package ovenproof.core;

import org.jspecify.annotations.NullMarked;
