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
}
