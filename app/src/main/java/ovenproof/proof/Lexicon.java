package ovenproof.proof;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * The words of {@code lexicon.txt}: for each measure, fact, mark, for prices and scores, which
 * nouns and verbs point at it and which adjectives mean its upper or lower end.
 */
final class Lexicon {
  private static final String MARK = "mark:";

  /** What a line of a block says. */
  enum Line {
    WORDS,
    HIGH,
    LOW,
    MORE
  }

  private final Map<String, Map<Line, Set<String>>> blocks = new LinkedHashMap<>();
  private final Map<String, Adjective> adjectives = new HashMap<>();
  private final Map<String, Adjective> nouns = new HashMap<>();

  private Lexicon(String text) {
    String block = "";
    for (String line : text.split("\\R")) {
      if (!line.isBlank() && !line.startsWith("#")) {
        boolean isName = !Character.isWhitespace(line.charAt(0));
        if (isName) {
          block = line.strip();
          blocks.put(block, new HashMap<>());
        } else {
          add(block, line.strip());
        }
      }
    }
  }

  static Lexicon load() {
    try (InputStream in = Lexicon.class.getResourceAsStream("lexicon.txt")) {
      return new Lexicon(
          new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(String block, String line) {
    String[] parts = line.split("\\s+");
    Line kind = Line.valueOf(parts[0].toUpperCase(java.util.Locale.ROOT));
    Set<String> stems = new HashSet<>();
    for (int i = 1; i < parts.length; i++) {
      stems.add(Stems.of(parts[i]));
    }
    Objects.requireNonNull(blocks.get(block)).put(kind, stems);
    if (!block.startsWith(MARK)) {
      switch (kind) {
        case HIGH -> stems.forEach(s -> mean(adjectives, s, Direction.HIGH, block));
        case LOW -> stems.forEach(s -> mean(adjectives, s, Direction.LOW, block));
        case MORE -> stems.forEach(s -> mean(nouns, s, Direction.HIGH, block));
        case WORDS -> {}
      }
    }
  }

  private static void mean(
      Map<String, Adjective> meanings, String stem, Direction direction, String block) {
    @Nullable Adjective before = meanings.get(stem);
    if (before == null) {
      meanings.put(stem, new Adjective(direction, List.of(block)));
    } else if (before.direction() == direction && !before.takes().contains(block)) {
      List<String> takes = new ArrayList<>(before.takes());
      takes.add(block);
      meanings.put(stem, new Adjective(direction, List.copyOf(takes)));
    }
  }

  Set<String> blocks() {
    return blocks.keySet();
  }

  @Nullable Adjective adjective(String stem) {
    return adjectives.get(stem);
  }

  @Nullable Adjective noun(String stem) {
    return nouns.get(stem);
  }

  /** Stems that point at a measure or a fact, by its id; empty for an unknown one. */
  Set<String> words(String id) {
    Map<Line, Set<String>> block = blocks.getOrDefault(id, blocks.get("fact:" + id));
    return block == null ? Set.of() : block.getOrDefault(Line.WORDS, Set.of());
  }

  /** All stems of the marks whose word is among a name's; none that are adjectives of a measure. */
  Set<String> wordsOfMark(Set<String> nameStems) {
    Set<String> words = new HashSet<>();
    blocks.forEach(
        (name, block) -> {
          if (name.startsWith(MARK)
              && nameStems.contains(Stems.of(name.substring(MARK.length())))) {
            words.addAll(block.getOrDefault(Line.WORDS, Set.of()));
            for (Line end : List.of(Line.HIGH, Line.LOW)) {
              block.getOrDefault(end, Set.of()).stream()
                  .filter(s -> !adjectives.containsKey(s))
                  .forEach(words::add);
            }
          }
        });
    return words;
  }

  boolean isLowEndOfMark(String stem) {
    return blocks.entrySet().stream()
        .filter(e -> e.getKey().startsWith(MARK))
        .anyMatch(e -> e.getValue().getOrDefault(Line.LOW, Set.of()).contains(stem));
  }
}
