package ovenproof.publish.card;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.font.TextAttribute;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A weight of the bundled open font (Sofia Sans, SIL Open Font License 1.1) as outlines. A
 * character that none of its parts holds is drawn with the machine's own sans-serif.
 */
enum Lettering {
  MEDIUM("sofia-sans", 500),
  BOLD("sofia-sans", 700),
  /** Tall figures. */
  NARROW("sofia-sans-extra-condensed", 700);

  private static final FontRenderContext CONTEXT =
      new FontRenderContext(new AffineTransform(), true, true);

  private final List<Font> fonts = new ArrayList<>();

  Lettering(String family, int weight) {
    for (String part : List.of("latin", "latin-ext", "cyrillic", "greek")) {
      fonts.add(load("fonts/" + family + "-" + part + "-" + weight + ".ttf"));
    }
    fonts.add(new Font(Font.SANS_SERIF, weight > 600 ? Font.BOLD : Font.PLAIN, 1));
  }

  private static Font load(String resource) {
    String path = "/ovenproof/publish/cards/" + resource;
    try (InputStream stream = Lettering.class.getResourceAsStream(path)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks its font " + path);
      }
      return Font.createFont(Font.TRUETYPE_FONT, stream);
    } catch (IOException | FontFormatException e) {
      throw new IllegalStateException("the program cannot read its font " + path, e);
    }
  }

  /** The outlines of a line of text with its left end of the base line at the origin. */
  Path2D outline(String text, double size) {
    Path2D path = new Path2D.Double();
    double x = 0;
    for (Piece piece : pieces(text)) {
      GlyphVector glyphs = glyphs(piece, size);
      path.append(glyphs.getOutline((float) x, 0), false);
      x += glyphs.getLogicalBounds().getWidth();
    }
    return path;
  }

  /** Width of a line of text. */
  double width(String text, double size) {
    return pieces(text).stream()
        .mapToDouble(p -> glyphs(p, size).getLogicalBounds().getWidth())
        .sum();
  }

  private record Piece(String text, Font font) {}

  private static GlyphVector glyphs(Piece piece, double size) {
    Font font =
        piece
            .font()
            .deriveFont((float) size)
            .deriveFont(Map.of(TextAttribute.KERNING, TextAttribute.KERNING_ON));
    char[] characters = piece.text().toCharArray();
    int direction =
        java.text.Bidi.requiresBidi(characters, 0, characters.length)
            ? Font.LAYOUT_RIGHT_TO_LEFT
            : Font.LAYOUT_LEFT_TO_RIGHT;
    return font.layoutGlyphVector(CONTEXT, characters, 0, characters.length, direction);
  }

  /** Runs of characters that one font can draw. */
  private List<Piece> pieces(String text) {
    List<Piece> pieces = new ArrayList<>();
    StringBuilder run = new StringBuilder();
    Font current = fonts.get(0);
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      Font font = fontOf(character == 0xa0 ? ' ' : character);
      if (font != current && run.length() > 0) {
        pieces.add(new Piece(run.toString(), current));
        run.setLength(0);
      }
      current = font;
      run.appendCodePoint(character == 0xa0 ? ' ' : character);
      i += Character.charCount(character);
    }
    if (run.length() > 0) {
      pieces.add(new Piece(run.toString(), current));
    }
    return pieces;
  }

  private Font fontOf(int character) {
    for (Font font : fonts) {
      if (font.canDisplay(character)) {
        return font;
      }
    }
    return fonts.get(fonts.size() - 1);
  }

  /** SVG path data of outlines, to a tenth of a pixel. */
  static String data(Path2D path) {
    StringBuilder data = new StringBuilder();
    double[] c = new double[6];
    for (PathIterator i = path.getPathIterator(null); !i.isDone(); i.next()) {
      switch (i.currentSegment(c)) {
        case PathIterator.SEG_MOVETO -> append(data, 'M', c, 2);
        case PathIterator.SEG_LINETO -> append(data, 'L', c, 2);
        case PathIterator.SEG_QUADTO -> append(data, 'Q', c, 4);
        case PathIterator.SEG_CUBICTO -> append(data, 'C', c, 6);
        default -> data.append('Z');
      }
    }
    return data.toString();
  }

  private static void append(StringBuilder data, char command, double[] c, int count) {
    data.append(command);
    for (int i = 0; i < count; i++) {
      long tenths = Math.round(c[i] * 10);
      data.append(i == 0 ? "" : " ").append(tenths < 0 ? "-" : "").append(Math.abs(tenths) / 10);
      data.append('.').append(Math.abs(tenths) % 10);
    }
  }
}
