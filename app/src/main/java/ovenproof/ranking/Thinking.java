package ovenproof.ranking;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import ovenproof.verdict.question.QuestionAnswer;

/**
 * Answers of one version of a campaign: each is worked out once, in the background, while the page
 * says so. Safe for threads.
 */
final class Thinking {
  private static final long MOMENT_MILLIS = 900;

  private final Map<String, CompletableFuture<QuestionAnswer>> answers = new ConcurrentHashMap<>();

  /**
   * The answer, or nothing when it takes longer than a moment.
   *
   * @param question with its particulars; the same words have the same answer
   */
  Optional<QuestionAnswer> answer(String question, Supplier<QuestionAnswer> work) {
    CompletableFuture<QuestionAnswer> begun =
        answers.computeIfAbsent(question, q -> CompletableFuture.supplyAsync(work));
    try {
      return Optional.of(begun.get(MOMENT_MILLIS, TimeUnit.MILLISECONDS));
    } catch (TimeoutException notYet) {
      return Optional.empty();
    } catch (ExecutionException failed) {
      answers.remove(question);
      if (failed.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw new CompletionException(failed.getCause());
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
