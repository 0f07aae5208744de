package ovenproof.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

class JobsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aJobEndsWithItsResult(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      desk.jobs().register("double", (job, running) -> job.input() + job.input());
      Job job = desk.jobs().submit("double", null, "ab", "lead");
      await(() -> !desk.jobs().find(job.id()).orElseThrow().isOpen());
      assertThat(desk.jobs().find(job.id()).orElseThrow())
          .returns(Job.State.DONE, Job::state)
          .returns("abab", Job::result);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aCancelledJobStopsAtItsNextStepAndCanBeBegunAgain(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      CountDownLatch begun = new CountDownLatch(1);
      CountDownLatch cancelled = new CountDownLatch(1);
      AtomicInteger times = new AtomicInteger();
      desk.jobs()
          .register(
              "long",
              (job, running) -> {
                if (times.incrementAndGet() > 1) {
                  return "second time";
                }
                begun.countDown();
                wait(cancelled);
                running.at(1, 2, "half");
                return "never";
              });
      Job job = desk.jobs().submit("long", null, "", "lead");
      begun.await(10, TimeUnit.SECONDS);
      desk.jobs().cancel(job.id());
      cancelled.countDown();
      await(() -> !desk.jobs().find(job.id()).orElseThrow().isOpen());
      assertThat(desk.jobs().find(job.id()).orElseThrow().state()).isEqualTo(Job.State.CANCELLED);
      desk.jobs().restart(job.id());
      await(() -> !desk.jobs().find(job.id()).orElseThrow().isOpen());
      assertThat(desk.jobs().find(job.id()).orElseThrow().result()).isEqualTo("second time");
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void whatRanWhenTheProgramStoppedIsBegunAgain(DatabaseKind kind) throws Exception {
    DeskLocation location = kind.location(folder);
    String id;
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      CountDownLatch begun = new CountDownLatch(1);
      desk.jobs()
          .register(
              "long",
              (job, running) -> {
                begun.countDown();
                while (true) {
                  running.at(1, 100, "at it");
                  Thread.onSpinWait();
                }
              });
      id = desk.jobs().submit("long", null, "", "lead").id();
      begun.await(10, TimeUnit.SECONDS);
    }
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      desk.jobs().register("long", (job, running) -> "finished after the restart");
      desk.jobs().resume();
      await(() -> !desk.jobs().find(id).orElseThrow().isOpen());
      assertThat(desk.jobs().find(id).orElseThrow().result())
          .isEqualTo("finished after the restart");
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void problemsOfTheInputBecomeTheMessage(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      desk.jobs()
          .register(
              "bad",
              (job, running) -> {
                throw new InputException(
                    Problem.error(Place.of("runs.csv"), "\"2o0\"", "a number", "write 200"));
              });
      Job job = desk.jobs().submit("bad", null, "", "lead");
      await(() -> !desk.jobs().find(job.id()).orElseThrow().isOpen());
      assertThat(desk.jobs().find(job.id()).orElseThrow().message())
          .isEqualTo("runs.csv: found \"2o0\", expected a number; write 200");
    }
  }

  private static void wait(CountDownLatch latch) {
    try {
      latch.await(10, TimeUnit.SECONDS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  static void await(BooleanSupplier condition) throws InterruptedException {
    for (int i = 0; i < 1000 && !condition.getAsBoolean(); i++) {
      Thread.sleep(10);
    }
    assertThat(condition.getAsBoolean()).as("ended within ten seconds").isTrue();
  }
}
