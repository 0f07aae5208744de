package ovenproof.input;

/**
 * One thing that is wrong with the input.
 *
 * @param found what stands there, as a person would quote it
 * @param expected what should stand there
 * @param remedy what to do, perhaps the nearest valid word; may be empty
 */
public record Problem(
    Severity severity, Place place, String found, String expected, String remedy) {

  /** Whether work can go on. */
  public enum Severity {
    /** The input cannot be used; exit code 1. */
    ERROR,
    /** Usable, but probably not what was meant. */
    WARNING
  }

  public static Problem error(Place place, String found, String expected, String remedy) {
    return new Problem(Severity.ERROR, place, found, expected, remedy);
  }

  public static Problem warning(Place place, String found, String expected, String remedy) {
    return new Problem(Severity.WARNING, place, found, expected, remedy);
  }

  /** One line: place, found, expected, remedy. */
  @Override
  public String toString() {
    String sentence = place + ": found " + found + ", expected " + expected;
    return remedy.isEmpty() ? sentence : sentence + "; " + remedy;
  }
}
