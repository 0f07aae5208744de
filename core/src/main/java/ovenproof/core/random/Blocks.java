package ovenproof.core.random;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;

/** Work on numbered blocks by one or more threads; each block writes to its own place only. */
public final class Blocks {

  private Blocks() {}

  /**
   * Runs the task for 0 … count − 1 and returns when all are done. The order is not defined.
   *
   * @param threads at least 1; 1 stays on the calling thread
   */
  public static void forEach(int count, int threads, IntConsumer task) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads must be at least 1, found " + threads);
    }
    if (threads == 1 || count < 2) {
      for (int i = 0; i < count; i++) {
        task.accept(i);
      }
      return;
    }
    AtomicInteger next = new AtomicInteger();
    AtomicReference<Throwable> failure = new AtomicReference<>();
    Runnable worker = () -> work(count, task, next, failure);
    List<Thread> helpers = new ArrayList<>();
    for (int t = 1; t < Math.min(threads, count); t++) {
      Thread helper = new Thread(worker, "draws-" + t);
      helper.setDaemon(true);
      helper.start();
      helpers.add(helper);
    }
    worker.run();
    helpers.forEach(Blocks::join);
    Throwable thrown = failure.get();
    if (thrown instanceof Error error) {
      throw error;
    }
    if (thrown != null) {
      throw (RuntimeException) thrown;
    }
  }

  private static void work(
      int count, IntConsumer task, AtomicInteger next, AtomicReference<Throwable> failure) {
    for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) {
      try {
        task.accept(i);
      } catch (RuntimeException | Error e) {
        failure.compareAndSet(null, e);
        next.set(count);
      }
    }
  }

  private static void join(Thread helper) {
    boolean interrupted = false;
    while (helper.isAlive()) {
      try {
        helper.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
