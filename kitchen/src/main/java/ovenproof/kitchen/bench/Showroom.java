package ovenproof.kitchen.bench;

import java.util.List;
import java.util.Map;

/**
 * What a buyer sees of the invented ovens: price, size, handling. True values, not measured ones.
 */
public final class Showroom {

  /** Rated facts, in the order of {@link Card#steps}. */
  public static final List<String> RATED =
      List.of("controls", "display", "door-and-racks", "manual");

  /**
   * One oven in the shop.
   *
   * @param footprintSquareCentimetre in use, handles and clearance included
   * @param decibel fan on, at one metre
   * @param steps true steps 0–4 of the rated facts
   * @param plateLitres what the box says
   */
  public record Card(
      String maker,
      String kind,
      int price,
      int priceLater,
      String acquired,
      String became,
      double plateLitres,
      double kilogram,
      double footprintSquareCentimetre,
      double decibel,
      double cordCentimetre,
      int[] steps,
      String note) {}

  private static final Map<String, Card> CARDS =
      Map.of(
          "alder",
          new Card(
              "Quarryside (invented)",
              "with fan",
              239,
              219,
              "bought",
              "kept",
              24,
              8.4,
              2110,
              47.5,
              98,
              new int[] {3, 3, 3, 3},
              ""),
          "siskin",
          new Card(
              "Milestone (invented)",
              "with fan",
              199,
              199,
              "bought",
              "kept",
              21,
              7.9,
              1980,
              49,
              90,
              new int[] {3, 2, 3, 2},
              ""),
          "rowan",
          new Card(
              "Quarryside (invented)",
              "with fan",
              179,
              169,
              "bought",
              "given-away",
              25,
              8.8,
              2240,
              51,
              98,
              new int[] {2, 3, 2, 3},
              ""),
          "hornbeam",
          new Card(
              "Tollgate (invented)",
              "with fan",
              209,
              209,
              "bought",
              "kept",
              24,
              8.4,
              2110,
              47.5,
              98,
              new int[] {3, 3, 3, 3},
              ""),
          "plover",
          new Card(
              "Milestone (invented)",
              "with fan",
              159,
              149,
              "bought",
              "returned",
              22,
              7.7,
              2050,
              50,
              90,
              new int[] {3, 3, 2, 2},
              ""),
          "larch",
          new Card(
              "Sluice (invented)",
              "without fan",
              129,
              129,
              "lent",
              "returned",
              33,
              9.1,
              2680,
              33,
              85,
              new int[] {2, 1, 3, 1},
              "lent by the maker, as the disclosure says"),
          "whimbrel",
          new Card(
              "Tollgate (invented)",
              "with fan",
              189,
              189,
              "bought",
              "kept",
              20,
              6.6,
              1850,
              54,
              92,
              new int[] {2, 2, 2, 2},
              ""),
          "dunnock",
          new Card(
              "Sluice (invented)",
              "with fan",
              89,
              79,
              "bought",
              "given-away",
              18,
              5.8,
              1660,
              52,
              85,
              new int[] {2, 1, 1, 2},
              ""));

  private Showroom() {}

  public static Card card(String oven) {
    Card card = CARDS.get(oven);
    if (card == null) {
      throw new IllegalArgumentException("no oven named " + oven);
    }
    return card;
  }
}
