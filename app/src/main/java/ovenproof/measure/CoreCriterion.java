package ovenproof.measure;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.safety.CoreSafety;
import ovenproof.core.safety.CoreWords;
import ovenproof.core.safety.Criterion;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.trace.CoreHighest;
import ovenproof.core.trace.TraceInput;
import ovenproof.method.Gate;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * The one criterion that a test names for its food: the limit of its safety gate on what the core
 * held (a floor with its rest), on its highest (a floor), or on its lethality.
 *
 * @param criterion floor with rest, or equivalent time
 * @param use the measure it is taken by
 */
public record CoreCriterion(Criterion criterion, MeasureUse use) {

  /** Of a test; empty when it names none. */
  public static Optional<CoreCriterion> of(TestPlan test) {
    return test.gates().stream()
        .filter(g -> g.reason() == Gate.Reason.SAFETY)
        .flatMap(g -> test.measure(g.measure()).flatMap(use -> of(use, g.atLeast())).stream())
        .findFirst();
  }

  private static Optional<CoreCriterion> of(MeasureUse use, @Nullable Quantity atLeast) {
    if (atLeast == null) {
      return Optional.empty();
    }
    double limit = atLeast.contract();
    if (use.take().equals(SafetyMeasures.LETHALITY.id())) {
      return Optional.of(new CoreCriterion(new Criterion.EquivalentTime(limit), use));
    }
    boolean held = use.take().equals(SafetyMeasures.HELD.id());
    return held || use.take().equals(CoreHighest.DESCRIPTION.id())
        ? Optional.of(
            new CoreCriterion(new Criterion.FloorWithRest(limit, HandCore.restSeconds(use)), use))
        : Optional.empty();
  }

  /** What the probes show, in words with source and caution. */
  public String words(TraceInput food, List<Event> events) {
    double expanded = food.probe().expandedKelvin();
    return CoreWords.of(
        CoreSafety.judge(
            criterion, food.cores(), expanded > 0 ? expanded : Double.NaN, record(events)),
        criterion);
  }

  private static CoreSafety.Record record(List<Event> events) {
    boolean over = events.stream().anyMatch(e -> e.type() == Event.Type.STOP);
    return over ? CoreSafety.Record.FINISHED : CoreSafety.Record.RUNNING;
  }

  /** What the hand thermometer shows; empty when nobody read it or an equivalent time is asked. */
  public Optional<String> handWords(Campaign campaign, TestPlan test, Run run) {
    return criterion instanceof Criterion.FloorWithRest floor
        ? HandCore.of(RunEvidence.of(campaign, test, run), use)
            .map(read -> CoreWords.of(read.judge(floor), floor))
        : Optional.empty();
  }
}
