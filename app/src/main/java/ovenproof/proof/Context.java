package ovenproof.proof;

import java.util.LinkedHashSet;
import java.util.List;
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
          "(?is).*\\b(than|behind|beat|beats|ahead of|that of|those of|times|twice|unlike|like|compared with|compared to|next to|similar to|below|above|clear of|as|against|after|apart from|aside from|except(?: for)?|excluding|leaving out|leaving aside|not counting|other than|but for|besides|without|ignoring)\\s+(?:the\\s+)?$");
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
  private final Set<String> others;
  private final List<TestMention> tests;
  private final Set<String> testsAbove;
  private final Clauses clauses;
  private final Surroundings surroundings;
  private final ProductLists lists;
  private final boolean firm;
  private final List<String> pair;
  private final @Nullable String topic;
  private final boolean stale;
  private final boolean sole;

  Context(
      Sentence sentence,
      List<ProductMention> mentions,
      List<TestMention> tests,
      Set<String> cues,
      Said said) {
    this.sentence = sentence;
    this.mentions = mentions;
    this.tests = tests;
    this.firm = said.isFirm();
    this.pair = said.pair();
    this.topic = said.topic();
    this.stale = said.isStale();
    this.sole = said.isSole();
    this.others = said.others();
    this.inherited = said.product();
    this.testsAbove = said.testsAbove();
    this.clauses = new Clauses(sentence.text());
    this.lists = new ProductLists(this, said);
    this.surroundings = new Surroundings(sentence, clauses, tests, cues, said);
  }

  /** Names and numbers that are listed together. */
  ProductLists lists() {
    return lists;
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
    boolean it =
        sole
            && named().isEmpty()
            && Wording.is(
                sentence.text(), "(?is)[\\s*•-]*(?:it|its|that['’]s|that is|this is)\\b.*");
    return here || it || firm && named().isEmpty();
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
    return List.of("batch", "round", "load", "helping").stream()
        .anyMatch(w -> surroundings.saidBefore(Stems.of(w)) > 0.4);
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
                && lastBefore(end) != null
                && startsWithName()
                && !isRepeated();
        return BELONGS.matcher(between).matches() && !ownNumber ? mention.product() : null;
      }
    }
    return null;
  }

  /** "… for the Plover … for the Rowan": two names or more that follow their numbers alike. */
  private boolean isRepeated() {
    return mentions.stream()
            .filter(
                m ->
                    Wording.is(
                        Wording.before(sentence.text(), m.start()),
                        "(?is).*(?:\\d|[a-z])(?:teen|ty|ve|ne|wo|ee|ur|ix|en|ht)?[^.,;]{0,14}\\bfor\\s+(?:the\\s+)?$"))
            .count()
        >= 2;
  }

  /** "Thirteen minutes for the Plover, fifteen for the Rowan" names after its numbers. */
  private boolean startsWithName() {
    int first = mentions.get(0).start();
    return TokenCursor.tokens(sentence.text()).stream()
        .filter(t -> t.start() < first)
        .noneMatch(
            t -> Character.isDigit(t.text().charAt(0)) || NumberWords.isNumberWord(t.lower()));
  }

  /** The nearest name before, but not one that is only compared with: "beat Alder, with 7.3". */
  private @Nullable ProductMention lastBefore(int offset) {
    ProductMention last = null;
    ProductMention subject = null;
    for (ProductMention mention : mentions) {
      if (mention.end() > offset) {
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

  /** Whether a name stands only as the other end of a comparison. */
  boolean isCompared(ProductMention mention) {
    return COMPARED.matcher(Wording.before(sentence.text(), mention.start())).matches();
  }

  /** Products that the sentence names by their names. */
  List<ProductMention> named() {
    return mentions.stream().filter(m -> !m.isPronoun()).toList();
  }

  /** What the words around a stretch point at. */
  Focus at(int start, int end) {
    return surroundings.at(start, end);
  }
}
