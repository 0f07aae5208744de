/**
 * What a tasting can and cannot tell.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.panel.PanelAnalysis} takes {@link
 * ovenproof.core.panel.Rating}s and answers per attribute: adjusted means, tests, groups, persons.
 * {@link ovenproof.core.panel.PanelMeans} gives the same means as measurements for the verdict.
 *
 * <p><b>The trap.</b> Twelve people who eat from one batch are one observation of the oven. The
 * people tell how sure we are of that batch; only further batches tell how sure we are of the oven.
 * Products are therefore tested against the scatter of batches and of people's disagreement, never
 * against the scatter of single marks.
 *
 * <p>Knows no files: tables arrive as cells ({@link ovenproof.core.panel.table}).
 */
@NullMarked
package ovenproof.core.panel;

import org.jspecify.annotations.NullMarked;
