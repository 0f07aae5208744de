package ovenproof.verdict.question;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import ovenproof.core.scoring.Attribution;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.ScoringCase;

/** Why totals are not what they were. */
final class MovedQuestion {
  private final AskedVerdict asked;

  MovedQuestion(AskedVerdict asked) {
    this.asked = asked;
  }

  /**
   * Why totals moved between an earlier state of the campaign and now.
   *
   * @param earlier the case then
   * @param since what "then" is, in words
   */
  QuestionAnswer moved(ScoringCase earlier, String since) {
    List<List<Object>> rows = new ArrayList<>();
    List<String> sentences = new ArrayList<>();
    for (ProductScore product : asked.result().products()) {
      try {
        Attribution attribution = Attribution.of(earlier, asked.scoringCase(), product.id());
        String causes =
            attribution.causes().stream()
                .filter(c -> Math.abs(c.points()) >= 0.005)
                .map(c -> asked.nodeLabel(c.what()) + " " + AnswerWords.signed(c.points()))
                .collect(Collectors.joining(", "));
        BigDecimal move = attribution.after().subtract(attribution.before());
        rows.add(
            List.of(
                product.label(),
                attribution.before().toString(),
                attribution.after().toString(),
                AnswerWords.signed(move.doubleValue()),
                causes.isEmpty() ? "nothing" : causes));
      } catch (IllegalArgumentException e) {
        sentences.add(product.label() + ": " + e.getMessage());
      }
    }
    sentences.add(
        "Each cause has its Shapley value: its effect averaged over every order in which the causes"
            + " could have happened. They add up to the displayed difference, rounding included.");
    return new QuestionAnswer(
        "moved",
        "What moved since " + since,
        List.of("product", "then", "now", "difference", "because of"),
        rows,
        sentences);
  }
}
