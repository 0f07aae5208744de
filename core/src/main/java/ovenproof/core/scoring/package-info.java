/**
 * What a field of products is worth: value curves, gates, weights, a tree of scores with their
 * intervals.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.scoring.ScoringCase} is what goes in (the tree,
 * what was measured of each product, the gates), {@link ovenproof.core.scoring.Scoring} computes,
 * {@link ovenproof.core.scoring.ScoringResult} is what comes out. {@link
 * ovenproof.core.scoring.ValueCurve} turns a measurement into points, {@link
 * ovenproof.core.scoring.DisplayedScores} decides the digits that readers add up.
 *
 * <p><b>The trap.</b> Three things that look like a zero are not one: what is missing gives bounds,
 * what was not asked leaves its weight to its siblings, what a product cannot do scores what the
 * method declares. And an error that all products share (a probe that reads high) moves every score
 * and no difference: it must be drawn once for all of them.
 *
 * <p><b>Limit.</b> Where a curve peaks inside a measurement's interval, draws lie on one side of
 * the score. A criterion's interval is therefore the image of the measurement's interval; a total
 * takes its quantiles from draws, widened to hold its score, and covers less than 90 % when two or
 * more of its criteria sit on their peaks. Such totals carry a warning.
 *
 * <p><b>Must not depend on</b> the program's methods, campaigns or files.
 */
@NullMarked
package ovenproof.core.scoring;

import org.jspecify.annotations.NullMarked;
