package ovenproof.prep;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.photo.Picture;
import ovenproof.evidence.photo.RunLabel;
import ovenproof.evidence.photo.RunLabels;

/** What is printed is read again: the code is drawn into a picture as a phone would see it. */
class QrPictureTest {

  @ParameterizedTest
  @ValueSource(doubles = {0, 17, 90, 201})
  void aPrintedLabelInTheFrameIsRead(double degrees) {
    RunLabel label = new RunLabel("flatbread-whimbrel-12", 2, "underside");
    Picture picture = photographed(QrPicture.svg(label.text()), degrees);
    assertThat(RunLabels.read(picture)).containsExactly(label.text());
  }

  /** A 3 cm label in a frame of 50 cm: 240 of 4000 pixels, turned, on grey, unevenly lit. */
  private static Picture photographed(String svg, double degrees) {
    BufferedImage image = new BufferedImage(4000, 3000, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setColor(new Color(0x5f7680));
    g.fillRect(0, 0, 4000, 3000);
    Matcher side = Pattern.compile("viewBox=\"0 0 (\\d+) ").matcher(svg);
    assertThat(side.find()).isTrue();
    int modules = Integer.parseInt(side.group(1));
    AffineTransform turn = AffineTransform.getTranslateInstance(3200, 700);
    turn.rotate(Math.toRadians(degrees));
    turn.scale(240.0 / modules, 240.0 / modules);
    g.setTransform(turn);
    g.setColor(new Color(214, 208, 196));
    g.fillRect(0, 0, modules, modules);
    g.setColor(new Color(38, 36, 34));
    Matcher bar = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1H\\d+z").matcher(svg);
    while (bar.find()) {
      int x = Integer.parseInt(bar.group(1));
      int y = Integer.parseInt(bar.group(2));
      g.fillRect(x, y, Integer.parseInt(bar.group(3)), 1);
    }
    g.dispose();
    int[] pixels = image.getRGB(0, 0, 4000, 3000, null, 0, 4000);
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] &= 0xffffff;
    }
    return new Picture(4000, 3000, pixels);
  }
}
