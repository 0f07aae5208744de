package ovenproof.photopage;

import java.util.List;
import java.util.Locale;

/** How a photograph is drawn. */
public enum Look {
  /** As the camera made it. */
  ORIGINAL,
  /** The same surface has the same colour on every picture. */
  CALIBRATED,
  /** Paler and darker than the target, or than the mean of the food. */
  MAP,
  /** The pieces alone, calibrated, side by side on one ground. */
  PIECES;

  /** Looks of the whole frame, in which outlines lie where they are. */
  static List<Look> ofFrame() {
    return List.of(ORIGINAL, CALIBRATED, MAP);
  }

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
