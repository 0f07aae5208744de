package ovenproof.publish.card;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Draws one card. Everything lies inside the 90 % title-safe area (96..1824 × 54..1026); no text is
 * smaller than 54 px.
 *
 * <p>Beside the picture it keeps what the picture shows: its words, and where its marks lie. That
 * is what a fingerprint is taken of, so that neither another font nor another verdict with the same
 * figures makes a card a different one.
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
  static final String PLATE = "#0d171b";

  /** What photographs of food lie on: browns look the same on every card. */
  static final String TABLE = "#5f7680";

  private static final String WHITE = "#ffffff";

  /** Where a line of text is held. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** An area of one colour; lines are areas too once they are drawn. */
  private record Paint(Shape shape, String colour) {}

  private final List<Paint> paints = new ArrayList<>();
  private final StringBuilder shows = new StringBuilder();

  /** The opaque plate, from {@code top} to the lower edge of the safe area. */
  CardDrawing plate(int top) {
    Path2D plate = new Path2D.Double();
    plate.moveTo(96, top);
    plate.lineTo(1824, top);
    plate.lineTo(1824, 978);
    plate.curveTo(1824, 1004.5, 1802.5, 1026, 1776, 1026);
    plate.lineTo(144, 1026);
    plate.curveTo(117.5, 1026, 96, 1004.5, 96, 978);
    plate.closePath();
    return fill(plate, PLATE);
  }

  /** A line of words that the card shows; see {@link #stamp} for what it only carries. */
  CardDrawing text(
      Lettering lettering,
      String words,
      double x,
      double y,
      double size,
      double most,
      String colour,
      Anchor anchor) {
    shows.append('"').append(words).append('"').append(colour).append('\n');
    return stamp(lettering, words, x, y, size, most, colour, anchor);
  }

  /**
   * A line of words as outlines that is no part of what the card shows, such as the verdict's
   * version. Made smaller until it fits, and cut with "…" when it does not fit at 54 px.
   */
  CardDrawing stamp(
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
    return fill(outline, colour);
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
    Path2D path = new Path2D.Double();
    path.moveTo(x1, y1);
    path.lineTo(x2, y2);
    mark("line", colour, x1, y1, x2, y2);
    return stroke(path, new BasicStroke((float) width), colour);
  }

  /** A line in pieces, for what is not measured: a dial, a limit, a moment. */
  CardDrawing dashed(double x1, double y1, double x2, double y2, double width, String colour) {
    Path2D path = new Path2D.Double();
    path.moveTo(x1, y1);
    path.lineTo(x2, y2);
    mark("dashed", colour, x1, y1, x2, y2);
    BasicStroke stroke =
        new BasicStroke(
            (float) width,
            BasicStroke.CAP_BUTT,
            BasicStroke.JOIN_MITER,
            10,
            new float[] {14, 12},
            0);
    return stroke(path, stroke, colour);
  }

  /** A measured line over time; where a value is not finite it is broken. */
  CardDrawing curve(double[] xs, double[] ys, double width, String colour) {
    Path2D path = new Path2D.Double();
    boolean down = false;
    for (int i = 0; i < xs.length; i++) {
      boolean there = Double.isFinite(xs[i]) && Double.isFinite(ys[i]);
      if (there && down) {
        path.lineTo(xs[i], ys[i]);
      } else if (there) {
        path.moveTo(xs[i], ys[i]);
      }
      if (there) {
        mark("curve", colour, xs[i], ys[i]);
      }
      down = there;
    }
    BasicStroke stroke =
        new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    return stroke(path, stroke, colour);
  }

  CardDrawing bead(double x, double y, double radius, String colour) {
    mark("bead", colour, x, y);
    fill(circle(x, y, radius + 3), PLATE);
    return fill(circle(x, y, radius - 3), colour);
  }

  private static Shape circle(double x, double y, double radius) {
    return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
  }

  /** A colour chip with the white outline that keeps browns apart from what lies around. */
  CardDrawing block(double x, double y, double width, double height, String colour) {
    mark("block", colour, x, y, width, height);
    Shape area = new Rectangle2D.Double(x, y, width, height);
    fill(area, colour);
    return stroke(area, new BasicStroke(4), WHITE);
  }

  /** What colour chips lie on. */
  CardDrawing table(double x, double y, double width, double height) {
    return fill(new Rectangle2D.Double(x, y, width, height), TABLE);
  }

  /** A tray from {@code low} to {@code high}; a lip that is not known stays away. */
  CardDrawing tray(
      double low, double high, double y, double lip, boolean leftLip, boolean rightLip) {
    double width = lip / 3.5;
    line(low - width / 2, y, high + width / 2, y, width, HOLD);
    if (leftLip) {
      line(low, y, low, y - lip, width, HOLD);
    }
    if (rightLip) {
      line(high, y, high, y - lip, width, HOLD);
    }
    return this;
  }

  /** Ticks from 0 to 10. */
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
    Path2D triangle = new Path2D.Double();
    triangle.moveTo(22, 3);
    triangle.lineTo(41, 36);
    triangle.lineTo(3, 36);
    triangle.closePath();
    Path2D sign = new Path2D.Double();
    sign.moveTo(22, 14);
    sign.lineTo(22, 26);
    sign.moveTo(22, 29.5);
    sign.lineTo(22, 33.5);
    AffineTransform place = AffineTransform.getTranslateInstance(x, y);
    place.scale(4, 4);
    shows.append("warning\n");
    BasicStroke outer = new BasicStroke(3.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    fill(place.createTransformedShape(outer.createStrokedShape(triangle)), HEAT);
    Shape inner = new BasicStroke(4).createStrokedShape(sign);
    return fill(place.createTransformedShape(inner), HEAT);
  }

  private CardDrawing fill(Shape shape, String colour) {
    paints.add(new Paint(shape, colour));
    return this;
  }

  private CardDrawing stroke(Shape shape, BasicStroke stroke, String colour) {
    return fill(stroke.createStrokedShape(shape), colour);
  }

  private void mark(String what, String colour, double... places) {
    shows.append(what).append(colour);
    for (double place : places) {
      shows.append(' ').append(Math.round(place));
    }
    shows.append('\n');
  }

  /** What the card shows, without its version: words and the places of its marks. */
  String shows() {
    return shows.toString();
  }

  /** The whole card as a drawing. */
  String svg(String sentence, String metadata) {
    return svg(sentence, metadata, "");
  }

  /**
   * The whole card as a drawing.
   *
   * @param more elements on top of everything else
   */
  String svg(String sentence, String metadata, String more) {
    StringBuilder body = new StringBuilder();
    for (Paint paint : paints) {
      body.append("<path fill=\"")
          .append(paint.colour())
          .append("\" d=\"")
          .append(Lettering.data(new Path2D.Double(paint.shape())))
          .append("\"/>");
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1920\" height=\"1080\" viewBox=\"0 0"
        + " 1920 1080\"><title>"
        + escaped(sentence)
        + "</title><metadata>"
        + escaped(metadata)
        + "</metadata>"
        + body
        + more
        + "</svg>\n";
  }

  /** The whole card as a picture; what is not painted stays transparent. */
  BufferedImage picture() {
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_ARGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    for (Paint paint : paints) {
      graphics.setColor(Color.decode(paint.colour()));
      graphics.fill(paint.shape());
    }
    graphics.dispose();
    return image;
  }

  static String number(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static String escaped(String words) {
    return words
        .replaceAll("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\ufffe\\uffff]", "")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
  }
}
