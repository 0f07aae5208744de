package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.HEAT;
import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.util.List;
import java.util.Objects;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;
import ovenproof.verdict.Verdict.ProductVerdict;

/** One figure of one product in one test: running clock, "not done at the cap", thermometer. */
final class FigureCards {
  private final CardBook book;

  FigureCards(CardBook book) {
    this.book = book;
  }

  void of(ProductVerdict product, TestPlan test) {
    for (MeasureUse use : test.measures()) {
      List<Value> values = book.edition().measured().counted(test.id(), use.id(), product.id());
      if (values.isEmpty()) {
        continue;
      }
      String key = test.id() + "-" + use.id() + "-" + product.id();
      if (use.take().equals("time-to-stop")) {
        time(key, product, test, values);
      } else {
        Measurement mean = CardBook.mean(values);
        if (mean.unit() == Unit.CELSIUS && mean.value() != null) {
          thermometer(key, product, test, mean, known(values));
        }
      }
    }
  }

  private static int known(List<Value> values) {
    return (int) values.stream().filter(v -> !v.value().isMissing()).count();
  }

  private void time(String key, ProductVerdict product, TestPlan test, List<Value> values) {
    long capped = values.stream().filter(v -> v.value().censored() == Censoring.ABOVE).count();
    Measurement mean = CardBook.mean(values);
    if (capped > 0) {
      notDone(key, product, test, values, capped);
    } else if (mean.value() != null) {
      clock(key, product, test, mean, known(values));
    }
  }

  /** The clock runs in the drawing, from nought to the mean, and stays there. */
  private void clock(String key, ProductVerdict product, TestPlan test, Measurement mean, int n) {
    double exact = Objects.requireNonNull(mean.value());
    long seconds = Rounding.HALF_UP.apply(exact, 0).longValueExact();
    String of = n == 1 ? "one run" : "mean, n = " + n;
    RunningClock clock = new RunningClock(seconds);
    CardDrawing still = clocked(product, test, of);
    clock.draw(still, seconds);
    String sentence =
        product.name() + ", " + test.name() + ": " + RunningClock.text(seconds) + ", " + of;
    CardDrawing around = clocked(product, test, of);
    String moving = around.svg(sentence, book.metadata(), clock.svg());
    Card.Motion motion = clock.over(around);
    book.add("clock-" + key, Card.Kind.CLOCK, sentence, still, moving, motion);
  }

  private CardDrawing clocked(ProductVerdict product, TestPlan test, String of) {
    CardDrawing drawing = named(product.name(), test.name());
    return book.footed(drawing, of);
  }

  private static CardDrawing named(String first, String second) {
    return new CardDrawing()
        .plate(690)
        .text(Lettering.BOLD, first, LEFT, 815, 120, 950, INK, Anchor.START)
        .text(Lettering.MEDIUM, second, LEFT, 905, 68, 950, SECOND, Anchor.START);
  }

  private void notDone(
      String key, ProductVerdict product, TestPlan test, List<Value> values, long capped) {
    double cap =
        values.stream()
            .map(v -> v.value().low())
            .filter(Objects::nonNull)
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    String figure = RunningClock.text(Math.round(cap));
    CardDrawing drawing =
        named(product.name() + ": not done", test.name() + ", at the cap")
            .text(Lettering.NARROW, figure, RIGHT, 900, 230, 560, CardDrawing.FAIL, Anchor.END);
    String of = capped + " of " + values.size() + (values.size() == 1 ? " run" : " runs");
    String sentence =
        product.name() + ", " + test.name() + ": not done at the cap, " + figure + ", " + of;
    book.add("not-done-" + key, Card.Kind.NOT_DONE, sentence, book.footed(drawing, of));
  }

  private void thermometer(
      String key, ProductVerdict product, TestPlan test, Measurement mean, int n) {
    Dual dual = Figures.dual(Objects.requireNonNull(mean.value()), Unit.CELSIUS);
    String other = Objects.requireNonNull(dual.second());
    CardDrawing drawing =
        named(product.name(), mean.label())
            .text(Lettering.NARROW, dual.first(), RIGHT, 838, 180, 560, HEAT, Anchor.END)
            .text(Lettering.BOLD, other, RIGHT, 920, 76, 560, HEAT, Anchor.END);
    String of = n == 1 ? "one run" : "mean, n = " + n;
    String sentence =
        product.name()
            + ", "
            + test.name()
            + ", "
            + mean.label()
            + ": "
            + dual.first()
            + ", "
            + other
            + ", "
            + of;
    String foot = test.name() + " · " + of;
    book.add("thermometer-" + key, Card.Kind.THERMOMETER, sentence, book.footed(drawing, foot));
  }
}
