package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Rating;
import ovenproof.method.TestPlan;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.verdict.Verdict;

/** How much was done: "six tasters", "144 runs", "three times each", "six tests", "nine cakes". */
final class CountReader implements ClaimReader {
  private static final Pattern AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:counted\\s+|trained\\s+|blind\\s+|separate\\s+|different\\s+|cooking\\s+|scored\\s+)?(?:(?<tasters>tasters?|assessors?|panell?ists?|people (?:tasted|at the table|sat))|(?<runs>runs?)\\b(?! (?:of|each|per|apiece|a))|(?<tests>tests|disciplines)|(?<each>times\\b|runs (?:each|per|apiece|a)|runs of each|replicates)|(?<tiers>tiers?))\\b.*");
  private static final Pattern TIMES_SUBJECT =
      Pattern.compile(
          "(?is).*\\b(run|ran|repeated|cooked|baked|tested|done|did|carried out|every|each|everything)\\b.*");
  private static final Pattern NO_COUNT =
      Pattern.compile("(?is).*\\b(of|first|last|other|next|only|these|those|the|best|worst)\\s*$");

  private final Campaign campaign;
  private final Verdict verdict;

  CountReader(Figures figures) {
    this.campaign = figures.campaign();
    this.verdict = figures.verdict();
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean plain =
          number.unit() == null
              && number.decimals() == 0
              && !number.isRange()
              && (number.scale() == Scale.NONE || number.scale() == Scale.TIMES);
      if (plain) {
        read(sentence, number);
      }
    }
  }

  private void read(SentenceClaims sentence, NumberPhrase number) {
    boolean times = number.scale() == Scale.TIMES;
    String after = (times ? "times" : "") + Wording.after(sentence.text(), number.end());
    Matcher matcher = AFTER.matcher(after);
    if (!matcher.matches()) {
      return;
    }
    String before = Wording.before(sentence.text(), number.start());
    if (matcher.group("each") != null) {
      boolean more =
          Wording.is(after, "(?is)^times\\s*(as|more|the|faster|longer|slower|hotter|its)\\b.*");
      if (!more && TIMES_SUBJECT.matcher(sentence.text()).matches()) {
        claim(sentence, number, replicates(), "runs of each test");
      }
    } else if (matcher.group("tasters") != null
        && !Wording.is(before, "(?is).*\\b(of|other|only)\\s*$")) {
      claim(sentence, number, Set.of(tasters()), "tasters");
    } else if (matcher.group("runs") != null && number.low() > 12) {
      claim(sentence, number, runs(), "runs");
    } else if (matcher.group("tests") != null && !NO_COUNT.matcher(before).matches()) {
      claim(sentence, number, tests(), "tests");
    } else if (matcher.group("tiers") != null && Wording.is(after, "(?is)^\\s*tiers\\b.*")) {
      claim(sentence, number, Set.of(tiers()), "tiers");
    }
  }

  private static void claim(
      SentenceClaims sentence, NumberPhrase number, Set<Integer> right, String what) {
    if (right.isEmpty() || right.equals(Set.of(0))) {
      return;
    }
    String expected =
        String.join(" or ", new TreeSet<>(right).stream().map(String::valueOf).toList());
    boolean holds = right.stream().anyMatch(r -> Judge.holds(number, r, null));
    sentence.add(
        number.start(),
        number.end(),
        Kind.COUNT,
        holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
        number.text(),
        expected,
        List.of("campaign: " + what),
        String.format(Locale.ROOT, "%s: %s", what, expected));
  }

  private Set<Integer> replicates() {
    Set<Integer> found = new TreeSet<>();
    for (TestPlan test : campaign.method().tests()) {
      if (test.replicates() > 0) {
        found.add(test.replicates());
      }
    }
    return found;
  }

  private int tasters() {
    return (int) campaign.ratings().stream().map(Rating::assessor).distinct().count();
  }

  private Set<Integer> runs() {
    return Set.of(campaign.runs().size(), campaign.countedRuns().size());
  }

  private Set<Integer> tests() {
    List<TestPlan> tests = campaign.method().tests();
    return Set.of(tests.size(), (int) tests.stream().filter(t -> t.replicates() > 0).count());
  }

  private int tiers() {
    return (int)
        verdict.products().stream().map(p -> p.tier()).filter(t -> t != null).distinct().count();
  }
}
