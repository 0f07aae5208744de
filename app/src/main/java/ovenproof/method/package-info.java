/**
 * The method: what is cooked how, what is measured, and what a measurement is worth.
 *
 * <p><b>Where to start.</b> {@link ovenproof.method.Method}, the immutable document. Its first
 * level is the {@link ovenproof.method.TestPlan tests}; each has {@link ovenproof.method.MeasureUse
 * measures}, and a {@link ovenproof.method.Criterion criterion} turns one of them into points.
 *
 * <p><b>The trap.</b> Whoever changes a weight or a curve after seeing results decides the verdict.
 * A method is frozen at the first counted run; a change makes a new version.
 */
@NullMarked
package ovenproof.method;

import org.jspecify.annotations.NullMarked;
