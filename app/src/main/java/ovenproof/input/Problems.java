package ovenproof.input;

import java.util.ArrayList;
import java.util.List;

/** Collects every problem of one pass over the input. Not for use by several threads. */
public final class Problems {
  private final List<Problem> all = new ArrayList<>();

  public void add(Problem problem) {
    all.add(problem);
  }

  public void error(Place place, String found, String expected, String remedy) {
    all.add(Problem.error(place, found, expected, remedy));
  }

  public void warning(Place place, String found, String expected, String remedy) {
    all.add(Problem.warning(place, found, expected, remedy));
  }

  public List<Problem> all() {
    return List.copyOf(all);
  }

  public boolean hasErrors() {
    return all.stream().anyMatch(p -> p.severity() == Problem.Severity.ERROR);
  }

  /**
   * Ends the pass.
   *
   * @throws InputException with all problems, if any of them is an error
   */
  public void throwIfErrors() {
    if (hasErrors()) {
      throw new InputException(all());
    }
  }
}
