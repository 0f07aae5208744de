/**
 * Whether this year's numbers may stand beside last year's.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.years.SelfStartingChart} watches a reference
 * appliance over sessions, {@link ovenproof.core.years.SessionCorrection} says how much of a drift
 * to take off, {@link ovenproof.core.years.PoolBridge} joins two pools by specimens that were
 * tested in both.
 *
 * <p><b>The trap.</b> Limits fixed after five sessions give a false alarm in a third to a half of
 * all twenty-session years. A chart that starts must allow for how little it knows, and taking off
 * the whole drift of a session adds the noise of its few reference runs to every product.
 *
 * <p><b>Must not depend on</b> scoring.
 */
@NullMarked
package ovenproof.core.years;

import org.jspecify.annotations.NullMarked;
