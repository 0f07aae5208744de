package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Which products a number speaks of: its place in a list, a joint subject, the product in focus, or
 * none where ovens in general are meant.
 */
final class NumberProducts {
  private NumberProducts() {}

  /** "Alder and Hornbeam scored 7.2 and 6.7": the number's own product, or null. */
  static @Nullable String listed(
      SentenceClaims sentence, List<NumberPhrase> numbers, NumberPhrase number) {
    List<NumberPhrase> list = new ArrayList<>();
    NumberPhrase last = null;
    for (NumberPhrase next : numbers) {
      boolean joined =
          last != null
              && isAlike(last, next)
              && Wording.is(
                  sentence.text().substring(last.end(), next.start()),
                  "(?is)\\s*(,|/|and|,\\s*and|&|against|to|versus|vs\\.?)\\s*");
      if (!joined) {
        if (list.contains(number)) {
          break;
        }
        list.clear();
      }
      list.add(next);
      last = next;
    }
    if (list.size() < 2 || !list.contains(number)) {
      return null;
    }
    List<String> products = sentence.context().lists().listedBefore(list.get(0).start());
    boolean against =
        list.size() == 2
            && Wording.is(
                sentence.text().substring(list.get(0).end(), list.get(1).start()),
                "(?is)\\s*(against|to|versus|vs\\.?)\\s*");
    if (against && products.size() != 2) {
      products = sentence.context().lists().opposedAt(list.get(0).start());
    }
    if (products.size() != list.size()) {
      products = sentence.context().lists().inOrder(list.get(0).start(), list.size());
    }
    return products.size() == list.size() ? products.get(list.indexOf(number)) : null;
  }

  /** What is listed together is of one kind. */
  private static boolean isAlike(NumberPhrase a, NumberPhrase b) {
    boolean units =
        a.unit() == null
            || b.unit() == null
            || a.unit().dimension() == b.unit().dimension()
            || NumberKinds.isTemperature(a) && NumberKinds.isTemperature(b);
    boolean money = (a.scale() == Scale.MONEY) == (b.scale() == Scale.MONEY);
    return money && units && (a.unit() == null || b.unit() != null);
  }

  static List<String> products(
      SentenceClaims sentence, NumberPhrase number, @Nullable String listed) {
    if (listed != null) {
      return List.of(listed);
    }
    if (isGeneric(sentence, number)) {
      return List.of();
    }
    List<String> listing = sentence.context().lists().listedAfter(number.end());
    if (listing.size() > 1) {
      return listing;
    }
    Set<String> joint = sentence.context().lists().jointAt(number.start());
    List<String> products = new ArrayList<>(joint);
    if (products.isEmpty()) {
      String one = sentence.context().productAt(number.start(), number.end());
      if (one != null) {
        products.add(one);
      }
    }
    return products;
  }

  private static final Pattern GENERIC =
      Pattern.compile(
          "(?is).*\\b(an oven|any oven|most ovens|ovens|every oven|each oven|everybody(?: else)?|everyone(?: else)?(?:['’]s)?|the rest|the others|the other (?!hand\\b|end\\b|side\\b|way\\b)\\p{L}+|all (?:the )?others?|every other|all but|all except|(?:both|the two) leaders|the next (?:best|worst)|the remaining \\p{L}+|anybody|you should expect|you can expect|most of them)\\b[^;]*$");

  /** "10 K in four appliances", "1.07 kWh for both leaders", "less than 4 for every other oven". */
  private static final Pattern OF_MANY =
      Pattern.compile(
          "(?is)^\\s*(?:for|in|at|with|by)\\s+(?:the\\s+)?(?:all(?: but| others?| of|\\s+\\p{L}+s\\b)|both (?:leaders|winners)|every other|everyone else|each of|most of|the others?|(?:two|three|four|five|six|seven|[2-7])\\s+(?:ovens?|appliances|models|machines|products|of))\\b.*");

  /** "An oven draws between 1.0 and 1.2 kWh" speaks of none in particular. */
  static boolean isGeneric(SentenceClaims sentence, NumberPhrase number) {
    if (OF_MANY.matcher(Wording.after(sentence.text(), number.end())).matches()) {
      return true;
    }
    Matcher matcher = GENERIC.matcher(Wording.before(sentence.text(), number.start()));
    return matcher.matches()
        && sentence.context().mentions().stream()
            .noneMatch(m -> m.start() < number.start() && m.start() > matcher.start(1) - 1)
        && sentence.context().mentions().stream()
            .noneMatch(m -> m.start() >= number.end() && m.start() < number.end() + 12);
  }
}
