package ovenproof.evidence.photo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
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

  private PhotoSorting() {}

  /**
   * A photograph to be sorted.
   *
   * @param sha256 of its bytes
   * @param takenAt corrected for the camera's clock; null when unknown
   * @param labels texts of the labels in the frame
   */
  public record Shot(String file, String sha256, @Nullable Instant takenAt, List<String> labels) {}

  /** A run with its time. */
  public record RunTime(String run, Instant start, Instant end) {}

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
   * @param candidates runs to choose from when asking, likeliest first
   * @param why in words
   */
  public record Sorted(
      Shot shot, Certainty certainty, @Nullable String run, List<String> candidates, String why) {}

  /** Sorts all of them, in the order given. */
  public static List<Sorted> sort(List<Shot> shots, List<RunTime> runs) {
    Map<String, Shot> seen = new HashMap<>();
    List<Sorted> out = new ArrayList<>();
    for (Shot shot : shots) {
      Shot first = seen.putIfAbsent(shot.sha256(), shot);
      out.add(first == null ? place(shot, runs) : duplicate(shot, first));
    }
    return out;
  }

  private static Sorted duplicate(Shot shot, Shot first) {
    return new Sorted(
        shot, Certainty.DUPLICATE, null, List.of(), "the same picture as " + first.file());
  }

  private static Sorted place(Shot shot, List<RunTime> runs) {
    List<RunTime> named = runs.stream().filter(r -> shot.labels().contains(r.run())).toList();
    if (named.size() == 1) {
      return byLabel(shot, named.get(0));
    }
    if (named.size() > 1) {
      return ask(shot, named, "the labels of " + named.size() + " runs are in the frame");
    }
    Instant at = shot.takenAt();
    if (at == null) {
      return ask(shot, runs, "no label in the frame and no time in the file");
    }
    List<RunTime> near = runs.stream().filter(r -> isAtEnd(at, r)).toList();
    if (near.size() == 1) {
      return new Sorted(
          shot, Certainty.TIME, near.get(0).run(), List.of(), "taken at the end of this run");
    }
    return near.isEmpty()
        ? ask(shot, byDistance(at, runs), "taken when no run was at its end")
        : ask(shot, byDistance(at, near), near.size() + " runs were at their end at that time");
  }

  private static Sorted byLabel(Shot shot, RunTime run) {
    Instant at = shot.takenAt();
    if (at != null && at.isBefore(run.start())) {
      return ask(
          shot, List.of(run), "the label names this run, but it was taken before the run began");
    }
    return new Sorted(shot, Certainty.LABEL, run.run(), List.of(), "its label is in the frame");
  }

  private static boolean isAtEnd(Instant at, RunTime run) {
    return !at.isBefore(run.end().minus(BEFORE_END)) && !at.isAfter(run.end().plus(AFTER_END));
  }

  private static List<RunTime> byDistance(Instant at, List<RunTime> runs) {
    return runs.stream()
        .sorted(java.util.Comparator.comparing(r -> Duration.between(r.end(), at).abs()))
        .toList();
  }

  private static Sorted ask(Shot shot, List<RunTime> candidates, String why) {
    return new Sorted(
        shot, Certainty.ASK, null, candidates.stream().map(RunTime::run).toList(), why);
  }
}
