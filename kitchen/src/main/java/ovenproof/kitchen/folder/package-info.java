/**
 * Writes what the kitchen did as a campaign folder, and the truth beside it.
 *
 * <p>Start with {@link ovenproof.kitchen.folder.CampaignWriter}.
 *
 * <p>The trap: only what an instrument showed or a person noticed may go into the tables. True
 * values go into {@code truth.json} alone.
 */
@org.jspecify.annotations.NullMarked
package ovenproof.kitchen.folder;
