package ovenproof.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.NotRun;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.scoring.Answer;
import ovenproof.core.scoring.Observation;
import ovenproof.measure.FeatureMeasures;
import ovenproof.measure.Measured;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** What a product has to say to a use of a measure. */
final class Answers {
  private static final Pattern FIGURES = Pattern.compile("\\d+(?:[.,]\\d+)*");

  private final Campaign campaign;
  private final Measured measured;
  private final FeatureChecklist checklist;

  Answers(Campaign campaign, Measured measured) {
    this.campaign = campaign;
    this.checklist = FeatureChecklist.of(campaign);
    this.measured = measured;
  }

  Answer of(String product, TestPlan test, String use) {
    List<Measured.Value> values = measured.counted(test.id(), use, product);
    List<Observation> observations = new ArrayList<>();
    List<String> reasons = new ArrayList<>();
    for (Measured.Value value : values) {
      observation(value).ifPresentOrElse(observations::add, () -> reasons.add(reason(value)));
    }
    if (!observations.isEmpty()) {
      return new Answer.Measured(observations);
    }
    Optional<String> notAsked =
        test.measure(use)
            .filter(MeasureUse::ofChecklist)
            .flatMap(u -> new FeatureMeasures(campaign.method(), checklist, product).notAsked(u));
    if (notAsked.isPresent()) {
      return new Answer.NotAsked(notAsked.get());
    }
    Optional<NotRun> notRun = notRun(product, test);
    if (notRun.isPresent()) {
      return notRun(notRun.get());
    }
    return new Answer.Missing(reasons.isEmpty() ? noRun(product, test) : joined(reasons));
  }

  /**
   * The same for a limit that must hold in every run: a run without a value may have any, and does
   * not drop out beside others that have one.
   */
  Answer ofEvery(String product, TestPlan test, String use) {
    Answer answer = of(product, test, use);
    if (!(answer instanceof Answer.Measured known)) {
      return answer;
    }
    List<Observation> all = new ArrayList<>(known.observations());
    for (Measured.Value value : this.measured.counted(test.id(), use, product)) {
      if (value.value().isMissing()) {
        String run = value.run() == null ? value.product() : value.run();
        all.add(
            new Observation(run, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, List.of()));
      }
    }
    return new Answer.Measured(all);
  }

  private Optional<NotRun> notRun(String product, TestPlan test) {
    String scored = test.scoredVariant().id();
    return campaign.notRun().stream()
        .filter(n -> n.product().equals(product) && n.test().equals(test.id()))
        .filter(n -> n.variant() == null || n.variant().equals(scored))
        .findFirst();
  }

  private static Answer notRun(NotRun notRun) {
    return switch (notRun.state()) {
      case CANNOT_DO -> new Answer.CannotDo(notRun.reason());
      case NOT_ASKED -> new Answer.NotAsked(notRun.reason());
      case MISSING -> new Answer.Missing(notRun.reason());
    };
  }

  private String noRun(String product, TestPlan test) {
    List<String> dropped =
        campaign.runs().stream()
            .filter(r -> r.product().equals(product) && r.test().equals(test.id()))
            .flatMap(r -> campaign.whyNotCounted(r).map(why -> r.id() + " is " + why).stream())
            .toList();
    if (!dropped.isEmpty()) {
      return "no run counts: " + joined(dropped);
    }
    return test.replicates() == 0 ? "nothing was recorded" : "no run was recorded";
  }

  /** The same reason in three runs is said once; each run's own page says it again. */
  private static String reason(Measured.Value value) {
    String note = value.value().note();
    return note == null ? "no value" : note;
  }

  /** Each reason once: runs that failed alike differ in their figures only. */
  static String joined(List<String> reasons) {
    Map<String, List<String>> alike = new LinkedHashMap<>();
    for (String reason : reasons) {
      String shape = FIGURES.matcher(reason).replaceAll("#");
      alike.computeIfAbsent(shape, s -> new ArrayList<>()).add(reason);
    }
    return alike.values().stream().map(Answers::once).collect(Collectors.joining("; "));
  }

  private static String once(List<String> alike) {
    boolean oneFigure = alike.stream().distinct().count() == 1;
    return oneFigure
        ? alike.get(0)
        : alike.get(0) + " (and alike in " + (alike.size() - 1) + " more)";
  }

  private static Optional<Observation> observation(Measured.Value value) {
    Measurement measurement = value.value();
    String run = value.run() == null ? value.product() : value.run();
    List<Component> components = components(value);
    Double exact = measurement.value();
    if (exact != null) {
      return Optional.of(new Observation(run, exact, exact, components));
    }
    if (measurement.censored() == Censoring.NONE) {
      return Optional.empty();
    }
    Double low = measurement.low();
    Double high = measurement.high();
    return Optional.of(
        new Observation(
            run,
            low == null ? Double.NEGATIVE_INFINITY : low,
            high == null ? Double.POSITIVE_INFINITY : high,
            components));
  }

  /**
   * The components; where only the sum is known, it belongs to the run. A fact has no runs that
   * could show its own part, so that part is drawn as a source of this product alone.
   */
  private static List<Component> components(Measured.Value value) {
    Measurement measurement = value.value();
    List<Component> components = measurement.components();
    Double u = measurement.uncertainty();
    if (components.isEmpty() && u != null) {
      components = List.of(Component.run(u));
    }
    if (value.run() != null) {
      return components;
    }
    String own = "fact:" + value.test() + "/" + value.use() + ":" + value.product();
    return components.stream().map(c -> c.isShared() ? c : Component.shared(own, c.u())).toList();
  }
}
