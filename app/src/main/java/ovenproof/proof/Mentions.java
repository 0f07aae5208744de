package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Product;
import ovenproof.method.TestPlan;

/** Which products and tests a sentence speaks of, by name, and what "it" stands for. */
final class Mentions {

  /** A product's name in a sentence. */
  record ProductMention(String product, int start, int end, boolean isPronoun) {
    ProductMention(String product, int start, int end) {
      this(product, start, end, false);
    }
  }

  private record Name(String product, Pattern pattern) {}

  /** A word that belongs to a test. */
  record TestMention(String test, int start) {}

  /** "It", "this one", "the oven". */
  record Pronoun(int start, int end, boolean isRelative) {}

  private record TestWords(String test, Set<String> stems, Pattern name) {}

  private final List<Name> names = new ArrayList<>();
  private final List<TestWords> tests = new ArrayList<>();
  private final @Nullable String emptyTest;
  private final Set<String> foods = new LinkedHashSet<>();

  /** How people speak of an empty oven's way to its setting. */
  private static final Pattern HEATING_UP =
      Pattern.compile(
          "\\b(?:(?:get|gets|getting|got|come|comes|coming|came|are|is|was|were) (?:hot|(?:up )?to (?:heat|temperature|temp|speed)|at (?:heat|temperature))|(?:heat|heats|heated|heating|warm|warms|warmed|warming) up|pre-heat(?:s|ed|ing)?|from cold|(?:heats?|heated) (?:the )?(?:fastest|quickest|slowest|faster|slower|quicker))\\b",
          Pattern.CASE_INSENSITIVE);

  private final Map<String, String> named = new LinkedHashMap<>();

  Mentions(Campaign campaign) {
    for (Product product : campaign.products()) {
      add(product.id(), product.name());
      if (product.maker() != null && !product.maker().isBlank()) {
        add(product.id(), product.maker() + " " + product.name());
      }
    }
    names.sort(Comparator.comparingInt((Name n) -> n.pattern().pattern().length()).reversed());
    this.emptyTest =
        campaign.method().tests().stream()
            .filter(t -> t.replicates() > 0 && t.sample() == null)
            .map(TestPlan::id)
            .findFirst()
            .orElse(null);
    Set<String> shared = new HashSet<>();
    Set<String> seen = new HashSet<>();
    for (TestPlan test : campaign.method().tests()) {
      if (test.sample() != null) {
        for (String word : test.name().split("[^\\p{L}]+")) {
          if (word.length() > 4) {
            foods.add(Pattern.quote(word));
          }
        }
      }
      for (String stem : wordsOf(test)) {
        if (!seen.add(stem)) {
          shared.add(stem);
        }
      }
    }
    for (TestPlan test : campaign.method().tests()) {
      Set<String> own = new LinkedHashSet<>(wordsOf(test));
      own.removeAll(shared);
      tests.add(new TestWords(test.id(), own, nameOf(test)));
      named.put(test.id(), test.name());
    }
  }

  /**
   * A name counts as written, so that "an alder table" is no oven; only where a whole text is
   * without capitals (a transcript) does case not matter.
   */
  private void add(String product, String name) {
    names.add(
        new Name(
            product,
            Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])")));
  }

  /** Words of a sample that also describe other things. */
  private static final Set<String> COMMON =
      Stems.ofAll(
          "test empty batch high heat use oven white small plain paper cup cups frozen tied rolled fresh"
              + " large whole joint of with food piece pieces");

  /** What else cooks call a food. */
  private static final Map<String, Set<String>> KITCHEN = new HashMap<>();

  static {
    kitchen("turkey chicken", "poultry bird birds roast meat");
    kitchen("beef pork lamb", "meat roast");
    kitchen("bread toast", "slice slices toasted toasting toasts");
    kitchen("cake cakes sponge", "cake cakes sponge cupcakes buns muffins baking");
    kitchen("flatbread dough pizza", "pizza pizzas dough crust flatbreads");
    kitchen("croquettes croquette potato", "croquettes potatoes chips fries");
  }

  private static void kitchen(String foods, String words) {
    for (String food : Stems.ofAll(foods)) {
      KITCHEN.put(food, Stems.ofAll(words));
    }
  }

  private static Set<String> wordsOf(TestPlan test) {
    Set<String> stems = new LinkedHashSet<>(Stems.ofAll(test.name()));
    stems.addAll(Stems.ofAll(test.id().replace('-', ' ')));
    TestPlan.Sample sample = test.sample();
    if (sample != null) {
      stems.addAll(Stems.ofAll(sample.food()));
    }
    stems.removeAll(COMMON);
    for (String stem : List.copyOf(stems)) {
      stems.addAll(KITCHEN.getOrDefault(stem, Set.of()));
    }
    if (test.replicates() > 0 && sample == null) {
      stems.addAll(Stems.ofAll("empty cavity preheat preheated thermostat"));
    }
    return stems;
  }

  /** A test whose name is an everyday word counts only where it cannot be one. */
  private static Pattern nameOf(TestPlan test) {
    String name = Pattern.quote(test.name());
    boolean everyday = test.name().length() <= 5 && !test.name().contains(" ");
    return everyday
        ? Pattern.compile(
            "(?<=\\b(?:for|in|under|on|the)\\s)"
                + name
                + "(?=\\s*(?:[,.;:()|]|$|score|test|section|is\\b|was\\b|and\\b|"
                + "it\\b|[A-Z]))|^\\s*"
                + name
                + "(?=\\s*[:—–-]|\\s|$)",
            Pattern.CASE_INSENSITIVE)
        : Pattern.compile(
            "\\b" + name.replace(" ", "\\E[\\s-]+\\Q") + "\\b", Pattern.CASE_INSENSITIVE);
  }

  /** Any product's name. */
  Pattern anyName() {
    return Pattern.compile(
        names.stream().map(n -> n.pattern().pattern()).collect(Collectors.joining("|")),
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /** The last word of each cooked test's name. */
  Pattern anyFood() {
    return Pattern.compile(
        foods.isEmpty() ? "(?!)" : String.join("|", foods), Pattern.CASE_INSENSITIVE);
  }

  /** Names in order of place; longer names win over shorter ones inside them. */
  List<ProductMention> products(String sentence) {
    List<ProductMention> found = new ArrayList<>();
    boolean lower = sentence.equals(sentence.toLowerCase(Locale.ROOT));
    boolean upper = sentence.equals(sentence.toUpperCase(Locale.ROOT));
    for (Name name : names) {
      Pattern pattern =
          lower || upper
              ? Pattern.compile(
                  name.pattern().pattern(), Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
              : name.pattern();
      Matcher matcher = pattern.matcher(sentence);
      while (matcher.find()) {
        ProductMention mention = new ProductMention(name.product(), matcher.start(), matcher.end());
        if (found.stream().noneMatch(m -> m.start() < mention.end() && mention.start() < m.end())) {
          found.add(mention);
        }
      }
    }
    found.sort(Comparator.comparingInt(ProductMention::start));
    return found;
  }

  /** The test whose whole name a heading is, however common a word that may be: "Use". */
  Optional<String> testCalled(String heading) {
    String name = heading.strip();
    return named.entrySet().stream()
        .filter(e -> e.getValue().equalsIgnoreCase(name))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** Places where a test's own words or its name stand, in order. */
  List<TestMention> tests(String text) {
    List<TestMention> found = new ArrayList<>();
    for (TokenCursor.Token token : TokenCursor.tokens(text)) {
      boolean word =
          Character.isLetter(token.text().charAt(0))
              && token.text().length() > 2
              && !Wording.is(token.lower(), "toasters?|bakers?|roasters?");
      if (word) {
        String stem = Stems.of(token.lower());
        for (TestWords test : tests) {
          if (test.stems().contains(stem)) {
            found.add(new TestMention(test.test(), token.start()));
          }
        }
      }
    }
    if (emptyTest != null) {
      Matcher matcher = HEATING_UP.matcher(text);
      while (matcher.find()) {
        found.add(new TestMention(emptyTest, matcher.start()));
      }
    }
    for (TestWords test : tests) {
      Matcher matcher = test.name().matcher(text);
      while (matcher.find()) {
        found.add(new TestMention(test.test(), matcher.start()));
      }
    }
    found.sort(Comparator.comparingInt(TestMention::start));
    return found;
  }

  private static final Pattern PRONOUN =
      Pattern.compile(
          "\\b(?:(?:it(?!(?:['’]s| is| was) (?:the )?(?-i:[A-Z]\\p{L}+) (?:that|which|who))(?! (?:is|was|'s) (?:clear|true|said|no|worth|possible|hard|easy|important|better to|best to)))|its|this one|(?:this|that|the) (?:oven|model|machine|toaster|fryer|appliance)|(?<relative>which(?= (?:costs?|takes?|took|needs?|needed|sells|weighs|scored|scores|has|had|runs|ran|gets|got|makes|made|draws|uses|used|holds|held|lost|never|only|finished|ended|was|is at|overshot|overshoots|also|comes|came))|whose))\\b",
          Pattern.CASE_INSENSITIVE);

  /** Words that stand for a product. */
  static List<Pronoun> pronouns(String text) {
    List<Pronoun> found = new ArrayList<>();
    Matcher matcher = PRONOUN.matcher(text);
    while (matcher.find()) {
      found.add(new Pronoun(matcher.start(), matcher.end(), matcher.group("relative") != null));
    }
    return found;
  }

  private static final Pattern BATCH =
      Pattern.compile(
          "\\b(?:(?<place>first|second|third|fourth|last) (?:batch|load|round|slices)"
              + "|(?:batch|load) (?<number>\\d|one|two|three)"
              + "|the (?<bare>first|second|third)(?=,| was| came| one| took))\\b",
          Pattern.CASE_INSENSITIVE);

  /** "the second batch", "batch 2", "the second": the number of the batch, or null. */
  static @Nullable Integer batchAt(String sentence, int offset) {
    Matcher matcher = BATCH.matcher(sentence);
    Integer found = null;
    boolean spoken = Wording.is(sentence, "(?is).*\\b(batch|load|round)\\b.*");
    while (matcher.find()) {
      boolean counts = matcher.group("bare") == null || spoken;
      if (counts && (matcher.start() < offset || found == null)) {
        found = number(matcher);
      }
    }
    return found;
  }

  private static @Nullable Integer number(Matcher matcher) {
    String word =
        matcher.group("place") != null
            ? matcher.group("place")
            : matcher.group("number") != null ? matcher.group("number") : matcher.group("bare");
    return switch (word.toLowerCase(Locale.ROOT)) {
      case "first", "one", "1" -> 1;
      case "second", "two", "2", "last" -> 2;
      case "third", "three", "3" -> 3;
      case "fourth", "4" -> 4;
      default -> null;
    };
  }
}
