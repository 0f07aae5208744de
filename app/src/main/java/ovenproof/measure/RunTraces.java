package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasures;
import ovenproof.evidence.EvidenceSource;
import ovenproof.method.TestPlan;

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
    Optional<TestPlan> test = campaign.method().test(run.test());
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

  /**
   * What the measures of one place of a run are computed from: corrected by the calibrations, with
   * the setting that the method, the product's card or the test names.
   *
   * @param place {@code centre}, {@code core-1} …
   */
  public Optional<TraceInput> input(Run run, String place) {
    Optional<TestPlan> test = campaign.method().test(run.test());
    if (test.isEmpty()) {
      return Optional.empty();
    }
    RunEvidence evidence = RunEvidence.of(campaign, test.get(), run);
    List<TraceBinding> bindings = TraceTaker.bindings(evidence);
    if (bindings.stream().noneMatch(b -> b.place().equals(place))) {
      return Optional.empty();
    }
    TraceTaker taker =
        new TraceTaker(library, MeasurementCache.none(), TraceMeasures.all().get(0).description());
    return Optional.of(taker.input(evidence, bindings, place, setting(evidence)));
  }

  /** The dial; a test without one is drawn against the first level that a measure asks for. */
  private static @Nullable Double setting(RunEvidence evidence) {
    Double dial = TraceTaker.dial(evidence);
    return dial != null
        ? dial
        : evidence.test().measures().stream()
            .filter(u -> u.parameters().containsKey("set"))
            .map(u -> TraceTaker.setting(evidence, u))
            .findFirst()
            .orElse(null);
  }

  /** What reading the files had to say. */
  public List<String> warnings() {
    return library.warnings();
  }

  /** The reader's options with a person's answers in them. */
  public static ReadOptions options(TraceBinding.@Nullable ReadAs as) {
    return TraceLibrary.options(as);
  }
}
