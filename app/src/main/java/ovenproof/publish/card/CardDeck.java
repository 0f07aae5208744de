package ovenproof.publish.card;

import java.util.List;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** Draws the cards of an edition. */
public final class CardDeck {
  private final Edition edition;

  public CardDeck(Edition edition) {
    this.edition = edition;
  }

  /** All cards that the edition's evidence can carry, by kind. */
  public List<Card> cards() {
    CardBook book = new CardBook(edition);
    List<ProductVerdict> products = edition.verdict().products();
    scores(new ScoreCards(book), products);
    FigureCards figures = new FigureCards(book);
    ShadeCards shades = new ShadeCards(book);
    CautionCards cautions = new CautionCards(book);
    for (TestPlan test : edition.campaign().method().tests()) {
      products.forEach(p -> figures.of(p, test));
      shades.of(test, products);
      cautions.of(test);
    }
    new TraceCards(book).draw(products);
    return book.cards();
  }

  private static void scores(ScoreCards cards, List<ProductVerdict> products) {
    cards.ranking();
    for (int i = 0; i < products.size(); i++) {
      cards.title(products.get(i));
      cards.score(products.get(i));
      for (Node test : products.get(i).tests()) {
        cards.test(products.get(i), test);
      }
      if (i > 0) {
        cards.comparison(products.get(i - 1), products.get(i));
      }
    }
  }
}
