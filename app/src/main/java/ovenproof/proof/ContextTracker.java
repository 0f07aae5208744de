package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.DraftText.Role;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Mentions.TestMention;

/** Follows a draft from sentence to sentence and remembers what is being spoken of. */
final class ContextTracker {
  /** A name after one of these is only compared with, or stands in a phrase. */
  private static final Pattern ASIDE =
      Pattern.compile(
          "(?is).*\\b(than|as|only|behind|unlike|like|beats?|with|to|against|of|by|for|from|(?:all|none|nothing|every\\w*|any\\w*|one|last|next) but|except|over|after|leaving out|leaving aside|excluding|without|not counting|ignoring|besides|other than)\\s+(the\\s+)?$");

  /** A name after one of these is what is spoken of from here on. */
  private static final Pattern TOPIC =
      Pattern.compile(
          "(?is).*\\b(speaking of|what about|how about|as for|on to|over to|turning to|then there['’]s|then there is|here['’]s|this is|this one is|meet|now for|next(?: up)?(?: is|:|,)?|back to|take)\\s+(the\\s+)?$");

  private final Mentions mentions;
  private final Constants constants;
  private @Nullable String lastProduct;
  private @Nullable String sectionProduct;
  private @Nullable String paragraphProduct;
  private boolean firmParagraph;
  private boolean paragraphNames;
  private boolean soleBefore;
  private @Nullable String asked;
  private Set<String> lastJoint = Set.of();
  private Set<String> lastNamed = Set.of();
  private List<String> lastPair = List.of();
  private @Nullable String topic;
  private Set<String> lastTests = Set.of();
  private Set<String> headingTests = Set.of();
  private Set<String> paragraphTests = Set.of();
  private int sentencesSinceTests;
  private Map<String, Double> lastStems = Map.of();
  private String lastHeading = "";
  private int lastParagraph = -1;

  ContextTracker(Mentions mentions, Constants constants) {
    this.mentions = mentions;
    this.constants = constants;
  }

  /**
   * The context of the next sentence.
   *
   * @param numbers the sentence's numbers
   */
  Context enter(Sentence sentence, List<NumberPhrase> numbers) {
    if (sentence.role() != Role.HEADING && !sentence.heading().equals(lastHeading)) {
      lastHeading = sentence.heading();
      enterSection();
    }
    boolean sameParagraph = sentence.paragraph() == lastParagraph;
    if (!sameParagraph) {
      paragraphTests = Set.of();
      paragraphProduct = null;
      firmParagraph = false;
      paragraphNames = false;
    }
    List<ProductMention> named = mentions.products(sentence.text());
    if (!named.isEmpty() || !sameParagraph) {
      asked = null;
    }
    @Nullable String holder =
        asked != null ? asked : paragraphProduct != null ? paragraphProduct : sectionProduct;
    @Nullable String carried = holder != null ? holder : lastProduct;
    List<TestMention> tests = mentions.tests(sentence.text());
    Set<String> cues = constants.tests(numbers);
    Set<String> above = paragraphTests.isEmpty() ? headingTests : paragraphTests;
    Said said =
        new Said(
            carried,
            sectionProduct != null || firmParagraph || asked != null,
            lastJoint,
            lastNamed,
            above,
            lastTests,
            sameParagraph ? lastStems : Map.of(),
            lastPair,
            topic,
            !paragraphNames,
            sameParagraph && soleBefore);
    List<ProductMention> ofPair = PairWords.resolved(sentence.text(), named, lastPair, carried);
    List<ProductMention> resolved = resolved(sentence.text(), named, ofPair, carried);
    if (named.isEmpty() && !ofPair.isEmpty()) {
      lastProduct = ofPair.get(0).product();
    }
    paragraphNames |= !resolved.isEmpty();
    if (isFragment(sentence.text(), named)) {
      asked = single(named);
    }
    @Nullable String only = single(named);
    soleBefore = only != null && only.equals(subject(sentence.text(), named));
    remember(sentence, named, resolved, tests, cues);
    return new Context(sentence, resolved, tests, cues, said);
  }

  /** "The Plover?", "And the Dunnock." – what follows is said of it. */
  private static boolean isFragment(String text, List<ProductMention> named) {
    return named.size() == 1
        && text.strip().split("\\s+").length <= 5
        && Wording.is(
            text.strip(),
            "(?is)(?:and |but |now |so |then )*(?:what about |how about |as for )?(?:the )?\\p{L}+(?: \\p{L}+)?[?.!:]");
  }

  /** A new heading: its product and test hold, and nothing that was said above it. */
  private void enterSection() {
    int above = lastHeading.lastIndexOf(" / ");
    String own = above < 0 ? lastHeading : lastHeading.substring(above + " / ".length());
    List<ProductMention> inHeading = mentions.products(own);
    sectionProduct = single(inHeading);
    lastProduct = sectionProduct;
    lastJoint = products(inHeading);
    headingTests =
        mentions
            .testCalled(own)
            .map(Set::of)
            .orElseGet(() -> titleOfMore(own) ? Set.of() : testsOf(mentions.tests(own)));
    if (headingTests.isEmpty() && inHeading.isEmpty()) {
      headingTests = testsOf(mentions.tests(above(lastHeading)));
    }
    lastTests = headingTests;
    lastNamed = Set.of();
    lastPair = lastJoint.size() == 2 ? List.copyOf(lastJoint) : List.of();
    topic = sectionProduct;
    paragraphTests = Set.of();
    lastParagraph = -1;
  }

  /** A text's title that names a test among other things does not say what the text is about. */
  private boolean titleOfMore(String heading) {
    boolean title = lastHeading.equals(heading);
    return title && Stems.ofAll(heading).size() > 2 * mentions.tests(heading).size();
  }

  /** The headings above, without the text's title when there are more. */
  private String above(String headings) {
    int title = headings.indexOf(" / ");
    return title < 0 && titleOfMore(headings) ? "" : headings.substring(Math.max(0, title));
  }

  private static @Nullable String single(List<ProductMention> named) {
    Set<String> products = new LinkedHashSet<>();
    named.forEach(m -> products.add(m.product()));
    return products.size() == 1 ? products.iterator().next() : null;
  }

  private static Set<String> testsOf(List<TestMention> tests) {
    return tests.stream()
        .map(TestMention::test)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static Set<String> products(List<ProductMention> named) {
    Set<String> all = new LinkedHashSet<>();
    named.forEach(m -> all.add(m.product()));
    return all.size() > 1 ? all : Set.of();
  }

  /**
   * "It" and "this one" stand for the sentence's subject so far, or for what was spoken of. In a
   * clause that names a product, "it" is something else: "in the Larch it was 2 L*".
   */
  private static List<ProductMention> resolved(
      String text,
      List<ProductMention> plain,
      List<ProductMention> ofPair,
      @Nullable String carried) {
    List<ProductMention> named = new ArrayList<>(plain);
    named.addAll(ofPair);
    named.sort(Comparator.comparingInt(ProductMention::start));
    List<ProductMention> all = new ArrayList<>(named);
    Clauses clauses = new Clauses(text);
    for (Mentions.Pronoun pronoun : Mentions.pronouns(text)) {
      List<ProductMention> before = named.stream().filter(m -> m.end() <= pronoun.start()).toList();
      boolean sameClause =
          before.stream().anyMatch(m -> clauses.at(m.start()) == clauses.at(pronoun.start()));
      @Nullable String product =
          before.isEmpty() ? carried : referent(text, before, pronoun, carried);
      boolean counts = pronoun.isRelative() ? !before.isEmpty() : !sameClause;
      boolean isOther =
          ofPair.stream().anyMatch(m -> m.start() < pronoun.end() && pronoun.start() < m.end());
      if (product != null && counts && !isOther) {
        all.add(new ProductMention(product, pronoun.start(), pronoun.end(), true));
      }
    }
    all.sort(Comparator.comparingInt(ProductMention::start));
    return all;
  }

  private static @Nullable String referent(
      String text,
      List<ProductMention> before,
      Mentions.Pronoun pronoun,
      @Nullable String carried) {
    if (pronoun.isRelative()) {
      return before.get(before.size() - 1).product();
    }
    @Nullable String subject = subject(text, before);
    if (subject != null) {
      return subject;
    }
    ProductMention only = before.get(before.size() - 1);
    boolean spokenOf = OBJECT.matcher(Wording.before(text, only.start())).matches();
    return spokenOf && single(before) != null ? only.product() : carried;
  }

  /** "I would not bother with the Plover: it runs hot". */
  private static final Pattern OBJECT =
      Pattern.compile("(?is).*\\b(with|for|of|about|on|to|at|from|by|in)\\s+(the\\s+)?$");

  private void remember(
      Sentence sentence,
      List<ProductMention> named,
      List<ProductMention> resolved,
      List<TestMention> tests,
      Set<String> cues) {
    resolved.stream()
        .filter(ProductMention::isPronoun)
        .findFirst()
        .ifPresent(m -> topic = m.product());
    if (!named.isEmpty()) {
      @Nullable String subject = subject(sentence.text(), named);
      boolean pronounFirst = resolved.get(0).isPronoun() && resolved.get(0).start() < 40;
      if (subject != null && pronounFirst) {
        lastProduct = resolved.get(0).product();
      } else if (subject != null) {
        lastProduct = subject;
      } else if (lastProduct == null) {
        lastProduct = named.get(0).product();
      }
      @Nullable String only = single(named);
      boolean ofThose =
          only != null && lastJoint.contains(only) && sentence.paragraph() == lastParagraph;
      lastJoint = ofThose ? lastJoint : products(named);
      lastPair = lastJoint.size() == 2 ? List.copyOf(lastJoint) : lastPair;
      lastNamed = recent(named);
      runInHead(sentence, named);
    }
    rememberTests(tests, cues);
    if (tests.isEmpty() && OVERALL.matcher(sentence.text()).find()) {
      lastTests = Set.of();
      paragraphTests = Set.of();
    }
    Map<String, Double> stems = new HashMap<>();
    if (sentence.paragraph() == lastParagraph) {
      lastStems.forEach((stem, weight) -> stems.put(stem, weight * 0.6));
    }
    Stems.ofAll(sentence.text()).forEach(s -> stems.put(s, 0.7));
    stems.values().removeIf(w -> w < 0.2);
    lastStems = stems;
    lastParagraph = sentence.paragraph();
  }

  /** What was named last, the two before included when the sentence names one only. */
  private Set<String> recent(List<ProductMention> named) {
    Set<String> all = new LinkedHashSet<>(named.stream().map(ProductMention::product).toList());
    if (all.size() == 1 && !lastNamed.isEmpty()) {
      List<String> before = new ArrayList<>(lastNamed);
      Set<String> both = new LinkedHashSet<>();
      both.add(before.get(before.size() - 1));
      both.removeAll(all);
      both.addAll(all);
      return both;
    }
    return all;
  }

  /** Words after which no single test is spoken of. */
  private static final Pattern OVERALL =
      Pattern.compile(
          "\\b(?:overall|final (?:scores?|ranking|standings?|tally|result)|total scores?|in total|all in all|altogether|the (?:ranking|verdict|standings))\\b",
          Pattern.CASE_INSENSITIVE);

  /** A sentence that lists every test speaks of none. */
  private static final int LISTING = 4;

  private void rememberTests(List<TestMention> tests, Set<String> cues) {
    if (testsOf(tests).size() >= LISTING) {
      sentencesSinceTests++;
    } else if (!tests.isEmpty()) {
      lastTests = testsOf(tests);
      paragraphTests = lastTests;
      sentencesSinceTests = 0;
    } else if (!cues.isEmpty() && headingTests.isEmpty()) {
      lastTests = cues;
      paragraphTests = cues;
      sentencesSinceTests = 0;
    } else {
      sentencesSinceTests++;
      if (sectionProduct != null && sentencesSinceTests > 1) {
        paragraphTests = Set.of();
      }
    }
  }

  /** "**Rowan** — An uneven rack", "Rowan: an uneven rack": the paragraph is about it. */
  private void runInHead(Sentence sentence, List<ProductMention> named) {
    ProductMention first = named.get(0);
    boolean opens =
        sentence.paragraph() != lastParagraph
            && Wording.is(
                sentence.text().substring(0, first.start()),
                "(?is)[\\s\\d.)•*-]*(and\\s+|but\\s+)?(the\\s+)?");
    boolean mark =
        Wording.is(
            sentence.text().substring(first.end()),
            "(?is)^\\s*(?:\\([^)]*\\)\\s*)?[—–:].*|^\\s*\\.\\s*");
    boolean alone = named.stream().allMatch(m -> m.product().equals(first.product()));
    if (opens && (mark || alone)) {
      paragraphProduct = first.product();
      firmParagraph = mark || sentence.role() == Role.ITEM;
    } else if (!firmParagraph
        && paragraphProduct != null
        && !paragraphProduct.equals(first.product())
        && Wording.is(
            sentence.text().substring(0, first.start()),
            "(?is)\\s*(and |but |then |meanwhile |now |okay |next )?(comes? )?(the\\s+)?")) {
      paragraphProduct = null;
    }
  }

  /** "Only the Rowan and the Larch": what is joined to an aside is one too. */
  private static boolean isAside(String text, List<ProductMention> named, ProductMention mention) {
    int at = named.indexOf(mention);
    boolean joined =
        at > 0
            && Wording.is(
                text.substring(named.get(at - 1).end(), mention.start()),
                "(?is)\\s*(?:,|and|or|,\\s*and|&)\\s*(?:the\\s+)?");
    return ASIDE.matcher(Wording.before(text, mention.start())).matches()
        || joined && isAside(text, named, named.get(at - 1));
  }

  /**
   * The first product named is what the next "it" stands for, unless it only stands after "than";
   * after a semicolon the one named there. Null when all are only compared with.
   */
  private static @Nullable String subject(String text, List<ProductMention> named) {
    List<ProductMention> subjects = named.stream().filter(m -> !isAside(text, named, m)).toList();
    for (ProductMention mention : named) {
      if (TOPIC.matcher(Wording.before(text, mention.start())).matches()) {
        return mention.product();
      }
    }
    if (subjects.isEmpty()) {
      return null;
    }
    int semicolon = text.lastIndexOf(';');
    for (ProductMention mention : subjects) {
      if (semicolon >= 0 && mention.start() > semicolon) {
        return mention.product();
      }
    }
    return subjects.get(0).product();
  }
}
