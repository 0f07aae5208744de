/**
 * Footage: markers of each clip from what happened at the bench, and chapters from a cue list.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.footage.ClipMarkers} and {@link
 * ovenproof.publish.footage.Chapters}.
 *
 * <p><b>The trap.</b> Every camera has a clock of its own: a marker is only as good as the offset
 * that was noted for it.
 */
@NullMarked
package ovenproof.publish.footage;

import org.jspecify.annotations.NullMarked;
