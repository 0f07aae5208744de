package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Product;
import ovenproof.method.TestPlan;

/** Which products and tests a sentence speaks of, by name, and what "it" stands for. */
final class Mentions {

  /** A product's name in a sentence. */
  record ProductMention(String product, int start, int end) {}

  private record Name(String product, Pattern pattern) {}

  private record TestWords(String test, Set<String> stems) {}

  private final List<Name> names = new ArrayList<>();
  private final List<TestWords> tests = new ArrayList<>();

  Mentions(Campaign campaign) {
    for (Product product : campaign.products()) {
      add(product.id(), product.name());
      if (product.maker() != null && !product.maker().isBlank()) {
        add(product.id(), product.maker() + " " + product.name());
      }
    }
    names.sort(Comparator.comparingInt((Name n) -> n.pattern().pattern().length()).reversed());
    Set<String> shared = new HashSet<>();
    Set<String> seen = new HashSet<>();
    for (TestPlan test : campaign.method().tests()) {
      for (String stem : wordsOf(test)) {
        if (!seen.add(stem)) {
          shared.add(stem);
        }
      }
    }
    for (TestPlan test : campaign.method().tests()) {
      Set<String> own = new LinkedHashSet<>(wordsOf(test));
      own.removeAll(shared);
      tests.add(new TestWords(test.id(), own));
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

  private static Set<String> wordsOf(TestPlan test) {
    Set<String> stems = new LinkedHashSet<>(Stems.ofAll(test.name()));
    stems.addAll(Stems.ofAll(test.id().replace('-', ' ')));
    TestPlan.Sample sample = test.sample();
    if (sample != null) {
      stems.addAll(Stems.ofAll(sample.food()));
    }
    stems.removeAll(
        Set.of("test", "empty", "batch", "high", "heat", "use", "oven", "whit", "small"));
    if (test.replicates() > 0 && sample == null) {
      stems.addAll(Stems.ofAll("empty cavity preheat"));
    }
    return stems;
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

  /** Tests whose own words stand in the text, in the method's order. */
  Set<String> tests(String text) {
    Set<String> stems = Stems.ofAll(text);
    Set<String> found = new LinkedHashSet<>();
    for (TestWords test : tests) {
      if (test.stems().stream().anyMatch(stems::contains)) {
        found.add(test.test());
      }
    }
    return found;
  }

  /** "the second batch", "batch 2", "first load": the number of the batch, or null. */
  static @Nullable Integer batch(String sentence) {
    Matcher matcher =
        Pattern.compile(
                "\\b(?:(first|second|third|fourth|last) (?:batch|load|round|slices)|(?:batch|load) (\\d|one|two|three))\\b",
                Pattern.CASE_INSENSITIVE)
            .matcher(sentence);
    if (!matcher.find()) {
      return null;
    }
    String word =
        (matcher.group(1) != null ? matcher.group(1) : matcher.group(2)).toLowerCase(Locale.ROOT);
    return switch (word) {
      case "first", "one", "1" -> 1;
      case "second", "two", "2", "last" -> 2;
      case "third", "three", "3" -> 3;
      case "fourth", "4" -> 4;
      default -> null;
    };
  }
}
