package ovenproof.publish.fragment;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.Method.Fact;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.Words;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;

/** All fragments of an edition, as text by file name. */
public final class Fragments {
  private final Edition edition;

  public Fragments(Edition edition) {
    this.edition = edition;
  }

  public Map<String, String> files() {
    ScoreTable table = new ScoreTable(edition, source());
    Map<String, String> files = new LinkedHashMap<>();
    files.put("table.html", table.html());
    files.put("table.md", table.markdown());
    files.put("table.tsv", table.tsv());
    files.put("facts.md", factsBoxes() + end());
    files.put("for-and-against.md", new PointsSheet(edition).text() + end());
    files.put("how-we-tested.md", howWeTested() + "\n" + end());
    files.put("captions.tsv", new CaptionSheet(edition).text());
    files.put("narration.md", new NarrationSheet(edition).text() + end());
    return files;
  }

  private String end() {
    return Markup.escaped(source()) + "\n";
  }

  /** Below every fragment: what it was computed from. */
  private String source() {
    return (edition.isInvented() ? "Invented: no such products exist. " : "")
        + edition.campaign().info().title()
        + ", method "
        + edition.campaign().method().version()
        + ", verdict "
        + edition.verdict().version()
        + ", "
        + Words.day(edition.published())
        + ". Scores of 10; two products of one tier are not shown to differ.";
  }

  static String price(Edition edition, String product) {
    return edition
        .price(product)
        .map(p -> Prices.text(p) + " on " + Words.day(p.on()))
        .orElse("not noted");
  }

  private String factsBoxes() {
    StringBuilder text = new StringBuilder();
    for (Campaign.Product product : edition.campaign().products()) {
      text.append(Markup.heading(product.name()));
      text.append(Markup.item("Price: " + price(edition, product.id())));
      for (Fact fact : edition.campaign().method().facts()) {
        Entry.effective(edition.campaign().facts()).stream()
            .filter(v -> v.product().equals(product.id()) && v.fact().equals(fact.id()))
            .reduce((first, second) -> second)
            .ifPresent(v -> text.append(Markup.item(fact(fact, v))));
      }
      text.append('\n');
    }
    return text.toString();
  }

  private static String fact(Fact fact, FactValue value) {
    String measured =
        value.measured() == null
            ? "not measured"
            : Figures.dual(value.measured(), Rounding.HALF_UP) + ", measured";
    String plate =
        value.nameplate() == null
            ? ""
            : "; nameplate " + Figures.dual(value.nameplate(), Rounding.HALF_UP) + off(value);
    return fact.name() + ": " + measured + plate;
  }

  /** {@code , 12 % less than it says}, when the nameplate is too far from what was measured. */
  private static String off(FactValue fact) {
    double share = fact.shareOffNameplate().orElse(0);
    String size = Rounding.HALF_UP.text(Math.abs(share) * 100, 0) + Figures.GAP + "%";
    return fact.isOffNameplate() ? ": measured " + size + (share < 0 ? " less" : " more") : "";
  }

  private String howWeTested() {
    StringBuilder text = new StringBuilder("## How we tested\n\n");
    text.append(Markup.escaped(new Findings(edition).summary() + listed())).append(' ');
    String disclosure = edition.campaign().info().disclosure();
    text.append(
        Markup.escaped(
            Objects.requireNonNullElse(
                disclosure, "How the appliances were acquired is not stated.")));
    text.append("\n\n");
    int all = edition.campaign().method().tests().stream().mapToInt(TestPlan::parts).sum();
    edition.campaign().method().tests().forEach(t -> text.append(Markup.item(how(t, all))));
    return text.toString();
  }

  private String listed() {
    int others = edition.campaign().runs().size() - edition.campaign().countedRuns().size();
    return others == 0
        ? ""
        : " The other "
            + (others == 1
                ? "one was a trial, void or redone; it is listed."
                : Words.number(others) + " were trials, void or redone; they are listed.");
  }

  private static String how(TestPlan test, int all) {
    String food = test.sample() == null ? "" : " (" + test.sample().food() + ")";
    String runs =
        test.replicates() == 0
            ? "from facts of each product"
            : Words.count(test.replicates(), "run", "runs") + " of each product";
    String why = test.why() == null ? "" : " " + test.why();
    return test.name()
        + food
        + ": "
        + runs
        + ", "
        + test.parts()
        + " of "
        + all
        + " parts of the total."
        + why;
  }
}
