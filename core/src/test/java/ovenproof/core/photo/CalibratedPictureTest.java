package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Srgb;

class CalibratedPictureTest {

  /** sRGB read as sRGB and written as sRGB is itself, but for rounding. */
  @Test
  void aPictureThatNeedsNoCorrectionStaysAsItIs() {
    int[] pixels = new SplittableRandom(3).ints(4096, 0, 1 << 24).toArray();
    Picture same = CalibratedPicture.of(new Picture(64, 64, pixels), PixelColours.uncorrected());
    for (int i = 0; i < pixels.length; i++) {
      for (int shift = 0; shift <= 16; shift += 8) {
        assertThat(same.pixels()[i] >> shift & 0xff)
            .isBetween((pixels[i] >> shift & 0xff) - 1, (pixels[i] >> shift & 0xff) + 1);
      }
    }
  }

  /** Against the direct way through CIE tristimulus values, for every grey down to black. */
  @Test
  void greysAreAsTheDirectWayHasThem() {
    for (int v = 0; v < 256; v++) {
      PixelColours darker = GainedColours.neutral(java.util.List.of(0.5, 0.5, 0.5));
      Picture one = new Picture(1, 1, new int[] {v << 16 | v << 8 | v});
      Lab lab = darker.at(one, 0, 0);
      LinearRgb direct = lab.toLinearRgb();
      int wanted = (int) Math.round(255 * Srgb.encode(Math.max(0, direct.green())));
      int found = CalibratedPicture.of(one, darker).at(0, 0) >> 8 & 0xff;
      assertThat(found).isBetween(wanted - 1, wanted + 1);
    }
  }
}
