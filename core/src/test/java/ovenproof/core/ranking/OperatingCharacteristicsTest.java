package ovenproof.core.ranking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.core.random.RandomStreams;
import ovenproof.core.repeatability.PooledDeviation;
import ovenproof.core.statistics.Distributions;

/**
 * What the tier rule does to simulated fields: fields of equals must rarely be split, a product 4.5
 * standard errors of difference below the best must usually be. Three runs of every product unless
 * said; draws are pooled t as in a verdict.
 *
 * <p>Limits: any false split ≤ 12 %, power at 4.5 SEd ≥ 80 %. The short form checks them within the
 * exact binomial limits at 0.1 % for its number of fields; the long form has 2,000 fields.
 */
class OperatingCharacteristicsTest {
  private static final int DRAWS = 2_000;

  static List<Arguments> fields() {
    List<Arguments> fields = new ArrayList<>();
    for (int products : new int[] {3, 5, 10, 20}) {
      for (Company company : Company.values()) {
        for (Spread spread : Spread.values()) {
          fields.add(Arguments.of(products, company, spread));
        }
      }
    }
    return fields;
  }

  static List<Arguments> shortFields() {
    return List.of(
        Arguments.of(3, Company.EQUALS, Spread.EQUAL),
        Arguments.of(10, Company.EQUALS, Spread.EQUAL),
        Arguments.of(10, Company.ONE_FAR_BELOW, Spread.EQUAL),
        Arguments.of(5, Company.EQUALS, Spread.UNEQUAL));
  }

  enum Company {
    EQUALS,
    ONE_FAR_BELOW
  }

  enum Spread {
    EQUAL,
    /** Standard errors from 1 to 3: one product in three has one run per nine of the others. */
    UNEQUAL
  }

  @ParameterizedTest
  @MethodSource("shortFields")
  void equalsAreRarelySplit(int products, Company company, Spread spread) {
    int fields = 300;
    int split = falseSplits(products, company, spread, fields);
    report("false split", products, company, spread, split, fields);
    assertThat(Distributions.binomialUpperTail(split, fields, 0.12)).isGreaterThan(0.001);
  }

  @Tag("long")
  @ParameterizedTest
  @MethodSource("fields")
  void equalsAreSplitInAtMostTwelvePercentOfFields(int products, Company company, Spread spread) {
    int fields = 2_000;
    int split = falseSplits(products, company, spread, fields);
    report("false split", products, company, spread, split, fields);
    assertThat(split / (double) fields).isLessThanOrEqualTo(0.12);
  }

  @ParameterizedTest
  @MethodSource("shortFields")
  void aTrueGapIsUsuallySplit(int products, Company company, Spread spread) {
    int fields = 300;
    int split = trueSplits(products, spread, fields, 4.5);
    report("true gap 4.5 SEd split", products, Company.EQUALS, spread, split, fields);
    assertThat(Distributions.binomialUpperTail(fields - split, fields, 0.20)).isGreaterThan(0.001);
  }

  @Tag("long")
  @ParameterizedTest
  @MethodSource("fields")
  void aTrueGapOfFourAndAHalfIsSplitInEightyPercent(int products, Company company, Spread spread) {
    if (company == Company.ONE_FAR_BELOW) {
      return;
    }
    int fields = 2_000;
    int split = trueSplits(products, spread, fields, 4.5);
    report("true gap 4.5 SEd split", products, company, spread, split, fields);
    int three = trueSplits(products, spread, fields, 3);
    report("true gap 3 SEd split", products, company, spread, three, fields);
    assertThat(split / (double) fields).isGreaterThanOrEqualTo(0.80);
  }

  private static void report(
      String what, int products, Company company, Spread spread, int split, int fields) {
    System.out.printf(
        Locale.ROOT,
        "%s, %d products, %s, %s spread: %.1f %% of %d fields%n",
        what,
        products,
        company.name().toLowerCase(Locale.ROOT).replace('_', ' '),
        spread.name().toLowerCase(Locale.ROOT),
        100.0 * split / fields,
        fields);
  }

  private static int[] runs(int products, Spread spread) {
    int[] runs = new int[products];
    for (int p = 0; p < products; p++) {
      runs[p] = spread == Spread.EQUAL ? 3 : p % 3 == 0 ? 18 : p % 3 == 1 ? 5 : 2;
    }
    return runs;
  }

  /** Fields in which any two of the equals are in different tiers. */
  private static int falseSplits(int products, Company company, Spread spread, int fields) {
    Random random = new Random(2026);
    int total = products + (company == Company.ONE_FAR_BELOW ? 1 : 0);
    double[] truth = new double[total];
    if (company == Company.ONE_FAR_BELOW) {
      truth[total - 1] = -30;
    }
    int[] runs = runs(total, spread);
    int split = 0;
    for (int f = 0; f < fields; f++) {
      Comparison comparison = field(truth, runs, random, f);
      boolean any = false;
      for (int p = 0; p < total; p++) {
        int id = Integer.parseInt(comparison.ids().get(p));
        any |= truth[id] == 0 && comparison.tiers().get(p) != 1;
      }
      split += any ? 1 : 0;
    }
    return split;
  }

  /** Fields in which a product so many SEd below the equally good others leaves the first tier. */
  private static int trueSplits(int products, Spread spread, int fields, double gap) {
    Random random = new Random(2027);
    int[] runs = runs(products, spread);
    int last = products - 1;
    double[] truth = new double[products];
    double meanInverse = 0;
    for (int p = 0; p < last; p++) {
      meanInverse += 1.0 / runs[p] / last;
    }
    truth[last] = -gap * Math.sqrt(meanInverse + 1.0 / runs[last]);
    int split = 0;
    for (int f = 0; f < fields; f++) {
      Comparison comparison = field(truth, runs, random, f);
      int place = comparison.ids().indexOf(String.valueOf(last));
      split += comparison.tiers().get(place) != 1 ? 1 : 0;
    }
    return split;
  }

  /** One field: runs with unit deviation, draws of pooled t, compared in order of the means. */
  private static Comparison field(double[] truth, int[] runs, Random random, int number) {
    int products = truth.length;
    List<double[]> values = new ArrayList<>();
    double[] means = new double[products];
    for (int p = 0; p < products; p++) {
      double[] own = new double[runs[p]];
      for (int r = 0; r < own.length; r++) {
        own[r] = truth[p] + random.nextGaussian();
        means[p] += own[r] / own.length;
      }
      values.add(own);
    }
    PooledDeviation pooled = PooledDeviation.of(values);
    RandomStreams streams = RandomStreams.of("field " + number);
    double[] factor = new double[DRAWS];
    double[] block = new double[RandomStreams.BLOCK];
    for (int b = 0; b < DRAWS / block.length; b++) {
      streams.source("spread").studentFactor(b, pooled.degreesOfFreedom(), block);
      System.arraycopy(block, 0, factor, b * block.length, block.length);
    }
    List<Contender> field = new ArrayList<>();
    for (int p = 0; p < products; p++) {
      double[] draws = new double[DRAWS];
      double u = pooled.deviation() / Math.sqrt(runs[p]);
      for (int b = 0; b < DRAWS / block.length; b++) {
        streams.source("run:" + p).normal(b, block);
        for (int d = 0; d < block.length; d++) {
          draws[b * block.length + d] = means[p] + u * factor[b * block.length + d] * block[d];
        }
      }
      field.add(Contender.of(String.valueOf(p), means[p], draws));
    }
    field.sort((a, b) -> Double.compare(b.low(), a.low()));
    return FieldComparison.compare(field, streams, FieldPooling.NONE, 1);
  }
}
