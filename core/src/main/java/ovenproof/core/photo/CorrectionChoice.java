package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.ColourCorrection.Form;
import ovenproof.core.photo.ReferenceChart.Edition;

/**
 * One way of correcting colours, chosen among all by leave-one-out: each patch is corrected by a
 * fit to the others.
 *
 * @param curve tone curve
 * @param edition whose published colours were fitted to
 * @param correction fitted to all patches of use
 * @param leaveOneOutLab difference in L*, a*, b* of each patch corrected by the others; zeros for
 *     patches not used
 * @param mean ΔE00 of those differences
 */
record CorrectionChoice(
    ToneCurve.Kind curve,
    Edition edition,
    ColourCorrection correction,
    double[][] leaveOneOutLab,
    double mean) {

  /**
   * The way with the smallest mean ΔE00.
   *
   * @param use which patches may be used
   * @return null when the patches do not determine any
   */
  static @Nullable CorrectionChoice best(
      PatchSamples samples, boolean[] use, List<Edition> editions) {
    CorrectionChoice best = null;
    for (Edition edition : editions) {
      for (ToneCurve.Kind kind : ToneCurve.Kind.values()) {
        Trial trial = Trial.of(samples, use, edition, kind);
        for (Form form : Form.values()) {
          CorrectionChoice choice = trial.tried(form);
          if (choice != null && (best == null || choice.mean < best.mean)) {
            best = choice;
          }
        }
      }
    }
    return best;
  }

  /** Published light of the six greys, 0…1. */
  static double[] greys(Edition edition) {
    double[] grey = new double[6];
    for (int i = 0; i < grey.length; i++) {
      grey[i] = edition.patches().get(ReferenceChart.FIRST_GREY + i).toXyz().y();
    }
    return grey;
  }

  /**
   * One kind of curve for one edition, for every form.
   *
   * @param whole fitted to all greys: a coloured patch left out does not change it
   */
  private record Trial(
      PatchSamples samples,
      boolean[] use,
      Edition edition,
      ToneCurve.Kind kind,
      @Nullable ToneCurve whole,
      @Nullable ToneCurve[] withoutGrey) {

    static Trial of(PatchSamples samples, boolean[] use, Edition edition, ToneCurve.Kind kind) {
      double[] grey = greys(edition);
      @Nullable ToneCurve[] without = new @Nullable ToneCurve[grey.length];
      for (int i = 0; i < grey.length; i++) {
        if (use[ReferenceChart.FIRST_GREY + i]) {
          without[i] =
              ToneCurve.fit(kind, samples, without(use, ReferenceChart.FIRST_GREY + i), grey);
        }
      }
      ToneCurve whole = ToneCurve.fit(kind, samples, use, grey);
      return new Trial(samples, use, edition, kind, whole, without);
    }

    private static boolean[] without(boolean[] use, int patch) {
      boolean[] others = use.clone();
      others[patch] = false;
      return others;
    }

    @Nullable CorrectionChoice tried(Form form) {
      ColourCorrection all = fit(form, whole, use);
      if (all == null) {
        return null;
      }
      double[][] labs = new double[use.length][3];
      double sum = 0;
      int n = 0;
      for (int i = 0; i < use.length; i++) {
        if (use[i]) {
          ColourCorrection without = fit(form, curveWithout(i), without(use, i));
          if (without == null) {
            return null;
          }
          Lab found = without.correct(samples.patches().get(i));
          Lab published = edition.patches().get(i);
          labs[i] = ChartMisfit.offset(found, published);
          sum += Ciede2000.between(found, published);
          n++;
        }
      }
      return new CorrectionChoice(kind, edition, all, labs, sum / n);
    }

    private @Nullable ToneCurve curveWithout(int patch) {
      return patch < ReferenceChart.FIRST_GREY
          ? whole
          : withoutGrey[patch - ReferenceChart.FIRST_GREY];
    }

    private @Nullable ColourCorrection fit(Form form, @Nullable ToneCurve curve, boolean[] which) {
      return curve == null
          ? null
          : ColourCorrection.fit(form, curve, samples, which, edition.patches());
    }
  }
}
