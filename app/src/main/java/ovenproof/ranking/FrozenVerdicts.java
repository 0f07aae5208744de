package ovenproof.ranking;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionChange;
import ovenproof.publish.edition.EditionJson;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.verdict.Verdict;
import ovenproof.web.PageFields;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** Verdicts that were frozen, beside the one that stands now. */
final class FrozenVerdicts {
  private static final int SHOWN = 12;
  private final Desk desk;

  FrozenVerdicts(Desk desk) {
    this.desk = desk;
  }

  /** A frozen verdict and what moved since. */
  public record Line(
      long number, String when, String who, @Nullable String why, String headline, String since) {}

  void show(Workbench.Sheet sheet, @Nullable Verdict verdict, PageFields model) {
    List<Document> kept = desk.revisions(sheet.at().id(), Document.VERDICT);
    List<Line> lines = new ArrayList<>();
    for (Document d : kept.stream().limit(SHOWN).toList()) {
      FrozenEdition then = EditionJson.readOne(d.body());
      String since =
          verdict == null ? "" : since(then, now(sheet, verdict, (int) d.revision() + 1, null));
      lines.add(
          new Line(
              d.revision(),
              Shown.time(d.at(), sheet.campaign().info().zone()),
              d.who(),
              d.why(),
              then.headline(),
              since));
    }
    model.put("frozen", lines);
    model.put("frozenLast", kept.isEmpty() ? 0 : kept.get(0).revision());
  }

  private static String since(FrozenEdition then, FrozenEdition now) {
    return then.printsTheSameAs(now)
        ? "The verdict is still the same."
        : EditionChange.between(then, now).effectOnRanks();
  }

  /** The verdict as it would be printed today. */
  FrozenEdition now(Workbench.Sheet sheet, Verdict verdict, int number, @Nullable String why) {
    Campaign campaign = sheet.campaign();
    LocalDate today = LocalDate.ofInstant(desk.clock().instant(), campaign.info().zone());
    Edition edition =
        new Edition(campaign, desk.evidenceOf(sheet.at().id()), sheet.measured(), verdict, today);
    return FrozenEdition.of(edition, number, why);
  }

  Optional<FrozenEdition> find(String cid, long number) {
    return desk.document(cid, Document.VERDICT, number)
        .map(Document::body)
        .map(EditionJson::readOne);
  }
}
