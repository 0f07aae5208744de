package ovenproof.publish.fragment;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ovenproof.campaign.Campaign;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Field;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.Words;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/** Every figure that a narrator may need: as printed, then as spoken. */
final class NarrationSheet {
  /** What nobody says aloud: colours and marks have words of their own. */
  private static final List<Dimension> SAID =
      List.of(
          Dimension.TIME,
          Dimension.TEMPERATURE,
          Dimension.TEMPERATURE_DIFFERENCE,
          Dimension.MASS,
          Dimension.LENGTH,
          Dimension.VOLUME,
          Dimension.ENERGY,
          Dimension.POWER,
          Dimension.RATIO,
          Dimension.SOUND_LEVEL);

  private final Edition edition;
  private final Findings findings;

  NarrationSheet(Edition edition) {
    this.edition = edition;
    this.findings = new Findings(edition);
  }

  String text() {
    StringBuilder text = new StringBuilder("# Narration sheet\n\n");
    text.append(Markup.escaped(findings.headline())).append(".\n\n");
    text.append("The figure as printed, then as spoken.\n\n");
    for (ProductVerdict product : edition.verdict().products()) {
      text.append(Markup.heading(findings.product(product)));
      text.append(Markup.item("Score " + score(product.score())));
      edition.price(product.id()).ifPresent(p -> text.append(Markup.item(price(p))));
      for (Node test : product.tests()) {
        text.append(Markup.item(test.name() + ", " + score(test.score())));
        measured(test).forEach(m -> text.append("  ").append(Markup.item(m)));
      }
      text.append('\n');
    }
    return text.toString();
  }

  /** {@code 8.1: eight point one out of ten, the interval from 7.9 …}. */
  private static String score(Score score) {
    if (score.value() == null) {
      return Scores.words(score) + open(score);
    }
    String said = Spoken.number(score.value()) + " out of ten";
    return Scores.words(score) + ": " + qualified(score, said) + interval(score);
  }

  private static String qualified(Score score, String said) {
    return switch (score.known()) {
      case AT_MOST, AT_LEAST -> Scores.qualifier(score) + " " + said;
      case VALUE_ONLY -> said + ", from one run";
      case CANNOT_DO -> said + ", because it cannot do it";
      case BOUNDS -> "open, now " + said;
      case INTERVAL, NOT_ASKED, NONE -> said;
    };
  }

  private static String open(Score score) {
    return score.low() == null || score.high() == null
        ? ""
        : ": somewhere between "
            + Spoken.number(score.low())
            + " and "
            + Spoken.number(score.high())
            + " out of ten";
  }

  private static String interval(Score score) {
    return score.low() == null || score.high() == null || score.known() != Score.Known.INTERVAL
        ? ""
        : "; the interval runs from "
            + Spoken.number(score.low())
            + " to "
            + Spoken.number(score.high());
  }

  private static String price(Campaign.Price price) {
    return "Price "
        + Prices.text(price)
        + ": "
        + Spoken.money(java.math.BigDecimal.valueOf(price.amount()), price.currency())
        + ", seen on "
        + Spoken.day(price.on());
  }

  private static List<String> measured(Node test) {
    List<String> lines = new ArrayList<>();
    for (Node leaf : Field.leaves(test)) {
      Measurement mean = leaf.measurement();
      if (mean != null && SAID.contains(mean.unit().dimension()) && leaf.runs() > 0) {
        Dual dual = Figures.of(mean);
        if (!dual.first().equals("none")) {
          lines.add(line(leaf, mean, dual));
        }
      }
    }
    return lines;
  }

  /** Under the measure's own name: "mass kept" may be scored by what was lost. */
  private static String line(Node leaf, Measurement mean, Dual dual) {
    String other = Objects.requireNonNullElse(dual.second(), "");
    String of = mean.value() == null ? "" : "mean of ";
    String runs = leaf.runs() == 1 ? "one run" : of + Words.count(leaf.runs(), "run", "runs");
    return mean.label()
        + ", "
        + dual
        + ": "
        + Spoken.figure(dual.first())
        + (other.isEmpty() ? "" : ", or " + Spoken.figure(other))
        + " ("
        + runs
        + ")";
  }
}
