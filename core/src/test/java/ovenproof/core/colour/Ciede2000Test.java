package ovenproof.core.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class Ciede2000Test {

  static List<ReferenceTable.Row> pairs() {
    return ReferenceTable.read("ciede2000_sharma34.csv");
  }

  @Test
  void theTableHasThirtyFourPairs() {
    assertThat(pairs()).hasSize(34);
  }

  @ParameterizedTest
  @MethodSource("pairs")
  void everyPublishedPairComesOut(ReferenceTable.Row pair) {
    Lab first = pair.lab("L1", "a1", "b1", White.D65);
    Lab second = pair.lab("L2", "a2", "b2", White.D65);
    double difference = Ciede2000.between(first, second);
    assertThat(difference).isCloseTo(pair.number("dE00_published"), within(5e-5));
    assertThat(difference).isCloseTo(pair.number("dE00_computed"), within(1e-9));
    assertThat(Ciede2000.between(second, first)).isCloseTo(difference, within(1e-9));
  }

  @Test
  void aColourHasNoDistanceFromItselfAndNeverANegativeOne() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 2000; i++) {
      Lab first = randomLab(random);
      Lab second = randomLab(random);
      assertThat(Ciede2000.between(first, first)).isZero();
      assertThat(Ciede2000.between(first, second)).isGreaterThanOrEqualTo(0);
      assertThat(Ciede2000.between(first, second))
          .isCloseTo(Ciede2000.between(second, first), within(1e-9));
    }
  }

  @Test
  void coloursOfTwoWhitesAreNotCompared() {
    assertThatThrownBy(() -> Ciede2000.between(Lab.d50(50, 0, 0), Lab.d65(50, 0, 0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("one white");
  }

  private static Lab randomLab(SplittableRandom random) {
    return Lab.d50(random.nextDouble(100), random.nextDouble(-90, 90), random.nextDouble(-90, 90));
  }
}
