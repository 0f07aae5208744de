package ovenproof.campaign;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The feature checklist as it stands: features in the order in which they were first named, and
 * what was last said of each product. Empty when nothing was ever ticked.
 */
public final class FeatureChecklist {
  private final Map<String, Map<String, FeatureState>> byFeature = new LinkedHashMap<>();

  private FeatureChecklist() {}

  public static FeatureChecklist of(Campaign campaign) {
    FeatureChecklist checklist = new FeatureChecklist();
    // A correction stands later in the table than what it corrects; it must not move the feature.
    campaign
        .features()
        .forEach(f -> checklist.byFeature.putIfAbsent(f.feature(), new LinkedHashMap<>()));
    for (FeatureState said : Entry.effective(campaign.features())) {
      checklist
          .byFeature
          .computeIfAbsent(said.feature(), f -> new LinkedHashMap<>())
          .put(said.product(), said);
    }
    checklist.byFeature.values().removeIf(Map::isEmpty);
    return checklist;
  }

  /** Names of the features. */
  public List<String> features() {
    return List.copyOf(byFeature.keySet());
  }

  /** What is said of a product; empty when nothing is, which is not a no. */
  public Optional<FeatureState> state(String product, String feature) {
    return Optional.ofNullable(byFeature.getOrDefault(feature, Map.of()).get(product));
  }

  /** The spelling under which a feature is listed, whatever its capitals; empty for a new one. */
  public Optional<String> listed(String feature) {
    return byFeature.keySet().stream().filter(f -> f.equalsIgnoreCase(feature)).findFirst();
  }
}
