package ovenproof.core.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProductModelTest {

  /** R 4.2.2, aov(score ~ machine + Error(worker/machine)), and REML of lme4 1.1-31. */
  @Test
  void machinesAreTestedAgainstMachineByWorker() {
    BalancedModel model = BalancedModel.fit(Observations.of(Machines.ratings())).orElseThrow();
    assertMachines(model);
    assertThat(model.interactionTest().f()).isCloseTo(46.1298217504505, offset(1e-9));
    assertThat(model.assessorTest().f()).isCloseTo(5.82324807164794, offset(1e-9));
    assertThat(model.standardErrors()[0]).isCloseTo(1.53935412141297, offset(1e-10));
  }

  /** In balanced data restricted likelihood and Kenward–Roger give the classical F exactly. */
  @Test
  void theMixedModelFindsTheClassicalAnswerOnBalancedData() {
    MixedModel model = MixedModel.fit(Observations.of(Machines.ratings()));
    assertMachines(model);
    assertThat(model.standardErrors()[0]).isCloseTo(1.53935412141297, offset(1e-6));
  }

  private static void assertMachines(ProductModel model) {
    FTest test = model.productTest();
    assertThat(test.f()).isCloseTo(20.5760829640744, offset(1e-5));
    assertThat(test.numerator()).isEqualTo(2);
    assertThat(test.denominator()).isCloseTo(10, offset(1e-5));
    assertThat(test.p()).isCloseTo(0.000285548485771282, offset(1e-8));
    assertThat(model.means())
        .containsExactly(
            new double[] {52.3555555555556, 60.3222222222222, 66.2722222222222}, offset(1e-9));
    assertThat(model.components().residual()).isCloseTo(0.924629629629632, offset(1e-5));
    assertThat(model.components().interaction()).isCloseTo(13.9094567901234, offset(1e-4));
    assertThat(model.components().assessor()).isCloseTo(22.8584444444444, offset(1e-3));
    assertThat(model.degreesOfDifference(0, 2)).isCloseTo(10, offset(1e-4));
    assertThat(model.standardErrorOfDifference(0, 2))
        .isCloseTo(1.53935412141297 * Math.sqrt(2), offset(1e-5));
  }

  @Test
  void panelMeansCarryWhatIsSharedAndWhatIsNot() {
    List<Rating> ratings = Machines.ratings();
    PanelMeans means = PanelMeans.of(ratings, PanelMeans.description("score"));
    assertThat(means.products()).hasSize(3);
    assertThat(means.products().get(0).n()).isEqualTo(1);
    assertThat(means.warnings().get(0)).contains("does not tell batches apart");
    double total = means.products().get(0).uncertainty();
    // 1.5394² within the panel, 22.858/6 for the panel's level.
    assertThat(total).isCloseTo(Math.sqrt(2.369611 + 3.809741), offset(1e-4));
  }
}
