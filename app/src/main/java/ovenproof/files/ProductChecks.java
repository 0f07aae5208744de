package ovenproof.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.RatedStep;
import ovenproof.method.Method;

/** Facts beside their nameplates, and whether enough people rated. */
final class ProductChecks {
  private final Context context;

  private final Sections sections;

  ProductChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
  }

  void run() {
    KeyChecks.effectiveOf(sections.facts()).forEach(ProductChecks::nameplate);
    raters();
    new FeatureChecks(context, sections.features()).run();
  }

  private static void nameplate(Rowed<FactValue> fact) {
    if (fact.value().isOffNameplate()) {
      double share = fact.value().shareOffNameplate().orElseThrow();
      fact.row()
          .warning(
              "measured",
              fact.value().measured()
                  + ", "
                  + Math.round(Math.abs(share) * 100)
                  + " % "
                  + (share < 0 ? "below" : "above")
                  + " the nameplate's "
                  + fact.value().nameplate(),
              "a difference of at most 10 %",
              "measure again; if it stays, it is a finding");
    }
  }

  private void raters() {
    Map<String, List<Rowed<RatedStep>>> byFact = new LinkedHashMap<>();
    for (Rowed<RatedStep> step : KeyChecks.effectiveOf(sections.ratedSteps())) {
      String key = step.value().product() + " " + step.value().fact();
      byFact.computeIfAbsent(key, k -> new java.util.ArrayList<>()).add(step);
    }
    byFact.values().forEach(this::raters);
  }

  private void raters(List<Rowed<RatedStep>> steps) {
    Rowed<RatedStep> last = steps.get(steps.size() - 1);
    Set<String> raters = new TreeSet<>();
    steps.forEach(s -> raters.add(s.value().rater()));
    int needed =
        context.method().map(Method::ratedFacts).orElse(List.of()).stream()
            .filter(f -> f.id().equals(last.value().fact()))
            .mapToInt(Method.RatedFact::raters)
            .findFirst()
            .orElse(1);
    if (raters.size() < needed) {
      last.row()
          .warning(
              "rater",
              raters.size()
                  + " of "
                  + needed
                  + " raters for "
                  + last.value().fact()
                  + " of "
                  + last.value().product(),
              needed + " people who rate independently",
              "ask another person, who has not seen this step");
    }
    int lowest = steps.stream().mapToInt(s -> s.value().step()).min().orElse(0);
    int highest = steps.stream().mapToInt(s -> s.value().step()).max().orElse(0);
    if (RatedStep.disagree(steps.stream().map(Rowed::value).toList())) {
      last.row()
          .warning(
              "step",
              "steps from " + lowest + " to " + highest + " for the same thing",
              "steps that differ by one at most",
              "read the worded steps together; then each corrects their own entry or keeps it");
    }
  }
}
