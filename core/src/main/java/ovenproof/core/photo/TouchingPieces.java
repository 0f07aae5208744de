package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Splits a mask where it has a neck: a watershed on the depth inside, merged again unless the neck
 * is clearly narrower than the smaller of the two parts it joins.
 */
final class TouchingPieces {

  /** A part much shallower than the deepest is a bump of the outline, not a piece. */
  private static final double LEAST_DEPTH = 0.4;

  private final Mask whole;
  private final int left;
  private final int top;
  private final Mask mask;
  private final float[] depth;
  private final int[] order;
  private final float deepest;

  TouchingPieces(Mask whole) {
    this.whole = whole;
    int[] box = whole.box();
    this.left = box[0];
    this.top = box[1];
    this.mask = cropped(whole, box);
    float[] squared = DistanceTransform.squared(mask.set(), mask.width(), mask.height());
    this.depth = new float[squared.length];
    long[] keys = new long[mask.count()];
    int n = 0;
    float most = 0;
    for (int i = 0; i < depth.length; i++) {
      depth[i] = (float) Math.sqrt(squared[i]);
      most = Math.max(most, depth[i]);
      if (mask.set()[i]) {
        // The bits of positive floats sort like the floats: deepest first, then by place.
        keys[n++] = (long) -Float.floatToIntBits(depth[i]) << 32 | i;
      }
    }
    this.deepest = most;
    java.util.Arrays.sort(keys);
    this.order = java.util.Arrays.stream(keys).mapToInt(k -> (int) k).toArray();
  }

  private static Mask cropped(Mask whole, int[] box) {
    Mask out = Mask.empty(Math.max(1, box[2] - box[0]), Math.max(1, box[3] - box[1]));
    for (int y = box[1]; y < box[3]; y++) {
      for (int x = box[0]; x < box[2]; x++) {
        out.set()[(y - box[1]) * out.width() + x - box[0]] = whole.set()[y * whole.width() + x];
      }
    }
    return out;
  }

  /** How narrow each neck is, as neck depth over the depth of the smaller part, narrowest first. */
  List<Double> necks() {
    List<Double> found = new ArrayList<>();
    flood(0, found);
    found.sort(Comparator.naturalOrder());
    return found;
  }

  /** The parts when every neck narrower than {@code limit} (0…1) is cut. */
  List<Mask> split(double limit) {
    int[] label = flood(limit, new ArrayList<>());
    Map<Integer, Mask> parts = new LinkedHashMap<>();
    for (int i : order) {
      Mask part = parts.computeIfAbsent(label[i], k -> Mask.empty(whole.width(), whole.height()));
      part.set()[(top + i / mask.width()) * whole.width() + left + i % mask.width()] = true;
    }
    return new ArrayList<>(parts.values());
  }

  /** Floods from the deepest pixel up; returns the basin of each pixel. */
  private int[] flood(double limit, List<Double> necks) {
    int[] parent = new int[depth.length];
    int[] basin = new int[depth.length];
    java.util.Arrays.fill(basin, -1);
    int w = mask.width();
    for (int i : order) {
      int x = i % w;
      int own = -1;
      int[] around = {
        x > 0 ? i - 1 : -1,
        x < w - 1 ? i + 1 : -1,
        i >= w ? i - w : -1,
        i + w < depth.length ? i + w : -1
      };
      for (int j : around) {
        if (j < 0 || basin[j] < 0) {
          continue;
        }
        int other = root(parent, basin[j]);
        if (own < 0) {
          own = other;
        } else if (own != other) {
          own = meet(parent, own, other, depth[i], limit, necks);
        }
      }
      if (own < 0) {
        own = i;
        parent[i] = i;
      }
      basin[i] = own;
    }
    for (int i : order) {
      basin[i] = root(parent, basin[i]);
    }
    return basin;
  }

  /** A basin is named by its deepest pixel. */
  private int meet(
      int[] parent, int first, int second, double saddle, double limit, List<Double> necks) {
    int large = depth[first] >= depth[second] ? first : second;
    int small = large == first ? second : first;
    double ratio = saddle / depth[small];
    boolean piece = depth[small] >= LEAST_DEPTH * deepest;
    if (limit == 0 && piece && ratio < 0.97) {
      necks.add(ratio);
    }
    if (!piece || ratio >= limit) {
      parent[small] = large;
    }
    return large;
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      r = parent[r];
    }
    return r;
  }
}
