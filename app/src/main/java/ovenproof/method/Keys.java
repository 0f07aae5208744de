package ovenproof.method;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ovenproof.input.Place;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;

/** Keys of a method's nodes. */
final class Keys {

  private Keys() {}

  /** The key that a node must have; empty text when it is missing or malformed. */
  static String key(YamlMap map, String name) {
    return map.need(name).flatMap(Written::key).orElse("");
  }

  /** Reports every id that a sibling already has. */
  @SafeVarargs
  static void unique(List<YamlMap>... siblings) {
    Map<String, Place> seen = new HashMap<>();
    for (YamlMap map : Stream.of(siblings).flatMap(List::stream).toList()) {
      String id = map.has("id") ? map.text("id") : "";
      if (id.isEmpty()) {
        continue;
      }
      Place first = seen.putIfAbsent(id, map.place("id"));
      if (first != null) {
        map.problems()
            .error(
                map.place("id"),
                "the id \"" + id + "\" for the second time",
                "an id of its own",
                "the first stands in line " + first.line());
      }
    }
  }
}
