package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Mentions.TestMention;

/** What a sentence is about, from its own words, the heading above it and what was said before. */
final class Context {
  private static final Pattern COMPARED =
      Pattern.compile(
          "(?is).*\\b(than|behind|beat|beats|ahead of|unlike|like|compared with|compared to|next to|similar to|below|above|clear of|as|against)\\s+(?:the\\s+)?$");
  private static final Pattern ASIDE =
      Pattern.compile(
          "(?is)^\\s*(?:['’]s)?\\s*(?:(?:and|but|with|at|in|by|after|taking|needing|because|from|on|for)\\b.*|,.*)");

  /** "… in the Siskin six fifty-two": the name goes with the number after it. */
  private static final String OWN_NUMBER =
      "(?is)^(?:['’]s)?\\s*(?:at|took|takes|needed|needs|it['’]s|just|about|nearly|almost|only)?\\s*(?:[\\d€$£]|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty)\\b).*";

  private static final Pattern BELONGS =
      Pattern.compile(
          "(?is)^\\s*(?:(?:on average|overall|less|more|lighter|lost|gone)\\s+)?(?:\\(|(?:for|by|in|from|with|on|at|inside)\\s)\\s*(?:the\\s+)?$");

  private final Sentence sentence;
  private final List<ProductMention> mentions;
  private final @Nullable String inherited;
  private final Set<String> inheritedJoint;
  private final Set<String> others;
  private final List<TestMention> tests;
  private final Set<String> testsAbove;
  private final Set<String> testsBefore;
  private final Map<String, Double> stemsBefore;
  private final List<Word> words;
  private final Clauses clauses;
  private final Set<String> cues;
  private final boolean firm;
  private final List<String> pair;
  private final @Nullable String topic;
  private final boolean stale;

  private record Word(String stem, int start) {}

  /**
   * What was said before a sentence.
   *
   * @param product that "it" stands for
   * @param isFirm whether the heading or the paragraph's first words name it
   * @param joint products that "they" stands for
   * @param others products that were named in the sentence before
   * @param pair the two that were last named together
   * @param topic product that "it" last stood for
   * @param isStale whether the paragraph has named none so far
   */
  record Said(
      @Nullable String product,
      boolean isFirm,
      Set<String> joint,
      Set<String> others,
      Set<String> testsAbove,
      Set<String> testsBefore,
      Map<String, Double> stems,
      List<String> pair,
      @Nullable String topic,
      boolean isStale) {}

  Context(
      Sentence sentence,
      List<ProductMention> mentions,
      List<TestMention> tests,
      Set<String> cues,
      Said said) {
    this.sentence = sentence;
    this.mentions = mentions;
    this.tests = tests;
    this.cues = cues;
    this.firm = said.isFirm();
    this.pair = said.pair();
    this.topic = said.topic();
    this.stale = said.isStale();
    this.others = said.others();
    this.inherited = said.product();
    this.inheritedJoint = said.joint();
    this.testsAbove = said.testsAbove();
    this.testsBefore = said.testsBefore();
    this.stemsBefore = said.stems();
    this.clauses = new Clauses(sentence.text());
    this.words = new ArrayList<>();
    for (TokenCursor.Token token : TokenCursor.tokens(sentence.text())) {
      boolean word = Character.isLetter(token.text().charAt(0)) && token.text().length() > 1;
      if (word && !NumberWords.isNumberWord(token.lower())) {
        words.addAll(words(token));
      }
    }
  }

  private static List<Word> words(TokenCursor.Token token) {
    return Stems.ofAll(token.lower()).stream().map(s -> new Word(s, token.start())).toList();
  }

  Sentence sentence() {
    return sentence;
  }

  /** Products named in the sentence, in order; pronouns stand for theirs. */
  List<ProductMention> mentions() {
    return mentions;
  }

  @Nullable String inherited() {
    return inherited;
  }

  /** Products named in the sentence before, the one that "it" stands for first. */
  List<String> namedBefore() {
    Set<String> all = new LinkedHashSet<>();
    if (inherited != null) {
      all.add(inherited);
    }
    all.addAll(others);
    return List.copyOf(all);
  }

  /**
   * The two products that are being compared, as last named together; empty when there are none.
   */
  List<String> pair() {
    Set<String> here = new LinkedHashSet<>();
    named().forEach(m -> here.add(m.product()));
    return here.size() == 2 ? List.copyOf(here) : pair;
  }

  /** Products of the sentence before, in the order of their names there. */
  List<String> pairBefore() {
    return List.copyOf(others);
  }

  /** Whether the product at a place was named in the sentence, rather than carried over or "it". */
  boolean isNamedAt(int start, int end) {
    String product = productAt(start, end);
    return firm && product != null && product.equals(inherited)
        || named().stream().anyMatch(m -> m.product().equals(product));
  }

  /**
   * Whether a place's product is beyond doubt: named in its clause, or by the heading where the
   * sentence names none.
   */
  boolean isFirmAt(int offset) {
    int clause = clauses.at(offset);
    ProductMention last = null;
    for (ProductMention mention : named()) {
      last = mention.start() < offset ? mention : last;
    }
    boolean here =
        last != null
            && (clauses.at(last.start()) == clause
                || sentence.text().substring(last.end(), offset).strip().split("\\s+").length <= 3);
    return here || firm && named().isEmpty();
  }

  /** Whether a heading or the paragraph's first words name the product. */
  boolean isFirm() {
    return firm;
  }

  /** Whether no name and no "it" of the paragraph so far says which product is spoken of. */
  boolean isStale() {
    return stale && mentions.isEmpty() && !firm;
  }

  /** All products that the sentence and the ones before it name. */
  Set<String> around() {
    Set<String> all = new LinkedHashSet<>();
    named().forEach(m -> all.add(m.product()));
    all.addAll(namedBefore());
    if (topic != null) {
      all.add(topic);
    }
    return all;
  }

  /** Tests of the paragraph so far, or of the heading. */
  Set<String> testsAbove() {
    return testsAbove;
  }

  /** Whether the sentence before spoke of a second batch. */
  boolean speaksOfBatches() {
    return stemsBefore.getOrDefault(Stems.of("batch"), 0.0) > 0.4;
  }

  boolean namesTests() {
    return !tests.isEmpty();
  }

  // ---- products ----

  /** The product that a phrase speaks of. */
  @Nullable String productAt(int start, int end) {
    String belongs = belonging(end);
    if (belongs != null) {
      return belongs;
    }
    ProductMention before = lastBefore(start);
    if (before != null) {
      return before.product();
    }
    ProductMention after = firstAfter(start);
    if (after == null) {
      return inherited;
    }
    boolean near =
        clauses.at(after.start()) == clauses.at(start)
            || clauses.at(after.start()) == clauses.at(Math.max(start, end - 1))
            || inherited == null;
    return near && !isCompared(after) || inherited == null ? after.product() : inherited;
  }

  @Nullable String productAt(int offset) {
    return productAt(offset, offset);
  }

  /** "17 minutes for Dunnock", "17 minutes (Dunnock)". */
  private @Nullable String belonging(int end) {
    for (ProductMention mention : mentions) {
      if (mention.start() >= end) {
        String between = sentence.text().substring(end, mention.start());
        boolean ownNumber =
            Wording.is(sentence.text().substring(mention.end()), OWN_NUMBER)
                && lastBefore(end) != null;
        return BELONGS.matcher(between).matches() && !ownNumber ? mention.product() : null;
      }
    }
    return null;
  }

  /** The nearest name before, but not one that is only compared with: "beat Alder, with 7.3". */
  private @Nullable ProductMention lastBefore(int offset) {
    ProductMention last = null;
    ProductMention subject = null;
    for (ProductMention mention : mentions) {
      if (mention.start() >= offset) {
        break;
      }
      last = mention;
      if (!isCompared(mention)) {
        subject = mention;
      }
    }
    if (last != null && isCompared(last)) {
      String between = sentence.text().substring(last.end(), offset);
      boolean own = Wording.is(between, "(?is)['’]s\\s+(?:(?!and\\b|but\\b)\\p{L}+\\s+){0,3}");
      if (!own && ASIDE.matcher(between).matches()) {
        return subject != null
            ? subject
            : inherited != null ? new ProductMention(inherited, 0, 0) : last;
      }
    }
    return last;
  }

  private @Nullable ProductMention firstAfter(int offset) {
    return mentions.stream().filter(m -> m.start() >= offset).findFirst().orElse(null);
  }

  private boolean isCompared(ProductMention mention) {
    return COMPARED.matcher(Wording.before(sentence.text(), mention.start())).matches();
  }

  /** All products that share one statement: "Alder and Siskin both …", "they", "the two". */
  Set<String> jointProductsAt(int offset) {
    Set<String> joint = new LinkedHashSet<>();
    String text = sentence.text();
    boolean shared =
        Wording.is(text, "(?s).*\\b(both|each|all|share[sd]?|tied?|equal|alike|same)\\b.*");
    int lastEnd = -1;
    for (ProductMention mention : mentions) {
      if (mention.start() >= offset) {
        break;
      }
      boolean joined =
          lastEnd >= 0
              && Wording.is(
                  text.substring(lastEnd, mention.start()),
                  "(?is)(?:['’]s)?\\s*(,|and|,\\s*and|&|,\\s*the|and\\s+the)\\s*");
      if (!joined) {
        joint.clear();
      }
      joint.add(mention.product());
      lastEnd = mention.end();
    }
    if (joint.size() > 1) {
      return shared ? joint : Set.of();
    }
    boolean plural =
        Wording.is(
            text,
            "(?is).*\\b(both|they|the two|the pair|the three|neither|each|apiece|either (?:of|one|oven))\\b.*");
    if (!named().isEmpty() || !plural) {
      return Set.of();
    }
    boolean two =
        Wording.is(
            text,
            "(?is).*\\b(both|the two|the pair|neither|each|apiece|either (?:of|one|oven))\\b.*");
    return inheritedJoint.isEmpty() && two && !firm ? new LinkedHashSet<>(pair) : inheritedJoint;
  }

  private List<ProductMention> named() {
    return mentions.stream().filter(m -> !m.isPronoun()).toList();
  }

  /**
   * "Alder and Hornbeam scored 7.2 and 6.7": the list of names before an offset, for numbers that
   * are a list too.
   */
  List<String> listedProductsAt(int offset) {
    List<String> listed = new ArrayList<>();
    int lastEnd = -1;
    for (ProductMention mention : mentions) {
      if (mention.start() >= offset) {
        break;
      }
      boolean joined =
          lastEnd >= 0
              && Wording.is(
                  sentence.text().substring(lastEnd, mention.start()),
                  "(?is)(?:['’]s)?\\s*(,|and|,\\s*and|&|,\\s*the|and\\s+the)\\s*");
      if (!joined) {
        listed.clear();
      }
      listed.add(mention.product());
      lastEnd = mention.end();
    }
    boolean they =
        Wording.is(
            sentence.text().substring(0, offset),
            "(?is).*\\b(they|the two|the pair|these two)\\b.*");
    if (listed.isEmpty() && they) {
      return List.copyOf(inheritedJoint);
    }
    return listed;
  }

  /** "A group at seven minutes: Alder, Hornbeam and Plover", "9.1 (Alder, Hornbeam)". */
  List<String> listedAfter(int offset) {
    List<String> listed = new ArrayList<>();
    int end = offset;
    for (ProductMention mention : named()) {
      if (mention.start() >= offset) {
        String between = sentence.text().substring(end, mention.start());
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
  List<String> pairAt(int offset) {
    Optional<List<String>> compared = comparedPair(offset);
    if (compared.isPresent()) {
      return compared.get();
    }
    Set<String> all = new LinkedHashSet<>();
    String first = productAt(offset);
    boolean they =
        Wording.is(
            Wording.before(sentence.text(), offset), "(?is).*\\b(they|both|the two|the pair)\\b.*");
    if (first != null && !they) {
      all.add(first);
    }
    named().forEach(m -> all.add(m.product()));
    if (all.size() < 2) {
      all.addAll(inheritedJoint);
    }
    return all.size() == 2 ? List.copyOf(all) : List.of();
  }

  /** "Its turkey was liked less than the Rowan's (6.1 against 7.6)": the subject first. */
  private Optional<List<String>> comparedPair(int offset) {
    ProductMention subject = null;
    ProductMention other = null;
    for (ProductMention mention : mentions) {
      if (mention.start() < offset && isCompared(mention)) {
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

  // ---- words around ----

  /** What the words around a stretch point at. */
  Focus at(int start, int end) {
    int clause = clauses.at(start);
    int last = Math.max(clause, clauses.at(Math.max(start, end - 1)));
    Map<String, Double> weights = new HashMap<>();
    weights.putAll(stemsBefore);
    Stems.ofAll(sentence.heading()).forEach(s -> weights.merge(s, 1.0, Math::max));
    for (Word word : words) {
      boolean inside = word.start() >= start && word.start() < end;
      if (!inside) {
        weights.merge(word.stem(), closeness(clauses.at(word.start()), clause, last), Math::max);
      }
    }
    Set<String> own = testsIn(clause, last);
    return new Focus(
        own.isEmpty() ? nearestTests(start) : own,
        !own.isEmpty(),
        testsAbove,
        testsBefore,
        cues,
        Mentions.batchAt(sentence.text(), start),
        weights);
  }

  /** What leads up to a number says more of it than what follows in another clause. */
  private double closeness(int clause, int first, int last) {
    if (clause >= first && clause <= last) {
      return 3;
    }
    for (int between = clause; between < first; between++) {
      if (clauses.introduces(between)) {
        return 2;
      }
    }
    return clause == first - 1 ? 1.7 : clause == last + 1 ? 1.2 : 0.9;
  }

  private Set<String> testsIn(int first, int last) {
    Set<String> found = new LinkedHashSet<>();
    for (TestMention test : tests) {
      int clause = clauses.at(test.start());
      if (clause >= first && clause <= last) {
        found.add(test.test());
      }
    }
    return found;
  }

  private Set<String> nearestTests(int start) {
    TestMention nearest = null;
    for (TestMention test : tests) {
      boolean near =
          sentence.text().length() < 200
              && Math.abs(clauses.at(test.start()) - clauses.at(start)) <= 2;
      if (test.start() < start || nearest == null && near && cues.isEmpty()) {
        nearest = test;
      }
    }
    if (nearest == null) {
      return Set.of();
    }
    Set<String> same = new LinkedHashSet<>();
    for (TestMention test : tests) {
      if (test.start() == nearest.start()) {
        same.add(test.test());
      }
    }
    return same;
  }
}
