/**
 * What comes in as a photograph: files of several kinds become upright pictures, with the time they
 * were taken and the labels seen in them.
 *
 * <p><b>Where to start.</b> {@link ovenproof.evidence.photo.PhotoFile} opens one file; {@link
 * ovenproof.evidence.photo.PhotoSorting} puts many to their runs.
 *
 * <p><b>The trap.</b> What a decoder calls success need not be the picture: a file cut off half way
 * decodes to grey, CMYK to a negative, and a picture of a few kilobytes can unfold to gigabytes. So
 * the header is read and judged first, and the decoder's warnings are errors here. Place and names
 * in the metadata are never kept.
 *
 * <p><b>Must not use</b> campaigns or methods: a photograph is opened before anyone knows what it
 * shows.
 */
@NullMarked
package ovenproof.evidence.photo;

import org.jspecify.annotations.NullMarked;
