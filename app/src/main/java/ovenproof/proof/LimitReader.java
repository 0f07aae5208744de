package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.Gate;
import ovenproof.method.TestPlan;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Kind;

/** How far a figure lies from the limit of its gate: "seven degrees more than we allow". */
final class LimitReader implements ClaimReader {
  private static final Pattern AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:more|less|hotter|cooler|higher|lower|over|above|under|below|beyond|past|short of|too hot|too many)\\b[^.;,]{0,12}?\\b(?:allow(?:s|ed)?|limit|permit(?:s|ted)?|tolerate|accept|ceiling|maximum)\\b.*");

  private final Figures figures;

  LimitReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (AFTER.matcher(Wording.after(sentence.text(), number.end())).matches()) {
        claim(sentence, number);
      }
    }
  }

  private void claim(SentenceClaims sentence, NumberPhrase number) {
    String product = sentence.context().productAt(number.start(), number.end());
    if (product == null) {
      return;
    }
    for (TestPlan test : figures.campaign().method().tests()) {
      for (Gate gate : test.gates()) {
        Quantity limit = gate.atMost() != null ? gate.atMost() : gate.atLeast();
        Optional<Figure> figure = measured(product, test, gate);
        if (limit != null && figure.isPresent() && fits(number, limit.unit())) {
          rule(sentence, number, figure.get(), limit);
          return;
        }
      }
    }
  }

  private Optional<Figure> measured(String product, TestPlan test, Gate gate) {
    return figures.of(product).stream()
        .filter(f -> test.id().equals(f.test()) && f.use().equals(gate.measure()) && !f.isScore())
        .filter(f -> f.value() != null && f.batch() == null)
        .findFirst();
  }

  private static boolean fits(NumberPhrase number, Unit unit) {
    boolean heat =
        number.scale() == Scale.DEGREES
            || number.unit() != null
                && (number.unit().dimension() == Dimension.TEMPERATURE
                    || number.unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE);
    return unit.dimension() == Dimension.TEMPERATURE
        ? heat
        : number.unit() != null && number.unit().dimension() == unit.dimension();
  }

  private void rule(SentenceClaims sentence, NumberPhrase number, Figure figure, Quantity limit) {
    Unit own = java.util.Objects.requireNonNull(figure.unit());
    boolean heat = own.dimension() == Dimension.TEMPERATURE;
    double gap = Math.abs(java.util.Objects.requireNonNull(figure.value()) - limit.to(own).value());
    Unit difference = heat ? Unit.KELVIN : own;
    Unit stated =
        number.unit() == Unit.FAHRENHEIT
            ? Unit.FAHRENHEIT_DIFFERENCE
            : heat ? Unit.KELVIN : java.util.Objects.requireNonNull(number.unit());
    Judge.Ruling ruling = Judge.rule(number, figure.asDifference(gap, difference), stated);
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        ruling.finding(),
        number.text(),
        ruling.expected(),
        List.copyOf(figure.evidence()),
        figures.name(figure.product())
            + ", "
            + figure.label()
            + " against the limit of "
            + limit
            + ": "
            + ruling.why());
  }
}
