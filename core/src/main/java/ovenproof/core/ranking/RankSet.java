package ovenproof.core.ranking;

/**
 * Places that a product may hold: 1 + how many are separated above it, to the size of the field
 * less how many are separated below it.
 */
public record RankSet(int low, int high) {
  @Override
  public String toString() {
    return low == high ? String.valueOf(low) : low + "–" + high;
  }
}
