package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a part that holds a known number of like pieces: at the middle of its longer axis, moved up
 * to a fifth of a piece to the darkest line, and again in each half until the number is reached.
 * Where no line is darker than what lies beside it there is no seam, and nothing is cut: a single
 * slice is not made four because four were expected.
 */
final class Seams {

  /** L* by which a seam is darker than the surface beside it, at least. */
  private static final double LEAST_DARKER = 1.5;

  private final LabPlanes lab;
  private final Mask mask;

  Seams(LabPlanes lab, Mask mask) {
    this.lab = lab;
    this.mask = mask;
  }

  List<Mask> cut(int count) {
    if (count < 2) {
      return List.of(mask);
    }
    int first = count / 2;
    double[] axis = axis();
    double[] along = new double[mask.set().length];
    List<Double> places = new ArrayList<>();
    for (int i = 0; i < along.length; i++) {
      if (mask.set()[i]) {
        along[i] = axis[0] * (i % mask.width()) + axis[1] * (i / mask.width());
        places.add(along[i]);
      }
    }
    places.sort(Double::compare);
    if (places.size() < 4 * count) {
      return List.of(mask);
    }
    double wanted = places.get((int) ((long) places.size() * first / count));
    double reach = 0.2 * (places.get(places.size() - 1) - places.get(0)) / count;
    Double seam = darkest(along, wanted, reach);
    if (seam == null) {
      return List.of(mask);
    }
    Mask low = Mask.empty(mask.width(), mask.height());
    Mask high = Mask.empty(mask.width(), mask.height());
    for (int i = 0; i < along.length; i++) {
      low.set()[i] = mask.set()[i] && along[i] < seam;
      high.set()[i] = mask.set()[i] && along[i] >= seam;
    }
    List<Mask> out = new ArrayList<>(new Seams(lab, low).cut(first));
    out.addAll(new Seams(lab, high).cut(count - first));
    return out;
  }

  /** Unit vector of the largest second moment. */
  private double[] axis() {
    double n = 0;
    double mx = 0;
    double my = 0;
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int i = 0; i < mask.set().length; i++) {
      if (mask.set()[i]) {
        double x = i % mask.width();
        double y = i / mask.width();
        n++;
        mx += x;
        my += y;
        xx += x * x;
        yy += y * y;
        xy += x * y;
      }
    }
    double cxx = xx / n - mx / n * mx / n;
    double cyy = yy / n - my / n * my / n;
    double cxy = xy / n - mx / n * my / n;
    double angle = 0.5 * Math.atan2(2 * cxy, cxx - cyy);
    return new double[] {Math.cos(angle), Math.sin(angle)};
  }

  private @Nullable Double darkest(double[] along, double wanted, double reach) {
    int bins = Math.max(1, (int) Math.ceil(2 * reach));
    double[] sum = new double[bins];
    int[] n = new int[bins];
    for (int i = 0; i < along.length; i++) {
      int bin = (int) Math.floor(along[i] - wanted + reach);
      if (mask.set()[i] && bin >= 0 && bin < bins) {
        sum[bin] += lab.lightness()[i];
        n[bin]++;
      }
    }
    double best = wanted;
    double least = Double.POSITIVE_INFINITY;
    double darkest = Double.POSITIVE_INFINITY;
    double all = 0;
    int filled = 0;
    for (int k = 0; k < bins; k++) {
      if (n[k] > 0) {
        darkest = Math.min(darkest, sum[k] / n[k]);
        all += sum[k] / n[k];
        filled++;
      }
      // A seam counts when it is darker; without one the middle stays.
      double off = Math.abs(k - bins / 2.0) / Math.max(1, bins / 2.0);
      double level = n[k] == 0 ? Double.POSITIVE_INFINITY : sum[k] / n[k] + 2 * off;
      if (level < least) {
        least = level;
        best = wanted - reach + k + 0.5;
      }
    }
    return filled > 0 && all / filled - darkest < LEAST_DARKER ? null : Double.valueOf(best);
  }
}
