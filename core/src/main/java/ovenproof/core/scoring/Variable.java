package ovenproof.core.scoring;

/**
 * Something measured of every product, and how sure one run of it is.
 *
 * @param repeatability where the deviation between runs comes from
 * @param deviation declared standard deviation between runs in the variable's unit; 0 unless {@code
 *     repeatability} is DECLARED
 * @param unitToUnit declared standard deviation between specimens of one product in the variable's
 *     unit; 0 when intervals speak of the specimen only
 */
public record Variable(
    String id, String label, Repeatability repeatability, double deviation, double unitToUnit) {

  /** Where the deviation between runs comes from. */
  public enum Repeatability {
    /** Pooled over the field; unknown when no product has two runs. */
    POOLED,
    /** Pooled where products have two runs, else the declared deviation. */
    DECLARED,
    /** A fact without run-to-run deviation, such as a checklist. */
    EXACT
  }

  public Variable {
    if (!(deviation >= 0 && unitToUnit >= 0)) {
      throw new IllegalArgumentException(
          id + ": deviations must be 0 or more, found " + deviation + " and " + unitToUnit);
    }
  }

  public static Variable pooled(String id) {
    return new Variable(id, id, Repeatability.POOLED, 0, 0);
  }

  public static Variable declared(String id, double deviation) {
    return new Variable(id, id, Repeatability.DECLARED, deviation, 0);
  }

  public static Variable exact(String id) {
    return new Variable(id, id, Repeatability.EXACT, 0, 0);
  }
}
