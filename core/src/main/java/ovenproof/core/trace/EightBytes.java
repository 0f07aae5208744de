package ovenproof.core.trace;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Eight bytes of text looked at as one number, the first byte lowest (Warren, Hacker's Delight,
 * chapter 6: finding a byte in a word). Whoever reads at an index makes sure that {@link #PADDING}
 * more bytes exist behind the text.
 */
final class EightBytes {

  /** Bytes behind the end of a text that may be looked at. */
  static final int PADDING = 16;

  private static final VarHandle WORDS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private static final long ONES = 0x0101_0101_0101_0101L;
  private static final long SEVENS = 0x7f7f_7f7f_7f7f_7f7fL;
  private static final long HIGHS = 0x8080_8080_8080_8080L;

  private EightBytes() {}

  static long at(byte[] bytes, int index) {
    return (long) WORDS.get(bytes, index);
  }

  /** Each byte that is a digit becomes 0 to 9, every other one something else. */
  static long digits(long word) {
    return word ^ 0x3030_3030_3030_3030L;
  }

  /** The high bit of every byte of {@link #digits} that is no digit. */
  static long noDigits(long digits) {
    return (((digits & SEVENS) + 0x7676_7676_7676_7676L) | digits) & HIGHS;
  }

  /**
   * The number that eight decimal digits stand for, the lowest byte first.
   *
   * @param digits 0 to 9 in every byte
   */
  static long number(long digits) {
    long pairs = (digits * 10 + (digits >>> 8)) & 0x00ff_00ff_00ff_00ffL;
    long fours = (pairs * 100 + (pairs >>> 16)) & 0x0000_ffff_0000_ffffL;
    return (fours * 10_000 + (fours >>> 32)) & 0xffff_ffffL;
  }

  /** The high bit of every byte that equals another; bits above the first may be wrong. */
  private static long equal(long word, long pattern) {
    long different = word ^ pattern;
    return (different - ONES) & ~different & HIGHS;
  }

  /** First index of a byte from {@code from} on; {@code to} when it is not there. */
  static int indexOf(byte[] bytes, int from, int to, byte wanted) {
    long pattern = (wanted & 0xFF) * ONES;
    int i = from;
    for (; i + 8 <= to; i += 8) {
      long found = equal(at(bytes, i), pattern);
      if (found != 0) {
        return i + (Long.numberOfTrailingZeros(found) >>> 3);
      }
    }
    while (i < to && bytes[i] != wanted) {
      i++;
    }
    return Math.min(i, to);
  }

  /** First index from {@code from} on of a byte that is no ASCII; {@code to} when there is none. */
  static int firstAbove127(byte[] bytes, int from, int to) {
    int i = from;
    while (i + 8 <= to && (at(bytes, i) & HIGHS) == 0) {
      i += 8;
    }
    while (i < to && bytes[i] >= 0) {
      i++;
    }
    return i;
  }

  /** How many of the first bytes equal another. */
  static int count(byte[] bytes, int length, byte wanted) {
    long pattern = (wanted & 0xFF) * ONES;
    int n = 0;
    int i = 0;
    for (; i + 8 <= length; i += 8) {
      long different = at(bytes, i) ^ pattern;
      long zeros = ~(((different & SEVENS) + SEVENS) | different | SEVENS);
      n += Long.bitCount(zeros);
    }
    for (; i < length; i++) {
      n += bytes[i] == wanted ? 1 : 0;
    }
    return n;
  }
}
