package ovenproof.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LabelPlacesTest {

  /** A law over drawn cases: eight names and two levels in a picture of 360 points. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void noWordLiesOnAnotherAndNoneLeavesThePicture(long seed) {
    Random random = new Random(seed);
    double[] wanted = random.doubles(8, 30, 330).sorted().toArray();
    if (seed % 2 == 0) {
      Arrays.fill(wanted, 325);
    }
    double[] taken = random.doubles(2, 30, 330).toArray();

    double[] places = LabelPlaces.apart(wanted, taken, 17, 30, 330);

    for (int i = 0; i < places.length; i++) {
      assertThat(places[i]).isLessThanOrEqualTo(330).isGreaterThan(30 - 60);
      for (double other : taken) {
        assertThat(Math.abs(places[i] - other)).isGreaterThanOrEqualTo(17 - 1e-6);
      }
      if (i > 0) {
        assertThat(places[i] - places[i - 1]).isGreaterThanOrEqualTo(17 - 1e-6);
      }
    }
  }

  @org.junit.jupiter.api.Test
  void wordsWithRoomStayWhereTheirLinesEnd() {
    double[] places = LabelPlaces.apart(new double[] {50, 120, 300}, new double[0], 17, 30, 330);
    assertThat(places).containsExactly(new double[] {50, 120, 300}, within(1e-12));
  }
}
