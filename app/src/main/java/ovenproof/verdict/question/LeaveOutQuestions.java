package ovenproof.verdict.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.function.Function;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Rating;
import ovenproof.core.ranking.RankSet;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.LeaveOneOut;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.core.scoring.TestWorth;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.Measured;
import ovenproof.verdict.CampaignViews;
import ovenproof.verdict.VerdictService;

/** The verdict with something left out: a test, a run, an assessor, a product. */
final class LeaveOutQuestions {
  private final AskedVerdict asked;

  LeaveOutQuestions(AskedVerdict asked) {
    this.asked = asked;
  }

  /** The verdict without each test. */
  QuestionAnswer dropTests() {
    return dropped(
        "drop-test", "Without one test", LeaveOneOut.tests(asked.scoringCase(), asked.threads()));
  }

  /** The verdict without each run; only runs that change something are listed. */
  QuestionAnswer dropRuns() {
    List<LeaveOneOut.Outcome> all = LeaveOneOut.runs(asked.scoringCase(), asked.threads());
    List<LeaveOneOut.Outcome> telling = all.stream().filter(LeaveOneOut.Outcome::decides).toList();
    QuestionAnswer answer = dropped("drop-run", "Without one run", telling);
    List<String> sentences = new ArrayList<>(answer.sentences());
    sentences.add(telling.size() + " of " + all.size() + " runs decide a tier or the first place.");
    return new QuestionAnswer(
        answer.id(), answer.title(), answer.columns(), answer.rows(), sentences);
  }

  /**
   * The verdict without each assessor.
   *
   * @param measure measures a changed campaign again
   */
  QuestionAnswer dropAssessors(Function<Campaign, Measured> measure) {
    List<LeaveOneOut.Outcome> outcomes = new ArrayList<>();
    for (String assessor :
        new TreeSet<>(asked.campaign().ratings().stream().map(Rating::assessor).toList())) {
      Campaign without = CampaignViews.withoutAssessor(asked.campaign(), assessor);
      ScoringCase changed = VerdictService.scoringCase(without, measure.apply(without));
      outcomes.add(LeaveOneOut.outcome(assessor, asked.result(), changed, asked.threads()));
    }
    return dropped("drop-assessor", "Without one assessor", outcomes);
  }

  private QuestionAnswer dropped(String id, String title, List<LeaveOneOut.Outcome> outcomes) {
    List<List<Object>> rows = new ArrayList<>();
    for (LeaveOneOut.Outcome outcome : outcomes) {
      String tiers = tiers(outcome);
      rows.add(
          List.of(
              asked.nodeLabel(outcome.without()),
              outcome.first().isEmpty() ? "nobody" : asked.label(outcome.first()),
              outcome.winner() == LeaveOneOut.Winner.STAYS ? "stays" : "changes",
              tiers.isEmpty() ? "as they are" : tiers));
    }
    return new QuestionAnswer(
        id,
        title,
        List.of("without", "first then", "first place", "tiers"),
        rows,
        rows.isEmpty() ? List.of("Nothing to leave out, or nothing moves.") : List.of());
  }

  /** Which boundaries between neighbours go and which come; who loses or gains a rank. */
  private String tiers(LeaveOneOut.Outcome outcome) {
    List<String> words = new ArrayList<>();
    for (LeaveOneOut.Neighbours pair : outcome.joined()) {
      words.add(asked.label(pair.above()) + " and " + asked.label(pair.below()) + " in one tier");
    }
    for (LeaveOneOut.Neighbours pair : outcome.split()) {
      words.add(asked.label(pair.above()) + " and " + asked.label(pair.below()) + " in two tiers");
    }
    outcome.tiers().entrySet().stream()
        .filter(e -> e.getValue().contains("unranked"))
        .forEach(e -> words.add(asked.label(e.getKey()) + " " + e.getValue()));
    if (words.isEmpty()) {
      outcome.tiers().forEach((id, move) -> words.add(asked.label(id) + " " + move));
    }
    return String.join("; ", words);
  }

  /** Which test earns its cost, and which repeats another. Minutes are run time on the bench. */
  QuestionAnswer worth() {
    List<List<Object>> rows = new ArrayList<>();
    for (TestWorth worth :
        TestWorth.of(asked.scoringCase(), asked.benchMinutes(), asked.threads())) {
      rows.add(
          List.of(
              asked.nodeLabel(worth.test()),
              worth.separationsLost(),
              worth.winner() == LeaveOneOut.Winner.STAYS ? "stays" : "changes",
              Double.isNaN(worth.minutes())
                  ? "not recorded"
                  : String.format(Locale.ROOT, "%.0f min", worth.minutes()),
              Double.isNaN(worth.rankCorrelation())
                  ? "too few products"
                  : String.format(
                      Locale.ROOT,
                      "%s (%.2f)",
                      asked.nodeLabel(worth.repeats()),
                      worth.rankCorrelation())));
    }
    return new QuestionAnswer(
        "worth",
        "Which test earns its cost",
        List.of("test", "separations lost", "first place", "bench time", "most alike (Spearman)"),
        rows,
        List.of(
            "Separations lost: pairs that the verdict tells apart only with this test. A test that"
                + " loses none and orders products like another may be dropped next time."));
  }

  /**
   * The field without a product that was withdrawn: tiers and ranks of the others anew, by the same
   * runs. Its own score is no longer compared with anyone; what was frozen keeps it.
   *
   * @throws InputException if there is no such product or it is the only one
   */
  QuestionAnswer withdrawn(String gone) {
    ProductScore withdrawn = asked.product(gone);
    List<Candidate> left =
        asked.scoringCase().products().stream().filter(p -> !p.id().equals(gone)).toList();
    if (left.isEmpty()) {
      throw new InputException(
          Problem.error(
              Place.of("products.csv"), "only " + withdrawn.label(), "a product that stays", ""));
    }
    ScoringResult without = Scoring.score(asked.scoringCase().withProducts(left), asked.threads());
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore now : without.products()) {
      ProductScore then = asked.product(now.id());
      rows.add(
          List.of(
              now.label(),
              AnswerWords.text(then.total()).equals(AnswerWords.text(now.total()))
                  ? asked.published(now.id())
                  : AnswerWords.fromTo(
                      AnswerWords.text(then.total()), AnswerWords.text(now.total())),
              AnswerWords.fromTo(tier(then), tier(now)),
              AnswerWords.fromTo(rank(then), rank(now))));
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        withdrawn.label()
            + " scored "
            + asked.published(gone)
            + " and leaves the comparison; its runs, evidence and frozen verdicts stay as they are.");
    sentences.add(
        "Scores stand on fixed anchors, so they stay; tiers and ranks may move, because the margin is"
            + " that of a smaller field and the deviation between runs is pooled over those left.");
    return new QuestionAnswer(
        "withdrawn",
        "Without " + withdrawn.label() + ", which was withdrawn",
        List.of("product", "score", "tier", "rank"),
        rows,
        sentences);
  }

  private static String tier(ProductScore product) {
    Integer tier = product.tier();
    return tier == null ? "unranked" : tier.toString();
  }

  private static String rank(ProductScore product) {
    RankSet rank = product.rank();
    if (rank == null) {
      return "unranked";
    }
    return rank.low() == rank.high() ? "" + rank.low() : rank.low() + "–" + rank.high();
  }
}
