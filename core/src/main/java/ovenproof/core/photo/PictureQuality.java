package ovenproof.core.photo;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Whether a picture is good enough to measure: ends of the scale, sharpness, size. */
final class PictureQuality {

  private static final double CLIPPED_SHARE = 0.01;
  private static final int STEP = 3;
  private static final int SAMPLES = 20_000;
  private static final int ROW_STEP = 16;
  private static final int LEAST_ROWS = 180;
  private static final int EDGE_REACH = 6;
  private static final int LEAST_EDGE = 40;
  private static final int LEAST_EDGES = 200;
  private static final double SHARP = 0.15;
  private static final int LEAST_SIDE = 200;

  private final Picture picture;

  PictureQuality(Picture picture) {
    this.picture = picture;
  }

  void warn(List<Outline> pieces, List<String> warnings) {
    if (isOneColour()) {
      warnings.add("the whole frame is one colour: was the lens covered?");
      return;
    }
    if (isWithoutColour()) {
      warnings.add(
          "a picture without colour: L* alone says something, a*, b* and differences of shade do not");
    }
    if (picture.longSide() < LEAST_SIDE) {
      warnings.add(
          "low resolution: " + picture.width() + " × " + picture.height() + " pixels in all");
    }
    warnClipping(pieces, warnings);
    double sharpness = sharpness();
    if (sharpness < SHARP) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "blurred: edges are about %.0f pixels wide; hold still and focus on the food",
              1 / Math.max(0.01, sharpness)));
    }
  }

  private boolean isOneColour() {
    int first = picture.pixels()[0];
    int step = Math.max(1, picture.pixels().length / SAMPLES);
    for (int i = 0; i < picture.pixels().length; i += step) {
      int p = picture.pixels()[i];
      for (int shift = 0; shift <= 16; shift += 8) {
        if (Math.abs((p >> shift & 0xff) - (first >> shift & 0xff)) > 12) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean isWithoutColour() {
    int step = Math.max(1, picture.pixels().length / SAMPLES);
    for (int i = 0; i < picture.pixels().length; i += step) {
      int p = picture.pixels()[i];
      int green = p >> 8 & 0xff;
      if (Math.abs((p >> 16 & 0xff) - green) > 2 || Math.abs((p & 0xff) - green) > 2) {
        return false;
      }
    }
    return true;
  }

  private void warnClipping(List<Outline> pieces, List<String> warnings) {
    long n = 0;
    long high = 0;
    long low = 0;
    for (Outline outline : pieces) {
      PixelBox box = outline.box();
      for (int y = Math.max(0, box.top());
          y < Math.min(picture.height(), box.bottom());
          y += STEP) {
        double[] at = outline.crossings(y + 0.5);
        for (int i = 0; i + 1 < at.length; i += 2) {
          int to = Math.min(picture.width(), (int) at[i + 1]);
          for (int x = Math.max(0, (int) at[i]); x < to; x += STEP) {
            int p = picture.at(x, y);
            int most = Math.max(p >> 16 & 0xff, Math.max(p >> 8 & 0xff, p & 0xff));
            n++;
            high += most >= 254 ? 1 : 0;
            low += most <= 3 ? 1 : 0;
          }
        }
      }
    }
    warnShare(high, n, "clipped highlights", "expose less", warnings);
    warnShare(low, n, "clipped shadows", "use more light", warnings);
  }

  private static void warnShare(
      long some, long all, String what, String remedy, List<String> warnings) {
    if (all > 0 && some > CLIPPED_SHARE * all) {
      warnings.add(
          String.format(
              Locale.ROOT, "%s on %.0f %% of the food; %s", what, 100.0 * some / all, remedy));
    }
  }

  /** Largest step between neighbours over the whole height of an edge, median over strong edges. */
  private double sharpness() {
    double[] ratios = new double[4096];
    int n = 0;
    // A small picture has as many rows looked at as a large one, or its edges are too few to judge.
    int step = Math.max(2, Math.min(ROW_STEP, picture.height() / LEAST_ROWS));
    for (int y = step / 2; y < picture.height() && n < ratios.length; y += step) {
      for (int x = EDGE_REACH; x < picture.width() - EDGE_REACH && n < ratios.length; x++) {
        if (rise(x, y) >= LEAST_EDGE) {
          int middle = middle(x, y);
          ratios[n++] = Math.min(1, steepest(middle, y) / (double) rise(middle, y));
          x = middle + EDGE_REACH;
        }
      }
    }
    if (n < LEAST_EDGES) {
      return 1;
    }
    double[] sorted = Arrays.copyOf(ratios, n);
    Arrays.sort(sorted);
    return sorted[n / 2];
  }

  private int rise(int x, int y) {
    return Math.abs(green(x + EDGE_REACH, y) - green(x - EDGE_REACH, y));
  }

  /** Where the window holds the whole edge of which it has met the beginning. */
  private int middle(int x, int y) {
    int best = x;
    for (int i = x; i <= x + 2 * EDGE_REACH && i < picture.width() - EDGE_REACH; i++) {
      best = rise(i, y) > rise(best, y) ? i : best;
    }
    return best;
  }

  private int steepest(int x, int y) {
    int steepest = 0;
    for (int k = -EDGE_REACH; k < EDGE_REACH; k++) {
      steepest = Math.max(steepest, Math.abs(green(x + k + 1, y) - green(x + k, y)));
    }
    return steepest;
  }

  private int green(int x, int y) {
    return picture.at(x, y) >> 8 & 0xff;
  }
}
