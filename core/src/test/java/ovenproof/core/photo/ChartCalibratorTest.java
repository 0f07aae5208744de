package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.ReferenceTable;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;
import ovenproof.core.photo.Scene.Camera;
import ovenproof.core.photo.Scene.Ground;

class ChartCalibratorTest {

  static IntStream seeds() {
    return IntStream.range(0, 7);
  }

  static IntStream patches() {
    return IntStream.range(0, 24);
  }

  @ParameterizedTest
  @MethodSource("patches")
  void thePublishedValuesAreThePublishedValues(int patch) {
    ReferenceTable.Row row = ReferenceTable.read("reference_chart_24_lab_d50.csv").get(patch);
    Lab after = row.lab("L_after2014", "a_after2014", "b_after2014", White.D50);
    Lab before = row.lab("L_2005", "a_2005", "b_2005", White.D50);
    assertThat(ReferenceChart.Edition.AFTER_2014.patches().get(patch)).isEqualTo(after);
    assertThat(ReferenceChart.Edition.BEFORE_2014.patches().get(patch)).isEqualTo(before);
    assertThat(ReferenceChart.name(patch)).isEqualTo(row.text("patch"));
    assertThat(Ciede2000.between(after, before))
        .isCloseTo(row.number("dE00_after2014_vs_2005"), within(5e-4));
  }

  /**
   * The chart rendered from its published values under a simulated light and camera comes back at a
   * mean ΔE00 of at most 1.
   */
  @ParameterizedTest
  @MethodSource("seeds")
  void theChartComesBackThroughLightAndCamera(int seed) {
    Scene scene = chartOnly(seed);
    Picture picture = scene.shoot(Camera.ordinary(seed).evenLight());
    PhotoCalibration found = calibrate(picture);
    assertThat(found.deltaE00Mean()).isLessThanOrEqualTo(1);
    assertThat(found.withinGate()).isTrue();
    assertThat(found.leaveOneOutMean()).isGreaterThan(found.deltaE00Mean());
  }

  /** Colours that the chart does not hold, seen by the same camera beside it. */
  @ParameterizedTest
  @MethodSource("seeds")
  void brownsBesideTheChartComeOutWithinTheirUncertainty(int seed) {
    Camera camera = Camera.ordinary(seed).evenLight();
    Scene scene =
        Scene.of(
            1200,
            Ground.MATTE_BLUE_GREY,
            Scene.pieces(3, 0.3, true, seed),
            Scene.chart(0.82, 0.37, 0.26, 90, 0.05),
            seed);
    Picture picture = scene.shoot(camera);
    Picture truth = scene.shoot(Camera.PERFECT);
    PhotoCalibration found = calibrate(picture);
    for (Scene.Piece piece : scene.pieces) {
      Lab wanted = mean(truth, scene.truth(piece), PixelColours.uncorrected());
      Lab seen = mean(picture, scene.truth(piece), found.colours());
      assertThat(Ciede2000.between(wanted, seen)).isLessThan(1.5);
      assertThat(Math.abs(wanted.lightness() - seen.lightness()))
          .isLessThan(3 * found.trust().lightness());
    }
  }

  @Test
  void aClippedWhiteIsLeftOutAndSaid() {
    Camera bright = new Camera(1.35, 1, 1, 0.03, 0.1, 0, 0, 0, 1, 0.92f);
    PhotoCalibration found = calibrate(chartOnly(1).shoot(bright));
    assertThat(found.warnings()).anyMatch(w -> w.contains("overexposed") && w.contains("white"));
    assertThat(found.deltaE00Mean()).isLessThan(1.5);
  }

  @Test
  void aCoveredPatchIsLeftOutAndSaid() {
    Scene scene =
        Scene.of(1200, Ground.BLACK_CLOTH, List.of(), Scene.chart(0.5, 0.37, 0.5, 0, 0), 1);
    Picture picture = scene.shoot(Camera.ordinary(1).evenLight());
    int[] pixels = picture.pixels().clone();
    PixelPoint orange = scene.chart.apply(0.5, 1.5).times(1200);
    for (int y = -45; y < 45; y++) {
      for (int x = -45; x < 45; x++) {
        pixels[((int) orange.y() + y) * 1200 + (int) orange.x() + x] = 0xdddddd;
      }
    }
    PhotoCalibration found = calibrate(new Picture(1200, 900, pixels));
    assertThat(found.warnings()).anyMatch(w -> w.contains("covered") && w.contains("orange"));
    assertThat(found.withinGate()).isTrue();
  }

  @Test
  void aCameraThatPaintsMissesTheGateAndSaysSo() {
    Scene scene = chartOnly(2);
    Picture picture = scene.shoot(Camera.ordinary(2).evenLight());
    int[] pixels = picture.pixels().clone();
    for (int i = 0; i < pixels.length; i++) {
      // A film look: two hues pushed apart, which no curve and no matrix undoes.
      Lab lab = Srgb.ofPacked(pixels[i]).toLab(White.D50);
      double hue =
          Math.toRadians(lab.hueDegrees() + 25 * Math.sin(Math.toRadians(3 * lab.hueDegrees())));
      pixels[i] =
          Lab.d50(lab.lightness(), lab.chroma() * Math.cos(hue), lab.chroma() * Math.sin(hue))
              .toSrgb()
              .packed();
    }
    PhotoCalibration found = calibrate(new Picture(picture.width(), picture.height(), pixels));
    assertThat(found.withinGate()).isFalse();
    assertThat(found.warnings()).anyMatch(w -> w.contains("gate"));
    assertThat(found.trust().a()).isGreaterThan(2);
  }

  @Test
  void theEditionThatTheChartIsOfIsTold() {
    PhotoCalibration found = calibrate(chartOnly(5).shoot(Camera.ordinary(5).evenLight()));
    assertThat(found.method()).contains("after November 2014");
  }

  @Test
  void aGreyCardGivesExposureAndNeutral() {
    int[] pixels = new int[200 * 100];
    java.util.Arrays.fill(pixels, new Srgb(150, 120, 90).packed());
    Picture picture = new Picture(200, 100, pixels);
    PhotoCalibration card =
        PhotoCalibration.greyCard(picture, Outline.of(new PixelBox(20, 20, 60, 60)), 49.5, "c");
    Lab lab = card.colours().at(picture, 150, 50);
    assertThat(lab.lightness()).isCloseTo(49.5, within(0.02));
    assertThat(lab.chroma()).isLessThan(0.02);
    assertThat(card.comparability()).contains("grey card");
  }

  @Test
  void withoutAWholeChartThereIsNothingToCalibrate() {
    Picture picture = new Picture(10, 10, new int[100]);
    assertThatThrownBy(
            () ->
                ChartCalibrator.withDefaults()
                    .calibrate(picture, ChartSighting.NOTHING, "camera:x"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(PhotoCalibration.none("camera:x").comparability()).contains("not comparable");
  }

  private static Scene chartOnly(int seed) {
    Ground ground = Ground.values()[seed % Ground.values().length];
    return Scene.of(1200, ground, List.of(), Scene.chart(0.5, 0.37, 0.45, 23 * seed, 0.1), seed);
  }

  private static PhotoCalibration calibrate(Picture picture) {
    return ChartCalibrator.withDefaults()
        .calibrate(picture, ChartFinder.find(picture), "camera:test");
  }

  private static Lab mean(Picture picture, Outline outline, PixelColours colours) {
    return PhotoMeasures.with(ShadeSettings.withDefaults())
        .measure(picture, outline, colours, ColourTrust.uncalibrated("t"), null)
        .mean();
  }
}
