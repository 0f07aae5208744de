package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Pieces row by row from the upper left, as a person would number them. */
final class ReadingOrder {

  private ReadingOrder() {}

  static List<PieceCandidate> sorted(List<PieceCandidate> pieces) {
    List<PieceCandidate> byHeight =
        pieces.stream().sorted(Comparator.comparingDouble(c -> c.centre().y())).toList();
    List<PieceCandidate> out = new ArrayList<>();
    List<PieceCandidate> row = new ArrayList<>();
    for (PieceCandidate piece : byHeight) {
      if (!row.isEmpty() && !sameRow(row, piece)) {
        addRow(row, out);
      }
      row.add(piece);
    }
    addRow(row, out);
    return out;
  }

  private static boolean sameRow(List<PieceCandidate> row, PieceCandidate piece) {
    double y = row.stream().mapToDouble(c -> c.centre().y()).average().orElseThrow();
    double size = Math.sqrt(Math.max(row.get(0).area(), piece.area()));
    return piece.centre().y() - y < 0.5 * size;
  }

  private static void addRow(List<PieceCandidate> row, List<PieceCandidate> out) {
    row.stream().sorted(Comparator.comparingDouble(c -> c.centre().x())).forEach(out::add);
    row.clear();
  }
}
