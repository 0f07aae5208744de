package ovenproof.files;

import java.util.List;
import java.util.Optional;

/**
 * One column of a table.
 *
 * @param words the valid words of a {@link Kind#WORD}; empty for others
 * @param help what to write, in a sentence
 */
public record Column(
    String name,
    Need need,
    Kind kind,
    List<String> words,
    Optional<Reference> reference,
    String help) {

  public Column {
    words = List.copyOf(words);
  }

  /** Whether a row must say it. */
  public enum Need {
    REQUIRED,
    OPTIONAL
  }

  /** A key of another table. */
  public record Reference(String table, String column) {}

  /** What a cell holds. */
  public enum Kind {
    KEY,
    TEXT,
    WORD,
    WHOLE_NUMBER,
    NUMBER,
    /** A number with its unit. */
    QUANTITY,
    DATE,
    /** A moment, in the campaign's zone or with an offset. */
    TIME,
    /** A moment, or {@code +6:30} since the run's start. */
    TIME_OR_ELAPSED,
    /** A file of the folder. */
    PATH,
    /** {@code piece:x,y,w,h} separated by spaces. */
    BOXES
  }

  static Column of(String name, Kind kind, String help) {
    return new Column(name, Need.OPTIONAL, kind, List.of(), Optional.empty(), help);
  }

  static Column word(String name, List<String> words, String help) {
    return new Column(name, Need.OPTIONAL, Kind.WORD, words, Optional.empty(), help);
  }

  /** A key that stands in another table. */
  static Column ref(String name, String table, String column, String help) {
    return new Column(
        name, Need.OPTIONAL, Kind.KEY, List.of(), Optional.of(new Reference(table, column)), help);
  }

  Column required() {
    return new Column(name, Need.REQUIRED, kind, words, reference, help);
  }
}
