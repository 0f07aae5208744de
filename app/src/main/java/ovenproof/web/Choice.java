package ovenproof.web;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Something that can be chosen in a form. */
public record Choice(String id, String name) {

  /** The constants of an enum, in lower case with blanks. */
  public static <E extends Enum<E>> List<Choice> of(E[] constants) {
    return Stream.of(constants).map(c -> new Choice(c.name(), words(c))).toList();
  }

  public static String words(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The constant of a name that a form sent. */
  public static <E extends Enum<E>> E named(E[] constants, @Nullable String name, E otherwise) {
    return Stream.of(constants).filter(c -> c.name().equals(name)).findFirst().orElse(otherwise);
  }
}
