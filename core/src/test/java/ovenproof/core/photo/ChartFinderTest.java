package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.core.photo.Scene.Camera;
import ovenproof.core.photo.Scene.Ground;

class ChartFinderTest {

  private static final int WIDTH = 900;

  static IntStream seeds() {
    return IntStream.range(0, 14);
  }

  /** Any turn, moderate perspective, any ground, light and camera. */
  @ParameterizedTest
  @MethodSource("seeds")
  void aChartAnywhereIsFoundWithItsCorners(int seed) {
    SplittableRandom r = new SplittableRandom(seed);
    Homography view =
        Scene.chart(
            r.nextDouble(0.3, 0.7),
            r.nextDouble(0.3, 0.45),
            r.nextDouble(0.16, 0.5),
            r.nextDouble(0, 360),
            r.nextDouble(-0.25, 0.25));
    Ground ground = Ground.values()[seed % Ground.values().length];
    Scene scene = Scene.of(WIDTH, ground, List.of(), view, seed);
    ChartSighting found = ChartFinder.find(scene.shoot(Camera.ordinary(seed)));
    assertThat(found.status()).isEqualTo(ChartSighting.Status.WHOLE);
    double pitch = found.pitchPixels();
    for (int i = 0; i < 4; i++) {
      assertThat(found.corners().get(i).distanceTo(scene.chartCorners().get(i)))
          .as("corner %d", i)
          .isLessThan(0.12 * pitch);
    }
  }

  @ParameterizedTest
  @CsvSource({"0", "90", "180", "270", "45"})
  void theColoursTellWhichWayUp(double degrees) {
    Scene scene =
        Scene.of(WIDTH, Ground.BLACK_CLOTH, List.of(), Scene.chart(0.5, 0.37, 0.4, degrees, 0), 1);
    ChartSighting found = ChartFinder.find(scene.shoot(Camera.ordinary(3)));
    assertThat(found.corners().get(0).distanceTo(scene.chartCorners().get(0))).isLessThan(8);
  }

  @Test
  void halfAChartIsAPartAndNotAChart() {
    Scene scene =
        Scene.of(WIDTH, Ground.MATTE_BLUE_GREY, List.of(), Scene.chart(0.99, 0.37, 0.4, 10, 0), 2);
    ChartSighting found = ChartFinder.find(scene.shoot(Camera.ordinary(2)));
    assertThat(found.status()).isEqualTo(ChartSighting.Status.PART);
    assertThat(found.patchesInFrame()).isBetween(9, 15);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void foodWithoutChartIsNoChart(int seed) {
    Ground ground = Ground.values()[seed % Ground.values().length];
    Scene scene =
        Scene.of(WIDTH, ground, Scene.pieces(1 + seed % 12, 0.2, false, seed), null, seed);
    ChartSighting found = ChartFinder.find(scene.shoot(Camera.ordinary(seed)));
    assertThat(found.status()).isEqualTo(ChartSighting.Status.NONE);
  }

  /** Coloured tiles on a grid, of colours that are not the chart's. */
  @ParameterizedTest
  @MethodSource("seeds")
  void aColouredMosaicIsNoChart(int seed) {
    SplittableRandom r = new SplittableRandom(seed);
    int[] colours = r.ints(48, 0, 1 << 24).toArray();
    int[] pixels = new int[800 * 600];
    for (int i = 0; i < pixels.length; i++) {
      int x = i % 800;
      int y = i / 800;
      boolean gap = x % 100 < 12 || y % 100 < 12;
      pixels[i] = gap ? 0x202020 : colours[y / 100 * 8 + x / 100];
    }
    assertThat(ChartFinder.find(new Picture(800, 600, pixels)).status())
        .isEqualTo(ChartSighting.Status.NONE);
  }

  @Test
  void fourClickedCornersInAnyOrderGiveTheSameChart() {
    Scene scene =
        Scene.of(WIDTH, Ground.WOODEN_BOARD, List.of(), Scene.chart(0.5, 0.37, 0.4, 130, 0.2), 4);
    Picture picture = scene.shoot(Camera.ordinary(4));
    List<PixelPoint> c = scene.chartCorners();
    for (List<PixelPoint> order :
        List.of(
            c,
            List.of(c.get(2), c.get(3), c.get(0), c.get(1)),
            List.of(c.get(1), c.get(0), c.get(3), c.get(2)))) {
      ChartSighting found = ChartFinder.at(picture, order);
      assertThat(found.isWhole()).isTrue();
      assertThat(found.corners().get(0).distanceTo(c.get(0))).isLessThan(1e-6);
    }
  }

  @ParameterizedTest
  @CsvSource({"1,1", "3,500", "40,40", "2000,10"})
  void aTinyPictureHoldsNoChart(int width, int height) {
    assertThat(ChartFinder.find(new Picture(width, height, new int[width * height])).status())
        .isEqualTo(ChartSighting.Status.NONE);
  }
}
