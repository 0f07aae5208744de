package ovenproof.publish.figure;

import org.jspecify.annotations.Nullable;

/**
 * One figure in both unit systems, each rounded on its own from the stored value.
 *
 * @param first as the desk works, or as the method wrote it
 * @param second the other system; null where both share the unit (seconds, watts)
 */
public record Dual(String first, @Nullable String second) {

  /** {@code 230 °C (446 °F)}. */
  @Override
  public String toString() {
    return second == null ? first : first + " (" + second + ")";
  }
}
