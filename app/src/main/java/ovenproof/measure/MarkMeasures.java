package ovenproof.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Run;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.panel.PanelMeans;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.method.TestPlan.PanelMark;

/**
 * Panel marks of each batch, persons' levels taken out where the design links them. The means of
 * one mark are fitted once over all its ratings. Safe for use by threads.
 */
final class MarkMeasures {
  private final Campaign campaign;
  private final List<Rating> ratings;
  private final Map<String, PanelMeans> fitted = new ConcurrentHashMap<>();

  MarkMeasures(Campaign campaign) {
    this.campaign = campaign;
    this.ratings = Entry.effective(campaign.ratings());
  }

  List<Measurement> marks(RunEvidence run, MeasureUse use) {
    String mark = use.ofOrId();
    MeasureDescription measure = described(run.test(), use);
    PanelMeans means =
        fitted.computeIfAbsent(run.test().id() + "/" + mark, k -> fit(run.test(), mark, measure));
    List<Measurement> found = new ArrayList<>();
    for (int batch : batches(run, use, mark)) {
      String key = batchKey(run.run().id(), batch);
      means.runs().stream()
          .filter(m -> key.equals(m.subject().run()))
          .findFirst()
          .ifPresent(m -> found.add(ofRun(m, run, batch)));
    }
    return found.isEmpty()
        ? List.of(Measurement.missing(measure, run.subject(), "nobody tasted it"))
        : found;
  }

  /** What the fits had to say, in sentences. */
  List<String> warnings() {
    return fitted.values().stream()
        .flatMap(m -> m.warnings().stream())
        .distinct()
        .sorted()
        .toList();
  }

  private Measurement ofRun(Measurement mean, RunEvidence run, int batch) {
    long tasters =
        ratings.stream()
            .filter(r -> r.run().equals(run.run().id()) && batchOf(r) == batch)
            .map(Rating::assessor)
            .distinct()
            .count();
    return mean.withSubject(run.subject().withBatch(run.test().batches() > 1 ? batch : null))
        .withDefinition("panel mean of " + tasters + (tasters == 1 ? " assessor" : " assessors"))
        .withEvidence(List.of("ratings of " + run.run().id()));
  }

  private Set<Integer> batches(RunEvidence run, MeasureUse use, String mark) {
    Integer only = use.batch();
    if (only != null) {
      return Set.of(only);
    }
    return ratings.stream()
        .filter(r -> r.run().equals(run.run().id()) && r.mark().equals(mark))
        .map(MarkMeasures::batchOf)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private PanelMeans fit(TestPlan test, String mark, MeasureDescription measure) {
    Map<String, Run> runs = new HashMap<>();
    campaign.runs().stream()
        .filter(r -> r.test().equals(test.id()))
        .forEach(r -> runs.put(r.id(), r));
    List<ovenproof.core.panel.Rating> marks = new ArrayList<>();
    for (Rating rating : ratings) {
      Run run = runs.get(rating.run());
      if (run != null && rating.mark().equals(mark)) {
        marks.add(
            new ovenproof.core.panel.Rating(
                rating.assessor(),
                run.product(),
                rating.session(),
                batchKey(run.id(), batchOf(rating)),
                mark,
                rating.value(),
                rating.order(),
                Map.of()));
      }
    }
    return PanelMeans.of(marks, measure);
  }

  private static int batchOf(Rating rating) {
    Integer batch = rating.batch();
    return batch == null ? 1 : batch;
  }

  private static String batchKey(String run, int batch) {
    return run + "#" + batch;
  }

  private static MeasureDescription described(TestPlan test, MeasureUse use) {
    MeasureDescription base = EntryMeasures.MARK;
    String name =
        test.marks().stream()
            .filter(m -> m.id().equals(use.ofOrId()))
            .map(PanelMark::name)
            .findFirst()
            .orElse(use.id());
    return new MeasureDescription(
        base.id(),
        name,
        base.unit(),
        base.help(),
        base.formula(),
        base.source(),
        base.evidence(),
        base.parameters(),
        base.revision());
  }
}
