package ovenproof.files;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Run;

/** A run may be repeated for a cause that was written down before anyone saw its result. */
final class RedoChecks {
  /** Attempts after the first; then "could not complete" is the result. */
  private static final int MOST_REDOS = 2;

  private final Map<String, Rowed<Run>> byId = new LinkedHashMap<>();

  RedoChecks(Sections sections) {
    sections.runs().forEach(r -> byId.putIfAbsent(r.value().id(), r));
  }

  void run() {
    Map<String, Rowed<Run>> redone = new HashMap<>();
    for (Rowed<Run> redo : byId.values()) {
      String original = redo.value().redoOf();
      if (original == null) {
        causeAlone(redo);
        continue;
      }
      cause(redo);
      Rowed<Run> first = byId.get(original);
      if (first != null) {
        same(redo, first.value());
      }
      Rowed<Run> other = redone.putIfAbsent(original, redo);
      if (other != null) {
        redo.row()
            .error(
                "redo_of",
                original + ", which " + other.value().id() + " repeats already",
                "each run repeated once",
                "name the latest attempt, " + other.value().id());
      }
      chain(redo);
    }
    once();
  }

  private static void causeAlone(Rowed<Run> run) {
    if (run.value().cause() != null) {
      run.row()
          .error(
              "cause",
              "a cause of a run that repeats nothing",
              "\"redo_of\" beside \"cause\"",
              "name the run that it repeats");
    }
  }

  private static void cause(Rowed<Run> redo) {
    Run run = redo.value();
    if (run.cause() == null) {
      redo.row()
          .error(
              "redo_of",
              run.id() + " repeats " + run.redoOf() + " without a cause",
              "the cause, written before results were seen",
              "fill in \"cause\"; without one the first run counts and this one is deleted");
      return;
    }
    Instant at = run.causeAt();
    Instant started = run.started();
    if (at == null) {
      redo.row()
          .warning(
              "cause",
              "a cause without its time",
              "when it was written",
              "fill in \"cause_at\", to show that it came before the results");
    } else if (started != null && at.isAfter(started)) {
      redo.row()
          .error(
              "cause_at",
              "a cause written after the repetition had started",
              "a time before " + redo.row().raw("started").strip(),
              "a cause found afterwards is a deviation: enter it in deviations.csv");
    }
  }

  private static void same(Rowed<Run> redo, Run first) {
    Run run = redo.value();
    boolean same =
        run.product().equals(first.product())
            && run.test().equals(first.test())
            && run.variant().equals(first.variant())
            && run.replicate() == first.replicate();
    if (!same) {
      redo.row()
          .error(
              "redo_of",
              first.id() + ", which is of another product, test, variant or replicate",
              "an attempt at the same planned run",
              "");
    }
  }

  private void chain(Rowed<Run> redo) {
    Set<String> seen = new HashSet<>();
    @Nullable String at = redo.value().id();
    int length = -1;
    while (at != null && seen.add(at)) {
      length++;
      Rowed<Run> run = byId.get(at);
      at = run == null ? null : run.value().redoOf();
    }
    if (at != null) {
      redo.row().error("redo_of", "a circle of repetitions", "a first attempt", "");
    } else if (length > MOST_REDOS) {
      redo.row()
          .warning(
              "redo_of",
              length + " repetitions",
              "at most " + MOST_REDOS,
              "\"could not complete\" is a result: say so in not-run.csv");
    }
  }

  /** Two counted runs of the same replicate: one must repeat the other. */
  private void once() {
    Map<String, Rowed<Run>> seen = new HashMap<>();
    for (Rowed<Run> rowed : byId.values()) {
      Run run = rowed.value();
      if (run.kind() == Run.Kind.TRIAL || run.redoOf() != null) {
        continue;
      }
      String key =
          String.join(
              " ",
              run.product(),
              run.test(),
              run.variant(),
              "replicate",
              String.valueOf(run.replicate()));
      Rowed<Run> first = seen.putIfAbsent(key, rowed);
      if (first != null) {
        rowed
            .row()
            .error(
                "replicate",
                key + " for the second time",
                "each replicate once, or \"redo_of\" with its cause",
                "it is already " + first.value().id());
      }
    }
  }
}
