/**
 * What a heating curve tells of the appliance behind it: how hot it can get, how fast, and what
 * stops it.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.thermal.HeatingModel#fit} takes the heat-up and
 * gives the ceiling temperature, the time constants and the time to any setting, each with its
 * interval – or the reason why the record does not carry them.
 *
 * <p><b>The trap.</b> The residuals of a fitted curve are not independent, so ordinary intervals
 * are several times too narrow; and a first-order curve fitted to an early piece of a slower one
 * fits beautifully and is wrong by a quarter. Hence the autoregressive residuals and the refusals.
 *
 * <p><b>Must not use</b> files, clocks, databases or frameworks.
 */
@NullMarked
package ovenproof.core.thermal;

import org.jspecify.annotations.NullMarked;
