package ovenproof.evidence.photo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Puts photographs that were dropped together to their runs: by the label in the frame, else by the
 * time against the runs. What is not certain is asked, never guessed.
 */
public final class PhotoSorting {

  /** Photographs are taken from just before a run ends to a good while after it. */
  private static final Duration BEFORE_END = Duration.ofMinutes(2);

  private static final Duration AFTER_END = Duration.ofMinutes(15);

  /** A photograph is noted so soon before or after it is taken. */
  private static final Duration NOTED = Duration.ofMinutes(1);

  /** When photographs are usually taken after a run's end: food steams before, dries later. */
  private static final Duration USUAL = Duration.ofMinutes(5);

  /** A label that is photographed so long after its run's end was probably left on the table. */
  private static final Duration LONG_AFTER = Duration.ofHours(2);

  /** Labelled photographs that a correction of the camera's clock needs. */
  private static final int LEAST_FOR_CLOCK = 3;

  private static final Duration WORTH_CORRECTING = Duration.ofMinutes(10);

  private PhotoSorting() {}

  /**
   * A photograph to be sorted.
   *
   * @param sha256 of its bytes
   * @param takenAt corrected for the camera's clock; null when unknown
   * @param labels texts of the labels in the frame
   */
  public record Shot(String file, String sha256, @Nullable Instant takenAt, List<String> labels) {}

  /**
   * A run with its times.
   *
   * @param end when its food came out for the last time
   * @param batches when the food of each batch came out; empty when nobody noted it
   * @param photographed when somebody noted that a photograph was taken
   */
  public record RunTime(
      String run, Instant start, Instant end, List<BatchEnd> batches, List<Instant> photographed) {
    public RunTime {
      batches = List.copyOf(batches);
      photographed = List.copyOf(photographed);
    }

    /** A run of one batch. */
    public RunTime(String run, Instant start, Instant end) {
      this(run, start, end, List.of(), List.of());
    }

    private boolean isNoted(Instant at) {
      return photographed.stream()
          .anyMatch(p -> Duration.between(p, at).abs().compareTo(NOTED) <= 0);
    }

    private boolean isAtEnd(Instant at) {
      return within(at, end) || batches.stream().anyMatch(b -> within(at, b.at()));
    }

    private static boolean within(Instant at, Instant end) {
      return !at.isBefore(end.minus(BEFORE_END)) && !at.isAfter(end.plus(AFTER_END));
    }

    /** The batch that came out last before the photograph; null when it is not known. */
    private @Nullable Integer batchAt(@Nullable Instant at) {
      return at == null
          ? null
          : batches.stream()
              .filter(b -> within(at, b.at()))
              .max(Comparator.comparing(BatchEnd::at))
              .map(BatchEnd::batch)
              .orElse(null);
    }
  }

  /** When the food of a batch came out. */
  public record BatchEnd(int batch, Instant at) {}

  /** How sure the place is. */
  public enum Certainty {
    /** The label in the frame names one run, and the time does not speak against it. */
    LABEL,
    /** Only one run was at its end at that time. */
    TIME,
    /** A person has to say. */
    ASK,
    /** The same bytes came before. */
    DUPLICATE
  }

  /**
   * Where a photograph belongs.
   *
   * @param run null when it has to be asked
   * @param batch told by the time alone; null when it does not tell one
   * @param candidates runs to choose from when asking, likeliest first
   * @param why in words
   */
  public record Sorted(
      Shot shot,
      Certainty certainty,
      @Nullable String run,
      @Nullable Integer batch,
      List<String> candidates,
      String why) {
    /** Batch and face, when a label in the frame says them of this run. */
    public java.util.Optional<RunLabel> label() {
      return shot.labels().stream()
          .flatMap(t -> RunLabel.read(t).stream())
          .filter(l -> l.run().equals(run))
          .findFirst();
    }
  }

  /** Sorts all of them, in the order given. */
  public static List<Sorted> sort(List<Shot> shots, List<RunTime> runs) {
    Duration ahead = clockAhead(shots, runs);
    Map<String, Shot> seen = new HashMap<>();
    List<Sorted> out = new ArrayList<>();
    for (Shot shot : shots) {
      Shot first = seen.putIfAbsent(shot.sha256(), shot);
      out.add(first == null ? place(corrected(shot, ahead), runs) : duplicate(shot, first));
    }
    return out;
  }

  /**
   * By how much the camera's clock is ahead of the bench's, told by photographs with a label: their
   * median distance to the run's end, less what is usual. Zero when it is small, when there are
   * fewer than three, or when they disagree.
   */
  public static Duration clockAhead(List<Shot> shots, List<RunTime> runs) {
    List<Duration> off = new ArrayList<>();
    for (Shot shot : shots) {
      List<RunTime> named = named(shot, runs);
      Instant at = shot.takenAt();
      if (at != null && named.size() == 1) {
        off.add(Duration.between(named.get(0).end(), at).minus(USUAL));
      }
    }
    off.sort(null);
    if (off.size() < LEAST_FOR_CLOCK) {
      return Duration.ZERO;
    }
    Duration median = off.get(off.size() / 2);
    long agree =
        off.stream().filter(d -> d.minus(median).abs().compareTo(WORTH_CORRECTING) <= 0).count();
    boolean worth = median.abs().compareTo(WORTH_CORRECTING) > 0 && 2 * agree > off.size();
    return worth ? median : Duration.ZERO;
  }

  private static Shot corrected(Shot shot, Duration ahead) {
    Instant at = shot.takenAt();
    return at == null || ahead.isZero()
        ? shot
        : new Shot(shot.file(), shot.sha256(), at.minus(ahead), shot.labels());
  }

  private static List<RunTime> named(Shot shot, List<RunTime> runs) {
    List<String> keys =
        shot.labels().stream().flatMap(t -> RunLabel.read(t).stream()).map(RunLabel::run).toList();
    return runs.stream().filter(r -> keys.contains(r.run())).toList();
  }

  private static Sorted duplicate(Shot shot, Shot first) {
    return new Sorted(
        shot, Certainty.DUPLICATE, null, null, List.of(), "the same picture as " + first.file());
  }

  private static Sorted place(Shot shot, List<RunTime> runs) {
    List<RunTime> named = named(shot, runs);
    if (named.size() == 1) {
      return byLabel(shot, named.get(0));
    }
    if (named.size() > 1) {
      return ask(
          shot,
          named,
          "the labels of "
              + named.size()
              + " runs are in the frame: say on the photo page which pieces are whose");
    }
    Instant at = shot.takenAt();
    if (at == null) {
      return ask(shot, runs, "no label in the frame and no time in the file");
    }
    List<RunTime> noted = runs.stream().filter(r -> r.isNoted(at)).toList();
    if (noted.size() == 1) {
      return byTime(shot, noted.get(0), "taken when a photograph of this run was noted");
    }
    List<RunTime> near = runs.stream().filter(r -> r.isAtEnd(at)).toList();
    if (near.size() == 1) {
      return byTime(shot, near.get(0), "taken at the end of this run");
    }
    return near.isEmpty()
        ? ask(shot, byDistance(at, runs), "taken when no run was at its end")
        : ask(shot, byDistance(at, near), near.size() + " runs were at their end at that time");
  }

  private static Sorted byTime(Shot shot, RunTime run, String why) {
    Integer batch = run.batchAt(shot.takenAt());
    return new Sorted(shot, Certainty.TIME, run.run(), batch, List.of(), why);
  }

  private static Sorted byLabel(Shot shot, RunTime run) {
    Instant at = shot.takenAt();
    if (at != null && at.isBefore(run.start())) {
      return ask(
          shot, List.of(run), "the label names this run, but it was taken before the run began");
    }
    if (at != null && Duration.between(run.end(), at).compareTo(LONG_AFTER) > 0) {
      return ask(
          shot,
          List.of(run),
          "the label names this run, but it was taken "
              + hours(Duration.between(run.end(), at))
              + " after its end: perhaps of another run or a redo");
    }
    return new Sorted(
        shot, Certainty.LABEL, run.run(), run.batchAt(at), List.of(), "its label is in the frame");
  }

  private static String hours(Duration time) {
    return time.toHours() < 48 ? time.toHours() + " h" : time.toDays() + " days";
  }

  private static List<RunTime> byDistance(Instant at, List<RunTime> runs) {
    return runs.stream()
        .sorted(Comparator.comparing(r -> Duration.between(r.end(), at).abs()))
        .toList();
  }

  private static Sorted ask(Shot shot, List<RunTime> candidates, String why) {
    return new Sorted(
        shot, Certainty.ASK, null, null, candidates.stream().map(RunTime::run).toList(), why);
  }
}
