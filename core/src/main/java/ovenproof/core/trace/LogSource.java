package ovenproof.core.trace;

/**
 * The bytes of a log, wherever they are kept. A large log is read from it piece by piece, by
 * several threads at once, and never held as a whole.
 */
public interface LogSource {

  /** How many bytes there are; does not change while the log is read. */
  long size();

  /**
   * Copies bytes that exist.
   *
   * @param position of the first byte
   * @param into filled from {@code offset}
   * @param length how many, never more than are left
   */
  void copy(long position, byte[] into, int offset, int length);

  /** The bytes from a place; the caller leaves them alone, they may be the source's own. */
  default byte[] bytes(long position, int length) {
    byte[] copy = new byte[length];
    copy(position, copy, 0, length);
    return copy;
  }

  /** Bytes that are already in memory; they are not changed. */
  static LogSource of(byte[] bytes) {
    return new InMemory(bytes);
  }

  /** An array as a source. */
  record InMemory(byte[] array) implements LogSource {
    @Override
    public long size() {
      return array.length;
    }

    @Override
    public void copy(long position, byte[] into, int offset, int length) {
      System.arraycopy(array, (int) position, into, offset, length);
    }

    @Override
    public byte[] bytes(long position, int length) {
      return position == 0 && length == array.length
          ? array
          : LogSource.super.bytes(position, length);
    }
  }
}
