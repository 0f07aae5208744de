package ovenproof.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import org.junit.jupiter.api.Test;

class StudentizedRangeTest {

  /** R 4.2.2 qtukey and an independent quadrature: statistics/tukey/q_critical.csv. */
  @Test
  void ninetyCriticalValuesAgreeWithTheTables() {
    ReferenceData table = ReferenceData.read("statistics/tukey/q_critical.csv");
    assertThat(table.rows()).hasSize(90);
    for (List<String> row : table.rows()) {
      double degrees =
          row.get(1).equals("inf") ? Double.POSITIVE_INFINITY : Double.parseDouble(row.get(1));
      double q =
          StudentizedRange.of(Integer.parseInt(row.get(2)), degrees)
              .criticalValue(Double.parseDouble(row.get(0)));
      assertThat(q).as("row %s", row).isCloseTo(Double.parseDouble(row.get(3)), offset(1e-4));
      assertThat(q).as("row %s", row).isCloseTo(Double.parseDouble(row.get(5)), offset(0.0051));
    }
  }

  /** R help page of TukeyHSD, warpbreaks: q = |difference| / √(MSE/n), 50 degrees of freedom. */
  @Test
  void adjustedPValuesOfWarpbreaks() {
    double standardError = Math.sqrt(134.957777777778 / 18);
    StudentizedRange range = StudentizedRange.of(3, 50);
    assertThat(range.upperTail(4.72222222222222 / standardError))
        .isCloseTo(0.447421021, offset(2e-6));
    assertThat(range.upperTail(14.7222222222222 / standardError))
        .isCloseTo(0.001121788, offset(2e-6));
    assertThat(range.upperTail(10.0 / standardError)).isCloseTo(0.033626219, offset(2e-6));
    assertThat(range.criticalValue(0.05) * standardError)
        .isCloseTo(14.0756429490658 - 4.72222222222222, offset(1e-4));
  }

  /** R, insectsprays: the far tail keeps its order of magnitude. */
  @Test
  void smallTailsStayPositiveAndRight() {
    double standardError = Math.sqrt(15.3813131313131 / 12);
    StudentizedRange range = StudentizedRange.of(6, 66);
    assertThat(range.upperTail(9.58333333333333 / standardError)).isCloseTo(1.442e-6, offset(2e-9));
    assertThat(range.upperTail(11.0 / standardError)).isCloseTo(4.087e-8, offset(1e-10));
  }

  @Test
  void twoGroupsAreStudentsT() {
    for (double degrees : new double[] {1, 2, 3.7, 11, 200}) {
      double t = 2.3;
      assertThat(StudentizedRange.of(2, degrees).upperTail(t * Math.sqrt(2)))
          .as("df %s", degrees)
          .isCloseTo(Distributions.studentTwoSided(t, degrees), offset(1e-8));
    }
  }

  @Test
  void nothingBelowZero() {
    assertThat(StudentizedRange.of(4, 10).upperTail(0)).isEqualTo(1);
    assertThat(StudentizedRange.of(4, 10).upperTail(1e6)).isCloseTo(0, offset(1e-9));
  }
}
