package ovenproof.evidence.photo;

import ovenproof.core.photo.Picture;

/** Pixels put where they belong in the upright scene, line by line as they are stored. */
final class UprightPixels {

  private final int width;
  private final int height;
  private final boolean lying;
  private final int[] out;

  /** Where the first pixel goes, and the steps for the next in a line and the next line. */
  private final int[] place;

  /**
   * @param width of the stored picture
   * @param height of the stored picture
   * @param orientation EXIF 1…8 (CIPA DC-008, tag 274)
   */
  UprightPixels(int width, int height, int orientation) {
    this.width = width;
    this.height = height;
    this.lying = orientation >= 5;
    this.out = new int[width * height];
    this.place = place(orientation, width, height);
  }

  /** Puts a line of packed pixels; lines may come in any order and from several threads. */
  void put(int y, int[] line) {
    int at = place[0] + y * place[2];
    for (int x = 0; x < width; x++, at += place[1]) {
      out[at] = line[x];
    }
  }

  /** Puts a line of red, green and blue bytes. */
  void putRgb(int y, byte[] rgb) {
    int at = place[0] + y * place[2];
    int step = place[1];
    for (int x = 0, i = 0; x < width; x++, i += 3, at += step) {
      out[at] = (rgb[i] & 0xff) << 16 | (rgb[i + 1] & 0xff) << 8 | rgb[i + 2] & 0xff;
    }
  }

  /** The picture, when all lines are there. */
  Picture picture() {
    return lying ? new Picture(height, width, out) : new Picture(width, height, out);
  }

  private static int[] place(int orientation, int w, int h) {
    return switch (orientation) {
      case 2 -> new int[] {w - 1, -1, w};
      case 3 -> new int[] {w * h - 1, -1, -w};
      case 4 -> new int[] {(h - 1) * w, 1, -w};
      case 5 -> new int[] {0, h, 1};
      case 6 -> new int[] {h - 1, h, -1};
      case 7 -> new int[] {(w - 1) * h + h - 1, -h, -1};
      case 8 -> new int[] {(w - 1) * h, -h, 1};
      default -> new int[] {0, 1, w};
    };
  }
}
