package ovenproof.core.scoring;

/**
 * Something in a case that cannot be scored.
 *
 * @param place what it is about: a node, a gate, a product
 */
public record CaseProblem(String place, String found, String expected, String remedy) {
  @Override
  public String toString() {
    return place + ": found " + found + ", expected " + expected + "; " + remedy;
  }
}
