package ovenproof.photopage;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ovenproof.campaign.Photo;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PixelPoint;

/**
 * Outlines as text, one piece a line: {@code name: x,y x,y x,y …} in pixels of the upright picture.
 * Forms send it, people without a script type it.
 */
final class OutlineText {
  private static final Pattern LINE =
      Pattern.compile("([\\p{L}\\p{N}_.-]{1,40})\\s*:\\s*((?:-?\\d{1,6},-?\\d{1,6}\\s*){1,2000})");
  private static final int MOST_PIECES = 200;

  /** As many corners as a person can still see and move. */
  private static final int MOST_CORNERS = 48;

  private OutlineText() {}

  static String written(List<Photo.Drawn> outlines) {
    return outlines.stream().map(OutlineText::line).collect(Collectors.joining("\n"));
  }

  private static String line(Photo.Drawn drawn) {
    return drawn.piece()
        + ": "
        + drawn.corners().stream().map(c -> c.x() + "," + c.y()).collect(Collectors.joining(" "));
  }

  /**
   * Reads what was sent.
   *
   * @param problems receives a sentence for each line that is no outline
   */
  static List<Photo.Drawn> read(String text, int width, int height, List<String> problems) {
    List<Photo.Drawn> outlines = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (String line : text.strip().split("\\R")) {
      if (line.isBlank()) {
        continue;
      }
      Matcher matcher = LINE.matcher(line.strip());
      if (!matcher.matches()) {
        problems.add(
            "Found “"
                + line.strip().substring(0, Math.min(40, line.strip().length()))
                + "”, expected an outline such as 1: 120,80 420,80 420,360. A name holds letters,"
                + " digits, points and hyphens.");
      } else if (!names.add(matcher.group(1).toLowerCase(Locale.ROOT))) {
        problems.add("Two pieces are called “" + matcher.group(1) + "”; each needs its own name.");
      } else {
        add(outlines, matcher.group(1), matcher.group(2), width, height, problems);
      }
    }
    if (outlines.size() > MOST_PIECES) {
      problems.add("Found " + outlines.size() + " pieces, expected at most " + MOST_PIECES + ".");
    }
    return outlines;
  }

  private static void add(
      List<Photo.Drawn> outlines,
      String name,
      String corners,
      int width,
      int height,
      List<String> problems) {
    List<Photo.Corner> read = new ArrayList<>();
    for (String corner : corners.strip().split("\\s+")) {
      int comma = corner.indexOf(',');
      int x = Integer.parseInt(corner.substring(0, comma));
      int y = Integer.parseInt(corner.substring(comma + 1));
      read.add(new Photo.Corner(Math.max(0, Math.min(width, x)), Math.max(0, Math.min(height, y))));
    }
    if (read.size() < 3 || outline(read).area() < 16) {
      problems.add(
          "The outline of “"
              + name
              + "” holds no area; give it at least three corners inside the picture, or delete it.");
    } else {
      outlines.add(new Photo.Drawn(name, read));
    }
  }

  private static Outline outline(List<Photo.Corner> corners) {
    return new Outline(corners.stream().map(c -> new PixelPoint(c.x(), c.y())).toList());
  }

  /** With few enough corners to move them one by one; the shape keeps to a pixel or two. */
  static Photo.Drawn simple(String name, Outline outline) {
    List<PixelPoint> points = outline.points();
    double tolerance = 0.75;
    List<PixelPoint> kept = points;
    while (kept.size() > MOST_CORNERS) {
      kept = simplified(points, tolerance);
      tolerance *= 1.5;
    }
    return new Photo.Drawn(
        name,
        kept.stream()
            .map(
                p ->
                    new Photo.Corner(
                        (int) Math.round(Math.max(0, p.x())), (int) Math.round(Math.max(0, p.y()))))
            .toList());
  }

  /** Ramer 1972, Douglas and Peucker 1973, on a ring cut at its two farthest corners. */
  private static List<PixelPoint> simplified(List<PixelPoint> ring, double tolerance) {
    int far = 0;
    for (int i = 1; i < ring.size(); i++) {
      far = ring.get(0).distanceTo(ring.get(i)) > ring.get(0).distanceTo(ring.get(far)) ? i : far;
    }
    if (far == 0) {
      return ring.subList(0, Math.min(3, ring.size()));
    }
    List<PixelPoint> kept = new ArrayList<>();
    simplify(ring, 0, far, tolerance, kept);
    List<PixelPoint> back = new ArrayList<>(ring.subList(far, ring.size()));
    back.add(ring.get(0));
    simplify(back, 0, back.size() - 1, tolerance, kept);
    return kept.size() < 3 ? List.of(ring.get(0), ring.get(far / 2), ring.get(far)) : kept;
  }

  private static void simplify(
      List<PixelPoint> line, int from, int to, double tolerance, List<PixelPoint> kept) {
    int worst = -1;
    double most = tolerance;
    for (int i = from + 1; i < to; i++) {
      double off = distance(line.get(i), line.get(from), line.get(to));
      if (off > most) {
        most = off;
        worst = i;
      }
    }
    if (worst < 0) {
      kept.add(line.get(from));
    } else {
      simplify(line, from, worst, tolerance, kept);
      simplify(line, worst, to, tolerance, kept);
    }
  }

  private static double distance(PixelPoint p, PixelPoint a, PixelPoint b) {
    double length = a.distanceTo(b);
    return length == 0
        ? p.distanceTo(a)
        : Math.abs((b.x() - a.x()) * (a.y() - p.y()) - (a.x() - p.x()) * (b.y() - a.y())) / length;
  }
}
