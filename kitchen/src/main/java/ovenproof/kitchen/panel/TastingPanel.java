package ovenproof.kitchen.panel;

import java.util.ArrayList;
import java.util.List;
import ovenproof.kitchen.physics.Chance;

/**
 * A panel with known effects.
 *
 * <p>mark = true mark + batch + assessor + oven × assessor + position + noise, on a scale of 0 to
 * 10 in halves.
 */
public final class TastingPanel {

  /**
   * Sizes of the effects, in points; all but {@code firstServed} are standard deviations.
   *
   * @param firstServed what the sample that is served first gains
   */
  public record Effects(
      double assessor, double batch, double interaction, double noise, double firstServed) {

    /** What a small trained kitchen panel shows (common practice). */
    public static final Effects USUAL = new Effects(0.5, 0.4, 0.35, 0.8, 0.25);
  }

  /**
   * Something to taste.
   *
   * @param product oven that made it
   * @param batch run and batch
   * @param trueMarks one for each mark
   */
  public record Sample(String product, String batch, double[] trueMarks) {}

  /**
   * A mark as written.
   *
   * @param order position in the session, from 1
   */
  public record Given(String assessor, Sample sample, int mark, int order, double value) {}

  private static final double HARSH = -1.7;

  private final List<String> assessors = new ArrayList<>();
  private final List<Double> levels = new ArrayList<>();
  private final Effects effects;
  private final Chance chance;

  private TastingPanel(int size, int harsh, Effects effects, Chance chance) {
    this.effects = effects;
    this.chance = chance;
    Chance luck = chance.named("levels");
    for (int i = 1; i <= size; i++) {
      assessors.add("taster-" + i);
      double own = luck.gaussian(0, effects.assessor());
      levels.add(i == harsh ? HARSH : own);
    }
  }

  /**
   * @param harsh number of the harsh taster, 0 for none
   */
  public static TastingPanel of(int size, int harsh, Effects effects, Chance chance) {
    return new TastingPanel(size, harsh, effects, chance);
  }

  public List<String> assessors() {
    return List.copyOf(assessors);
  }

  /** What each assessor adds to every mark, in their order. */
  public List<Double> levels() {
    return List.copyOf(levels);
  }

  /**
   * One session: every assessor tastes every sample once, in waves as they come out of the ovens;
   * orders inside a wave follow rows of a Williams square, so every sample stands at every position
   * about as often and behind every other.
   */
  public List<Given> taste(String session, List<List<Sample>> waves) {
    List<Given> all = new ArrayList<>();
    for (int a = 0; a < assessors.size(); a++) {
      Chance luck = chance.named(session + " " + assessors.get(a));
      int served = 0;
      for (List<Sample> wave : waves) {
        for (int place : williamsRow(wave.size(), a)) {
          served++;
          all.addAll(marks(a, wave.get(place), served, luck));
        }
      }
    }
    return all;
  }

  private List<Given> marks(int assessor, Sample sample, int order, Chance luck) {
    List<Given> given = new ArrayList<>();
    String name = assessors.get(assessor);
    for (int m = 0; m < sample.trueMarks().length; m++) {
      double value =
          sample.trueMarks()[m]
              + chance.named("batch " + sample.batch() + m).gaussian(0, effects.batch())
              + levels.get(assessor)
              + chance
                  .named("taste " + name + sample.product() + m)
                  .gaussian(0, effects.interaction())
              + (order == 1 ? effects.firstServed() : 0)
              + luck.gaussian(0, effects.noise());
      given.add(new Given(name, sample, m, order, onScale(value)));
    }
    return given;
  }

  private static double onScale(double value) {
    return Math.min(10, Math.max(0, Math.rint(2 * value) / 2));
  }

  /**
   * Row r of a Williams square: 0, 1, n − 1, 2, n − 2 … each shifted by r. For an odd n every
   * second row is read backwards.
   */
  static int[] williamsRow(int n, int r) {
    int[] row = new int[n];
    for (int i = 0; i < n; i++) {
      int step = i % 2 == 1 ? (i + 1) / 2 : (n - i / 2) % n;
      row[i] = (step + r) % n;
    }
    if (n % 2 == 1 && r / n % 2 == 1) {
      for (int i = 0; i < n / 2; i++) {
        int kept = row[i];
        row[i] = row[n - 1 - i];
        row[n - 1 - i] = kept;
      }
    }
    return row;
  }
}
