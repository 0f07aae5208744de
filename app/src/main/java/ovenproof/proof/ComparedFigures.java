package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Vocabulary.Adjective;

/**
 * What is compared: the figures a comparison speaks of, told by its adjective, its verb, or the
 * unit of the amount beside it.
 */
final class ComparedFigures {
  private static final Pattern BY_AFTER =
      Pattern.compile("(?is)^\\s*(?:['’]s)?\\s*,?\\s*by\\s+(?:a\\s+margin\\s+of\\s+)?$");

  private final FigureSearch search;

  ComparedFigures(FigureSearch search) {
    this.search = search;
  }

  /** "€50 more than", "1.6 points more than", "0.2 kWh less than": the unit says what of. */
  static @Nullable Adjective byUnit(SentenceClaims sentence, int start) {
    Optional<NumberPhrase> by = numberBefore(sentence, start);
    String before = Wording.before(sentence.text(), start);
    return by.isPresent() ? byUnit(by.get(), before) : byVerb(before);
  }

  static @Nullable Adjective byUnit(NumberPhrase number, String before) {
    Optional<NumberPhrase> by = Optional.of(number);
    if (by.isPresent()) {
      if (by.get().scale() == Scale.MONEY) {
        return Vocabulary.noun(Stems.of("price"));
      }
      if (by.get().scale() == Scale.POINTS || by.get().unit() == null && by.get().decimals() == 1) {
        return Vocabulary.noun(Stems.of("score"));
      }
      Unit unit = by.get().unit();
      if (unit != null && unit.dimension() == Dimension.TIME) {
        return Vocabulary.adjective(Stems.of("long"));
      }
      if (unit != null && unit.dimension() == Dimension.ENERGY) {
        return Vocabulary.noun(Stems.of("energy"));
      }
      if (unit != null && unit.dimension() == Dimension.TEMPERATURE
          || by.get().scale() == Scale.DEGREES) {
        return Vocabulary.adjective(Stems.of("hot"));
      }
    }
    return byVerb(before);
  }

  /** "Costs more than", "uses more than", "scored higher than", "lost less than". */
  static @Nullable Adjective byVerb(String before) {
    if (Wording.is(before, "(?is).*\\b(costs?|priced|sells|is dearer)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("price"));
    }
    if (Wording.is(before, "(?is).*\\b(uses?|used|consume[sd]?|draws?|drew)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("energy"));
    }
    if (Wording.is(before, "(?is).*\\b(scores?|scored|earned|rated|got)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("good"));
    }
    if (Wording.is(before, "(?is).*\\b(takes?|took|needs?|needed)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("long"));
    }
    if (Wording.is(before, "(?is).*\\b(lost|loses?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("mass"));
    }
    if (Wording.is(before, "(?is).*\\b(holds?|fits?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("volume"));
    }
    if (Wording.is(before, "(?is).*\\b(weighs?|weighed)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("heavy"));
    }
    if (Wording.is(before, "(?is).*\\b(overshot|overshoots?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("overshoot"));
    }
    return null;
  }

  static Optional<NumberPhrase> numberBefore(SentenceClaims sentence, int start) {
    return sentence.freeNumbers().stream()
        .filter(
            n ->
                n.end() <= start
                    && Wording.is(
                        sentence.text().substring(n.end(), start),
                        "(?is)\\s*(?:more|less|as|of a point)?\\s*"))
        .reduce((a, b) -> b);
  }

  /** A stated amount must fit the figure: no minutes of lightness. */
  List<Figure> uses(
      Focus focus,
      @Nullable Adjective adjective,
      String stem,
      String product,
      Optional<NumberPhrase> by) {
    List<Figure> uses = search.uses(focus, adjective, stem, product);
    Unit unit = by.map(NumberPhrase::unit).orElse(null);
    if (unit == null || unit == Unit.PERCENT) {
      return uses;
    }
    List<Figure> fitting = uses.stream().filter(f -> sameKind(unit, f)).toList();
    return fitting.isEmpty() && adjective != null
        ? search.best(focus, product, f -> !f.isScore() && sameKind(unit, f))
        : fitting;
  }

  static boolean sameKind(Unit unit, Figure figure) {
    Unit own = figure.unit();
    if (own == null) {
      return false;
    }
    return heat(unit) ? heat(own) : own.dimension() == unit.dimension();
  }

  private static boolean heat(Unit unit) {
    return unit.dimension() == Dimension.TEMPERATURE
        || unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE;
  }

  static Optional<NumberPhrase> byAfter(SentenceClaims sentence, int end) {
    return sentence.freeNumbers().stream()
        .filter(
            n ->
                n.start() >= end
                    && BY_AFTER.matcher(sentence.text().substring(end, n.start())).matches())
        .findFirst();
  }
}
