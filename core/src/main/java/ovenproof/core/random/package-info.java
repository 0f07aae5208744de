/**
 * Random numbers that are the same tomorrow.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.random.RandomStreams}: a stored seed with a name
 * for every source of error; {@link ovenproof.core.random.ErrorSource} fills blocks of draws.
 *
 * <p><b>The trap.</b> One generator that is shared by several errors gives other numbers as soon as
 * a product joins, a test is dropped or a second thread helps. Here every source of error has its
 * own stream by its stable name, and every block of 500 draws its own part of it: what else is
 * computed, in which order and by how many threads, does not matter.
 *
 * <p>Depends on no other package of the program.
 */
@NullMarked
package ovenproof.core.random;

import org.jspecify.annotations.NullMarked;
