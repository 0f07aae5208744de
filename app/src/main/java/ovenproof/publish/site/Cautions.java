package ovenproof.publish.site;

import static j2html.TagCreator.b;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import ovenproof.method.Gate;
import ovenproof.method.TestPlan;

/** What can hurt, said where the work is described. */
final class Cautions {
  private static final String SIGN =
      "<svg viewBox=\"0 0 44 40\" aria-hidden=\"true\"><path d=\"M22 3 41 36H3Z\" fill=\"none\""
          + " stroke=\"currentColor\" stroke-width=\"3.5\" stroke-linejoin=\"round\"/><path"
          + " d=\"M22 14v12M22 29.5v4\" stroke=\"currentColor\" stroke-width=\"4\"/></svg>";
  private static final String HOT =
      "Surfaces, trays and steam burn; appliances of this kind draw a whole circuit’s current. Follow"
          + " the maker’s instructions and the electrical rules where you live.";
  private static final String FOOD =
      "Temperatures quoted for food are floors, not targets, and rounded up. A colour, a time or one"
          + " probe does not make food safe: measure the coldest part. Local food rules prevail.";

  private Cautions() {}

  /** The test's own cautions, with the usual ones of heat, mains and food. */
  static DomContent of(TestPlan test) {
    List<String> said = new ArrayList<>(test.cautions());
    if (test.replicates() > 0) {
      said.add(HOT);
    }
    if (touchesFoodSafety(test)) {
      said.add(FOOD);
    }
    return said.isEmpty() ? rawHtml("") : box(said);
  }

  /** The usual cautions for a page about food and heat in general. */
  static DomContent usual() {
    return box(List.of(HOT, FOOD));
  }

  private static DomContent box(List<String> sentences) {
    return div(rawHtml(SIGN), div(p(b("Caution")), each(sentences, s -> p(s))))
        .withClass("caution");
  }

  static boolean touchesFoodSafety(TestPlan test) {
    return test.gates().stream().anyMatch(g -> g.reason() == Gate.Reason.SAFETY)
        || test.stops().stream().anyMatch(s -> s.when() == TestPlan.StopRule.When.CORE);
  }
}
