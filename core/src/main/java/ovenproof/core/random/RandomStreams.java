package ovenproof.core.random;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * All random streams of one stored seed.
 *
 * <p>The state of a source's stream is the SHA-256 of seed and name; block b starts from that state
 * mixed with b. Two of n streams of length L overlap with probability of about n²·L/2²⁵⁶.
 */
public final class RandomStreams {

  /** Draws per block. Sums are taken inside a block, then over blocks in their order. */
  public static final int BLOCK = 500;

  private final String seed;

  private RandomStreams(String seed) {
    this.seed = seed;
  }

  /**
   * @param seed the stored seed, any words or number; not blank
   */
  public static RandomStreams of(String seed) {
    if (seed.isBlank()) {
      throw new IllegalArgumentException("seed must be named, found a blank");
    }
    return new RandomStreams(seed);
  }

  /** Blocks that hold at least so many draws; at least one. */
  public static int blocks(int draws) {
    if (draws < 1) {
      throw new IllegalArgumentException("draws must be at least 1, found " + draws);
    }
    return (draws + BLOCK - 1) / BLOCK;
  }

  /**
   * The stream of a source of error.
   *
   * @param id stable name, such as {@code shared:probe:P3@2026-03-02}; the same id is the same
   *     error
   */
  public ErrorSource source(String id) {
    ByteBuffer digest = ByteBuffer.wrap(sha256(seed + '\n' + id));
    return new ErrorSource(digest.getLong(), digest.getLong(), digest.getLong(), digest.getLong());
  }

  private static byte[] sha256(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
