/**
 * The small statistics that every measure needs: mean and deviation, quantiles, intervals for
 * shares, the studentized range, adjustment for many comparisons, letters, power.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.statistics.Descriptive} for a handful of numbers,
 * {@link ovenproof.core.statistics.WilsonInterval} for a share, {@link
 * ovenproof.core.statistics.Distributions} for the tables in the back of a textbook.
 *
 * <p><b>The trap.</b> n is the number of independent observations. Samples of a trace, pixels of a
 * photo and people who eat from one tray are many numbers and one observation; a standard error
 * from them is far too small. Nothing here can know that: the caller decides what n is.
 *
 * <p>Depends on no other package of the program.
 */
@NullMarked
package ovenproof.core.statistics;

import org.jspecify.annotations.NullMarked;
