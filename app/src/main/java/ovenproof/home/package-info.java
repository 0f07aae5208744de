/**
 * Pages: where everything stands, and the shortest way to a first score.
 *
 * <p><b>Where to start.</b> HomeController, and the templates of the same name.
 *
 * <p><b>The trap.</b> A campaign that is begun by Start is an ordinary campaign: nothing is done
 * again later.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.home;

import org.jspecify.annotations.NullMarked;
