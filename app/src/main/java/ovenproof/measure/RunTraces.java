package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.trace.Trace;
import ovenproof.evidence.EvidenceSource;

/**
 * The traces of a run, for drawing: as logged, on the run's own clock, without the corrections of
 * the instruments. Each file is read once. Safe for use by threads.
 */
public final class RunTraces {
  private final Campaign campaign;
  private final TraceLibrary library;

  public RunTraces(Campaign campaign, EvidenceSource evidence) {
    this.campaign = campaign;
    this.library = new TraceLibrary(evidence, campaign.info().zone());
  }

  /** A trace and where its probe sat. */
  public record Placed(TraceBinding binding, Trace trace) {}

  /** All traces bound to a run, from its start to its last event; empty when there is none. */
  public List<Placed> of(Run run) {
    Optional<ovenproof.method.TestPlan> test = campaign.method().test(run.test());
    if (test.isEmpty()) {
      return List.of();
    }
    RunEvidence evidence = RunEvidence.of(campaign, test.get(), run);
    double end = evidence.lastSecond().orElse(Double.POSITIVE_INFINITY);
    List<Placed> placed = new ArrayList<>();
    for (TraceBinding binding : TraceTaker.bindings(evidence)) {
      library
          .trace(binding, run)
          .map(t -> t.window(0, end))
          .filter(t -> t.size() > 1)
          .ifPresent(t -> placed.add(new Placed(binding, t)));
    }
    return placed;
  }
}
