package ovenproof.web;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.verdict.Verdict;

/** What a changed method does to verdicts, computed in the background; nothing of it is saved. */
public final class MethodLook {
  private final String key;
  private final int total;
  private final AtomicInteger done;
  private final CompletableFuture<List<Pair>> pairs;

  MethodLook(String key, int total, AtomicInteger done, CompletableFuture<List<Pair>> pairs) {
    this.key = key;
    this.total = total;
    this.done = done;
    this.pairs = pairs;
  }

  /** A campaign's verdict under its own method and under the changed one. */
  public record Pair(String title, Verdict now, Verdict then) {}

  public String key() {
    return key;
  }

  public int total() {
    return total;
  }

  public int done() {
    return done.get();
  }

  /** Whether it is there, after at most a moment. */
  public boolean ready() {
    return Workbench.within(pairs);
  }

  /** Why there is no effect to show; empty when there is one. */
  public Optional<String> problem() {
    return Optional.ofNullable(cause());
  }

  private @Nullable String cause() {
    if (!pairs.isCompletedExceptionally()) {
      return null;
    }
    try {
      pairs.join();
      return null;
    } catch (java.util.concurrent.CompletionException failure) {
      return failure.getCause() instanceof InputException input
          ? String.valueOf(input.getMessage())
          : "The effect cannot be computed: " + failure.getCause();
    }
  }

  /** Empty when there is a problem, or no verdict that could move. */
  public List<Pair> pairs() {
    return pairs.isCompletedExceptionally() ? List.of() : pairs.join();
  }
}
