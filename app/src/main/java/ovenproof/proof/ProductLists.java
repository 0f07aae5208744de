package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ovenproof.proof.Mentions.ProductMention;

/** Names that are listed together, and which of them a number beside or after the list is of. */
final class ProductLists {
  private final Context context;
  private final Said said;
  private final String text;

  ProductLists(Context context, Said said) {
    this.context = context;
    this.said = said;
    this.text = context.sentence().text();
  }

  /** All products that share one statement: "Alder and Siskin both …", "they", "the two". */
  Set<String> jointAt(int offset) {
    List<String> joint = run(offset);
    boolean shared =
        Wording.is(text, "(?s).*\\b(both|each|all|share[sd]?|tied?|equal|alike|same)\\b.*");
    if (joint.size() > 1) {
      return shared ? new LinkedHashSet<>(joint) : Set.of();
    }
    boolean plural =
        Wording.is(
            text,
            "(?is).*\\b(both|they|the two|the pair|the three|neither|each|apiece|either (?:of|one|oven))\\b.*");
    if (!context.named().isEmpty() || !plural) {
      return Set.of();
    }
    boolean two =
        Wording.is(
            text,
            "(?is).*\\b(both|the two|the pair|neither|each|apiece|either (?:of|one|oven))\\b.*");
    return said.joint().isEmpty() && two && !context.isFirm()
        ? new LinkedHashSet<>(context.pair())
        : said.joint();
  }

  /**
   * "Alder and Hornbeam scored 7.2 and 6.7": the list of names before an offset, for numbers that
   * are a list too.
   */
  List<String> listedBefore(int offset) {
    List<String> listed = run(offset);
    boolean they =
        Wording.is(text.substring(0, offset), "(?is).*\\b(they|the two|the pair|these two)\\b.*");
    if (listed.isEmpty() && they) {
      return List.copyOf(said.joint());
    }
    return listed;
  }

  /**
   * "The Alder at €219 and the Hornbeam at €209 finished with 8.0 and 7.9": as many names as
   * numbers, in order, in the part of the sentence that leads up to them; of a sentence without
   * names those that were last listed.
   */
  List<String> inOrder(int offset, int count) {
    int from = Math.max(text.lastIndexOf(';', offset - 1), text.lastIndexOf(':', offset - 1));
    Set<String> named = new LinkedHashSet<>();
    context.named().stream()
        .filter(m -> m.start() > from && m.end() <= offset)
        .forEach(m -> named.add(m.product()));
    if (named.isEmpty() && context.mentions().isEmpty()) {
      List<String> pair = context.pair();
      return count == 2 && pair.size() == 2
          ? pair
          : said.joint().size() == count ? List.copyOf(said.joint()) : List.of();
    }
    return named.size() == count ? List.copyOf(named) : List.of();
  }

  /** The products that were last listed together before this sentence. */
  List<String> carried() {
    return List.copyOf(said.joint());
  }

  /** Names that are joined to a list, the last one before an offset. */
  private List<String> run(int offset) {
    List<String> listed = new ArrayList<>();
    int lastEnd = -1;
    for (ProductMention mention : context.mentions()) {
      if (mention.start() >= offset) {
        break;
      }
      if (lastEnd < 0 || !isJoined(text.substring(lastEnd, mention.start()))) {
        listed.clear();
      }
      listed.remove(mention.product());
      listed.add(mention.product());
      lastEnd = mention.end();
    }
    return listed;
  }

  /** Whether what stands between two names makes a list of them. */
  static boolean isJoined(String between) {
    return Wording.is(
        between,
        "(?is)(?:['’]s)?\\s*(,|and|or|,\\s*and|,\\s*or|&|,\\s*the|and\\s+the|or\\s+the|,\\s*and\\s+the)\\s*");
  }

  /** "A group at seven minutes: Alder, Hornbeam and Plover", "9.1 (Alder, Hornbeam)". */
  List<String> listedAfter(int offset) {
    List<String> listed = new ArrayList<>();
    int end = offset;
    for (ProductMention mention : context.named()) {
      if (mention.start() >= offset) {
        String between = text.substring(end, mention.start());
        boolean next =
            listed.isEmpty()
                ? Wording.is(between, "(?is)\\s*[:(–—]\\s*(?:the\\s+)?")
                : Wording.is(between, "(?is)\\s*(?:,|and|,\\s*and|&)\\s*(?:the\\s+)?");
        if (!next) {
          return listed;
        }
        listed.add(mention.product());
        end = mention.end();
      }
    }
    return listed;
  }

  /** "Alder toasts better (7.2 against 6.7); Hornbeam …": whom two opposed numbers belong to. */
  List<String> opposedAt(int offset) {
    Optional<List<String>> compared = comparedPair(offset);
    if (compared.isPresent()) {
      return compared.get();
    }
    Set<String> all = new LinkedHashSet<>();
    String first = context.productAt(offset);
    boolean they =
        Wording.is(Wording.before(text, offset), "(?is).*\\b(they|both|the two|the pair)\\b.*");
    if (first != null && !they) {
      all.add(first);
    }
    context.named().forEach(m -> all.add(m.product()));
    if (all.size() < 2) {
      all.addAll(said.joint());
    }
    return all.size() == 2 ? List.copyOf(all) : List.of();
  }

  /** "Its turkey was liked less than the Rowan's (6.1 against 7.6)": the subject first. */
  private Optional<List<String>> comparedPair(int offset) {
    ProductMention subject = null;
    ProductMention other = null;
    for (ProductMention mention : context.mentions()) {
      if (mention.start() < offset && context.isCompared(mention)) {
        other = mention;
      } else if (mention.start() < offset && other == null) {
        subject = mention;
      }
    }
    if (subject == null || other == null || subject.product().equals(other.product())) {
      return Optional.empty();
    }
    return Optional.of(List.of(subject.product(), other.product()));
  }
}
