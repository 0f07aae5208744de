package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.CavityMap;
import ovenproof.core.photo.CavityMap.Contrast;
import ovenproof.core.photo.CavityMap.PositionEffect;
import ovenproof.core.photo.SecondBatch;
import ovenproof.core.statistics.Interval;

/** What a cavity map says, in sentences that pages and the published site share. */
public final class CavityWords {
  private static final double LEVEL = 0.05;

  private CavityWords() {}

  /**
   * A question with its answer.
   *
   * @param figure the estimate with its interval; empty when there is none
   * @param chance how often chance alone would do as much
   */
  public record Row(String question, String answer, String figure, String chance) {}

  /** The finding in a sentence without the product's name. */
  public static String finding(CavityStudy.OfProduct of) {
    Double pattern = of.map().pattern();
    if (pattern == null) {
      return "places cannot be told from pieces yet";
    }
    if (pattern >= LEVEL) {
      return "no place of the tray stands out";
    }
    List<PositionEffect> palest = CavityMap.palestFirst(of.map());
    return "palest at "
        + palest.get(0).position().id()
        + ", darkest at "
        + palest.get(palest.size() - 1).position().id();
  }

  /** Every question that the runs can answer. */
  public static List<Row> rows(CavityStudy.OfProduct of) {
    List<Row> rows = new ArrayList<>();
    CavityMap.Result map = of.map();
    Double pattern = map.pattern();
    if (pattern != null) {
      rows.add(
          new Row(
              "Do places differ at all?",
              pattern < LEVEL ? "yes" : "not shown",
              map.pieceSd() == null
                  ? ""
                  : String.format(Locale.ROOT, "pieces scatter by %.1f L* (SD)", map.pieceSd()),
              chance(pattern)));
    }
    for (Contrast place : map.places()) {
      String[] parts = place.question().split(" against ");
      rows.add(
          new Row(
              capital(place.question()),
              answer(place, parts[0]),
              figure(place.estimate(), place.interval()),
              chance(place.p())));
    }
    SecondBatch.Result second = of.second();
    if (second != null) {
      rows.add(change(second.change()));
      SecondBatch.Answer cold = second.coldInLast();
      if (cold != null && second.coldPlace() != null) {
        rows.add(cold(second.coldPlace().id(), cold));
      }
    }
    return rows;
  }

  private static String answer(Contrast place, String first) {
    if (place.p() >= LEVEL) {
      return "not shown";
    }
    return first + (place.estimate() > 0 ? " paler" : " darker");
  }

  private static Row change(SecondBatch.Answer change) {
    Double p = change.p();
    return new Row(
        "Is the last batch different from the first?",
        p == null
            ? "needs a second run"
            : p >= LEVEL ? "not shown" : change.estimate() > 0 ? "yes, paler" : "yes, darker",
        figure(change.estimate(), change.interval()),
        p == null ? "" : chance(p));
  }

  private static Row cold(String place, SecondBatch.Answer cold) {
    Double p = cold.p();
    return new Row(
        "Is the cold place of the first batch, " + place + ", still there in the last?",
        p == null
            ? "needs a second run"
            : p < LEVEL && cold.estimate() > 0 ? "yes, paler than the rest" : "not shown",
        figure(cold.estimate(), cold.interval()),
        p == null ? "" : chance(p));
  }

  private static String figure(double estimate, @Nullable Interval interval) {
    String value = signed(estimate) + " L*";
    return interval == null
        ? value
        : value + ", 90 %: " + signed(interval.low()) + " to " + signed(interval.high());
  }

  private static String chance(double p) {
    return p < 0.001 ? "p < 0.001" : String.format(Locale.ROOT, p < 0.01 ? "p %.3f" : "p %.2f", p);
  }

  private static String signed(double value) {
    String digits = String.format(Locale.ROOT, "%.1f", Math.abs(value));
    return digits.equals("0.0") ? digits : (value < 0 ? "−" : "+") + digits;
  }

  /** What the runs cannot say, each as a sentence. */
  public static List<String> notes(CavityStudy.OfProduct of) {
    return of.map().notes().stream().map(n -> capital(n) + ".").toList();
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
