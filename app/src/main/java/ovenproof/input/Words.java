package ovenproof.input;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Choices as files write them: the constant's name in lower case with hyphens. */
public final class Words {

  private Words() {}

  /** {@code DOOR_OPEN} → {@code door-open}. */
  public static String of(Enum<?> choice) {
    return choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Every word of a kind of choice, in the order of its constants. */
  public static <E extends Enum<E>> List<String> all(Class<E> choices) {
    return Arrays.stream(choices.getEnumConstants()).map(Words::of).toList();
  }

  /** The choice that a word names, exactly as written; empty when it names none. */
  public static <E extends Enum<E>> Optional<E> named(Class<E> choices, String word) {
    return Arrays.stream(choices.getEnumConstants()).filter(c -> of(c).equals(word)).findFirst();
  }
}
