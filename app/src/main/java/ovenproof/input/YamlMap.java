package ovenproof.input;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** A mapping of a YAML document: values by key, each with its place. Blank values are not said. */
public final class YamlMap {
  private final String file;
  private final Place place;
  private final Map<String, Node> values = new LinkedHashMap<>();
  private final Map<String, Place> keyPlaces = new LinkedHashMap<>();
  private final Problems problems;
  private Collection<String> known = List.of();

  private YamlMap(String file, Place place, Problems problems) {
    this.file = file;
    this.place = place;
    this.problems = problems;
  }

  static YamlMap of(String file, MappingNode node, Problems problems) {
    YamlMap map = new YamlMap(file, YamlDocument.place(file, node.getStartMark()), problems);
    for (NodeTuple tuple : node.getValue()) {
      map.put(tuple);
    }
    return map;
  }

  private void put(NodeTuple tuple) {
    Place keyPlace = YamlDocument.place(file, tuple.getKeyNode().getStartMark());
    if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
      problems.error(keyPlace, "a key that is not a word", "a word before the colon", "");
      return;
    }
    if (keyPlaces.containsKey(key.getValue())) {
      problems.error(
          keyPlace,
          "\"" + key.getValue() + "\" for the second time",
          "each key once",
          "the first stands in line " + keyPlaces.get(key.getValue()).line());
      return;
    }
    keyPlaces.put(key.getValue(), keyPlace);
    values.put(key.getValue(), tuple.getValueNode());
  }

  public Place place() {
    return place;
  }

  /** Where a key's value stands; the map's own place if there is none. */
  public Place place(String key) {
    Node value = values.get(key);
    return value == null ? place : YamlDocument.place(file, value.getStartMark());
  }

  public Problems problems() {
    return problems;
  }

  public Collection<String> keys() {
    return values.keySet();
  }

  public boolean has(String key) {
    return said(key).isPresent();
  }

  private Optional<Node> said(String key) {
    return Optional.ofNullable(values.get(key)).filter(node -> !isBlank(node));
  }

  private static boolean isBlank(Node node) {
    return node instanceof ScalarNode scalar && scalar.getValue().isBlank();
  }

  /** Reports every key that is none of these, with the nearest one. */
  public void only(Collection<String> known) {
    this.known = List.copyOf(known);
    keyPlaces.forEach(
        (key, where) -> {
          if (!known.contains(key)) {
            problems.error(
                where,
                "the key \"" + key + "\"",
                "one of " + String.join(", ", known),
                key.contains(" ")
                    ? "a comma between { and } ends a value: put the text before it in quotes"
                    : NearestWord.remedy(key, known));
          }
        });
  }

  /** A scalar, if it is there. */
  public Optional<Written> find(String key) {
    return said(key).flatMap(node -> scalar(node, key));
  }

  /** A scalar that must be there. */
  public Optional<Written> need(String key) {
    if (!has(key) && !isMisspelt(key)) {
      problems.error(
          keyPlaces.getOrDefault(key, place), "no \"" + key + "\"", "\"" + key + "\"", "add it");
    }
    return find(key);
  }

  /** Whether an unknown key, reported as such, was probably meant to be this one. */
  private boolean isMisspelt(String key) {
    return keyPlaces.keySet().stream()
        .filter(k -> !known.contains(k))
        .anyMatch(k -> NearestWord.to(k, known).filter(key::equals).isPresent());
  }

  /** The text of a scalar, or null when it is not said. */
  public @org.jspecify.annotations.Nullable String textOrNull(String key) {
    return find(key).map(Written::text).orElse(null);
  }

  /** The text of a scalar that must be there; empty text when it is missing, which is reported. */
  public String text(String key) {
    return need(key).map(Written::text).orElse("");
  }

  private Optional<Written> scalar(Node node, String key) {
    if (node instanceof ScalarNode scalar) {
      return Optional.of(
          new Written(scalar.getValue(), YamlDocument.place(file, node.getStartMark()), problems));
    }
    problems.error(
        YamlDocument.place(file, node.getStartMark()),
        node instanceof MappingNode ? "a group of keys" : "a list",
        "one value for \"" + key + "\"",
        "");
    return Optional.empty();
  }

  /** The mapping under a key, if there is one. */
  public Optional<YamlMap> map(String key) {
    return said(key).flatMap(node -> asMap(node, key));
  }

  private Optional<YamlMap> asMap(Node node, String what) {
    if (node instanceof MappingNode mapping) {
      return Optional.of(of(file, mapping, problems));
    }
    problems.error(
        YamlDocument.place(file, node.getStartMark()),
        node instanceof SequenceNode ? "a list" : "a single value",
        "keys with values for \"" + what + "\"",
        "");
    return Optional.empty();
  }

  /** The mappings of the list under a key; empty when it is not said. */
  public List<YamlMap> maps(String key) {
    List<YamlMap> maps = new ArrayList<>();
    for (Node item : items(key)) {
      asMap(item, key).ifPresent(maps::add);
    }
    return maps;
  }

  /** The scalars of the list under a key; empty when it is not said. */
  public List<Written> list(String key) {
    List<Written> list = new ArrayList<>();
    for (Node item : items(key)) {
      scalar(item, key).ifPresent(list::add);
    }
    return list;
  }

  /** The pairs of a list such as {@code [[3 min, 10], [5 min, 7]]}. */
  public List<Pair> pairs(String key) {
    List<Pair> pairs = new ArrayList<>();
    for (Node item : items(key)) {
      if (item instanceof SequenceNode pair && pair.getValue().size() == 2) {
        Optional<Written> first = scalar(pair.getValue().get(0), key);
        Optional<Written> second = scalar(pair.getValue().get(1), key);
        if (first.isPresent() && second.isPresent()) {
          pairs.add(new Pair(first.get(), second.get()));
        }
      } else {
        problems.error(
            YamlDocument.place(file, item.getStartMark()),
            "something else",
            "a pair such as [3 min, 10] in \"" + key + "\"",
            "");
      }
    }
    return pairs;
  }

  /** Number of items of the list under a key, whatever they are; 0 when it is not said. */
  public int size(String key) {
    return said(key)
        .map(n -> n instanceof SequenceNode list ? list.getValue().size() : 0)
        .orElse(0);
  }

  private List<Node> items(String key) {
    Optional<Node> said = said(key);
    if (said.isEmpty()) {
      return List.of();
    }
    Node node = said.get();
    if (node instanceof SequenceNode list) {
      return list.getValue();
    }
    problems.error(
        YamlDocument.place(file, node.getStartMark()),
        "no list",
        "a list for \"" + key + "\"",
        "begin each item with \"- \", or write [a, b]");
    return List.of();
  }

  /** Every key with its scalar, for mappings whose keys people choose. */
  public List<Pair> entries() {
    List<Pair> entries = new ArrayList<>();
    values.forEach(
        (key, node) -> {
          Written name = new Written(key, keyPlaces.getOrDefault(key, place), problems);
          scalar(node, key).ifPresent(value -> entries.add(new Pair(name, value)));
        });
    return entries;
  }

  /** Two values that belong together. */
  public record Pair(Written first, Written second) {}
}
