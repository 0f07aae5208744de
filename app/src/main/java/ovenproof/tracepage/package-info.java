/**
 * What does a heating curve say? The pages of traces: one run, one logger's file, one test over all
 * products, and files that are looked at before they are kept.
 *
 * <p><b>Where to start.</b> {@link ovenproof.tracepage.HeatPicture} measures one place of a run and
 * says where on the curve each measure lies.
 *
 * <p><b>The trap.</b> A file is read anew for every page, by the answers that people gave to its
 * questions; a page that reads it without them shows other numbers than the verdict uses.
 *
 * <p>Must not depend on other pages: they are linked to by their addresses.
 */
@NullMarked
package ovenproof.tracepage;

import org.jspecify.annotations.NullMarked;
