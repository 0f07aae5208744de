package ovenproof.photopage;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import ovenproof.campaign.Photo;
import ovenproof.core.photo.ChartSighting;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PixelPoint;

/** Four corners of a chart that a person marked, as text: {@code x,y x,y x,y x,y}. */
final class ChartCorners {
  private static final Pattern TEXT =
      Pattern.compile("\\d{1,6},\\d{1,6}(?:\\s+\\d{1,6},\\d{1,6}){3}");
  private static final double LEAST_PIXELS = 24 * 16;

  private ChartCorners() {}

  static String written(List<Photo.Corner> corners) {
    return corners.stream().map(c -> c.x() + "," + c.y()).collect(Collectors.joining(" "));
  }

  /**
   * Reads what was sent; nothing means that the chart is to be found by itself.
   *
   * @param problems receives what is wrong, in sentences
   */
  static List<Photo.Corner> read(String text, int width, int height, List<String> problems) {
    String sent = text.strip();
    if (sent.isEmpty()) {
      return List.of();
    }
    if (!TEXT.matcher(sent).matches()) {
      problems.add(
          "Found “"
              + sent.substring(0, Math.min(40, sent.length()))
              + "”, expected four corners such as 1200,80 1500,82 1498,280 1199,278.");
      return List.of();
    }
    List<Photo.Corner> corners = new ArrayList<>();
    for (String corner : sent.split("\\s+")) {
      String[] at = corner.split(",");
      corners.add(
          new Photo.Corner(
              Math.min(width, Integer.parseInt(at[0])), Math.min(height, Integer.parseInt(at[1]))));
    }
    Outline ring = new Outline(corners.stream().map(c -> new PixelPoint(c.x(), c.y())).toList());
    if (!(ring.area() >= LEAST_PIXELS)) {
      problems.add(
          "These corners hold hardly any area or cross each other; mark them in the order in which"
              + " one walks around the chart.");
    }
    return corners;
  }

  /** What is seen of the chart, in a sentence. */
  static String words(ChartSighting chart, Photo photo) {
    boolean marked = !photo.frame().chartCorners().isEmpty();
    return switch (chart.status()) {
      case WHOLE -> marked ? "The chart is where you marked it." : "The chart was found by itself.";
      case PART ->
          "Only a part of the chart is in the frame, so it was not used. If all of it is there, mark"
              + " its four corners.";
      case NONE -> "No chart was found. If there is one, mark the four corners of its patches.";
    };
  }
}
