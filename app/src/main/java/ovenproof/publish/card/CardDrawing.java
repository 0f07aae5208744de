package ovenproof.publish.card;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.util.Locale;

/**
 * Draws one card. Everything lies inside the 90 % title-safe area (96..1824 × 54..1026); no text is
 * smaller than 54 px.
 */
final class CardDrawing {
  static final int WIDTH = 1920;
  static final int HEIGHT = 1080;
  static final double LEFT = 176;
  static final double RIGHT = 1744;
  static final double SMALLEST = 54;
  static final String INK = "#edf2f3";
  static final String SECOND = "#b3c3c9";
  static final String HOLD = "#7cc7dd";
  static final String HEAT = "#f59a66";
  static final String FAIL = "#f29ac4";
  static final String EDGE = "#8ca1a9";
  private static final String PLATE = "#0d171b";

  /** Where a line of text is held. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  private final StringBuilder body = new StringBuilder();

  /** The opaque plate, from {@code top} to the lower edge of the safe area. */
  CardDrawing plate(int top) {
    body.append("<path d=\"M96 ")
        .append(top)
        .append("h1728V978a48 48 0 0 1-48 48H144a48 48 0 0 1-48-48z\" fill=\"")
        .append(PLATE)
        .append("\"/>");
    return this;
  }

  /**
   * A line of text as outlines, made smaller until it fits, and cut with "…" when it does not fit
   * at 54 px.
   */
  CardDrawing text(
      Lettering lettering,
      String words,
      double x,
      double y,
      double size,
      double most,
      String colour,
      Anchor anchor) {
    double fitting = size;
    double width = lettering.width(words, size);
    if (width > most) {
      fitting = Math.max(SMALLEST, size * most / width);
    }
    String shown = cut(lettering, words, fitting, most);
    double left =
        switch (anchor) {
          case START -> x;
          case MIDDLE -> x - lettering.width(shown, fitting) / 2;
          case END -> x - lettering.width(shown, fitting);
        };
    Path2D outline = lettering.outline(shown, fitting);
    outline.transform(AffineTransform.getTranslateInstance(left, y));
    body.append("<path fill=\"")
        .append(colour)
        .append("\" d=\"")
        .append(Lettering.data(outline))
        .append("\"/>");
    return this;
  }

  private static String cut(Lettering lettering, String words, double size, double most) {
    String shown = words;
    while (lettering.width(shown, size) > most && shown.length() > 2) {
      int end = shown.offsetByCodePoints(shown.length(), shown.endsWith("…") ? -2 : -1);
      shown = shown.substring(0, end).strip() + "…";
    }
    return shown;
  }

  CardDrawing line(double x1, double y1, double x2, double y2, double width, String colour) {
    body.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fL%.1f %.1f\" stroke=\"%s\" stroke-width=\"%.1f\" fill=\"none\"/>",
            x1,
            y1,
            x2,
            y2,
            colour,
            width));
    return this;
  }

  CardDrawing bead(double x, double y, double radius, String colour) {
    body.append(
        String.format(
            Locale.ROOT,
            "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\" stroke=\"#0d171b\""
                + " stroke-width=\"6\"/>",
            x,
            y,
            radius,
            colour));
    return this;
  }

  CardDrawing block(double x, double y, double width, double height, String colour) {
    body.append(
        String.format(
            Locale.ROOT,
            "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"%s\""
                + " stroke=\"#ffffff\" stroke-width=\"4\"/>",
            x,
            y,
            width,
            height,
            colour));
    return this;
  }

  /** A tray from {@code low} to {@code high}; a lip that is not known stays away. */
  CardDrawing tray(double low, double high, double y, boolean leftLip, boolean rightLip) {
    line(low, y, high, y, 10, HOLD);
    if (leftLip) {
      line(low, y + 5, low, y - 36, 10, HOLD);
    }
    if (rightLip) {
      line(high, y + 5, high, y - 36, 10, HOLD);
    }
    return this;
  }

  /** Ticks from 0 to 10 on the left part of the plate. */
  CardDrawing axis(double from, double to, double y) {
    line(from, y, to, y, 3, EDGE);
    for (int i = 0; i <= 10; i++) {
      double x = from + (to - from) * i / 10;
      line(x, y, x, y + 14, 3, EDGE);
    }
    return this;
  }

  /** The triangle of a caution. */
  CardDrawing warning(double x, double y) {
    body.append(
        String.format(
            Locale.ROOT,
            "<g transform=\"translate(%.0f %.0f) scale(4)\" fill=\"none\" stroke=\"%s\""
                + " stroke-linejoin=\"round\"><path d=\"M22 3 41 36H3Z\" stroke-width=\"3.5\"/><path"
                + " d=\"M22 14v12M22 29.5v4\" stroke-width=\"4\"/></g>",
            x,
            y,
            HEAT));
    return this;
  }

  /** The whole card. */
  String svg(String sentence, String metadata) {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1920\" height=\"1080\" viewBox=\"0 0"
        + " 1920 1080\"><title>"
        + escaped(sentence)
        + "</title><metadata>"
        + escaped(metadata)
        + "</metadata>"
        + body
        + "</svg>\n";
  }

  private static String escaped(String words) {
    return words
        .replaceAll("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\ufffe\\uffff]", "")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
  }
}
