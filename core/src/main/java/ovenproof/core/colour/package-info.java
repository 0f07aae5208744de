/**
 * What colour a pixel is, in numbers that mean the same on every screen, and how far two colours
 * are apart for an eye.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.colour.Srgb} is what a file holds, {@link
 * ovenproof.core.colour.LinearRgb} is light that may be averaged and mixed, {@link
 * ovenproof.core.colour.Lab} is what is published, {@link ovenproof.core.colour.Ciede2000} is the
 * distance. {@link ovenproof.core.colour.LabTable} converts millions of pixels.
 *
 * <p><b>The trap.</b> CIELAB has no meaning without its white. Charts and print use D50, screens
 * D65, and a brown differs by about one L* between them; so a {@link ovenproof.core.colour.Lab}
 * carries its white, and mixing two of them is an error. The second trap is the {@link
 * ovenproof.core.colour.BrowningIndex}: it falls again towards burnt.
 *
 * <p><b>Must not use</b> anything else of the program.
 */
@NullMarked
package ovenproof.core.colour;

import org.jspecify.annotations.NullMarked;
