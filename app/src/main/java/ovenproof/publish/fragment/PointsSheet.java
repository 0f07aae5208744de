package ovenproof.publish.fragment;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import ovenproof.campaign.Run;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Field;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.ForAndAgainst;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** For and against each product, with what was measured and in which runs. */
final class PointsSheet {
  private final Edition edition;

  PointsSheet(Edition edition) {
    this.edition = edition;
  }

  String text() {
    Findings findings = new Findings(edition);
    StringBuilder text = new StringBuilder();
    for (ProductVerdict product : edition.verdict().products()) {
      ForAndAgainst points = ForAndAgainst.of(edition, product);
      text.append(Markup.heading(findings.product(product))).append("For:\n\n");
      points(text, product, points.forIt(), Field.Side.FOR);
      text.append("\nAgainst:\n\n");
      points(text, product, points.against(), Field.Side.AGAINST);
      text.append('\n');
    }
    return text.toString();
  }

  private void points(
      StringBuilder text,
      ProductVerdict product,
      List<ForAndAgainst.Point> points,
      Field.Side side) {
    if (points.isEmpty()) {
      text.append("- nothing that these runs can show\n");
    }
    for (ForAndAgainst.Point point : points) {
      text.append(Markup.item(point.sentence()));
      String test = point.test();
      if (test != null) {
        evidence(text, product, point, test, side);
      }
    }
  }

  private void evidence(
      StringBuilder text,
      ProductVerdict product,
      ForAndAgainst.Point point,
      String test,
      Field.Side side) {
    // A limit of the test says itself what was measured.
    Optional<Node> node =
        product.test(test).filter(n -> point.sentence().startsWith(n.name() + ": "));
    String reasons =
        node.map(
                n ->
                    Field.reasons(edition, n, side).stream()
                        .map(Field.Reason::words)
                        .collect(Collectors.joining("; ")))
            .orElse("");
    if (!reasons.isEmpty()) {
      text.append("  ").append(Markup.item(reasons));
    }
    String runs =
        edition.countedRuns(product.id(), test).stream()
            .map(Run::id)
            .collect(Collectors.joining(", "));
    if (!runs.isEmpty()) {
      text.append("  ").append(Markup.item("Evidence: runs " + runs));
    }
  }
}
