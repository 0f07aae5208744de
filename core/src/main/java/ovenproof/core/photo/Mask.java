package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;

/** A set of pixels of a reduced picture. */
record Mask(int width, int height, boolean[] set) {

  static Mask empty(int width, int height) {
    return new Mask(width, height, new boolean[width * height]);
  }

  static Mask inside(Outline outline, int width, int height) {
    Mask mask = empty(width, height);
    PixelBox box = outline.box();
    for (int y = Math.max(0, box.top()); y < Math.min(height, box.bottom()); y++) {
      double[] at = outline.crossings(y + 0.5);
      for (int i = 0; i + 1 < at.length; i += 2) {
        int to = Math.min(width, (int) Math.ceil(at[i + 1] - 0.5));
        for (int x = Math.max(0, (int) Math.ceil(at[i] - 0.5)); x < to; x++) {
          mask.set[y * width + x] = true;
        }
      }
    }
    return mask;
  }

  /** A rectangle of it. */
  Mask part(PixelBox box) {
    boolean[] out = new boolean[box.width() * box.height()];
    for (int y = 0; y < box.height(); y++) {
      int from = (box.top() + y) * width + box.left();
      System.arraycopy(set, from, out, y * box.width(), box.width());
    }
    return new Mask(box.width(), box.height(), out);
  }

  int count() {
    int n = 0;
    for (boolean s : set) {
      n += s ? 1 : 0;
    }
    return n;
  }

  /** Shared area over the area of both, 0…1. */
  double overlap(Mask other) {
    int both = 0;
    int either = 0;
    for (int i = 0; i < set.length; i++) {
      both += set[i] && other.set[i] ? 1 : 0;
      either += set[i] || other.set[i] ? 1 : 0;
    }
    return either == 0 ? 0 : both / (double) either;
  }

  Mask inverted() {
    boolean[] out = new boolean[set.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = !set[i];
    }
    return new Mask(width, height, out);
  }

  Mask and(Mask other) {
    boolean[] out = new boolean[set.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = set[i] && other.set[i];
    }
    return new Mask(width, height, out);
  }

  Mask or(Mask other) {
    boolean[] out = new boolean[set.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = set[i] || other.set[i];
    }
    return new Mask(width, height, out);
  }

  /** What lies at least {@code radius} from the outside; the edge of the picture is no outside. */
  Mask eroded(double radius) {
    int[] box = box();
    if (box[2] <= box[0]) {
      return empty(width, height);
    }
    PixelBox around = around(box, 1);
    Mask part = part(around);
    boolean[] near = Nearness.within(radius, part.inverted().set, part.width, part.height);
    for (int i = 0; i < near.length; i++) {
      near[i] = part.set[i] && !near[i];
    }
    return new Mask(part.width, part.height, near).inFrame(around, width, height);
  }

  /** With everything that lies within {@code radius}. */
  Mask dilated(double radius) {
    int[] box = box();
    if (box[2] <= box[0]) {
      return empty(width, height);
    }
    PixelBox around = around(box, (int) Math.ceil(radius) + 1);
    Mask part = part(around);
    boolean[] near = Nearness.within(radius, part.set, part.width, part.height);
    return new Mask(part.width, part.height, near).inFrame(around, width, height);
  }

  /** A box with a margin, as far as the picture reaches. */
  private PixelBox around(int[] box, int margin) {
    int left = Math.max(0, box[0] - margin);
    int top = Math.max(0, box[1] - margin);
    int right = Math.min(width, box[2] + margin);
    int bottom = Math.min(height, box[3] + margin);
    return new PixelBox(left, top, right - left, bottom - top);
  }

  /** Without what is thinner than twice the radius. */
  Mask opened(double radius) {
    return eroded(radius).dilated(radius);
  }

  /** Without what no square of 2 r + 1 pixels fits into: the fast way for a whole frame. */
  Mask squareOpened(int r) {
    return squareEroded(r).inverted().squareEroded(r).inverted();
  }

  private Mask squareEroded(int r) {
    boolean[] across = new boolean[set.length];
    for (int y = 0; y < height; y++) {
      int run = r; // beyond the edge counts as set
      for (int x = 0; x < width + r; x++) {
        run = x >= width || set[y * width + x] ? run + 1 : 0;
        if (x >= r) {
          across[y * width + x - r] = run > 2 * r;
        }
      }
    }
    Mask out = empty(width, height);
    int[] runs = new int[width];
    java.util.Arrays.fill(runs, r);
    for (int y = 0; y < height + r; y++) {
      for (int x = 0; x < width; x++) {
        runs[x] = y >= height || across[y * width + x] ? runs[x] + 1 : 0;
        if (y >= r) {
          out.set[(y - r) * width + x] = runs[x] > 2 * r;
        }
      }
    }
    return out;
  }

  /** Left, top (inclusive), right, bottom (exclusive) of what is set; empty when right ≤ left. */
  int[] box() {
    int left = width;
    int top = height;
    int right = 0;
    int bottom = 0;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        if (set[y * width + x]) {
          left = Math.min(left, x);
          right = Math.max(right, x + 1);
          top = Math.min(top, y);
          bottom = y + 1;
        }
      }
    }
    return new int[] {left, top, right, bottom};
  }

  /**
   * With the holes filled: what cannot be reached from outside. Only the box around the set pixels
   * is walked, with a border of one, because nothing beyond it can be a hole.
   */
  Mask filled() {
    int[] box = box();
    if (box[2] <= box[0]) {
      return empty(width, height);
    }
    int w = box[2] - box[0] + 2;
    int h = box[3] - box[1] + 2;
    boolean[] outside = new boolean[w * h];
    int[] stack = new int[w * h];
    int top = reach(0, outside, stack, 0, box, w);
    while (top > 0) {
      int i = stack[--top];
      int x = i % w;
      top = x > 0 ? reach(i - 1, outside, stack, top, box, w) : top;
      top = x < w - 1 ? reach(i + 1, outside, stack, top, box, w) : top;
      top = i >= w ? reach(i - w, outside, stack, top, box, w) : top;
      top = i + w < outside.length ? reach(i + w, outside, stack, top, box, w) : top;
    }
    Mask result = empty(width, height);
    for (int y = box[1]; y < box[3]; y++) {
      for (int x = box[0]; x < box[2]; x++) {
        result.set[y * width + x] = !outside[(y - box[1] + 1) * w + x - box[0] + 1];
      }
    }
    return result;
  }

  /** {@code i} counts in the box with its border; the border is never set. */
  private int reach(int i, boolean[] outside, int[] stack, int top, int[] box, int w) {
    int x = box[0] + i % w - 1;
    int y = box[1] + i / w - 1;
    boolean inPicture = x >= 0 && x < width && y >= 0 && y < height;
    if (outside[i] || inPicture && set[y * width + x]) {
      return top;
    }
    outside[i] = true;
    stack[top] = i;
    return top + 1;
  }

  /** This rectangle put back in its place in a frame. */
  Mask inFrame(PixelBox box, int frameWidth, int frameHeight) {
    Mask out = empty(frameWidth, frameHeight);
    for (int y = 0; y < height; y++) {
      int to = (box.top() + y) * frameWidth + box.left();
      System.arraycopy(set, y * width, out.set, to, width);
    }
    return out;
  }

  /** Each pixel as a square of four; what a frame has beyond that repeats the last. */
  Mask twice(int frameWidth, int frameHeight) {
    Mask out = empty(frameWidth, frameHeight);
    for (int y = 0; y < frameHeight; y++) {
      int row = Math.min(height - 1, y / 2) * width;
      for (int x = 0; x < frameWidth; x++) {
        out.set[y * frameWidth + x] = set[row + Math.min(width - 1, x / 2)];
      }
    }
    return out;
  }

  /** A connected part in a rectangle of its own. */
  record Part(Mask mask, PixelBox box) {}

  /**
   * Connected parts of at least {@code least} pixels, each in the rectangle around it with a margin
   * as far as the picture reaches.
   */
  List<Part> partsInPlace(int least, int margin) {
    boolean[] left = set.clone();
    int[] stack = new int[set.length];
    List<Part> out = new ArrayList<>();
    for (int start = 0; start < set.length; start++) {
      if (left[start]) {
        int n = flood(left, stack, start);
        if (n >= least) {
          out.add(inPlace(stack, n, margin));
        }
      }
    }
    return out;
  }

  private Part inPlace(int[] pixels, int n, int margin) {
    int[] box = {width, height, 0, 0};
    for (int k = 0; k < n; k++) {
      int x = pixels[k] % width;
      int y = pixels[k] / width;
      box[0] = Math.min(box[0], x);
      box[1] = Math.min(box[1], y);
      box[2] = Math.max(box[2], x + 1);
      box[3] = Math.max(box[3], y + 1);
    }
    PixelBox around = around(box, margin);
    Mask mask = empty(around.width(), around.height());
    for (int k = 0; k < n; k++) {
      int x = pixels[k] % width - around.left();
      mask.set[(pixels[k] / width - around.top()) * around.width() + x] = true;
    }
    return new Part(mask, around);
  }

  /** Connected parts of at least {@code least} pixels. */
  List<Mask> parts(int least) {
    boolean[] left = set.clone();
    int[] stack = new int[set.length];
    List<Mask> out = new ArrayList<>();
    for (int start = 0; start < set.length; start++) {
      if (left[start]) {
        int n = flood(left, stack, start);
        if (n >= least) {
          Mask part = empty(width, height);
          for (int k = 0; k < n; k++) {
            part.set[stack[k]] = true;
          }
          out.add(part);
        }
      }
    }
    return out;
  }

  private int flood(boolean[] left, int[] queue, int start) {
    int n = 0;
    queue[n++] = start;
    left[start] = false;
    for (int at = 0; at < n; at++) {
      int i = queue[at];
      int x = i % width;
      if (x > 0 && left[i - 1]) {
        left[i - 1] = false;
        queue[n++] = i - 1;
      }
      if (x < width - 1 && left[i + 1]) {
        left[i + 1] = false;
        queue[n++] = i + 1;
      }
      if (i >= width && left[i - width]) {
        left[i - width] = false;
        queue[n++] = i - width;
      }
      if (i + width < left.length && left[i + width]) {
        left[i + width] = false;
        queue[n++] = i + width;
      }
    }
    return n;
  }

  /** Share of its pixels that lie within two pixels of the picture's edge. */
  double edgeShare() {
    int n = 0;
    int edge = 0;
    for (int i = 0; i < set.length; i++) {
      if (set[i]) {
        n++;
        int x = i % width;
        int y = i / width;
        edge += x < 2 || y < 2 || x >= width - 2 || y >= height - 2 ? 1 : 0;
      }
    }
    return n == 0 ? 0 : edge / (4 * Math.sqrt(n));
  }

  /** Area over the area of the convex hull, 0…1. */
  double solidity() {
    int[] first = new int[height];
    int[] last = new int[height];
    int count = 0;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        if (set[y * width + x]) {
          first[y] = last[y] == 0 ? x : first[y];
          last[y] = x + 1;
          count++;
        }
      }
    }
    double hull = ConvexHull.area(first, last);
    return hull == 0 ? 0 : Math.min(1, count / hull);
  }
}
