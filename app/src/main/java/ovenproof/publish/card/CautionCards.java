package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.RIGHT;

import ovenproof.core.quantity.Rounding;
import ovenproof.method.Gate;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;

/** What can hurt in a test. */
final class CautionCards {
  private final CardBook book;

  CautionCards(CardBook book) {
    this.book = book;
  }

  /** A floor of the test in both systems, rounded up; else the heat. */
  void of(TestPlan test) {
    for (Gate gate : test.gates()) {
      if (gate.reason() == Gate.Reason.SAFETY && gate.atLeast() != null) {
        Dual floor = Figures.dual(gate.atLeast(), Rounding.FLOOR_UP);
        String other = floor.second() == null ? "" : ", " + floor.second();
        String second = "a floor, in the coldest part; local rules prevail";
        warned(test, "At least " + floor.first() + other, second);
        return;
      }
    }
    if (test.replicates() > 0) {
      warned(test, "Hot surfaces and steam", "mains appliance; local rules prevail");
    }
  }

  private void warned(TestPlan test, String first, String second) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(690)
            .warning(170, 752)
            .text(Lettering.BOLD, first, 390, 820, 110, RIGHT - 390, INK, Anchor.START)
            .text(Lettering.MEDIUM, second, 390, 908, 64, RIGHT - 390, INK, Anchor.START);
    book.add(
        "caution-" + test.id(),
        Card.Kind.CAUTION,
        "Caution, " + test.name() + ". " + first + ", " + second,
        book.footed(drawing, test.name()));
  }
}
