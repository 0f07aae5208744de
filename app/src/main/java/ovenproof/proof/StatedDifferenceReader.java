package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Differences between two numbers that the text itself has just stated: "29.3 litres though the
 * maker promises 33, a gap of 3.7 litres", "from €239 to €219: twenty euros less".
 */
final class StatedDifferenceReader implements ClaimReader {
  private static final Pattern BEFORE =
      Pattern.compile(
          "(?is).*\\b(?:a|the) (?:gap|difference|margin|shortfall|discrepancy|drop|cut|saving|loss) of\\s+(?:only\\s+|just\\s+|a\\s+)*$");

  private static final Pattern AFTER =
      Pattern.compile(
          "(?is)^[\\s-]*(?:between (?:them|the two)|apart|difference|gap|short of (?:that|the promise|what|its|the)|less than (?:promised|claimed|stated|advertised)|below (?:the|its) (?:promise|claim|plate|nameplate))\\b.*");

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean difference =
          number.hedge() != Hedge.OVER
              && !number.isRange()
              && (BEFORE.matcher(Wording.before(sentence.text(), number.start())).matches()
                  || AFTER.matcher(Wording.after(sentence.text(), number.end())).matches());
      if (difference) {
        claim(sentence, number);
      }
    }
  }

  private static void claim(SentenceClaims sentence, NumberPhrase number) {
    List<NumberPhrase> ends = ends(sentence, number);
    if (ends.size() != 2) {
      return;
    }
    NumberPhrase a = ends.get(0);
    NumberPhrase b = ends.get(1);
    double gap = Math.abs(in(a, number.unit()) - in(b, number.unit()));
    double slack = (step(a, number.unit()) + step(b, number.unit())) / 2;
    boolean holds =
        Judge.holds(number, gap, ComparisonJudge.differenceOf(number.unit()))
            || Math.abs(gap - number.low()) <= slack + number.step() / 2 - 1e-9 && isRounded(a, b);
    String expected =
        Judge.text(
            gap, ComparisonJudge.differenceOf(number.unit()), Math.max(1, number.decimals()));
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
        number.text(),
        expected,
        List.of(),
        "between \"" + a.text() + "\" and \"" + b.text() + "\" lie " + expected);
  }

  /** Ends that were hedged were rounded, and so may be their difference. */
  private static boolean isRounded(NumberPhrase a, NumberPhrase b) {
    return a.hedge() != Hedge.PLAIN || b.hedge() != Hedge.PLAIN;
  }

  /** The last two numbers of the same kind before, in the same sentence. */
  private static List<NumberPhrase> ends(SentenceClaims sentence, NumberPhrase number) {
    List<NumberPhrase> ends = new ArrayList<>();
    for (NumberPhrase other : sentence.numbers()) {
      boolean same =
          other.end() <= number.start()
              && !other.isRange()
              && sameKind(other, number)
              && other.low() > number.low();
      if (same) {
        ends.add(other);
      }
    }
    return ends.subList(Math.max(0, ends.size() - 2), ends.size());
  }

  private static boolean sameKind(NumberPhrase a, NumberPhrase b) {
    if (a.unit() == null || b.unit() == null) {
      boolean scores = isScore(a) && isScore(b);
      return a.unit() == b.unit() && (a.scale() == b.scale() && a.scale() == Scale.MONEY || scores);
    }
    return a.unit().dimension() == b.unit().dimension()
        || isHeat(a.unit()) && isHeat(b.unit()) && a.unit() == b.unit();
  }

  private static boolean isScore(NumberPhrase number) {
    return number.scale() == Scale.POINTS
        || number.scale() == Scale.OUT_OF_TEN
        || number.scale() == Scale.NONE && number.decimals() == 1 && number.high() <= 10;
  }

  private static boolean isHeat(Unit unit) {
    return unit.dimension() == Dimension.TEMPERATURE
        || unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE;
  }

  private static double in(NumberPhrase number, @Nullable Unit unit) {
    return number.unit() == null || unit == null || number.unit() == unit
        ? number.low()
        : Quantity.of(number.low(), Objects.requireNonNull(number.unit())).to(unit).value();
  }

  private static double step(NumberPhrase number, @Nullable Unit unit) {
    return number.unit() == unit ? number.step() : 0;
  }
}
