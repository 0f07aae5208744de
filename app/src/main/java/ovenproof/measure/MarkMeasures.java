package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Rating;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.statistics.Descriptive;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan.PanelMark;

/**
 * Panel marks of one run: the mean over assessors for each batch. A batch is one observation of the
 * appliance; the spread of assessors only says how well that batch's mean is known.
 */
final class MarkMeasures {

  private MarkMeasures() {}

  static List<Measurement> marks(RunEvidence run, MeasureUse use) {
    MeasureDescription measure = described(run, use);
    Map<Integer, List<Double>> byBatch = new TreeMap<>();
    for (Rating rating : Entry.effective(run.campaign().ratings())) {
      Integer batch = rating.batch() == null ? Integer.valueOf(1) : rating.batch();
      boolean wanted =
          rating.run().equals(run.run().id())
              && rating.mark().equals(use.ofOrId())
              && (use.batch() == null || use.batch().equals(batch));
      if (wanted) {
        byBatch.computeIfAbsent(batch, b -> new ArrayList<>()).add(rating.value());
      }
    }
    if (byBatch.isEmpty()) {
      return List.of(Measurement.missing(measure, run.subject(), "nobody tasted it"));
    }
    List<Measurement> means = new ArrayList<>();
    byBatch.forEach((batch, values) -> means.add(mean(run, measure, batch, values)));
    return means;
  }

  private static Measurement mean(
      RunEvidence run, MeasureDescription measure, int batch, List<Double> values) {
    Subject subject = run.subject().withBatch(run.test().batches() > 1 ? batch : null);
    Descriptive marks = Descriptive.of(values);
    Measurement mean =
        Measurement.of(measure, subject, marks.mean())
            .withDefinition("mean of " + values.size() + " assessors")
            .withEvidence(List.of("ratings of " + run.run().id()));
    return values.size() < 2
        ? mean.withNote("one assessor only")
        : mean.withComponents(List.of(Component.run(marks.standardError())));
  }

  private static MeasureDescription described(RunEvidence run, MeasureUse use) {
    MeasureDescription base = EntryMeasures.MARK;
    String name =
        run.test().marks().stream()
            .filter(m -> m.id().equals(use.ofOrId()))
            .map(PanelMark::name)
            .findFirst()
            .orElse(use.id());
    return new MeasureDescription(
        base.id(), name, base.unit(), base.help(), base.formula(), base.source(), base.evidence(),
        base.parameters(), base.revision());
  }
}
