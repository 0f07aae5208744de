/**
 * The proof of a draft: which of its sentences the evidence supports.
 *
 * <p><b>Where to start.</b> {@link ovenproof.proof.Proofreader} takes a text and the facts of a
 * campaign and gives one {@link ovenproof.proof.Proof.Claim} per checkable statement.
 *
 * <p><b>The trap.</b> A number that happens to be right for another product is still wrong: a claim
 * is first attributed (to product, test, measure), by the words around it, the heading above it and
 * what was said before, and only then compared. Where the attribution is open, the finding is
 * "unclear", never a guess.
 *
 * <p><b>Must not</b> know how a verdict was computed; it reads what is published.
 */
@NullMarked
package ovenproof.proof;

import org.jspecify.annotations.NullMarked;
