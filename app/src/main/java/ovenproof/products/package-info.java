/**
 * Pages: what is compared, and what is known of it before anything is cooked.
 *
 * <p><b>Where to start.</b> ProductsController, and the templates of the same name.
 *
 * <p><b>The trap.</b> A fact without its date and its measurer is an opinion; a candidate left out
 * without a reason is a gap.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.products;

import org.jspecify.annotations.NullMarked;
