package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;

/** Pictures that a finder must not be sure of, and one that fooled it: all made here. */
class PieceDoubtsTest {

  private static final int WIDTH = 400;
  private static final int HEIGHT = 300;

  private static PhotoAnalysis seen(IntBinaryOperator colour) {
    int[] pixels = new int[WIDTH * HEIGHT];
    for (int i = 0; i < pixels.length; i++) {
      pixels[i] = colour.applyAsInt(i % WIDTH, i / WIDTH);
    }
    return PhotoAnalyser.withDefaults().analyse(new Picture(WIDTH, HEIGHT, pixels), "camera:test");
  }

  private static int rgb(double red, double green, double blue) {
    return (int) red << 16 | (int) green << 8 | (int) blue;
  }

  private static boolean isDoubted(PhotoAnalysis analysis) {
    return analysis.warnings().stream().anyMatch(w -> w.startsWith(PieceDoubts.START));
  }

  /** A bun cut out on white, with a lamp on its left: the bright side alone is no piece. */
  private static int bun(int x, int y) {
    double u = (x - WIDTH / 2.0) / 180;
    double v = (y - HEIGHT / 2.0) / 140;
    if (Math.hypot(u, v) > 1) {
      return 0xffffff;
    }
    double light = x < WIDTH / 2 - 20 ? 1 : 0.55;
    return rgb(214 * light, 150 * light, 78 * light);
  }

  @Test
  void aBunThatFillsAWhiteFrameIsOutlinedAsAWholeThoughHalfOfItLiesInShade() {
    PhotoAnalysis analysis = seen(PieceDoubtsTest::bun);
    assertThat(analysis.pieces()).hasSize(1);
    double wanted = Math.PI * 180 * 140;
    assertThat(analysis.pieces().get(0).shade().outline().area())
        .isBetween(0.95 * wanted, 1.03 * wanted);
    assertThat(isDoubted(analysis)).isFalse();
  }

  @Test
  void aChessBoardIsNotTakenForFoodWithoutAWord() {
    PhotoAnalysis analysis =
        seen(
            (x, y) ->
                x < 60 || y < 30 || x >= 340 || y >= 270
                    ? 0x707070
                    : (x / 40 + y / 40) % 2 == 0 ? 0xf4f4f4 : 0x202020);
    assertThat(analysis.pieces().isEmpty() || isDoubted(analysis)).isTrue();
  }

  @Test
  void greenThingsAreNoBread() {
    PhotoAnalysis analysis =
        seen((x, y) -> Math.hypot(x - 200, y - 150) < 80 ? 0x2f8a36 : 0xe8e8e8);
    assertThat(analysis.pieces().isEmpty() || isDoubted(analysis)).isTrue();
  }

  @Test
  void oneRollAmongManyAlikeIsSaidNotToBeAll() {
    SplittableRandom random = new SplittableRandom(3);
    double[][] shade = new double[8][6];
    for (double[] row : shade) {
      for (int i = 0; i < row.length; i++) {
        row[i] = random.nextDouble(0.8, 1.1);
      }
    }
    PhotoAnalysis analysis =
        seen(
            (x, y) -> {
              double k =
                  shade[x / 50][y / 50] * (1 - 0.1 * Math.hypot(x % 50 - 25, y % 50 - 25) / 25);
              return rgb(200 * k, 140 * k, 80 * k);
            });
    int pieces = analysis.pieces().size();
    assertThat(pieces == 0 || pieces == 48 || isDoubted(analysis)).isTrue();
  }

  /** Half an orange, lit and in shade: round, clear and warm, but nothing baked. */
  @Test
  void anOrangeIsDoubtedInAnyLight() {
    for (double light : new double[] {1, 0.45}) {
      PhotoAnalysis analysis =
          seen(
              (x, y) ->
                  Math.hypot(x - 200, y - 150) < 80
                      ? rgb(250 * light, 160 * light, 20 * light)
                      : 0xb0b0b0);
      assertThat(analysis.pieces().isEmpty() || isDoubted(analysis)).isTrue();
    }
  }

  /** A sheet of parchment on a dark tray: large, clear, warm, and straight. */
  @Test
  void anEmptySheetIsDoubted() {
    PhotoAnalysis analysis =
        seen((x, y) -> x < 40 || y < 30 || x >= 360 || y >= 270 ? 0x242220 : 0xd8bfa0);
    assertThat(analysis.pieces().isEmpty() || isDoubted(analysis)).isTrue();
  }

  /** Patches of many hues are a chart of another kind, or tiles. */
  @Test
  void patchesOfManyColoursAreDoubted() {
    int[] colours = {0xc03030, 0xe0b020, 0x905080, 0xd07030, 0x40a060, 0xc08060};
    PhotoAnalysis analysis =
        seen(
            (x, y) -> {
              boolean inside = x % 130 > 20 && x % 130 < 110 && y % 150 > 30 && y % 150 < 120;
              return inside && x < 390 ? colours[x / 130 + 3 * (y / 150)] : 0xe6e6e6;
            });
    assertThat(analysis.pieces().isEmpty() || isDoubted(analysis)).isTrue();
  }

  /** One slice is not made four because four were expected. */
  @Test
  void aSliceWithoutSeamsIsNotCut() {
    int[] pixels = new int[WIDTH * HEIGHT];
    for (int i = 0; i < pixels.length; i++) {
      boolean slice = Math.abs(i % WIDTH - 200) < 90 && Math.abs(i / WIDTH - 150) < 80;
      pixels[i] = slice ? 0xc09058 : 0x406070;
    }
    PhotoAnalysis analysis =
        PhotoAnalyser.withDefaults()
            .expecting(4)
            .analyse(new Picture(WIDTH, HEIGHT, pixels), "camera:test");
    assertThat(analysis.pieces()).hasSize(1);
    assertThat(analysis.warnings()).anyMatch(w -> w.contains("found 1 piece, expected 4"));
  }
}
