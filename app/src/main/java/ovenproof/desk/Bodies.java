package ovenproof.desk;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Set;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Entries and fields as JSON text, exactly reversible. */
final class Bodies {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .changeDefaultPropertyInclusion(
              value -> value.withValueInclusion(JsonInclude.Include.NON_NULL))
          .build();

  private Bodies() {}

  static String text(Object body) {
    return MAPPER.writeValueAsString(body);
  }

  static Field field(String text) {
    return MAPPER.readValue(text, Field.class);
  }

  /**
   * The record of an entry.
   *
   * @param key key of the entry on this desk
   * @param mended keys that later entries replace: an entry that came without a key of its own gets
   *     its row's key when something mends it
   */
  static Object entry(EntryKind kind, String key, String text, Set<String> mended) {
    JsonNode node = MAPPER.readTree(text);
    if (kind.mending() == EntryKind.Mending.LISTED
        && mended.contains(key)
        && node.get("origin") instanceof ObjectNode origin
        && !origin.has("id")) {
      origin.put("id", key);
    }
    return MAPPER.treeToValue(node, kind.body());
  }
}
