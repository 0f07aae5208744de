package ovenproof.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskCampaign;
import ovenproof.desk.StoredEntry;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureRegistry;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.measure.MeasurementCache;
import ovenproof.measure.Progress;
import ovenproof.method.Method;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;
import ovenproof.verdict.VerdictService.Scored;

/**
 * A campaign with its measurements and verdict, computed once per version of it. Safe for threads.
 */
public final class Workbench {
  private static final int KEPT = 8;
  private static final long MOMENT_MILLIS = 700;

  private final Desk desk;
  private final MeasureService measures;
  private final VerdictService verdicts = new VerdictService(2);
  private final Map<String, CompletableFuture<Sheet>> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, CompletableFuture<Sheet>> eldest) {
          return size() > KEPT;
        }
      };

  private final Map<String, MethodLook> looks =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, MethodLook> eldest) {
          return size() > 2 * KEPT;
        }
      };

  public Workbench(Desk desk) {
    this.desk = desk;
    this.measures =
        new MeasureService(
            MeasureRegistry.all(),
            MeasurementCache.inFolder(desk.location().folder().resolve("derived")));
  }

  /** Counts what was measured. */
  private static final class Steps implements Progress {
    private final AtomicInteger done = new AtomicInteger();
    private volatile int total;

    @Override
    public void begin(int steps) {
      total = steps;
    }

    @Override
    public void step() {
      done.incrementAndGet();
    }
  }

  /** One version of a campaign; measured and scored when first asked. */
  public final class Sheet {
    private final DeskCampaign at;
    private final Campaign campaign;
    private final Steps steps = new Steps();
    private @Nullable CompletableFuture<Measured> measuring;
    private final Map<Class<?>, Object> derived = new ConcurrentHashMap<>();
    private @Nullable CompletableFuture<Optional<Scored>> scoring;

    private Sheet(DeskCampaign at, Campaign campaign) {
      this.at = at;
      this.campaign = campaign;
    }

    public DeskCampaign at() {
      return at;
    }

    public Campaign campaign() {
      return campaign;
    }

    /** The campaign's entries in order of receipt. */
    public List<StoredEntry> entries() {
      return desk.entries(at.id());
    }

    /** What pages fold from this version of the campaign, folded once. */
    public <T> T derived(Class<T> kind, Function<Campaign, T> fold) {
      return kind.cast(derived.computeIfAbsent(kind, k -> fold.apply(campaign)));
    }

    public Measured measured() {
      return begun().join();
    }

    /** Begins measuring in the background, once. */
    private synchronized CompletableFuture<Measured> begun() {
      CompletableFuture<Measured> known = measuring;
      if (known == null) {
        known =
            CompletableFuture.supplyAsync(
                () -> measures.measure(campaign, desk.evidenceOf(at.id()), steps));
        measuring = known;
      }
      return known;
    }

    /**
     * Whether the measurements are there, after at most a moment. Pages that need them ask first
     * and show how far the work is instead of keeping a person waiting.
     */
    public boolean ready() {
      return within(begun());
    }

    /** Whether the verdict is there, likewise. */
    public boolean scored() {
      return within(scoring());
    }

    public int stepsDone() {
      return steps.done.get();
    }

    public int stepsInAll() {
      return steps.total;
    }

    /** Empty when nothing can be scored yet. */
    public Optional<Verdict> verdict() {
      return basis().map(Scored::verdict);
    }

    /** The verdict with what it was computed from, for the questions about it; empty likewise. */
    public Optional<Scored> basis() {
      return result(scoring());
    }

    private synchronized CompletableFuture<Optional<Scored>> scoring() {
      CompletableFuture<Optional<Scored>> known = scoring;
      if (known == null) {
        boolean nothing = campaign.products().isEmpty() || campaign.method().tests().isEmpty();
        known =
            nothing
                ? CompletableFuture.completedFuture(Optional.empty())
                : begun().thenApplyAsync(m -> Optional.of(verdicts.score(campaign, m)));
        scoring = known;
      }
      return known;
    }

    /** Measures a changed campaign; what did not change is taken from the cache. */
    public Measured measure(Campaign changed) {
      return measures.measure(changed, desk.evidenceOf(at.id()));
    }

    /** Scores a changed campaign; nothing is kept. */
    public Scored score(Campaign changed) {
      return verdicts.score(changed, measure(changed));
    }
  }

  /** The desk's other campaigns that may stand beside one, oldest first. */
  public List<Sheet> others(String id) {
    return desk.campaigns().stream()
        .filter(c -> !c.id().equals(id))
        .sorted(Comparator.comparing(DeskCampaign::createdAt))
        .map(c -> sheet(c.id()))
        .toList();
  }

  /** Whether work is done, failed or not, after at most a moment. */
  static boolean within(CompletableFuture<?> work) {
    try {
      work.get(MOMENT_MILLIS, TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException notYet) {
      return false;
    } catch (ExecutionException failed) {
      return true;
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /** Reads the newest campaigns in the background, so that the first page finds them read. */
  void warm() {
    CompletableFuture.runAsync(
        () -> desk.campaigns().stream().limit(KEPT).forEach(c -> sheet(c.id())));
  }

  /** The newest version; read once, however many ask for it at the same time. */
  public Sheet sheet(String id) {
    DeskCampaign at = desk.find(id).orElseThrow(() -> noSuch(id));
    String key = id + "@" + at.version();
    CompletableFuture<Sheet> mine = new CompletableFuture<>();
    CompletableFuture<Sheet> known;
    synchronized (kept) {
      known = kept.putIfAbsent(key, mine);
    }
    return known == null ? read(at, key, mine) : result(known);
  }

  private Sheet read(DeskCampaign at, String key, CompletableFuture<Sheet> reading) {
    try {
      Sheet fresh = new Sheet(at, desk.load(at.id()));
      reading.complete(fresh);
      return fresh;
    } catch (RuntimeException failure) {
      synchronized (kept) {
        kept.remove(key);
      }
      reading.completeExceptionally(failure);
      throw failure;
    }
  }

  /** What a work came to, or the failure it ended with. */
  private static <T> T result(CompletableFuture<T> work) {
    try {
      return work.join();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw failed;
    }
  }

  /**
   * What another method would do to this campaign's verdict, and to those of the desk's other
   * campaigns under a method of the same key. Begun once per text; nothing is saved.
   */
  public MethodLook look(String id, String text, Method method) {
    List<DeskCampaign> moved = new ArrayList<>(List.of(sheet(id).at()));
    desk.campaigns().stream()
        .filter(c -> !c.id().equals(id))
        .filter(c -> sheet(c.id()).campaign().method().id().equals(method.id()))
        .limit(KEPT / 2)
        .forEach(moved::add);
    String versions = moved.stream().map(c -> c.id() + "@" + c.version()).toList().toString();
    String key =
        Integer.toHexString(versions.hashCode()) + Integer.toHexString(text.hashCode()) + "-look";
    synchronized (looks) {
      return looks.computeIfAbsent(key, k -> look(k, moved, method));
    }
  }

  private MethodLook look(String key, List<DeskCampaign> moved, Method method) {
    AtomicInteger done = new AtomicInteger();
    CompletableFuture<List<MethodLook.Pair>> pairs =
        CompletableFuture.supplyAsync(
            () -> {
              List<MethodLook.Pair> all = new ArrayList<>();
              for (DeskCampaign at : moved) {
                pair(at.id(), method).ifPresent(all::add);
                done.incrementAndGet();
              }
              return all;
            });
    return new MethodLook(key, moved.size(), done, pairs);
  }

  private Optional<MethodLook.Pair> pair(String id, Method method) {
    Sheet sheet = sheet(id);
    boolean nothing = sheet.campaign().runs().isEmpty() || method.tests().isEmpty();
    Optional<Verdict> now = nothing ? Optional.empty() : sheet.verdict();
    if (now.isEmpty()) {
      return Optional.empty();
    }
    Campaign changed = with(sheet.campaign(), method);
    Verdict then = verdicts.verdict(changed, measures.measure(changed, desk.evidenceOf(id)));
    return Optional.of(new MethodLook.Pair(sheet.campaign().info().title(), now.get(), then));
  }

  /** A look that was begun, while it is remembered. */
  public Optional<MethodLook> look(String key) {
    synchronized (looks) {
      return Optional.ofNullable(looks.get(key));
    }
  }

  private static Campaign with(Campaign c, Method method) {
    return new Campaign(
        c.info(),
        method,
        c.products(),
        c.leftOut(),
        c.specimens(),
        c.prices(),
        c.facts(),
        c.ratedSteps(),
        c.features(),
        c.settingCards(),
        c.plan(),
        c.runs(),
        c.notRun(),
        c.events(),
        c.deviations(),
        c.readings(),
        c.lots(),
        c.pieces(),
        c.ratings(),
        c.instruments(),
        c.calibrations(),
        c.traces(),
        c.photos(),
        c.evidence());
  }

  private static InputException noSuch(String id) {
    return new InputException(
        Problem.error(Place.of(id), "no such campaign", "a campaign of this desk", "go to Home"));
  }
}
