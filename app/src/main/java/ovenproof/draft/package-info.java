/**
 * The text to be published: written in Markdown, with figures inserted by name, proofread as it is
 * written.
 *
 * <p><b>Where to start.</b> {@link ovenproof.draft.DraftReading} puts the figures of {@link
 * ovenproof.draft.FigureBook} into a draft and proofreads the result; {@link
 * ovenproof.draft.KeptDraft} is what the desk keeps.
 *
 * <p><b>The trap.</b> A text does not change when the data do. What each figure and each sentence
 * rested on is kept with the draft until a person has looked at the difference; saving the text
 * alone never hides it.
 *
 * <p><b>Must not</b> compute a figure: it prints what the edition prints.
 */
@NullMarked
package ovenproof.draft;

import org.jspecify.annotations.NullMarked;
