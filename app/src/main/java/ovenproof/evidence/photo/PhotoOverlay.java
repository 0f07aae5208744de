package ovenproof.evidence.photo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Locale;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.PixelBox;
import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeMap;
import ovenproof.core.photo.ShadeSettings;

/**
 * A photograph with what was found drawn into it: outlines with numbers, corners of the chart, and
 * hatching where the food is too pale (/) or too dark (\) for the target. Shape tells what colour
 * tells.
 */
public final class PhotoOverlay {

  private static final int LONG_SIDE = 1600;

  /** Share of a piece's width or height that its label may take. */
  private static final double MOST_COVERED = 0.6;

  private static final Color LINE = new Color(0x00, 0x72, 0xb2);
  private static final Color HALO = new Color(255, 255, 255, 220);
  private static final Color PALE = new Color(0x56, 0xb4, 0xe9);
  private static final Color DARK = new Color(0xd5, 0x5e, 0x00);

  private final PhotoAnalysis analysis;
  private final ShadeSettings settings;
  private final double scale;
  private final BufferedImage image;
  private final Graphics2D g;

  private PhotoOverlay(Picture picture, PhotoAnalysis analysis, ShadeSettings settings) {
    this.analysis = analysis;
    this.settings = settings;
    int factor = Math.max(1, (int) Math.ceil(picture.longSide() / (double) LONG_SIDE));
    factor = Math.min(factor, Math.min(picture.width(), picture.height()));
    Picture small = picture.reduced(factor);
    this.scale = 1.0 / factor;
    this.image = new BufferedImage(small.width(), small.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, small.width(), small.height(), small.pixels(), 0, small.width());
    this.g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
  }

  /** Draws it, at most 1600 pixels on its longer side. */
  public static BufferedImage draw(
      Picture picture, PhotoAnalysis analysis, ShadeSettings settings) {
    PhotoOverlay overlay = new PhotoOverlay(picture, analysis, settings);
    overlay.drawAll();
    return overlay.image;
  }

  private void drawAll() {
    List<PixelPoint> corners = analysis.chart().corners();
    if (!corners.isEmpty()) {
      stroke(new Outline(corners), 1.5f);
      label("chart", corners.get(0));
    }
    for (PhotoAnalysis.Piece piece : analysis.pieces()) {
      hatch(piece.shade().map());
      stroke(piece.shade().outline(), 2.5f);
    }
    for (PhotoAnalysis.Piece piece : analysis.pieces()) {
      name(piece);
    }
    g.dispose();
  }

  private void stroke(Outline outline, float width) {
    Path2D path = new Path2D.Double();
    for (PixelPoint p : outline.points()) {
      if (path.getCurrentPoint() == null) {
        path.moveTo(p.x() * scale, p.y() * scale);
      } else {
        path.lineTo(p.x() * scale, p.y() * scale);
      }
    }
    path.closePath();
    g.setColor(HALO);
    g.setStroke(new BasicStroke(2 * width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.draw(path);
    g.setColor(LINE);
    g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.draw(path);
  }

  /**
   * Number and lightness in the middle of a piece that has room for them, the number alone in a
   * smaller one, and above a piece that it would cover.
   */
  private void name(PhotoAnalysis.Piece piece) {
    Lab mean = piece.shade().mean();
    Outline outline = piece.shade().outline();
    PixelBox box = outline.box();
    double room = MOST_COVERED * box.width() * scale;
    String full =
        mean == null
            ? piece.id()
            : String.format(Locale.ROOT, "%s  L* %.0f", piece.id(), mean.lightness());
    String text = width(full) <= room ? full : piece.id();
    boolean fits = width(text) <= room && 2 * fontSize() <= MOST_COVERED * box.height() * scale;
    label(
        text,
        fits
            ? outline.centroid()
            : new PixelPoint(
                box.left() + box.width() / 2.0, box.top() - (fontSize() / 2.0 + 5) / scale));
  }

  private int fontSize() {
    return Math.max(11, image.getWidth() / 80);
  }

  private int width(String text) {
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, fontSize()));
    return g.getFontMetrics().stringWidth(text) + 10;
  }

  private void label(String text, PixelPoint at) {
    int size = fontSize();
    g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, size));
    int width = g.getFontMetrics().stringWidth(text);
    int x =
        (int) Math.max(2, Math.min(image.getWidth() - width - 6.0, at.x() * scale - width / 2.0));
    int y =
        (int) Math.max(size + 2.0, Math.min(image.getHeight() - 4.0, at.y() * scale + size / 2.0));
    g.setColor(HALO);
    g.fillRoundRect(x - 5, y - size, width + 10, size + 6, 8, 8);
    g.setColor(Color.BLACK);
    g.drawString(text, x, y);
  }

  /** A stroke in each cell beyond the limits, on every third diagonal. */
  private void hatch(ShadeMap map) {
    Lab target = settings.target();
    if (target == null) {
      return;
    }
    g.setStroke(new BasicStroke(1.2f));
    int step = Math.max(1, (int) Math.ceil(5 / (map.cellPixels() * scale)));
    for (int row = 0; row < map.rows(); row += step) {
      for (int column = 0; column < map.columns(); column += step) {
        if (map.isInside(column, row)) {
          double off = map.lightness(column, row) - target.lightness();
          if (Math.abs(off) > settings.beyondLightness()) {
            mark(map.place(column, row), off > 0, step * map.cellPixels() * scale);
          }
        }
      }
    }
  }

  private void mark(PixelPoint at, boolean pale, double size) {
    g.setColor(pale ? PALE : DARK);
    double h = 0.5 * size;
    double x = at.x() * scale;
    double y = at.y() * scale;
    double rise = pale ? -h : h;
    g.draw(new java.awt.geom.Line2D.Double(x - h, y - rise, x + h, y + rise));
  }
}
