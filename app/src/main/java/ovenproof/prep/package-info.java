/**
 * Pages: what is decided before the bench: how each product is set for each test, which runs are to
 * be done in which order, and which are not run and why.
 *
 * <p><b>Where to start.</b> SettingsController and PlanController; {@link ovenproof.prep.PlanOrder}
 * for the order.
 *
 * <p><b>The trap.</b> A product that always comes first meets the coldest kitchen: the order has to
 * turn from replicate to replicate.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.prep;

import org.jspecify.annotations.NullMarked;
