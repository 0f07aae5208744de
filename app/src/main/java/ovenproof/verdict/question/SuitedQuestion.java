package ovenproof.verdict.question;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.scoring.SuitedTo;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.verdict.CaseKeys;

/** Lists of products that suit a purpose, as far as tiers and intervals support them. */
final class SuitedQuestion {
  private final AskedVerdict asked;

  SuitedQuestion(AskedVerdict asked) {
    this.asked = asked;
  }

  /**
   * A "suited to" list.
   *
   * @param rules such as {@code toast:first-tier}, {@code cakes>=7}, {@code no-gate}
   */
  QuestionAnswer suited(List<String> rules) {
    List<SuitedTo.Condition> conditions = rules.stream().map(this::condition).toList();
    SuitedTo.Result list = SuitedTo.of(asked.scoringCase(), conditions, asked.threads());
    List<List<Object>> rows = new ArrayList<>();
    list.suited().forEach(id -> rows.add(List.of(asked.label(id), "yes", "")));
    list.refused().forEach((id, why) -> rows.add(List.of(asked.label(id), "no", why)));
    return new QuestionAnswer(
        "suited",
        "Suited to: " + String.join(" and ", rules),
        List.of("product", "on the list", "because"),
        rows,
        List.of("A list refuses what the tiers and intervals do not support."));
  }

  private SuitedTo.Condition condition(String rule) {
    if (rule.equals("no-gate")) {
      return new SuitedTo.NoGate(CaseKeys.TOTAL);
    }
    if (rule.endsWith(":first-tier")) {
      return new SuitedTo.FirstTier(node(rule.substring(0, rule.indexOf(':')), rule));
    }
    int at = rule.indexOf(">=");
    try {
      if (at > 0) {
        double points = Double.parseDouble(rule.substring(at + 2).strip());
        return new SuitedTo.AtLeast(node(rule.substring(0, at).strip(), rule), points);
      }
    } catch (NumberFormatException e) {
      // Said below, with an example.
    }
    throw new InputException(
        Problem.error(
            Place.of("--suited"),
            "\"" + rule + "\"",
            "TEST:first-tier, TEST>=POINTS or no-gate",
            "for example toast:first-tier or total>=7"));
  }

  private String node(String word, String rule) {
    if (word.equals("total")) {
      return CaseKeys.TOTAL;
    }
    if (asked.scoringCase().node(word).isPresent()) {
      return word;
    }
    List<String> known = asked.campaign().method().tests().stream().map(t -> t.id()).toList();
    throw new InputException(
        Problem.error(
            Place.of("--suited"),
            "\"" + word + "\" in " + rule,
            "total or one of " + String.join(", ", known),
            NearestWord.remedy(word, known)));
  }
}
