package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * How many: "eight ovens", "none reached 230 °C", "three of the eight took over 40 minutes", "the
 * only oven that", "all stayed under 90 °C".
 */
final class QuantifierReader implements ClaimReader {
  private static final String PRODUCTS =
      "(?:ovens?|products?|models?|machines?|appliances?|toasters?|fryers?|air fryers?|contenders?|units)";
  private static final String NUMBER =
      "\\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|a dozen";
  private static final Pattern OF_FIELD =
      Pattern.compile(
          "\\b(?:(?<none>none of (?:them|the (?:\\w+ )?"
              + PRODUCTS
              + "|the (?:"
              + NUMBER
              + "))|no (?:other )?"
              + PRODUCTS
              + "|not one|nothing)"
              + "|(?<all>(?:all|every one) (?:of )?(?:them|the "
              + PRODUCTS
              + "|(?:the )?(?:"
              + NUMBER
              + ")(?: "
              + PRODUCTS
              + ")?)|every "
              + PRODUCTS
              + "|each "
              + PRODUCTS
              + ")"
              + "|(?:only )?(?<some>"
              + NUMBER
              + ") (?:of|out of) (?:the |our )?(?<total>"
              + NUMBER
              + ")?(?: ?"
              + PRODUCTS
              + ")?"
              + "|(?<only>(?:the )?only (?:one |"
              + PRODUCTS
              + " )(?:of (?:the )?(?:"
              + NUMBER
              + ")(?: "
              + PRODUCTS
              + ")? )?(?:that|to|which)))",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern FIELD_SIZE =
      Pattern.compile(
          "\\b(?<n>" + NUMBER + ")\\s+(?:\\p{L}+\\s+){0,2}?" + PRODUCTS + "\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern REACH =
      Pattern.compile(
          "\\b(reach(?:ed|es)?|exceed(?:ed|s)?|pass(?:ed|es)?|hit|hits|got to|gets to|make|made|topped|got above|went over|went above|climbed to|managed|manages?)\\s*$",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;
  private final FigureSearch search;

  QuantifierReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = OF_FIELD.matcher(sentence.text());
    while (matcher.find()) {
      total(sentence, matcher);
      predicate(sentence, matcher);
    }
    readFieldSize(sentence);
  }

  private void total(SentenceClaims sentence, Matcher matcher) {
    String total = matcher.group("total");
    if (total != null && number(total) != size()) {
      sentence.add(
          matcher.start("total"),
          matcher.end("total"),
          Kind.COUNT,
          Finding.CONTRADICTED,
          total,
          Integer.toString(size()),
          List.of("products compared"),
          size() + " were compared");
    }
  }

  private void readFieldSize(SentenceClaims sentence) {
    Matcher matcher = FIELD_SIZE.matcher(sentence.text());
    while (matcher.find()) {
      String before = sentence.text().substring(0, matcher.start());
      boolean whole =
          !before.matches(
                  "(?is).*\\b(of|other|than|only|next|top|best|first|last|these|those|per)\\s+$")
              || before.matches("(?is).*\\b(all|of (?:the|our)|of)\\s+$");
      if (whole && sentence.isFree(matcher.start(), matcher.end())) {
        int stated = number(matcher.group("n"));
        boolean partial =
            stated < size()
                && !before.matches(
                    "(?is).*\\b(all|the|our|tested|compared|measured|bought)\\s+(?:\\w+\\s+)?$");
        Finding finding =
            stated == size() ? Finding.SUPPORTED : partial ? Finding.UNCLEAR : Finding.CONTRADICTED;
        sentence.add(
            matcher.start(),
            matcher.end(),
            Kind.COUNT,
            finding,
            matcher.group(),
            Integer.toString(size()),
            List.of("products compared"),
            size() + " were compared");
      }
    }
  }

  /** What follows must say something that can be counted: a limit in a unit. */
  private void predicate(SentenceClaims sentence, Matcher matcher) {
    Optional<NumberPhrase> limit =
        sentence.freeNumbers().stream()
            .filter(
                n ->
                    n.start() >= matcher.end()
                        && (n.unit() != null
                            || n.scale() == Scale.DEGREES
                            || n.scale() == Scale.OUT_OF_TEN))
            .findFirst();
    if (limit.isEmpty() || limit.get().start() - matcher.end() > 80) {
      return;
    }
    NumberPhrase number = limit.get();
    String between = sentence.text().substring(matcher.end(), number.start());
    boolean negated =
        between.matches(
            "(?is).*\\b(not|n't|never|failed to|fails to|couldn't|could not|did not|didn't)\\b.*");
    List<Figure> field = field(sentence, number);
    if (field.isEmpty()) {
      return;
    }
    Counted counted = count(field, number, REACH.matcher(between.strip()).find());
    int holding = negated ? counted.no : counted.yes;
    judge(sentence, matcher, number, counted, holding);
  }

  private void judge(
      SentenceClaims sentence, Matcher matcher, NumberPhrase number, Counted counted, int holding) {
    int stated =
        matcher.group("none") != null
            ? 0
            : matcher.group("all") != null
                ? counted.yes + counted.no + counted.open
                : matcher.group("only") != null ? 1 : number(matcher.group("some"));
    boolean holds = holding == stated && counted.open == 0;
    if (holds && matcher.group("only") != null) {
      String subject = sentence.context().productAt(matcher.start());
      holds = subject == null || counted.which.contains(subject);
    }
    boolean open = !holds && counted.open > 0 && Math.abs(holding - stated) <= counted.open;
    Finding finding = holds ? Finding.SUPPORTED : open ? Finding.UNCLEAR : Finding.CONTRADICTED;
    String expected = holding + " of " + (counted.yes + counted.no + counted.open);
    String names =
        counted.which.isEmpty()
            ? ""
            : ": " + String.join(", ", counted.which.stream().map(this::name).toList());
    sentence.add(
        matcher.start(),
        number.end(),
        Kind.COUNT,
        finding,
        sentence.text().substring(matcher.start(), number.end()),
        expected,
        counted.evidence,
        expected + names);
  }

  /**
   * How a field divides at a limit.
   *
   * @param open products whose bounds leave it open
   */
  private record Counted(int yes, int no, int open, List<String> which, List<String> evidence) {}

  private Counted count(List<Figure> field, NumberPhrase limit, boolean reach) {
    int yes = 0;
    int no = 0;
    int open = 0;
    List<String> which = new ArrayList<>();
    NumberPhrase asked =
        reach && limit.hedge() == Hedge.PLAIN ? hedged(limit, Hedge.AT_LEAST) : limit;
    for (Figure figure : field) {
      Finding finding = Judge.rule(asked, figure, unit(limit)).finding();
      if (finding == Finding.SUPPORTED) {
        yes++;
        which.add(figure.product());
      } else if (finding == Finding.CONTRADICTED) {
        no++;
      } else {
        open++;
      }
    }
    return new Counted(yes, no, open, which, field.get(0).evidence().subList(0, 1));
  }

  private static NumberPhrase hedged(NumberPhrase n, Hedge hedge) {
    return new NumberPhrase(
        n.start(),
        n.end(),
        n.low(),
        n.high(),
        n.decimals(),
        n.step(),
        n.unit(),
        n.scale(),
        hedge,
        n.text());
  }

  private static @Nullable Unit unit(NumberPhrase number) {
    return number.scale() == Scale.DEGREES ? Unit.CELSIUS : number.unit();
  }

  private List<Figure> field(SentenceClaims sentence, NumberPhrase number) {
    Dimension dimension =
        number.scale() == Scale.OUT_OF_TEN
            ? Dimension.POINTS
            : Objects.requireNonNullElse(unit(number), Unit.ONE).dimension();
    String first = figures.campaign().products().get(0).id();
    List<Figure> best =
        search.best(
            sentence.context(),
            first,
            f ->
                f.unit() != null
                    && f.unit().dimension() == dimension
                    && (dimension == Dimension.POINTS) == f.isScore());
    return best.isEmpty() ? List.of() : search.field(best.get(0));
  }

  private int size() {
    return figures.campaign().products().size();
  }

  private static int number(String word) {
    if (word.matches("\\d{1,6}")) {
      return Integer.parseInt(word);
    }
    List<String> words =
        List.of(
            "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
            "eleven", "twelve");
    int index = words.indexOf(word.toLowerCase(Locale.ROOT));
    return index >= 0 ? index : 12;
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
