/**
 * Cards for the screen: 1920 × 1080, transparent ground, an opaque plate, text as outlines.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.card.CardDeck} draws the cards of an edition;
 * {@link ovenproof.publish.card.CardFolder} writes them and keeps the register of those handed out.
 *
 * <p><b>The trap.</b> A card outlives the figure on it. Each carries the verdict's version and a
 * fingerprint of what it shows, so that one that was handed out and has changed since can be named.
 */
@NullMarked
package ovenproof.publish.card;

import org.jspecify.annotations.NullMarked;
