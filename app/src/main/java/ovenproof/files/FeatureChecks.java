package ovenproof.files;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import ovenproof.campaign.FeatureState;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.measure.FeatureMeasures;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;

/** The feature checklist against what the method looks for. */
final class FeatureChecks {
  private final Context context;
  private final List<Rowed<FeatureState>> held;
  private final List<Method.Feature> asked;

  FeatureChecks(Context context, List<Rowed<FeatureState>> said) {
    this.context = context;
    this.held = KeyChecks.effectiveOf(said);
    this.asked = context.method().map(Method::features).orElse(List.of());
  }

  void run() {
    spellings();
    if (!asked.isEmpty()) {
      Map<String, Set<String>> looked = new LinkedHashMap<>();
      context
          .method()
          .ifPresent(
              method -> {
                held.forEach(said -> asked(said, method, looked));
                gaps(scored(method), looked);
              });
    }
  }

  /** Two spellings of what the method does not know would be two features, each with gaps. */
  private void spellings() {
    Map<String, String> first = new HashMap<>();
    for (Rowed<FeatureState> said : held) {
      String feature = said.value().feature();
      String written = first.putIfAbsent(folded(feature), feature);
      if (written != null && !written.equals(feature)) {
        said.row()
            .warning(
                "feature",
                "\"" + feature + "\" beside \"" + written + "\"",
                "one spelling of a feature",
                "write \"" + written + "\", else they are two features");
      }
    }
  }

  private static String folded(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  private void asked(Rowed<FeatureState> said, Method method, Map<String, Set<String>> looked) {
    String written = said.value().feature();
    Method.Feature feature = method.feature(written).orElse(null);
    if (feature == null) {
      List<String> names = asked.stream().map(Method.Feature::name).toList();
      said.row()
          .warning(
              "feature",
              "\"" + written + "\", which the method does not look for",
              "a feature of the method's checklist",
              NearestWord.to(written, names).map(w -> "did you mean \"" + w + "\"? ").orElse("")
                  + "As it stands it is listed and scores nothing");
    } else if (!looked
        .computeIfAbsent(said.value().product(), p -> new TreeSet<>())
        .add(feature.id())) {
      said.row()
          .error(
              "feature",
              "\"" + written + "\" for the second time",
              "each feature of a product once",
              "its id and its name are the same feature; correct the other row instead");
    }
  }

  /** What is listed only leaves no score open. */
  private static List<Method.Feature> scored(Method method) {
    return method.tests().stream()
        .flatMap(t -> t.measures().stream())
        .filter(MeasureUse::ofChecklist)
        .flatMap(use -> FeatureMeasures.taken(method, use).stream())
        .distinct()
        .toList();
  }

  /** A product that nobody looked at is a campaign at its beginning, and its verdict says so. */
  private void gaps(List<Method.Feature> scored, Map<String, Set<String>> looked) {
    looked.forEach(
        (product, seen) -> {
          List<String> open = new ArrayList<>();
          scored.stream().filter(f -> !seen.contains(f.id())).forEach(f -> open.add(f.name()));
          if (!open.isEmpty()) {
            context
                .problems()
                .warning(
                    Place.of(Tables.FEATURES.file()),
                    open.size() + " of " + scored.size() + " features not looked at on " + product,
                    "yes, no or not-applicable for each",
                    "look at: " + String.join(", ", open) + "; until then its score is a range");
          }
        });
  }
}
