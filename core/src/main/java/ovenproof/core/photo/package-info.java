/**
 * What a photograph of baked food says about shade and evenness, and how sure one may be.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.photo.PhotoAnalyser} does the whole way from a
 * {@link ovenproof.core.photo.Picture} to pieces with their measures. Its parts, each usable alone:
 * {@link ovenproof.core.photo.ChartFinder} finds the 24-patch chart, {@link
 * ovenproof.core.photo.ChartCalibrator} turns camera values into published colours, {@link
 * ovenproof.core.photo.PieceFinder} outlines the food, {@link ovenproof.core.photo.PhotoMeasures}
 * measures one outline, {@link ovenproof.core.photo.CavityMap} separates oven from bread over
 * several batches, {@link ovenproof.core.photo.PieceClasses} sorts small pieces.
 *
 * <p><b>The trap.</b> The spread of pixels is mostly camera noise, and it grows with resolution.
 * Evenness is therefore the spread of block means of a fixed physical size. Without a scale in the
 * frame the block is a share of the piece, and two photographs are not comparable. The second trap:
 * one photograph of one tray shows the bread and the light as well as the oven.
 *
 * <p><b>Must not use</b> files or image decoders: a picture arrives here as upright pixels.
 */
@NullMarked
package ovenproof.core.photo;

import org.jspecify.annotations.NullMarked;
