package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.Run;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.evidence.EvidenceSource;
import ovenproof.measure.Measured.Counts;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * Measures a campaign: every use of a measure that the method names, for every run and product.
 *
 * <p>Pure: the same campaign and evidence give the same values, whatever the number of threads.
 * What cannot be measured is a missing value with its reason; a file that cannot be read makes the
 * runs that need it missing, and a warning.
 */
public final class MeasureService {
  private final MeasureRegistry registry;
  private final MeasurementCache cache;

  public MeasureService(MeasureRegistry registry, MeasurementCache cache) {
    this.registry = registry;
    this.cache = cache;
  }

  /** With every measure of the program and no memory of earlier calls. */
  public static MeasureService withDefaults() {
    return new MeasureService(MeasureRegistry.all(), MeasurementCache.none());
  }

  /** With every measure of the program, remembering in the person's own cache folder. */
  public static MeasureService withUserCache() {
    return new MeasureService(MeasureRegistry.all(), MeasurementCache.ofUser());
  }

  public Measured measure(Campaign campaign, EvidenceSource evidence) {
    return measure(campaign, evidence, Progress.NONE);
  }

  public Measured measure(Campaign campaign, EvidenceSource evidence, Progress progress) {
    Readers readers = new Readers(campaign, evidence, cache);
    Map<String, Taker> takers = EvidenceTakers.of(registry, readers);
    FeatureChecklist checklist = FeatureChecklist.of(campaign);
    List<Job> jobs = jobs(campaign);
    progress.begin(jobs.size());
    List<List<Value>> results =
        IntStream.range(0, jobs.size())
            .parallel()
            .mapToObj(
                i -> {
                  List<Value> values = measure(campaign, checklist, jobs.get(i), takers);
                  progress.step();
                  return values;
                })
            .toList();
    List<Value> values = new ArrayList<>();
    results.forEach(values::addAll);
    return new Measured(inMethodOrder(campaign, values), readers.warnings());
  }

  /** One run, or one product of a test without runs: what one thread does in one go. */
  private record Job(TestPlan test, Product product, Optional<Run> run) {}

  private static List<Job> jobs(Campaign campaign) {
    List<Job> jobs = new ArrayList<>();
    for (TestPlan test : campaign.method().tests()) {
      for (Product product : campaign.products()) {
        jobs.add(new Job(test, product, Optional.empty()));
        campaign.runs().stream()
            .filter(r -> r.test().equals(test.id()) && r.product().equals(product.id()))
            .forEach(r -> jobs.add(new Job(test, product, Optional.of(r))));
      }
    }
    return jobs;
  }

  private List<Value> measure(
      Campaign campaign, FeatureChecklist checklist, Job job, Map<String, Taker> takers) {
    List<Value> values = new ArrayList<>();
    for (MeasureUse use : job.test().measures()) {
      boolean ofProduct = use.ofProduct();
      if (ofProduct && job.run().isEmpty()) {
        values.add(ofProduct(campaign, checklist, job, use));
      } else if (!ofProduct && job.run().isPresent()) {
        values.add(ofRun(campaign, job, use, takers));
      }
    }
    return values;
  }

  private static Value ofProduct(
      Campaign campaign, FeatureChecklist checklist, Job job, MeasureUse use) {
    String product = job.product().id();
    Measurement value =
        use.ofChecklist()
            ? new FeatureMeasures(campaign.method(), checklist, product).of(use)
            : use.take().equals(MeasureUse.RATED)
                ? FactMeasures.rated(campaign, product, use)
                : FactMeasures.fact(campaign, product, use);
    return new Value(
        job.test().id(), use.id(), product, null, null, Counts.COUNTED, value, List.of(value));
  }

  private Value ofRun(Campaign campaign, Job job, MeasureUse use, Map<String, Taker> takers) {
    Run run = job.run().orElseThrow();
    RunEvidence evidence = RunEvidence.of(campaign, job.test(), run);
    List<Measurement> parts = take(evidence, use, takers);
    Measurement value = new RunSummary(evidence, use).of(parts);
    boolean scored = run.variant().equals(job.test().scoredVariant().id());
    Counts counts =
        scored && campaign.whyNotCounted(run).isEmpty() ? Counts.COUNTED : Counts.LISTED_ONLY;
    return new Value(
        job.test().id(), use.id(), run.product(), run.id(), run.variant(), counts, value, parts);
  }

  private List<Measurement> take(RunEvidence run, MeasureUse use, Map<String, Taker> takers) {
    Optional<MeasureDescription> measure = registry.find(use.take());
    if (measure.isEmpty()) {
      throw new IllegalArgumentException("no such measure: " + use.take());
    }
    Taker taker = takers.get(measure.get().id());
    if (taker == null) {
      return List.of(
          Measurement.missing(
              measure.get(), Subject.ofRun(run.run().id()), "cannot be taken here"));
    }
    return taker.take(run, use);
  }

  private static List<Value> inMethodOrder(Campaign campaign, List<Value> values) {
    List<Value> sorted = new ArrayList<>();
    for (TestPlan test : campaign.method().tests()) {
      for (MeasureUse use : test.measures()) {
        values.stream()
            .filter(v -> v.test().equals(test.id()) && v.use().equals(use.id()))
            .forEach(sorted::add);
      }
    }
    return sorted;
  }
}
