package ovenproof.proof;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the hedge before a number: "just under", "no more than", "longer than". */
final class Hedges {
  private final TokenCursor cursor;

  Hedges(TokenCursor cursor) {
    this.cursor = cursor;
  }

  record HedgeFound(Hedge hedge, int firstToken) {}

  private static final List<Map.Entry<String, Hedge>> HEDGES =
      List.of(
          Map.entry("a little more than", Hedge.JUST_OVER),
          Map.entry("slightly more than", Hedge.JUST_OVER),
          Map.entry("a little over", Hedge.JUST_OVER),
          Map.entry("a bit over", Hedge.JUST_OVER),
          Map.entry("slightly over", Hedge.JUST_OVER),
          Map.entry("just over", Hedge.JUST_OVER),
          Map.entry("just above", Hedge.JUST_OVER),
          Map.entry("just past", Hedge.JUST_OVER),
          Map.entry("a shade over", Hedge.JUST_OVER),
          Map.entry("a touch over", Hedge.JUST_OVER),
          Map.entry("a shade under", Hedge.ALMOST),
          Map.entry("a touch under", Hedge.ALMOST),
          Map.entry("close to", Hedge.ALMOST),
          Map.entry("not quite", Hedge.ALMOST),
          Map.entry("well over", Hedge.OVER),
          Map.entry("well under", Hedge.UNDER),
          Map.entry("or so", Hedge.ABOUT),
          Map.entry("a little under", Hedge.ALMOST),
          Map.entry("a bit under", Hedge.ALMOST),
          Map.entry("slightly under", Hedge.ALMOST),
          Map.entry("just under", Hedge.ALMOST),
          Map.entry("just shy of", Hedge.ALMOST),
          Map.entry("almost", Hedge.ALMOST),
          Map.entry("nearly", Hedge.ALMOST),
          Map.entry("more or less", Hedge.ABOUT),
          Map.entry("something like", Hedge.ABOUT),
          Map.entry("in the region of", Hedge.ABOUT),
          Map.entry("about", Hedge.ABOUT),
          Map.entry("around", Hedge.ABOUT),
          Map.entry("roughly", Hedge.ABOUT),
          Map.entry("approximately", Hedge.ABOUT),
          Map.entry("some", Hedge.ABOUT),
          Map.entry("maybe", Hedge.ABOUT),
          Map.entry("perhaps", Hedge.ABOUT),
          Map.entry("circa", Hedge.ABOUT),
          Map.entry("~", Hedge.ABOUT),
          Map.entry("≈", Hedge.ABOUT),
          Map.entry("no less than", Hedge.AT_LEAST),
          Map.entry("not less than", Hedge.AT_LEAST),
          Map.entry("no more than", Hedge.AT_MOST),
          Map.entry("not more than", Hedge.AT_MOST),
          Map.entry("more than", Hedge.OVER),
          Map.entry("longer than", Hedge.OVER),
          Map.entry("greater than", Hedge.OVER),
          Map.entry("over", Hedge.OVER),
          Map.entry("above", Hedge.OVER),
          Map.entry("beyond", Hedge.OVER),
          Map.entry(">", Hedge.OVER),
          Map.entry("at least", Hedge.AT_LEAST),
          Map.entry("≥", Hedge.AT_LEAST),
          Map.entry("less than", Hedge.UNDER),
          Map.entry("fewer than", Hedge.UNDER),
          Map.entry("under", Hedge.UNDER),
          Map.entry("below", Hedge.UNDER),
          Map.entry("within", Hedge.UNDER),
          Map.entry("<", Hedge.UNDER),
          Map.entry("at most", Hedge.AT_MOST),
          Map.entry("up to", Hedge.AT_MOST),
          Map.entry("≤", Hedge.AT_MOST));

  HedgeFound hedgeBefore(int begin) {
    int first = begin;
    while (first > 0
        && List.of("a", "an", "the", "our", "between", "from", "$", "€", "£")
            .contains(cursor.tokens.get(first - 1).lower())) {
      first--;
    }
    Optional<HedgeFound> comparative = comparative(first);
    if (comparative.isPresent()) {
      return comparative.get();
    }
    for (Map.Entry<String, Hedge> entry : HEDGES) {
      String[] words = entry.getKey().split(" ");
      int from = first - words.length;
      boolean matches = from >= 0;
      for (int i = 0; matches && i < words.length; i++) {
        matches = cursor.tokens.get(from + i).lower().equals(words[i]);
      }
      if (matches) {
        return new HedgeFound(entry.getValue(), from);
      }
    }
    return new HedgeFound(Hedge.PLAIN, begin);
  }

  private static final Set<String> UPWARDS =
      Set.of(
          "more", "longer", "hotter", "warmer", "higher", "later", "heavier", "greater", "larger",
          "louder", "slower", "better", "wider", "bigger");

  private static final Set<String> DOWNWARDS =
      Set.of(
          "less",
          "fewer",
          "shorter",
          "cooler",
          "colder",
          "lower",
          "lighter",
          "smaller",
          "quieter",
          "cheaper",
          "faster",
          "quicker",
          "sooner",
          "worse",
          "narrower");

  /** "Longer than 57 minutes", "no hotter than 74 °C". */
  private Optional<HedgeFound> comparative(int first) {
    if (first < 2 || !cursor.tokens.get(first - 1).lower().equals("than")) {
      return Optional.empty();
    }
    String word = cursor.tokens.get(first - 2).lower();
    boolean up = UPWARDS.contains(word);
    if (!up && !DOWNWARDS.contains(word)) {
      return Optional.empty();
    }
    String before = first > 2 ? cursor.tokens.get(first - 3).lower() : "";
    if (before.equals("no") || before.equals("not")) {
      return Optional.of(new HedgeFound(up ? Hedge.AT_MOST : Hedge.AT_LEAST, first - 3));
    }
    if (Wording.is(before, "little|bit|slightly") && up) {
      return Optional.empty();
    }
    return Optional.of(new HedgeFound(up ? Hedge.OVER : Hedge.UNDER, first - 2));
  }
}
