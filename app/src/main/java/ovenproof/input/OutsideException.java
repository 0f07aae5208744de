package ovenproof.input;

/**
 * Something outside the program failed: a disk, a network, another program. The message says in a
 * sentence what was being done and what to do next; exit code 3.
 */
public final class OutsideException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public OutsideException(String message, Throwable cause) {
    super(message, cause);
  }
}
