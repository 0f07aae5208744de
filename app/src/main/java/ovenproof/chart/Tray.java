package ovenproof.chart;

import org.jspecify.annotations.Nullable;

/**
 * A value and what holds it.
 *
 * @param value the bead; null when there is none
 * @param low left lip; null when there is none
 * @param high right lip; null when there is none
 */
public record Tray(Kind kind, @Nullable Double value, @Nullable Double low, @Nullable Double high) {

  /** What is known; each has its own shape. */
  public enum Kind {
    /** Bead in a tray with two lips. */
    INTERVAL,
    /** Bead without a tray: one run, nothing known of its spread. */
    VALUE_ONLY,
    /** Bead at the right end of a tray that has no left lip. */
    AT_MOST,
    /** Bead at the left end of a tray that has no right lip. */
    AT_LEAST,
    /** Dashed tray without a bead: anything in between. */
    BOUNDS,
    /** Dotted rail. */
    CANNOT_DO,
    /** Nothing but the empty lane. */
    NONE;

    boolean hasBead() {
      return this == INTERVAL || this == VALUE_ONLY || this == AT_MOST || this == AT_LEAST;
    }
  }

  public Tray {
    if (kind.hasBead() && value == null) {
      throw new IllegalArgumentException(kind + " needs a value");
    }
    if ((kind == Kind.INTERVAL || kind == Kind.BOUNDS) && (low == null || high == null)) {
      throw new IllegalArgumentException(kind + " needs low and high");
    }
  }

  public static Tray interval(double value, double low, double high) {
    return new Tray(Kind.INTERVAL, value, low, high);
  }

  public static Tray valueOnly(double value) {
    return new Tray(Kind.VALUE_ONLY, value, null, null);
  }

  public static Tray bounds(double low, double high) {
    return new Tray(Kind.BOUNDS, null, low, high);
  }

  public static Tray none() {
    return new Tray(Kind.NONE, null, null, null);
  }
}
