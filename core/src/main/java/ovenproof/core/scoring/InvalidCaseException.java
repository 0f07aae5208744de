package ovenproof.core.scoring;

import java.util.List;
import java.util.stream.Collectors;

/** A case that cannot be scored; carries every problem. */
public final class InvalidCaseException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient List<CaseProblem> problems;

  public InvalidCaseException(List<CaseProblem> problems) {
    super(problems.stream().map(CaseProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public List<CaseProblem> problems() {
    return problems;
  }
}
