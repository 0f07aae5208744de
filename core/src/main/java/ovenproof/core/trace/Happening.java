package ovenproof.core.trace;

/**
 * Something a person noted beside the log.
 *
 * @param second from the start of the run
 * @param batch 1 where batches are not told apart
 */
public record Happening(Kind kind, double second, int batch) {

  /** What traces can be asked about. */
  public enum Kind {
    /** The appliance says that it is ready. */
    SIGNAL,
    LOAD,
    DOOR_OPEN,
    DOOR_CLOSE,
    STOP,
    /** The food leaves the appliance. */
    REMOVE,
    POWER_OFF
  }

  public Happening {
    if (!Double.isFinite(second) || batch < 1) {
      throw new IllegalArgumentException(
          "second must be finite and batch at least 1, found " + second + " and " + batch);
    }
  }
}
