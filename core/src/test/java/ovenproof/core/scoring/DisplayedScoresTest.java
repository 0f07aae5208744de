package ovenproof.core.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.scoring.DisplayedScores.Part;

class DisplayedScoresTest {

  private static Part part(String score, int parts) {
    return new Part(new BigDecimal(score), parts);
  }

  private static String combine(Combination how, Part... parts) {
    return DisplayedScores.combine(how, List.of(parts), 1).toPlainString();
  }

  @Test
  void aTieGoesUpOnDecimalsWhereBinaryWouldGoDown() {
    // (6.6·1 + 6.7·1)/2 = 6.65 exactly; as doubles the sum is 6.6499999999999995.
    assertThat(combine(Combination.ARITHMETIC, part("6.6", 1), part("6.7", 1))).isEqualTo("6.7");
    assertThat(DisplayedScores.leaf((6.6 + 6.7) / 2, 1)).isEqualTo(new BigDecimal("6.7"));
    assertThat(DisplayedScores.leaf(Math.nextDown(7.25), 1)).isEqualTo(new BigDecimal("7.3"));
    assertThat(DisplayedScores.leaf(7.2499, 1)).isEqualTo(new BigDecimal("7.2"));
  }

  @Test
  void wholePartsNeedNotSumToAHundred() {
    assertThat(combine(Combination.ARITHMETIC, part("10.0", 1), part("4.0", 2))).isEqualTo("6.0");
    assertThat(combine(Combination.ARITHMETIC, part("9.0", 1), part("5.0", 1), part("5.0", 1)))
        .isEqualTo("6.3");
  }

  @Test
  void theGeometricMeanOfTwoAndEightIsFour() {
    assertThat(combine(Combination.GEOMETRIC, part("2.0", 1), part("8.0", 1))).isEqualTo("4.0");
    assertThat(combine(Combination.GEOMETRIC, part("0.0", 1), part("10.0", 9))).isEqualTo("0.0");
    assertThat(combine(Combination.GEOMETRIC, part("10.0", 100), part("10.0", 37)))
        .isEqualTo("10.0");
  }

  @Test
  void theFloorIsTheLowestPartThatWeighs() {
    assertThat(combine(Combination.FLOOR, part("2.0", 0), part("8.0", 1), part("9.1", 5)))
        .isEqualTo("8.0");
  }

  @Test
  void weightsThatSumToNothingAreRefused() {
    assertThatThrownBy(() -> combine(Combination.ARITHMETIC, part("5.0", 0)))
        .hasMessageContaining("weight above 0");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void geometricTotalsAreRoundedExactly(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 300; i++) {
      List<Part> parts = new ArrayList<>();
      int weights = 0;
      BigDecimal product = BigDecimal.ONE;
      for (int k = 0; k < 3; k++) {
        int weight = 1 + random.nextInt(9);
        BigDecimal score = BigDecimal.valueOf(1 + random.nextInt(100), 1);
        parts.add(new Part(score, weight));
        product = product.multiply(score.pow(weight));
        weights += weight;
      }
      BigDecimal shown = DisplayedScores.combine(Combination.GEOMETRIC, parts, 1);
      BigDecimal half = new BigDecimal("0.05");
      assertThat(shown.subtract(half).max(BigDecimal.ZERO).pow(weights))
          .isLessThanOrEqualTo(product);
      assertThat(shown.add(half).pow(weights)).isGreaterThan(product);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {4, 5, 6})
  void readersWithPencilAndPaperGetTheSameTotal(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 500; i++) {
      List<Part> parts = new ArrayList<>();
      BigDecimal sum = BigDecimal.ZERO;
      int weights = 0;
      for (int k = 0; k < 6; k++) {
        Part part = new Part(BigDecimal.valueOf(random.nextInt(101), 1), 1 + random.nextInt(30));
        parts.add(part);
        sum = sum.add(part.score().multiply(BigDecimal.valueOf(part.parts())));
        weights += part.parts();
      }
      BigDecimal exact = sum.divide(BigDecimal.valueOf(weights), new MathContext(40));
      assertThat(DisplayedScores.combine(Combination.ARITHMETIC, parts, 1))
          .isEqualTo(exact.setScale(1, RoundingMode.HALF_UP));
    }
  }
}
