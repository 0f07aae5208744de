package ovenproof.input;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The input has problems; carries all of them. Shown as lines, never as a stack trace; exit code 1.
 */
public final class InputException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  public InputException(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public InputException(Problem problem) {
    this(List.of(problem));
  }

  public List<Problem> problems() {
    return problems;
  }
}
