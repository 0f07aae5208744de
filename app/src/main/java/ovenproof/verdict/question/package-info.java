/**
 * What a lead goes on to ask of a verdict: why, what if, and what changed.
 *
 * <p><b>Where to start.</b> {@link ovenproof.verdict.question.VerdictQuestions} has one method for
 * each question about one verdict, {@link ovenproof.verdict.question.YearsQuestions} for those that
 * reach over campaigns, methods or publications. Every answer is a {@link
 * ovenproof.verdict.question.QuestionAnswer}, the same for terminal, page and JSON.
 *
 * <p><b>The trap.</b> An answer explains the verdict, it does not replace it: nothing here is kept,
 * and a frozen verdict stays as it was. It must not read evidence; who needs campaigns measured
 * again hands over how.
 */
@NullMarked
package ovenproof.verdict.question;

import org.jspecify.annotations.NullMarked;
