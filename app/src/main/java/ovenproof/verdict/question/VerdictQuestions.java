package ovenproof.verdict.question;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import ovenproof.campaign.Campaign;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.input.InputException;
import ovenproof.measure.Measured;
import ovenproof.verdict.CampaignViews;
import ovenproof.verdict.VerdictService;
import ovenproof.verdict.VerdictService.Scored;

/** The questions that a lead asks of one verdict. */
public final class VerdictQuestions {
  private final AskedVerdict asked;

  /**
   * @param threads for scoring again; does not change a digit
   */
  public VerdictQuestions(Campaign campaign, Scored scored, int threads) {
    asked = new AskedVerdict(campaign, scored, threads);
  }

  /** Why one product stands above another: test by test, adding up to the displayed difference. */
  public QuestionAnswer why(String first, String second) {
    return new PairQuestions(asked).why(first, second);
  }

  /** How many more runs would split two products. */
  public QuestionAnswer moreRuns(String first, String second) {
    return new PairQuestions(asked).moreRuns(first, second);
  }

  /** What would unseat the winner. */
  public QuestionAnswer unseat() {
    return new WeightQuestions(asked).unseat();
  }

  /** Totals under the weights of every reader that the method names. */
  public QuestionAnswer profiles() {
    return new WeightQuestions(asked).profiles();
  }

  /**
   * How often each product takes each place when weights are uncertain.
   *
   * @param concentration of the Dirichlet distribution around the declared weights; the higher, the
   *     closer to them
   */
  public QuestionAnswer acceptability(double concentration) {
    return new WeightQuestions(asked).acceptability(concentration);
  }

  /** Each product's own deviation between runs, pulled towards the field, beside the pooled one. */
  public QuestionAnswer spread() {
    return new SpreadQuestion(asked).spread();
  }

  /** The verdict without each test. */
  public QuestionAnswer dropTests() {
    return new LeaveOutQuestions(asked).dropTests();
  }

  /** The verdict without each run; only runs that change something are listed. */
  public QuestionAnswer dropRuns() {
    return new LeaveOutQuestions(asked).dropRuns();
  }

  /**
   * The verdict without each assessor.
   *
   * @param measure measures a changed campaign again
   */
  public QuestionAnswer dropAssessors(Function<Campaign, Measured> measure) {
    return new LeaveOutQuestions(asked).dropAssessors(measure);
  }

  /** Which test earns its cost, and which repeats another. Minutes are run time on the bench. */
  public QuestionAnswer worth() {
    return new LeaveOutQuestions(asked).worth();
  }

  /**
   * The field without a product that was withdrawn.
   *
   * @throws InputException if there is no such product or it is the only one
   */
  public QuestionAnswer withdrawn(String gone) {
    return new LeaveOutQuestions(asked).withdrawn(gone);
  }

  /** Value for money at the latest dated prices. */
  public QuestionAnswer value() {
    return new PriceQuestions(asked).value();
  }

  /** What prices alone moved since a day. */
  public QuestionAnswer prices(LocalDate since) {
    return new PriceQuestions(asked).prices(since);
  }

  /**
   * Why totals moved between an earlier state of the campaign and now.
   *
   * @param earlier the case then
   * @param since what "then" is, in words
   */
  public QuestionAnswer moved(ScoringCase earlier, String since) {
    return new MovedQuestion(asked).moved(earlier, since);
  }

  /** The case of the campaign as it was known at the end of a day in its own time zone. */
  public static ScoringCase asOf(
      Campaign campaign, LocalDate day, Function<Campaign, Measured> measure) {
    Campaign then =
        CampaignViews.asOf(
            campaign, day.plusDays(1).atStartOfDay(campaign.info().zone()).toInstant());
    return VerdictService.scoringCase(then, measure.apply(then));
  }

  /**
   * A "suited to" list.
   *
   * @param rules such as {@code toast:first-tier}, {@code cakes>=7}, {@code no-gate}
   * @throws InputException if a rule cannot be read or names no test
   */
  public QuestionAnswer suited(List<String> rules) {
    return new SuitedQuestion(asked).suited(rules);
  }
}
