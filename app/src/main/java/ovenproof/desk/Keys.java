package ovenproof.desk;

import java.security.SecureRandom;
import java.time.Clock;

/** Makes UUIDs of version 7 (RFC 9562, 5.7): sortable by time, unguessable in the rest. */
public final class Keys {
  private static final SecureRandom RANDOM = new SecureRandom();

  private Keys() {}

  public static String next(Clock clock) {
    return of(clock.millis(), RANDOM.nextLong(), RANDOM.nextLong());
  }

  /** 48 bits of milliseconds, version 7, 12 random bits, variant 2, 62 random bits. */
  static String of(long epochMillis, long randomA, long randomB) {
    long high = (epochMillis << 16) | 0x7000L | (randomA & 0x0FFFL);
    long low = (randomB & 0x3FFFFFFFFFFFFFFFL) | 0x8000000000000000L;
    return new java.util.UUID(high, low).toString();
  }

  /** Whether a text could be a key that a client made: 8 to 80 letters, digits or hyphens. */
  public static boolean isKey(String text) {
    return text.matches("[A-Za-z0-9-]{8,80}");
  }
}
