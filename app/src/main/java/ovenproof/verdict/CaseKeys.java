package ovenproof.verdict;

/** Names of nodes and variables of a campaign in its scoring case. */
public final class CaseKeys {

  /** The root of the value tree. No test can be called so: keys of people have no {@code @}. */
  public static final String TOTAL = "@total";

  private CaseKeys() {}

  /** A use of a measure in a test. */
  public static String variable(String test, String use) {
    return test + "/" + use;
  }

  /** A group or criterion of a test. */
  public static String node(String test, String node) {
    return test + "/" + node;
  }
}
