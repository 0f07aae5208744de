package ovenproof.core.trace;

/**
 * Rows that were logged without a restart.
 *
 * @param fromRow first row, from 0
 * @param toRow row after the last
 */
public record Segment(int fromRow, int toRow) {
  public int rows() {
    return toRow - fromRow;
  }
}
