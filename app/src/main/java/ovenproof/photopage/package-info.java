/**
 * What does a photograph show? The pages of photographs: one picture with its outlines, which a
 * person may mend, and every picture of a test beside the others.
 *
 * <p><b>Where to start.</b> {@link ovenproof.photopage.PhotoShelf} opens a photograph, reads it as
 * its measures are read, and keeps what it drew.
 *
 * <p><b>The trap.</b> Pictures on pages are drawn anew and hold no metadata; the file itself may
 * tell where and by whom it was taken.
 *
 * <p>Must not depend on other pages: they are linked to by their addresses.
 */
@NullMarked
package ovenproof.photopage;

import org.jspecify.annotations.NullMarked;
