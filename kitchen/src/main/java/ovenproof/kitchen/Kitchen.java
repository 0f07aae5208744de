package ovenproof.kitchen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import ovenproof.kitchen.bench.Calendar;
import ovenproof.kitchen.bench.Luck;
import ovenproof.kitchen.bench.Ovens;
import ovenproof.kitchen.bench.Progress;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.RunSimulation;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.folder.CampaignWriter;
import ovenproof.kitchen.folder.Photographs;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Oven;

/**
 * The Quarry Street test kitchen, which does not exist: eight ovens, six tests, three replicates,
 * six tasters.
 *
 * <p>Everything follows from the seed, whatever the number of threads.
 */
public final class Kitchen {

  /** The demo's seed: the day of its first session. Never tuned. */
  public static final long DEMO_SEED = 20_260_302;

  private static final double WANTED_LIGHTNESS = 65;
  private static final double LIGHTNESS_PER_PRESET = 3.2;

  private final long seed;
  private final int threads;

  private Kitchen(long seed, int threads) {
    this.seed = seed;
    this.threads = threads;
  }

  public static Kitchen demo() {
    return ofSeed(DEMO_SEED);
  }

  /** The same kitchen with other luck. */
  public static Kitchen ofSeed(long seed) {
    return new Kitchen(seed, Runtime.getRuntime().availableProcessors());
  }

  /** The same kitchen at work with so many hands; what it makes is the same. */
  public Kitchen withThreads(int count) {
    if (count < 1) {
      throw new IllegalArgumentException("count must be at least 1, found " + count);
    }
    return new Kitchen(seed, count);
  }

  /**
   * Writes a whole campaign folder with {@code truth.json}.
   *
   * @param folder made if missing; files of the same names are replaced
   * @throws IOException if it cannot be written
   */
  public void writeTo(Path folder, Progress progress) throws IOException {
    writeTo(folder, Photographs.TAKEN, progress);
  }

  /** As {@link #writeTo(Path, Progress)}, perhaps without pictures. */
  public void writeTo(Path folder, Photographs photographs, Progress progress) throws IOException {
    ExecutorService hands = Executors.newFixedThreadPool(threads);
    try {
      Season season = season(hands, progress);
      new CampaignWriter(folder, Chance.ofSeed(seed), season, hands, progress).write(photographs);
    } finally {
      hands.shutdownNow();
    }
  }

  /** Plays everything without writing anything. */
  public Season season() {
    ExecutorService hands = Executors.newFixedThreadPool(threads);
    try {
      return season(hands, Progress.SILENT);
    } finally {
      hands.shutdownNow();
    }
  }

  private Season season(ExecutorService hands, Progress progress) {
    Chance chance = Chance.ofSeed(seed);
    List<Oven> ovens = Ovens.all();
    Calendar calendar = new Calendar(ovens, chance.named("calendar"));
    List<RunResult> trials = play(calendar.trials(), chance, hands, "trials", progress);
    Map<String, Integer> presets = presets(trials, chance.named("cook's eye"));
    List<RunResult> runs = new ArrayList<>(trials);
    runs.addAll(play(calendar.runs(presets), chance, hands, "runs", progress));
    List<RunResult> noiseless = all(noiselessPlans(ovens, presets), hands, "truth", progress);
    return new Season(ovens, presets, runs, noiseless);
  }

  /** The cook looks at the trial's toast and turns the preset by what is missing. */
  private static Map<String, Integer> presets(List<RunResult> trials, Chance eye) {
    Map<String, Integer> presets = new TreeMap<>();
    for (RunResult trial : trials) {
      double browning = trial.batches().get(0).meanBrowning();
      double seen = TestKind.TOAST.colour().at(browning).lightness() + eye.gaussian(0, 1);
      long steps = Math.round((seen - WANTED_LIGHTNESS) / LIGHTNESS_PER_PRESET);
      presets.put(trial.plan().oven().id(), (int) Math.min(7, Math.max(1, 4 + steps)));
    }
    return presets;
  }

  private static List<RunResult> play(
      List<RunPlan> plans, Chance chance, ExecutorService hands, String what, Progress progress) {
    List<Played> played = new ArrayList<>();
    for (RunPlan plan : plans) {
      played.add(new Played(plan, Luck.of(chance.named("luck " + plan.id()))));
    }
    return all(played, hands, what, progress);
  }

  private static List<Played> noiselessPlans(List<Oven> ovens, Map<String, Integer> presets) {
    List<Played> played = new ArrayList<>();
    for (TestKind test : TestKind.values()) {
      for (Oven oven : ovens) {
        played.add(
            new Played(
                RunPlan.noiseless(oven, test, presets.getOrDefault(oven.id(), 4)), Luck.none()));
      }
    }
    return played;
  }

  private record Played(RunPlan plan, Luck luck) {}

  private static List<RunResult> all(
      List<Played> plans, ExecutorService hands, String what, Progress progress) {
    AtomicInteger done = new AtomicInteger();
    List<Future<RunResult>> futures = new ArrayList<>();
    for (Played played : plans) {
      futures.add(
          hands.submit(
              () -> {
                RunResult result = RunSimulation.play(played.plan(), played.luck());
                progress.reached(what, done.incrementAndGet(), plans.size());
                return result;
              }));
    }
    List<RunResult> results = new ArrayList<>();
    for (Future<RunResult> future : futures) {
      results.add(finished(future));
    }
    return results;
  }

  private static RunResult finished(Future<RunResult> future) {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while the kitchen was at work", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a run of the kitchen failed", e.getCause());
    }
  }
}
