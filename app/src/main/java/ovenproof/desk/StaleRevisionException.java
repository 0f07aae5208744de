package ovenproof.desk;

/** Someone else saved the document meanwhile; carries both versions so that a person can choose. */
public final class StaleRevisionException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Document current;
  private final String yours;

  StaleRevisionException(Document current, String yours) {
    super("the " + current.name() + " was saved meanwhile by " + current.who());
    this.current = current;
    this.yours = yours;
  }

  public Document current() {
    return current;
  }

  /** What was to be saved. */
  public String yours() {
    return yours;
  }
}
