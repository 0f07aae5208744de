package ovenproof.core.safety;

import java.util.List;

/**
 * A published lowest core temperature. A floor: never a range, never rounded down, and not a
 * promise. Local food rules prevail.
 *
 * @param food as the source groups it
 * @param celsius as published, or converted and rounded up where only °F is published
 * @param fahrenheit as published, NaN where the source is in °C
 * @param restSeconds hold or rest that belongs to it
 * @param source and date
 * @param region whose authority it is
 */
public record PublishedFloor(
    String food,
    double celsius,
    double fahrenheit,
    double restSeconds,
    String source,
    String region) {

  private static final String US =
      "USDA FSIS, safe minimum internal temperature chart; FoodSafety.gov, 12 April 2019";
  private static final String UK = "UK Food Standards Agency, cooking advice: time and temperature";

  private static final List<PublishedFloor> ALL =
      List.of(
          us("beef, pork, veal, lamb: steaks, chops, roasts", 145, 62.8, 180),
          us("ham, fresh or smoked, uncooked", 145, 62.8, 180),
          us("ground meat (beef, pork, veal, lamb)", 160, 71.2, 0),
          us("ground poultry", 165, 73.9, 0),
          us("poultry, all cuts and whole, stuffing", 165, 73.9, 0),
          us("egg dishes", 160, 71.2, 0),
          us("fish and shellfish", 145, 62.8, 0),
          us("leftovers", 165, 73.9, 0),
          us("casseroles", 165, 73.9, 0),
          us("fully cooked ham, packed in an inspected plant, reheated", 140, 60, 0),
          us("fully cooked ham, other, reheated", 165, 73.9, 0),
          uk(60, 2700),
          uk(65, 600),
          uk(70, 120),
          uk(75, 30),
          uk(80, 6));

  private static PublishedFloor us(String food, double f, double c, double rest) {
    return new PublishedFloor(food, c, f, rest, US, "United States");
  }

  private static PublishedFloor uk(double c, double hold) {
    return new PublishedFloor("any food, coldest place", c, Double.NaN, hold, UK, "United Kingdom");
  }

  public static List<PublishedFloor> all() {
    return ALL;
  }

  public Criterion.FloorWithRest criterion() {
    return new Criterion.FloorWithRest(celsius, restSeconds);
  }
}
