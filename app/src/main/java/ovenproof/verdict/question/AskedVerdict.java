package ovenproof.verdict.question;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.core.scoring.ValueNode;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService.Scored;
import ovenproof.verdict.VerdictText;

/**
 * The verdict that is asked about, with the names that an answer calls things by.
 *
 * @param threads for scoring again; does not change a digit
 */
record AskedVerdict(Campaign campaign, Scored scored, int threads) {

  ScoringCase scoringCase() {
    return scored.scoringCase();
  }

  ScoringResult result() {
    return scored.result();
  }

  Verdict verdict() {
    return scored.verdict();
  }

  /**
   * A product by its key.
   *
   * @throws InputException if there is none, with the keys there are
   */
  ProductScore product(String id) {
    List<String> known = result().products().stream().map(ProductScore::id).toList();
    return result()
        .product(id)
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of("products.csv"),
                        "no product \"" + id + "\"",
                        "one of " + String.join(", ", known),
                        NearestWord.remedy(id, known))));
  }

  /** The name of a product; a key that is none of the field's stays as it is. */
  String label(String product) {
    return result().product(product).map(ProductScore::label).orElse(product);
  }

  /** "Test, criterion" for a node of the tree; anything else as it is. */
  String nodeLabel(String node) {
    Optional<ValueNode> found = scoringCase().node(node);
    int slash = node.indexOf('/');
    if (found.isEmpty()) {
      return node;
    }
    String own = found.get().label();
    return slash < 0 ? own : nodeLabel(node.substring(0, slash)) + ", " + own;
  }

  /** A total in the words of the ranking. */
  String published(String product) {
    return verdict().products().stream()
        .filter(p -> p.id().equals(product))
        .map(p -> VerdictText.value(p.score()))
        .findFirst()
        .orElse("no score");
  }

  /** Minutes from start to last event of the runs of each test that have events. */
  Map<String, Double> benchMinutes() {
    Map<String, Double> minutes = new LinkedHashMap<>();
    for (Run run : campaign.runs()) {
      campaign.eventsOf(run.id()).stream()
          .mapToDouble(Event::elapsedSeconds)
          .max()
          .ifPresent(last -> minutes.merge(run.test(), last / 60, Double::sum));
    }
    return minutes;
  }
}
