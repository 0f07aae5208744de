package ovenproof.cli;

/** What the program's exit tells the shell. */
public final class ExitCode {
  public static final int FINE = 0;

  /** The input has problems; they were printed, all of them. */
  public static final int INPUT = 1;

  /** The verb was called wrongly. */
  public static final int USAGE = 2;

  /** Something outside the program failed, or the program itself. */
  public static final int OUTSIDE = 3;

  private ExitCode() {}
}
