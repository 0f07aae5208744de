package ovenproof.input;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.reader.ReaderException;

/**
 * Reads YAML as nodes with their places. Scalars stay as written: {@code 6:30} is not 390, {@code
 * no} is not false, {@code 1.10} is not 1.1.
 */
public final class YamlDocument {

  private YamlDocument() {}

  /**
   * The mapping at the top; empty when the text is no YAML or holds something else, which is
   * reported.
   */
  public static Optional<YamlMap> read(String file, String text, Problems problems) {
    Node root;
    try {
      LoaderOptions options = new LoaderOptions();
      options.setCodePointLimit(16 << 20);
      root = new Yaml(options).compose(new java.io.StringReader(text));
    } catch (MarkedYAMLException broken) {
      problems.error(
          place(file, broken.getProblemMark()),
          "broken YAML: " + oneLine(broken.getProblem()),
          "a YAML document",
          "mind indentation (spaces, no tabs), a space after each colon, and quotes");
      return Optional.empty();
    } catch (ReaderException odd) {
      problems.error(
          placeOf(file, text, odd.getPosition()),
          String.format("the character U+%04X", odd.getCodePoint()),
          "text",
          "delete it: it cannot be seen but it is there");
      return Optional.empty();
    } catch (YAMLException refused) {
      problems.error(
          Place.of(file), oneLine(refused.getMessage()), "a YAML document of ordinary size", "");
      return Optional.empty();
    }
    return top(file, root, problems);
  }

  private static Optional<YamlMap> top(String file, @Nullable Node root, Problems problems) {
    if (!(root instanceof MappingNode mapping)) {
      problems.error(
          new Place(file, 1, 1),
          root == null ? "an empty document" : "no keys",
          "a document of \"key: value\" lines",
          "begin with \"format: 1\"");
      return Optional.empty();
    }
    if (hasAlias(root, Collections.newSetFromMap(new IdentityHashMap<>()), file, problems)) {
      return Optional.empty();
    }
    return Optional.of(YamlMap.of(file, mapping, problems));
  }

  /** An alias makes one node appear twice, perhaps inside itself; nobody needs it here. */
  private static boolean hasAlias(Node node, Set<Node> seen, String file, Problems problems) {
    if (!seen.add(node)) {
      problems.error(
          place(file, node.getStartMark()),
          "a value used again through an alias (*)",
          "each value written where it is used",
          "copy it");
      return true;
    }
    if (node instanceof SequenceNode list) {
      return list.getValue().stream().anyMatch(n -> hasAlias(n, seen, file, problems));
    }
    if (node instanceof MappingNode map) {
      for (NodeTuple tuple : map.getValue()) {
        if (hasAlias(tuple.getKeyNode(), seen, file, problems)
            || hasAlias(tuple.getValueNode(), seen, file, problems)) {
          return true;
        }
      }
    }
    return false;
  }

  static Place place(String file, @Nullable Mark mark) {
    return mark == null
        ? Place.of(file)
        : new Place(file, mark.getLine() + 1, mark.getColumn() + 1);
  }

  private static Place placeOf(String file, String text, int position) {
    String before = text.substring(0, Math.min(Math.max(position, 0), text.length()));
    int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
    return new Place(file, line, before.length() - before.lastIndexOf('\n'));
  }

  private static String oneLine(@Nullable String message) {
    return message == null ? "no reason given" : message.strip().replaceAll("\\s+", " ");
  }
}
