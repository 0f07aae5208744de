/**
 * Pages: runs: what happened, with its time, its files and its corrections.
 *
 * <p><b>Where to start.</b> BenchController, and the templates of the same name.
 *
 * <p><b>The trap.</b> The time of an event is the time on the device that saw it, not the time at
 * which it arrived.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.bench;

import org.jspecify.annotations.NullMarked;
