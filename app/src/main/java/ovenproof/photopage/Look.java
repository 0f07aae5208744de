package ovenproof.photopage;

import java.util.Locale;

/** How a photograph is drawn. */
public enum Look {
  /** As the camera made it. */
  ORIGINAL,
  /** The same surface has the same colour on every picture. */
  CALIBRATED,
  /** Paler and darker than the target, or than the mean of the food. */
  MAP;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Look of(String word) {
    for (Look look : values()) {
      if (look.word().equals(word)) {
        return look;
      }
    }
    return ORIGINAL;
  }
}
