/**
 * The review site: a folder of plain pages that needs no server and no script.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.site.ReviewSite} makes all pages; {@link
 * ovenproof.publish.site.SiteFolder} writes them so that a reader never meets half a site.
 *
 * <p><b>The trap.</b> Names and notes are written by people: everything goes through the escaping
 * of the element builder, file names are made from keys that were checked, and nobody's name who
 * cooked or tasted is printed.
 */
@NullMarked
package ovenproof.publish.site;

import org.jspecify.annotations.NullMarked;
