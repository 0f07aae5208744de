package ovenproof.kitchen.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;
import ovenproof.kitchen.photo.PhotoScene.Camera;
import ovenproof.kitchen.photo.PhotoScene.ChartPose;
import ovenproof.kitchen.photo.PhotoScene.Ground;
import ovenproof.kitchen.photo.PhotoScene.Item;
import ovenproof.kitchen.photo.PhotoScene.Light;
import ovenproof.kitchen.photo.PhotoScene.Shape;
import ovenproof.kitchen.physics.Surface;

class StudioTest {

  private static PhotoScene scene(double browning, Camera camera, Light light) {
    Item slice =
        new Item(
            "s1", Material.BREAD_SLICE, Shape.SLICE, 70, 80, 100, 96, 0, Surface.even(browning));
    return new PhotoScene(
        600, 300, Ground.TABLE, List.of(slice), new ChartPose(220, 100, 18, 0), light, camera, 9);
  }

  /** Chart values: X-Rite 2016 by way of the colour-science project, row 4: the greys. */
  @Test
  void inPlainLightThePictureShowsTheChartsPublishedColours() {
    Shot shot = Studio.take(scene(0.4, Camera.IDEAL, new Light(1, 0, 0, 1, 1)));
    double[] lightness = {95.19, 81.29, 66.89, 50.76, 35.63, 20.64};
    for (int i = 0; i < 6; i++) {
      int x = (int) ((220 + 18 * (i - 2.5)) * 2);
      int y = (int) ((100 + 18 * 1.5) * 2);
      Lab lab = Srgb.ofPacked(shot.rgb()[y * shot.width() + x]).toLab(White.D50);
      // the lens darkens towards the corners by up to 5 %: about 1.5 in lightness
      assertThat(lab.lightness()).isCloseTo(lightness[i], within(2.0));
    }
  }

  @Test
  void theTrueColourIsThatOfTheBrowning() {
    Shot shot = Studio.take(scene(0.5, Camera.IDEAL, Light.NEUTRAL));
    Lab expected = Material.BREAD_SLICE.colour().at(0.5);
    Shot.PieceTruth piece = shot.pieces().get(0);
    assertThat(piece.insideLab()[0]).isCloseTo(expected.lightness(), within(2.0));
    assertThat(piece.insideDeviation()).isBetween(1.0, 9.0);
    assertThat(piece.pixels()).isBetween(100 * 96 * 4 * 85 / 100, 100 * 96 * 4 * 106 / 100);
  }

  @Test
  void lightAndCameraChangeThePictureAndNotTheTruth() {
    Camera phone = new Camera(0, 0, 0, 0.012, 0.06);
    Shot plain = Studio.take(scene(0.5, Camera.IDEAL, Light.NEUTRAL));
    Shot warm = Studio.take(scene(0.5, phone, new Light(0.7, 0.1, 0, 1.1, 0.8)));
    assertThat(warm.pieces().get(0).meanLab()).containsExactly(plain.pieces().get(0).meanLab());
    assertThat(warm.rgb()).isNotEqualTo(plain.rgb());
  }

  @Test
  void theSameSceneGivesTheSamePicture() {
    Camera phone = new Camera(0.01, 0.01, 0.01, 0.012, 0.06);
    assertThat(Studio.take(scene(0.3, phone, Light.NEUTRAL)).rgb())
        .containsExactly(Studio.take(scene(0.3, phone, Light.NEUTRAL)).rgb());
  }

  @Test
  void thePieceLiesInItsBox() {
    Camera askew = new Camera(0.03, 0.03, -0.02, 0, 0);
    Shot.PieceTruth piece = Studio.take(scene(0.3, askew, Light.NEUTRAL)).pieces().get(0);
    assertThat(piece.x()).isNotNegative();
    assertThat(piece.x() + piece.width()).isLessThanOrEqualTo(600);
    assertThat(piece.y() + piece.height()).isLessThanOrEqualTo(400);
    assertThat(piece.pixels()).isLessThan(piece.width() * piece.height());
  }

  @Test
  void theFileIsAJpegWithItsTime() throws IOException {
    Shot shot = Studio.take(scene(0.3, Camera.IDEAL, Light.NEUTRAL));
    byte[] file = Jpeg.of(shot, LocalDateTime.of(2026, 3, 4, 10, 12, 30));
    var image = ImageIO.read(new ByteArrayInputStream(file));
    assertThat(image.getWidth()).isEqualTo(600);
    assertThat(new String(file, 0, 200, java.nio.charset.StandardCharsets.ISO_8859_1))
        .contains("Exif", "2026:03:04 10:12:30");
  }
}
