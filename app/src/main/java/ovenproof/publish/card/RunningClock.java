package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.RIGHT;

import java.awt.AlphaComposite;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ovenproof.publish.card.CardDrawing.Anchor;

/**
 * A clock that runs from 0:00 to its end and stays there. Its figures stand in places of equal
 * width, so that nothing dances.
 *
 * <p>As a drawing it moves by the declarative animation of SVG 1.1 (chapter 19): each place changes
 * what it refers to; a program that does not animate shows the end. As frames it is one picture a
 * second.
 *
 * @param endSeconds where it stays
 */
record RunningClock(long endSeconds) {
  private static final double SIZE = 230;
  private static final double BASE = 900;

  RunningClock {
    if (endSeconds < 0 || endSeconds >= 360_000) {
      throw new IllegalArgumentException(
          "endSeconds must be from 0 to 359,999, found " + endSeconds);
    }
  }

  /** {@code 6:31}, {@code 1:05:10}. */
  static String text(long seconds) {
    String rest = String.format(Locale.ROOT, "%d:%02d", seconds / 60 % 60, seconds % 60);
    return seconds < 3600
        ? rest
        : String.format(
            Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }

  /** A place of the clock: a figure that steps every {@code stepSeconds}, or a colon. */
  private record Place(double x, long stepSeconds, int figures, boolean leading) {
    boolean isColon() {
      return figures == 0;
    }

    /** What stands here; a leading nought stays away. */
    String at(long seconds) {
      if (isColon()) {
        return ":";
      }
      long figure = seconds / stepSeconds % figures;
      return leading && figure == 0 ? "" : Long.toString(figure);
    }
  }

  /** From the right: seconds, minutes, hours as far as the end needs them. */
  private List<Place> places() {
    double figure = widest();
    double colon = Lettering.NARROW.width(":", SIZE);
    List<Place> places = new ArrayList<>();
    long[][] kinds = {
      {1, 10}, {10, 6}, {0, 0}, {60, 10}, {600, 6}, {0, 0}, {3600, 10}, {36000, 10}
    };
    int needed = endSeconds < 600 ? 4 : endSeconds < 3600 ? 5 : endSeconds < 36_000 ? 7 : 8;
    double right = RIGHT;
    for (int i = 0; i < needed; i++) {
      double width = kinds[i][1] == 0 ? colon : figure;
      right -= width;
      boolean leading = i == 4 && needed == 5 || i == 7;
      places.add(new Place(right + width / 2, kinds[i][0], (int) kinds[i][1], leading));
    }
    return places;
  }

  private static double widest() {
    double widest = 0;
    for (int i = 0; i < 10; i++) {
      widest = Math.max(widest, Lettering.NARROW.width(Integer.toString(i), SIZE));
    }
    return widest;
  }

  /** Draws the clock as it stands after so many seconds. */
  void draw(CardDrawing drawing, long seconds) {
    for (Place place : places()) {
      String words = place.at(seconds);
      if (!words.isEmpty()) {
        drawing.text(Lettering.NARROW, words, place.x(), BASE, SIZE, 400, INK, Anchor.MIDDLE);
      }
    }
  }

  /** Elements of a drawing in which the clock runs. */
  String svg() {
    StringBuilder svg = new StringBuilder("<defs>");
    for (String figure : "0 1 2 3 4 5 6 7 8 9 :".split(" ")) {
      double left = -Lettering.NARROW.width(figure, SIZE) / 2;
      Path2D outline = Lettering.NARROW.outline(figure, SIZE);
      outline.transform(AffineTransform.getTranslateInstance(left, 0));
      svg.append("<path id=\"").append(name(figure)).append("\" fill=\"").append(INK);
      svg.append("\" d=\"").append(Lettering.data(outline)).append("\"/>");
    }
    svg.append("<path id=\"f\" d=\"\"/></defs>");
    for (Place place : places()) {
      svg.append("<use href=\"#").append(name(place.at(endSeconds))).append("\" x=\"");
      svg.append(CardDrawing.number(place.x())).append("\" y=\"").append((long) BASE);
      svg.append(place.isColon() ? "\"/>" : "\">" + animation(place) + "</use>");
    }
    return svg.toString();
  }

  private static String name(String figure) {
    return figure.equals(":") ? "fc" : "f" + figure;
  }

  /** Half a second longer than the end, so that the last figure has begun when it stops. */
  private String animation(Place place) {
    StringBuilder values = new StringBuilder();
    for (int i = 0; i < place.figures(); i++) {
      values.append(i == 0 ? "#" : ";#").append(name(place.at(i * place.stepSeconds())));
    }
    return "<animate attributeName=\"href\" calcMode=\"discrete\" values=\""
        + values
        + "\" dur=\""
        + place.stepSeconds() * place.figures()
        + "s\" repeatDur=\""
        + endSeconds
        + ".5s\" fill=\"freeze\"/>";
  }

  /** The clock on top of what stands still. */
  Card.Motion over(CardDrawing around) {
    BufferedImage[] still = new BufferedImage[1];
    return new Card.Motion() {
      @Override
      public long seconds() {
        return endSeconds;
      }

      @Override
      public BufferedImage at(long second) {
        synchronized (still) {
          still[0] = still[0] == null ? around.picture() : still[0];
        }
        return frame(still[0], second);
      }
    };
  }

  private BufferedImage frame(BufferedImage still, long second) {
    CardDrawing figures = new CardDrawing();
    draw(figures, second);
    BufferedImage frame = figures.picture();
    Graphics2D graphics = frame.createGraphics();
    graphics.setComposite(AlphaComposite.DstOver);
    graphics.drawImage(still, 0, 0, null);
    graphics.dispose();
    return frame;
  }
}
