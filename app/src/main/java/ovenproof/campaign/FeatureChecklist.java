package ovenproof.campaign;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ovenproof.method.Method;

/**
 * The feature checklist as it stands: what the method looks for, then what was named besides, and
 * what was last said of each product.
 *
 * <p>A feature that the method looks for may be written by its id or its name, whatever its
 * capitals; it goes by the method's name here.
 */
public final class FeatureChecklist {
  private final Map<String, Map<String, FeatureState>> byFeature = new LinkedHashMap<>();
  private final Method method;

  private FeatureChecklist(Method method) {
    this.method = method;
    method.features().forEach(f -> byFeature.put(f.name(), new LinkedHashMap<>()));
  }

  public static FeatureChecklist of(Campaign campaign) {
    FeatureChecklist checklist = new FeatureChecklist(campaign.method());
    List<FeatureState> held = Entry.effective(campaign.features());
    // A correction stands later in the table than what it corrects; it must not move the feature.
    campaign.features().forEach(f -> checklist.of(f.feature()));
    held.forEach(said -> checklist.of(said.feature()).put(said.product(), said));
    checklist
        .byFeature
        .entrySet()
        .removeIf(e -> e.getValue().isEmpty() && campaign.method().feature(e.getKey()).isEmpty());
    return checklist;
  }

  private Map<String, FeatureState> of(String written) {
    return byFeature.computeIfAbsent(name(written), n -> new LinkedHashMap<>());
  }

  private String name(String written) {
    return method.feature(written).map(Method.Feature::name).orElse(written);
  }

  /** Names of the features. */
  public List<String> features() {
    return List.copyOf(byFeature.keySet());
  }

  /** Whether nothing is said of any product. */
  public boolean isEmpty() {
    return byFeature.values().stream().allMatch(Map::isEmpty);
  }

  /** What is said of a product; empty when nothing is, which is not a no. */
  public Optional<FeatureState> state(String product, String feature) {
    return Optional.ofNullable(byFeature.getOrDefault(name(feature), Map.of()).get(product));
  }

  /** The spelling under which a feature is listed, whatever its capitals; empty for a new one. */
  public Optional<String> listed(String feature) {
    String name = name(feature);
    return byFeature.keySet().stream().filter(f -> f.equalsIgnoreCase(name)).findFirst();
  }
}
