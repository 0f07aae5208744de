package ovenproof.verdict.question;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.RankAcceptability;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.Unseating;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Method;

/** What other weights would do, with the measurements as they are. */
final class WeightQuestions {
  private static final int SAMPLES = 10_000;

  private final AskedVerdict asked;

  WeightQuestions(AskedVerdict asked) {
    this.asked = asked;
  }

  /** What would unseat the winner. */
  QuestionAnswer unseat() {
    ProductScore winner = winner();
    List<List<Object>> rows = new ArrayList<>();
    List<Unseating.Change> changes = new ArrayList<>();
    for (ProductScore rival : asked.result().products()) {
      if (!rival.id().equals(winner.id()) && rival.total().scored()) {
        changes.add(Unseating.change(asked.scoringCase(), winner.id(), rival.id()));
      }
    }
    changes.sort(
        Comparator.comparingDouble(
            c -> Double.isNaN(c.moved()) ? Double.POSITIVE_INFINITY : c.moved()));
    for (Unseating.Change change : changes) {
      rows.add(
          List.of(
              asked.label(change.rival()),
              Double.isNaN(change.moved()) ? "never" : AnswerWords.percent(change.moved()),
              how(change.how()),
              moves(change)));
    }
    return new QuestionAnswer(
        "unseat",
        "What would unseat " + winner.label(),
        List.of("rival", "weight moved", "found by", "how"),
        rows,
        List.of(
            "The share of all weight that must change place for a rival to draw level, scores as"
                + " they are.",
            "A linear program finds the least there is; a search may miss a smaller change."));
  }

  private static String how(Unseating.How how) {
    return switch (how) {
      case LINEAR_PROGRAM -> "linear program";
      case SEARCH -> "search";
      case IMPOSSIBLE -> "no weights do it";
    };
  }

  private String moves(Unseating.Change change) {
    return change.after().entrySet().stream()
        .filter(e -> Math.abs(e.getValue() - before(change, e.getKey())) > 5e-4)
        .map(
            e ->
                asked.nodeLabel(e.getKey())
                    + " "
                    + AnswerWords.percent(before(change, e.getKey()))
                    + " → "
                    + AnswerWords.percent(e.getValue()))
        .collect(Collectors.joining(", "));
  }

  private static double before(Unseating.Change change, String node) {
    return change.before().getOrDefault(node, 0.0);
  }

  private ProductScore winner() {
    return asked.result().products().stream()
        .filter(p -> p.total().scored())
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of("verdict"), "no product with a score", "at least one", "")));
  }

  /** Totals under the weights of every reader that the method names. */
  QuestionAnswer profiles() {
    List<String> columns = new ArrayList<>(List.of("product", "the method's own"));
    List<List<NodeScore>> totals = new ArrayList<>();
    List<String> leaders = new ArrayList<>();
    for (Method.Profile profile : asked.campaign().method().profiles()) {
      List<NodeScore> points = Scoring.points(asked.scoringCase().withParts(profile.parts()));
      columns.add(profile.name());
      totals.add(points);
      leaders.add(leader(profile.name(), points));
    }
    List<String> ids = asked.scoringCase().products().stream().map(p -> p.id()).toList();
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : asked.result().products()) {
      List<Object> row =
          new ArrayList<>(List.of(product.label(), AnswerWords.text(product.total())));
      totals.forEach(points -> row.add(AnswerWords.text(points.get(ids.indexOf(product.id())))));
      rows.add(row);
    }
    leaders.add(
        leaders.isEmpty()
            ? "The method names no other readers; profiles in method.yaml do."
            : "The whole verdict of a reader, with intervals and tiers: --profile.");
    return new QuestionAnswer("profiles", "For other readers", columns, rows, leaders);
  }

  private String leader(String reader, List<NodeScore> points) {
    double best = Double.NEGATIVE_INFINITY;
    List<String> first = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      double shown = AnswerWords.shown(points.get(i));
      if (points.get(i).scored() && shown >= best) {
        if (shown > best) {
          first.clear();
        }
        best = shown;
        first.add(asked.scoringCase().products().get(i).label());
      }
    }
    return reader + ": " + (first.isEmpty() ? "nobody" : String.join(" and ", first)) + " first.";
  }

  /** How often each product takes each place when weights are uncertain. */
  QuestionAnswer acceptability(double concentration) {
    RankAcceptability ranks = RankAcceptability.of(asked.scoringCase(), concentration, SAMPLES);
    List<String> columns = new ArrayList<>(List.of("product"));
    for (int place = 1; place <= ranks.products().size(); place++) {
      columns.add(String.valueOf(place));
    }
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : asked.result().products()) {
      int index = ranks.products().indexOf(product.id());
      if (index >= 0) {
        List<Object> row = new ArrayList<>(List.of(product.label()));
        ranks.places().get(index).forEach(share -> row.add(AnswerWords.percent(share)));
        rows.add(row);
      }
    }
    return new QuestionAnswer(
        "acceptability",
        "Places under other weights",
        columns,
        rows,
        List.of(
            SAMPLES
                + " sets of weights, Dirichlet around the declared ones with concentration "
                + concentration
                + "; measurements as they are: this is about taste, not about error."));
  }
}
