package ovenproof.core.quantity;

/** What a person wrote is not the quantity that was asked for; says what was found and expected. */
public final class QuantityFormatException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String found;
  private final String expected;
  private final String remedy;

  public QuantityFormatException(String found, String expected, String remedy) {
    super(
        "found \"" + found + "\", expected " + expected + (remedy.isEmpty() ? "" : ": " + remedy));
    this.found = found;
    this.expected = expected;
    this.remedy = remedy;
  }

  public String found() {
    return found;
  }

  public String expected() {
    return expected;
  }

  /** What to write instead; empty when there is nothing better to say than what was expected. */
  public String remedy() {
    return remedy;
  }
}
