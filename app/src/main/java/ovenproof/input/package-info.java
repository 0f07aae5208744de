/**
 * What is wrong with what a person gave us, and where.
 *
 * <p><b>Where to start.</b> A reader collects {@link ovenproof.input.Problem}s in a {@link
 * ovenproof.input.Problems} and goes on, so that one pass reports all of them.
 *
 * <p><b>The trap.</b> The first problem is rarely the only one, and seldom the cause: never stop at
 * it, never guess past an ambiguity, never keep half of what was read.
 */
@NullMarked
package ovenproof.input;

import org.jspecify.annotations.NullMarked;
