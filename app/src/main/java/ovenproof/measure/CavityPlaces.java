package ovenproof.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Piece;
import ovenproof.core.measure.Measurement;
import ovenproof.core.photo.CavityMap.Position;

/**
 * Where pieces lay, from the {@code position} that people write: {@code r1c2} is the first row from
 * the back and the second place from the left; words such as {@code back-left}, {@code centre},
 * {@code front} do as well.
 */
public final class CavityPlaces {
  private static final Pattern GRID = Pattern.compile("r(\\d{1,2})-?c(\\d{1,2})");
  private static final Map<String, Double> ACROSS =
      Map.of("left", 0.0, "centre", 0.5, "center", 0.5, "middle", 0.5, "right", 1.0);
  private static final Map<String, Double> DEEP =
      Map.of("back", 0.0, "rear", 0.0, "centre", 0.5, "center", 0.5, "middle", 0.5, "front", 1.0);

  private final int rows;
  private final int columns;

  private CavityPlaces(int rows, int columns) {
    this.rows = rows;
    this.columns = columns;
  }

  /** For all pieces of one test, so that one grid holds for every product. */
  public static CavityPlaces of(Campaign campaign, String test) {
    int rows = 1;
    int columns = 1;
    for (Piece piece : campaign.pieces()) {
      Matcher grid = GRID.matcher(String.valueOf(piece.position()).toLowerCase(Locale.ROOT));
      if (grid.matches()
          && campaign.run(piece.run()).filter(r -> r.test().equals(test)).isPresent()) {
        rows = Math.max(rows, Integer.parseInt(grid.group(1)));
        columns = Math.max(columns, Integer.parseInt(grid.group(2)));
      }
    }
    return new CavityPlaces(rows, columns);
  }

  /** The place that a word means; empty when it means none. */
  public Optional<Position> place(@Nullable String written) {
    if (written == null || written.isBlank()) {
      return Optional.empty();
    }
    String word = written.strip().toLowerCase(Locale.ROOT);
    Matcher grid = GRID.matcher(word);
    if (grid.matches()) {
      double x = part(Integer.parseInt(grid.group(2)), columns);
      double y = part(Integer.parseInt(grid.group(1)), rows);
      return Optional.of(new Position(written, x, y));
    }
    return words(written, word);
  }

  private static double part(int number, int of) {
    return of <= 1 ? 0.5 : (Math.max(1, number) - 1) / (double) (of - 1);
  }

  private static Optional<Position> words(String written, String word) {
    Double x = null;
    Double y = null;
    for (String part : word.split("[-_. ]+")) {
      boolean deep = DEEP.containsKey(part) && !part.matches("cent(re|er)|middle");
      if (deep) {
        y = DEEP.get(part);
      } else if (ACROSS.containsKey(part) && !part.matches("cent(re|er)|middle")) {
        x = ACROSS.get(part);
      } else if (!part.matches("cent(re|er)|middle")) {
        return Optional.empty();
      }
    }
    return Optional.of(new Position(written, x == null ? 0.5 : x, y == null ? 0.5 : y));
  }

  /**
   * Measurements of one batch by place. Pieces without a place are left out.
   *
   * @param pieces measurements whose subject names the piece
   */
  Map<Position, List<Measurement>> byPlace(
      Campaign campaign, String run, int batch, List<Measurement> pieces) {
    Map<String, String> written = new LinkedHashMap<>();
    for (Piece piece : campaign.pieces()) {
      if (piece.run().equals(run) && piece.batch() == batch && piece.position() != null) {
        written.put(piece.piece(), piece.position());
      }
    }
    Map<Position, List<Measurement>> places = new LinkedHashMap<>();
    for (Measurement m : pieces) {
      String name = m.subject().piece();
      place(name == null ? null : written.get(name))
          .ifPresent(p -> places.computeIfAbsent(p, k -> new java.util.ArrayList<>()).add(m));
    }
    return places;
  }
}
