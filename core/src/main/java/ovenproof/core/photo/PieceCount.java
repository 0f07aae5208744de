package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Brings the number of pieces to the expected one where the shapes allow it. */
final class PieceCount {

  private static final double WIDEST_NECK = 0.97;
  private static final double HALF_WAY = 1.5;

  private final LabPlanes lab;
  private final Mask excluded;

  PieceCount(LabPlanes lab, Mask excluded) {
    this.lab = lab;
    this.excluded = excluded;
  }

  List<PieceCandidate> fit(List<PieceCandidate> found, @Nullable Integer expected) {
    if (expected == null || found.isEmpty() || found.size() == expected) {
      return found;
    }
    if (found.size() > expected) {
      List<PieceCandidate> best =
          found.stream()
              .sorted(Comparator.comparingDouble(c -> -c.quality() * Math.sqrt(c.area())))
              .toList();
      double dropped = best.get(expected).quality() * Math.sqrt(best.get(expected).area());
      double kept = best.get(expected - 1).quality() * Math.sqrt(best.get(expected - 1).area());
      return dropped < 0.5 * kept ? best.subList(0, expected) : found;
    }
    List<PieceCandidate> cut = cutNecks(found, expected);
    return cut.size() < expected ? cutRows(cut, expected) : cut;
  }

  /** Cuts the narrowest necks of all pieces first. */
  private List<PieceCandidate> cutNecks(List<PieceCandidate> found, int expected) {
    List<Double> necks = new ArrayList<>();
    for (PieceCandidate c : found) {
      necks.addAll(new TouchingPieces(c.mask()).necks());
    }
    necks.sort(Comparator.naturalOrder());
    int missing = Math.min(expected - found.size(), necks.size());
    if (missing == 0) {
      return found;
    }
    double limit = Math.min(WIDEST_NECK, Math.nextUp(necks.get(missing - 1)));
    List<PieceCandidate> out = new ArrayList<>();
    for (PieceCandidate c : found) {
      for (Mask part : new TouchingPieces(c.mask()).split(limit)) {
        out.add(PieceCandidate.of(part, lab, excluded));
      }
    }
    return out.size() <= expected ? out : found;
  }

  /** Slices side by side have no neck: a long part is cut across, at its darkest seams. */
  private List<PieceCandidate> cutRows(List<PieceCandidate> found, int expected) {
    double total = found.stream().mapToInt(PieceCandidate::area).sum();
    double unit = total / expected;
    List<PieceCandidate> out = new ArrayList<>();
    for (PieceCandidate c : found) {
      int share = (int) Math.round(c.area() / unit);
      if (share >= 2 && c.area() > HALF_WAY * unit) {
        for (Mask part : new Seams(lab, c.mask()).cut(share)) {
          out.add(PieceCandidate.of(part, lab, excluded));
        }
      } else {
        out.add(c);
      }
    }
    return out.size() == expected ? out : found;
  }
}
