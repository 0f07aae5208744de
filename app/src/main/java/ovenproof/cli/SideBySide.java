package ovenproof.cli;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;

/**
 * Large pieces of work done two at a time, their outcomes taken in order: both cores are busy, and
 * no more than two are held at once, however many there are.
 */
final class SideBySide {

  private static final int AT_ONCE = Math.min(2, Runtime.getRuntime().availableProcessors());

  private SideBySide() {}

  /** Takes one outcome; {@code get} throws what the work threw. */
  @FunctionalInterface
  interface Taker<T> {
    void take(int index, Outcome<T> outcome);
  }

  /** What came of one piece of work. */
  @FunctionalInterface
  interface Outcome<T> {
    T get();
  }

  /**
   * Does the work.
   *
   * @param before called with each number, in order, before its outcome is waited for
   * @param taker called with each outcome, in order, on the calling thread
   */
  static <T> void run(int count, IntFunction<T> work, IntConsumer before, Taker<T> taker) {
    ExecutorService pool = Executors.newFixedThreadPool(AT_ONCE);
    try {
      Deque<Future<T>> ahead = new ArrayDeque<>();
      int submitted = 0;
      for (int i = 0; i < count; i++) {
        while (submitted < count && ahead.size() < AT_ONCE) {
          int index = submitted++;
          Callable<T> task = () -> work.apply(index);
          ahead.add(pool.submit(task));
        }
        before.accept(i);
        Future<T> next = ahead.remove();
        taker.take(i, () -> outcome(next));
      }
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T> T outcome(Future<T> future) {
    try {
      return future.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException known) {
        throw known;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    }
  }
}
