/**
 * What a campaign's tastings say, as pages.
 *
 * <p><b>Where to start.</b> {@link ovenproof.panel.CampaignPanel} turns a campaign's marks into a
 * panel and analyses it; {@link ovenproof.panel.RatingPicture} draws one attribute.
 *
 * <p><b>The trap.</b> Twelve people who eat from one batch are one observation of the appliance.
 * Names of tasters are for the lead: no page that may be published holds them.
 *
 * <p>Computes no statistics itself: they are in {@code ovenproof.core.panel}.
 */
@NullMarked
package ovenproof.panel;

import org.jspecify.annotations.NullMarked;
