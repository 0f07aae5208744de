package ovenproof.input;

/** Follows a stream of bytes and knows its longest line so far, in constant memory. */
public final class LineLengths {
  private int line = 1;
  private long length;
  private long longest;
  private int longestLine = 1;

  public void add(byte[] block, int count) {
    for (int i = 0; i < count; i++) {
      if (block[i] == '\n') {
        length = 0;
        line++;
      } else if (++length > longest) {
        longest = length;
        longestLine = line;
      }
    }
  }

  /** Length in bytes of the longest line so far, the unfinished one included. */
  public long longest() {
    return longest;
  }

  /** Number of that line, from 1. */
  public int longestLine() {
    return longestLine;
  }
}
