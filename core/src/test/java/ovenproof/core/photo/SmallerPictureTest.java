package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SmallerPictureTest {

  @Test
  void whatFitsIsLeftAsItIs() {
    Picture picture = new Picture(3, 2, new int[6]);

    assertThat(SmallerPicture.of(picture, 3)).isSameAs(picture);
  }

  @Test
  void aPlainPictureKeepsItsColourAtAnySize() {
    int[] pixels = new int[97 * 41];
    java.util.Arrays.fill(pixels, 0xfe8001);
    for (int longest = 1; longest <= 97; longest += 3) {
      Picture small = SmallerPicture.of(new Picture(97, 41, pixels), longest);

      assertThat(small.longSide()).isEqualTo(longest);
      assertThat(small.pixels()).containsOnly(0xfe8001);
    }
  }

  @Test
  void threePixelsOnTwoGiveEachOneAndAHalf() {
    // Means of areas by hand: (0 + 90/2) / 1.5 = 30 and (90/2 + 240) / 1.5 = 190.
    Picture small = SmallerPicture.of(new Picture(3, 1, new int[] {0, 90, 240}), 2);

    assertThat(small.pixels()).containsExactly(30, 190);
  }

  @Test
  void theMeanOfThePictureStays() {
    SplittableRandom random = new SplittableRandom(7);
    int[] pixels = random.ints(120 * 80, 0, 1 << 24).toArray();
    for (int longest : new int[] {7, 50, 80, 99, 119}) {
      Picture small = SmallerPicture.of(new Picture(120, 80, pixels), longest);

      assertThat(green(small.pixels())).isCloseTo(green(pixels), within(1.0));
    }
  }

  private static double green(int[] pixels) {
    return java.util.Arrays.stream(pixels).map(p -> p >> 8 & 0xff).average().orElseThrow();
  }

  @Test
  void aLineOfOnePixelStaysOne() {
    Picture small = SmallerPicture.of(new Picture(500, 1, new int[500]), 20);

    assertThat(small.width()).isEqualTo(20);
    assertThat(small.height()).isEqualTo(1);
  }

  @Test
  void nothingIsNoSize() {
    assertThatThrownBy(() -> SmallerPicture.of(new Picture(1, 1, new int[1]), 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("longest");
  }
}
