package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.photo.ColourCorrection.Form;
import ovenproof.core.photo.ReferenceChart.Edition;

/**
 * Turns a chart that was found into a reading of colours.
 *
 * <p>Tone curve (plain sRGB, a power, a bent power), form (3×3 or root polynomial) and the edition
 * of the chart are chosen together by leave-one-out: each patch is corrected by a fit to the
 * others, and the smallest mean ΔE00 wins. Patches that are clipped, or that a highlight or a hand
 * covers, are left out and said.
 */
public final class ChartCalibrator {

  /** The gate of common practice on chart patches after correction. */
  public record Gate(double mean, double largest) {
    public static final Gate DEFAULT = new Gate(2, 5);
  }

  private static final int MOST_LEFT_OUT = 4;
  private static final double COVERED = 9;
  private static final double COVERED_MEANS = 4;

  private final Gate gate;
  private final List<Edition> editions;

  private ChartCalibrator(Gate gate, List<Edition> editions) {
    this.gate = gate;
    this.editions = editions;
  }

  /** The default gate, either edition of the chart. */
  public static ChartCalibrator withDefaults() {
    return new ChartCalibrator(Gate.DEFAULT, List.of(Edition.values()));
  }

  public ChartCalibrator with(Gate newGate) {
    return new ChartCalibrator(newGate, editions);
  }

  /** For a chart whose edition is known. */
  public ChartCalibrator with(Edition edition) {
    return new ChartCalibrator(gate, List.of(edition));
  }

  /**
   * Calibrates by a whole chart.
   *
   * @param source name of what photographs under this light with this camera share
   * @throws IllegalArgumentException if the sighting is not of a whole chart
   */
  public PhotoCalibration calibrate(Picture picture, ChartSighting sighting, String source) {
    if (!sighting.isWhole()) {
      throw new IllegalArgumentException("a whole chart is needed, found " + sighting.status());
    }
    PatchSamples samples = PatchSamples.read(picture, sighting);
    List<String> warnings = new ArrayList<>();
    boolean[] use = unclipped(samples, warnings);
    dropCovered(samples, use, warnings);
    CorrectionChoice choice = CorrectionChoice.best(samples, use, editions);
    if (choice == null) {
      return unusable(source, warnings);
    }
    return report(choice, use, samples, source, warnings);
  }

  private static boolean[] unclipped(PatchSamples samples, List<String> warnings) {
    boolean[] use = new boolean[ReferenceChart.PATCHES];
    List<String> clipped = new ArrayList<>();
    for (int i = 0; i < use.length; i++) {
      use[i] = !samples.patches().get(i).clipped();
      if (!use[i]) {
        clipped.add(ReferenceChart.name(i));
      }
    }
    if (!clipped.isEmpty()) {
      warnings.add(
          "overexposed on the chart, not used: "
              + String.join(", ", clipped)
              + "; expose less so that white stays below the end of the scale");
    }
    return use;
  }

  /**
   * Leaves out patches that stand far beyond the rest, one after the other: the one without which
   * the others agree best is out if it then lies far from their fit.
   */
  private void dropCovered(PatchSamples samples, boolean[] use, List<String> warnings) {
    boolean[] kept = use.clone();
    List<String> covered = new ArrayList<>();
    while (covered.size() <= MOST_LEFT_OUT) {
      int worst = standsApart(samples, kept);
      if (worst < 0) {
        break;
      }
      kept[worst] = false;
      covered.add(ReferenceChart.name(worst));
    }
    if (covered.isEmpty() || covered.size() > MOST_LEFT_OUT) {
      return;
    }
    System.arraycopy(kept, 0, use, 0, use.length);
    warnings.add(
        "covered or shining on the chart, not used: "
            + String.join(", ", covered)
            + "; tilt the chart out of the reflection");
  }

  private int standsApart(PatchSamples samples, boolean[] kept) {
    Edition edition = editions.get(0);
    double[] grey = CorrectionChoice.greys(edition);
    int candidate = -1;
    double agreement = Double.POSITIVE_INFINITY;
    double distance = 0;
    for (int i = 0; i < kept.length; i++) {
      if (kept[i]) {
        boolean[] others = kept.clone();
        others[i] = false;
        for (ToneCurve.Kind kind : ToneCurve.Kind.values()) {
          ColourCorrection fitted = fitted(samples, others, edition, grey, kind);
          double mean = fitted == null ? agreement : meanDifference(fitted, samples, others);
          if (fitted != null && mean < agreement) {
            agreement = mean;
            candidate = i;
            distance = difference(fitted, samples, i, edition);
          }
        }
      }
    }
    return distance > Math.max(COVERED, COVERED_MEANS * agreement) ? candidate : -1;
  }

  private static @Nullable ColourCorrection fitted(
      PatchSamples samples, boolean[] use, Edition edition, double[] grey, ToneCurve.Kind kind) {
    ToneCurve curve = ToneCurve.fit(kind, samples, use, grey);
    return curve == null
        ? null
        : ColourCorrection.fit(Form.MATRIX, curve, samples, use, edition.patches());
  }

  private double meanDifference(ColourCorrection fitted, PatchSamples samples, boolean[] which) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < which.length; i++) {
      if (which[i]) {
        sum += difference(fitted, samples, i, editions.get(0));
        n++;
      }
    }
    return sum / Math.max(1, n);
  }

  private static double difference(
      ColourCorrection fitted, PatchSamples samples, int patch, Edition edition) {
    return Ciede2000.between(
        fitted.correct(samples.patches().get(patch)), edition.patches().get(patch));
  }

  private static PhotoCalibration unusable(String source, List<String> warnings) {
    warnings.add("too few usable patches on the chart: colours are as the camera made them");
    PhotoCalibration none = PhotoCalibration.none(source);
    return new PhotoCalibration(
        PhotoCalibration.Kind.NONE,
        none.colours(),
        none.trust(),
        null,
        null,
        null,
        none.method(),
        false,
        warnings);
  }

  private PhotoCalibration report(
      CorrectionChoice choice,
      boolean[] use,
      PatchSamples samples,
      String source,
      List<String> warnings) {
    double sum = 0;
    double largest = 0;
    int n = 0;
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        double d =
            Ciede2000.between(
                choice.correction().correct(samples.patches().get(i)),
                choice.edition().patches().get(i));
        sum += d;
        largest = Math.max(largest, d);
        n++;
      }
    }
    double mean = sum / n;
    boolean within = mean <= gate.mean() && largest <= gate.largest();
    if (!within) {
      warnings.add(
          String.format(
              java.util.Locale.ROOT,
              "the chart's colours come out at mean ΔE00 %.1f, largest %.1f; the gate is %.1f and"
                  + " %.1f: shade the chart evenly, avoid reflections and mixed light",
              mean,
              largest,
              gate.mean(),
              gate.largest()));
    }
    return new PhotoCalibration(
        PhotoCalibration.Kind.CHART,
        choice.correction().colours(),
        ChartMisfit.trust(
            choice.leaveOneOutLab(),
            fitted(choice, use, samples),
            choice.edition().patches(),
            source),
        mean,
        largest,
        choice.mean(),
        words(choice, n),
        within,
        warnings);
  }

  private static double[][] fitted(CorrectionChoice choice, boolean[] use, PatchSamples samples) {
    double[][] out = new double[use.length][3];
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        out[i] =
            ChartMisfit.offset(
                choice.correction().correct(samples.patches().get(i)),
                choice.edition().patches().get(i));
      }
    }
    return out;
  }

  private static String words(CorrectionChoice choice, int n) {
    String curve =
        switch (choice.curve()) {
          case SRGB -> "sRGB tone curve";
          case POWER -> "a power for each channel";
          case BENT_POWER -> "a bent power for each channel";
        };
    String form =
        choice.correction().form() == Form.MATRIX ? "3×3 matrix" : "root polynomial of degree 2";
    String edition =
        choice.edition() == Edition.AFTER_2014 ? "after November 2014" : "before November 2014";
    return curve + ", " + form + ", " + n + " patches, chart colours of " + edition;
  }
}
