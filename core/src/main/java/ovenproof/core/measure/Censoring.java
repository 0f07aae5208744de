package ovenproof.core.measure;

import java.util.Locale;

/** How a value is known when it was not seen itself. */
public enum Censoring {
  /** The value was measured. */
  NONE,
  /** The value lies above {@code low}: the cap of 45 min was reached before it was done. */
  ABOVE,
  /** The value lies below {@code high}: already there at the first look. */
  BELOW,
  /** The value lies between {@code low} and {@code high}: looked at every two minutes. */
  BETWEEN;

  /** What it becomes when the sign of the quantity is changed. */
  public Censoring mirrored() {
    return switch (this) {
      case ABOVE -> BELOW;
      case BELOW -> ABOVE;
      case NONE, BETWEEN -> this;
    };
  }

  /** The word in JSON: above, below, between; NONE is JSON's null. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
