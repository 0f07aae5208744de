package ovenproof.files;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/** Runs against the method, the specimens, the clock and the list of what was not run. */
final class RunChecks {
  /** Certainly too short for a heated cavity to be cold again (usual: 60 to 120 min). */
  private static final Duration TOO_SHORT_TO_COOL = Duration.ofMinutes(30);

  private final Context context;
  private final Sections sections;
  private final RunTimes times;

  RunChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
    this.times = new RunTimes(sections.runs(), KeyChecks.effectiveOf(sections.events()));
  }

  void run() {
    sections.runs().forEach(this::method);
    sections.runs().forEach(this::specimen);
    sections.notRun().forEach(this::notRun);
    trials();
    oneAfterTheOther();
  }

  private Optional<TestPlan> test(Run run) {
    return context.method().flatMap(m -> m.test(run.test()));
  }

  private void method(Rowed<Run> rowed) {
    Optional<TestPlan> test = test(rowed.value());
    if (test.isEmpty()) {
      return;
    }
    int replicates = test.get().replicates();
    if (replicates == 0) {
      rowed
          .row()
          .error("test", "a run of " + test.get().id(), "a test that has runs (replicates)", "");
    } else if (rowed.value().replicate() > replicates && rowed.value().kind() == Run.Kind.COUNTED) {
      rowed
          .row()
          .warning(
              "replicate",
              "replicate " + rowed.value().replicate(),
              "1 to " + replicates + ", as the method says",
              "more runs for one product only than for the others are not fair to them");
    }
  }

  private void specimen(Rowed<Run> rowed) {
    Run run = rowed.value();
    List<Campaign.Specimen> own =
        Sections.values(sections.specimens()).stream()
            .filter(s -> s.product().equals(run.product()))
            .toList();
    if (run.specimen() == null) {
      if (own.size() > 1) {
        rowed
            .row()
            .warning(
                "run",
                "no specimen for " + run.id(),
                "one of the " + own.size() + " specimens of " + run.product(),
                "say which appliance it was");
      }
      return;
    }
    for (Rowed<Campaign.Specimen> specimen : sections.specimens()) {
      if (specimen.value().id().equals(run.specimen())) {
        specimen(rowed, specimen.value());
      }
    }
  }

  private void specimen(Rowed<Run> rowed, Campaign.Specimen specimen) {
    Run run = rowed.value();
    if (!specimen.product().equals(run.product())) {
      rowed
          .row()
          .error(
              "specimen",
              specimen.id() + ", which is of the product " + specimen.product(),
              "a specimen of " + run.product(),
              "correct the specimen or the product");
    }
    boolean gone =
        specimen.became() != Campaign.Became.KEPT && specimen.became() != Campaign.Became.UNKNOWN;
    if (gone
        && specimen.becameOn() != null
        && run.started() != null
        && run.started().atZone(context.zone()).toLocalDate().isAfter(specimen.becameOn())) {
      rowed
          .row()
          .warning(
              "started",
              "a run after " + specimen.id() + " was gone (" + specimen.becameOn() + ")",
              "a time before that",
              "correct the one or the other");
    }
  }

  private void notRun(Rowed<Campaign.NotRun> rowed) {
    Campaign.NotRun notRun = rowed.value();
    boolean counted =
        Sections.values(sections.runs()).stream()
            .anyMatch(
                r ->
                    r.kind() == Run.Kind.COUNTED
                        && r.product().equals(notRun.product())
                        && r.test().equals(notRun.test())
                        && (notRun.variant() == null || notRun.variant().equals(r.variant())));
    if (counted && notRun.state() != Campaign.NotRun.State.MISSING) {
      rowed
          .row()
          .error(
              "state",
              rowed.row().raw("state").strip() + ", although runs.csv has counted runs of it",
              "the one or the other",
              "delete this row, or make the runs trials if they were declared so");
    }
  }

  private void trials() {
    for (Rowed<Run> trial : sections.runs()) {
      Instant started = trial.value().started();
      if (trial.value().kind() != Run.Kind.TRIAL || started == null) {
        continue;
      }
      boolean late =
          Sections.values(sections.runs()).stream()
              .anyMatch(
                  r ->
                      r.kind() == Run.Kind.COUNTED
                          && r.product().equals(trial.value().product())
                          && r.test().equals(trial.value().test())
                          && r.variant().equals(trial.value().variant())
                          && r.started() != null
                          && r.started().isBefore(started));
      if (late) {
        trial
            .row()
            .warning(
                "kind",
                "a trial after counted runs of the same test",
                "trials before them",
                "a trial is declared beforehand, to find the setting");
      }
    }
  }

  /** One appliance cannot be in two runs at once, and is not cold soon after one. */
  private void oneAfterTheOther() {
    Map<String, List<Rowed<Run>>> byAppliance = new LinkedHashMap<>();
    for (Rowed<Run> run : sections.runs()) {
      if (times.of(run.value().id()).isPresent()) {
        String appliance =
            run.value().specimen() == null ? run.value().product() : run.value().specimen();
        byAppliance.computeIfAbsent(appliance, a -> new ArrayList<>()).add(run);
      }
    }
    byAppliance.forEach(this::oneAfterTheOther);
  }

  private void oneAfterTheOther(String appliance, List<Rowed<Run>> runs) {
    runs.sort(Comparator.comparing(r -> from(r.value())));
    Set<String> together = new HashSet<>();
    for (int i = 1; i < runs.size(); i++) {
      Run before = runs.get(i - 1).value();
      Run run = runs.get(i).value();
      Duration pause = Duration.between(to(before), from(run));
      boolean same = from(before).equals(from(run));
      if ((pause.isNegative() || same) && together.add(run.id())) {
        runs.get(i)
            .row()
            .error(
                "started",
                run.id() + " while " + before.id() + " was going on in " + appliance,
                "one run at a time in one appliance",
                "correct the start, the events or the specimen");
      } else if (pause.compareTo(TOO_SHORT_TO_COOL) < 0) {
        coldStart(runs.get(i), before, pause);
      }
    }
  }

  private void coldStart(Rowed<Run> rowed, Run before, Duration pause) {
    boolean cold =
        test(rowed.value()).filter(t -> t.start() == TestPlan.StartState.COLD).isPresent();
    if (cold) {
      rowed
          .row()
          .warning(
              "started",
              "a cold start " + pause.toMinutes() + " min after " + before.id(),
              "time to cool (usually 60 to 120 min, shown by a probe near ambient)",
              "if it was warm, enter a deviation");
    }
  }

  private Instant from(Run run) {
    return times.of(run.id()).map(RunTimes.Span::from).orElse(Instant.EPOCH);
  }

  private Instant to(Run run) {
    return times.of(run.id()).map(RunTimes.Span::to).orElse(Instant.EPOCH);
  }
}
