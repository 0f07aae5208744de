package ovenproof.core.panel.table;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Interval;

/**
 * What a person says about a table instead of leaving it to the reader.
 *
 * @param roles column header (as written) to its role
 * @param same spelling to the spelling that is meant
 * @param scale the scale of all marks; null when not said
 * @param inColumns what stands in the columns of a wide table, {@link Role#PRODUCT} or {@link
 *     Role#ASSESSOR}; null when not said
 */
public record ReadingChoices(
    Map<String, Role> roles,
    Map<String, String> same,
    @Nullable Interval scale,
    @Nullable Role inColumns) {

  public ReadingChoices {
    roles = Map.copyOf(roles);
    same = Map.copyOf(same);
  }

  public static ReadingChoices none() {
    return new ReadingChoices(Map.of(), Map.of(), null, null);
  }

  public ReadingChoices with(String header, Role role) {
    Map<String, Role> more = new LinkedHashMap<>(roles);
    more.put(header, role);
    return new ReadingChoices(more, same, scale, inColumns);
  }

  public ReadingChoices withSame(String spelling, String meant) {
    Map<String, String> more = new LinkedHashMap<>(same);
    more.put(spelling, meant);
    return new ReadingChoices(roles, more, scale, inColumns);
  }

  public ReadingChoices withScale(@Nullable Interval newScale) {
    return new ReadingChoices(roles, same, newScale, inColumns);
  }

  public ReadingChoices withInColumns(@Nullable Role role) {
    return new ReadingChoices(roles, same, scale, role);
  }
}
