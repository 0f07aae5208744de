package ovenproof.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.CollectionNode;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import ovenproof.method.MeasureUse;

/**
 * The text of a method, changed at single places: everything else, comments and order included,
 * stays as it was written. Immutable; each change gives a new text.
 */
final class MethodText {
  private final String text;
  private final @Nullable MappingNode top;

  private MethodText(String text, @Nullable MappingNode top) {
    this.text = text;
    this.top = top;
  }

  /** A text that is no YAML mapping can be kept, but not changed at places. */
  static MethodText of(String text) {
    try {
      LoaderOptions options = new LoaderOptions();
      options.setCodePointLimit(16 << 20);
      Node root = new Yaml(options).compose(new java.io.StringReader(text));
      return new MethodText(text, root instanceof MappingNode mapping ? mapping : null);
    } catch (YAMLException broken) {
      return new MethodText(text, null);
    }
  }

  @Override
  public String toString() {
    return text;
  }

  // ---------- changes ----------

  MethodText withVersion(String version) {
    return top == null ? this : with(top, "version", quoted(version));
  }

  /** A whole number of a test: {@code parts}, {@code replicates}, {@code batches}. */
  MethodText withNumber(String test, String key, int value) {
    MappingNode node = test(test);
    return node == null ? this : with(node, key, String.valueOf(value));
  }

  /** The parts of a criterion or of a group of them. */
  MethodText withParts(String test, String criterion, int parts) {
    MappingNode node = criterion(test, criterion);
    return node == null ? this : with(node, "parts", String.valueOf(parts));
  }

  /**
   * A criterion's curve.
   *
   * @param curve in flow style, quantities already read and written by this program
   */
  MethodText withCurve(String test, String criterion, String curve) {
    MappingNode node = criterion(test, criterion);
    return node == null ? this : with(node, "curve", curve);
  }

  MethodText withoutTest(String test) {
    SequenceNode tests = sequence(top, "tests");
    return tests == null ? this : without(tests, item(tests, test));
  }

  /** One more variant; a test that named none keeps its standard one as the scored one. */
  MethodText withVariant(String test, String id, String name) {
    MappingNode node = test(test);
    if (node == null) {
      return this;
    }
    String variant = "{id: " + id + ", name: " + quoted(name) + ", role: compared}";
    SequenceNode variants = sequence(node, "variants");
    if (variants == null || variants.getValue().isEmpty()) {
      return with(
          node, "variants", "[{id: standard, name: Standard, role: scored}, " + variant + "]");
    }
    Node last = variants.getValue().get(variants.getValue().size() - 1);
    String between =
        variants.getFlowStyle() == FlowStyle.FLOW
            ? ", "
            : "\n" + " ".repeat(dash(last) - lineStart(dash(last))) + "- ";
    return insert(end(last), between + variant);
  }

  MethodText withoutVariant(String test, String id) {
    SequenceNode variants = sequence(test(test), "variants");
    return variants == null ? this : without(variants, item(variants, id));
  }

  /** Makes one variant the scored one and all others compared. */
  MethodText withScoredVariant(String test, String id) {
    MethodText changed = this;
    int count = size(sequence(test(test), "variants"));
    for (int i = 0; i < count; i++) {
      SequenceNode variants = sequence(changed.test(test), "variants");
      if (variants != null && variants.getValue().get(i) instanceof MappingNode variant) {
        boolean scored = id.equals(scalar(variant, "id"));
        changed = changed.with(variant, "role", scored ? "scored" : "compared");
      }
    }
    return changed;
  }

  /** A test of another text with the rated facts, facts and features that only it names. */
  MethodText withTestOf(MethodText other, String test) {
    MappingNode node = other.test(test);
    if (node == null || test(test) != null) {
      return this;
    }
    MethodText changed = this;
    List<String> named = measures(node);
    for (String list : List.of("rated", "facts", "features")) {
      SequenceNode theirs = sequence(other.top, list);
      for (Node item : theirs == null ? List.<Node>of() : theirs.getValue()) {
        if (item instanceof MappingNode map && isAsked(map, list, named)) {
          changed = changed.withItem(list, String.valueOf(scalar(map, "id")), other.source(item));
        }
      }
    }
    SequenceNode tests = sequence(changed.top, "tests");
    return tests == null ? this : changed.append(tests, other.source(node));
  }

  /** A share of the checklist asks for features that it does not name. */
  private static boolean isAsked(MappingNode item, String list, List<String> named) {
    return named.contains(scalar(item, "id"))
        || (list.equals("features") && named.contains(MeasureUse.FEATURES));
  }

  /**
   * Adds to a list at the top what it does not have; a list that is not there comes before tests.
   */
  private MethodText withItem(String list, String id, String source) {
    SequenceNode ours = sequence(top, list);
    if (ours != null) {
      return item(ours, id) == null ? append(ours, source) : this;
    }
    return tuple(top, "tests")
        .map(t -> insert(lineStart(start(t.getKeyNode())), list + ":\n" + source + "\n\n"))
        .orElse(this);
  }

  private static List<String> measures(MappingNode test) {
    SequenceNode measures = sequence(test, "measures");
    List<String> ids = new ArrayList<>();
    if (measures != null) {
      for (Node measure : measures.getValue()) {
        if (measure instanceof MappingNode map) {
          ids.add(String.valueOf(scalar(map, "id")));
          ids.add(String.valueOf(scalar(map, "of")));
          ids.add(String.valueOf(scalar(map, "take")));
        }
      }
    }
    return ids;
  }

  // ---------- finding ----------

  private @Nullable MappingNode test(String id) {
    SequenceNode tests = sequence(top, "tests");
    return tests != null && item(tests, id) instanceof MappingNode test ? test : null;
  }

  private @Nullable MappingNode criterion(String test, String id) {
    return criterion(sequence(test(test), "criteria"), id);
  }

  private static @Nullable MappingNode criterion(@Nullable SequenceNode criteria, String id) {
    if (criteria == null) {
      return null;
    }
    for (Node node : criteria.getValue()) {
      if (node instanceof MappingNode map) {
        if (id.equals(scalar(map, "id"))) {
          return map;
        }
        MappingNode below = criterion(sequence(map, "criteria"), id);
        if (below != null) {
          return below;
        }
      }
    }
    return null;
  }

  private static @Nullable Node item(SequenceNode sequence, String id) {
    return sequence.getValue().stream()
        .filter(n -> n instanceof MappingNode map && id.equals(scalar(map, "id")))
        .findFirst()
        .orElse(null);
  }

  private static int size(@Nullable SequenceNode sequence) {
    return sequence == null ? 0 : sequence.getValue().size();
  }

  private static Optional<NodeTuple> tuple(@Nullable MappingNode map, String key) {
    Predicate<NodeTuple> named =
        t -> t.getKeyNode() instanceof ScalarNode k && k.getValue().equals(key);
    return map == null ? Optional.empty() : map.getValue().stream().filter(named).findFirst();
  }

  private static @Nullable SequenceNode sequence(@Nullable MappingNode map, String key) {
    return tuple(map, key)
        .filter(t -> t.getValueNode() instanceof SequenceNode)
        .map(t -> (SequenceNode) t.getValueNode())
        .orElse(null);
  }

  private static @Nullable String scalar(MappingNode map, String key) {
    return tuple(map, key)
        .filter(t -> t.getValueNode() instanceof ScalarNode)
        .map(t -> ((ScalarNode) t.getValueNode()).getValue())
        .orElse(null);
  }

  // ---------- writing ----------

  /** Replaces the value of a key, or adds the key behind the name. */
  private MethodText with(MappingNode map, String key, String value) {
    Optional<NodeTuple> there = tuple(map, key);
    if (there.isPresent()) {
      Node old = there.get().getValueNode();
      return replace(start(old), end(old), value);
    }
    NodeTuple before = tuple(map, "name").or(() -> tuple(map, "id")).orElse(map.getValue().get(0));
    String glue =
        map.getFlowStyle() == FlowStyle.FLOW
            ? ", "
            : "\n" + " ".repeat(map.getStartMark().getColumn());
    return insert(end(before.getValueNode()), glue + key + ": " + value);
  }

  private MethodText without(SequenceNode sequence, @Nullable Node item) {
    List<Node> items = sequence.getValue();
    int at = item == null ? -1 : items.indexOf(item);
    if (at < 0 || item == null) {
      return this;
    }
    if (sequence.getFlowStyle() == FlowStyle.FLOW) {
      return at + 1 < items.size()
          ? replace(start(item), start(items.get(at + 1)), "")
          : replace(at == 0 ? start(item) : end(items.get(at - 1)), end(item), "");
    }
    int from = lineStart(dash(item));
    int to = at + 1 < items.size() ? lineStart(dash(items.get(at + 1))) : lineEnd(end(item));
    return replace(from, to, "");
  }

  /** Puts the source of an item of another text at the end of a block sequence. */
  private MethodText append(SequenceNode sequence, String source) {
    List<Node> items = sequence.getValue();
    if (items.isEmpty() || sequence.getFlowStyle() == FlowStyle.FLOW) {
      return this;
    }
    Node last = items.get(items.size() - 1);
    int indent = dash(last) - lineStart(dash(last));
    String[] lines = source.split("\n", -1);
    int theirs = lines[0].length() - lines[0].stripLeading().length();
    StringBuilder moved = new StringBuilder();
    for (String line : lines) {
      String bare = line.length() >= theirs ? line.substring(theirs) : line.stripLeading();
      moved.append('\n').append(bare.isBlank() ? "" : " ".repeat(indent) + bare);
    }
    return insert(lineEndBefore(end(last)), moved.toString());
  }

  /** The lines of an item of a block sequence, from its dash on. */
  private String source(Node item) {
    return text.substring(lineStart(dash(item)), lineEndBefore(end(item)));
  }

  private MethodText insert(int at, String words) {
    return replace(at, at, words);
  }

  private MethodText replace(int from, int to, String words) {
    return of(text.substring(0, from) + words + text.substring(to));
  }

  private int start(Node node) {
    return text.offsetByCodePoints(0, node.getStartMark().getIndex());
  }

  /** Where the last written character of a node ends; block nodes run on to the next token. */
  private int end(Node node) {
    boolean block = node instanceof CollectionNode<?> c && c.getFlowStyle() != FlowStyle.FLOW;
    if (block && node instanceof MappingNode map && !map.getValue().isEmpty()) {
      return end(map.getValue().get(map.getValue().size() - 1).getValueNode());
    }
    if (block && node instanceof SequenceNode list && !list.getValue().isEmpty()) {
      return end(list.getValue().get(list.getValue().size() - 1));
    }
    int end = text.offsetByCodePoints(0, node.getEndMark().getIndex());
    int begin = start(node);
    while (end > begin && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  private int dash(Node item) {
    return text.lastIndexOf('-', start(item));
  }

  private int lineStart(int at) {
    return text.lastIndexOf('\n', at - 1) + 1;
  }

  private int lineEnd(int at) {
    int end = text.indexOf('\n', at);
    return end < 0 ? text.length() : end + 1;
  }

  private int lineEndBefore(int at) {
    int end = text.indexOf('\n', at);
    return end < 0 ? text.length() : end;
  }

  /** Double quotes with what YAML wants escaped in them. */
  static String quoted(String words) {
    StringBuilder quoted = new StringBuilder("\"");
    for (char c : words.toCharArray()) {
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else {
        quoted.append(Character.isISOControl(c) ? ' ' : c);
      }
    }
    return quoted.append('"').toString();
  }
}
