package ovenproof.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonsTest {

  /** By hand from Holm's rule: 4·0.01, 3·0.02 …, never falling. */
  @Test
  void holmStepsDownAndNeverFalls() {
    assertThat(HolmAdjustment.adjust(0.04, 0.01, 0.03, 0.02))
        .containsExactly(new double[] {0.06, 0.04, 0.06, 0.06}, offset(1e-12));
    assertThat(HolmAdjustment.adjust(0.9, 0.8)).containsExactly(1, 1);
    assertThat(HolmAdjustment.adjust()).isEmpty();
  }

  /** Cases made for Piepho's rules, checked by exhaustive enumeration. */
  @ParameterizedTest
  @CsvSource({
    "5, 0-3 0-4 1-4, a ab abc bc c",
    "6, 0-3 0-4 0-5 1-4 1-5 2-5, a ab abc bcd cd d",
    "4, 0-2 1-3, ab ac cd bd",
    "5, 0-2 0-3 1-3 1-4 2-4, ab ac cd de be",
    "4, '', a a a a",
    "4, 0-1 0-2 0-3 1-2 1-3 2-3, a b c d",
    "4, 0-3, a ab ab b",
    "5, 0-2 0-4 1-4, a ab bc abc c",
    "4, 0-1 0-2 0-3, a b b b",
    "1, '', a",
  })
  void lettersSayWhichPairsDiffer(int items, String pairs, String letters) {
    boolean[][] differs = new boolean[items][items];
    for (String pair : pairs.isBlank() ? new String[0] : pairs.split(" ")) {
      differs[pair.charAt(0) - '0'][pair.charAt(2) - '0'] = true;
    }
    assertThat(CompactLetters.of(differs)).isEqualTo(Arrays.asList(letters.split(" ")));
  }

  @Test
  void twoItemsShareALetterExactlyWhenTheyDoNotDiffer() {
    Random random = new Random(7);
    for (int round = 0; round < 200; round++) {
      int items = 2 + random.nextInt(8);
      boolean[][] differs = new boolean[items][items];
      for (int i = 0; i < items; i++) {
        for (int j = i + 1; j < items; j++) {
          differs[i][j] = random.nextBoolean();
        }
      }
      List<String> letters = CompactLetters.of(differs);
      for (int i = 0; i < items; i++) {
        assertThat(letters.get(i)).isNotEmpty();
        for (int j = i + 1; j < items; j++) {
          String other = letters.get(j);
          boolean share = letters.get(i).chars().anyMatch(c -> other.indexOf(c) >= 0);
          assertThat(share).isEqualTo(!differs[i][j]);
        }
      }
    }
  }

  /**
   * Certified F of NIST StRD, analysis of variance. The digits asked for are what doubles allow for
   * these decimal inputs; smls07 carries 13 constant leading digits.
   */
  @ParameterizedTest
  @CsvSource({
    "sirstv,  1.18046237440255, 12",
    "atmwtag, 15.9467335677930, 8.4",
    "smls01,  21,               14",
    "smls04,  21,               8.6",
    "smls07,  21,               2.6",
  })
  void certifiedAnalysesOfVarianceAreReached(String set, double f, double digits) {
    ReferenceData data = ReferenceData.read("statistics/strd/" + set + ".csv");
    Map<String, List<Double>> groups = new TreeMap<>();
    for (List<String> row : data.rows()) {
      groups.computeIfAbsent(row.get(0), key -> new ArrayList<>()).add(Double.valueOf(row.get(1)));
    }
    OneWayAnova found =
        OneWayAnova.of(
            groups.values().stream()
                .map(g -> g.stream().mapToDouble(Double::doubleValue).toArray())
                .toList());
    assertThat(ReferenceData.digits(found.f(), f)).isGreaterThanOrEqualTo(digits);
  }

  /** Exact noncentral t for paired data: 1.156, 0.889, 0.597, 0.404, 0.283 deviations. */
  @ParameterizedTest
  @CsvSource({"8, 1.156", "12, 0.889", "24, 0.597", "50, 0.404", "100, 0.283"})
  void detectableDifferenceOfPairedLiking(int people, double deviations) {
    assertThat(Power.detectableDifference(1 / Math.sqrt(people), people - 1))
        .isCloseTo(deviations, offset(0.005));
  }

  @Test
  void manyProductsCostSensitivity() {
    assertThat(Power.detectableDifference(1, 20, 8))
        .isGreaterThan(Power.detectableDifference(1, 20));
    assertThat(Power.detectableDifference(1, 20, 2))
        .isCloseTo(Power.detectableDifference(1, 20), offset(1e-6));
  }
}
