package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Vocabulary.Adjective;

/**
 * The number that stands with a superlative tells what is compared: "largest for Plover (+16.4 K)"
 * is of the offset, because that is what Plover has 16.4 K of, whatever else can be large.
 *
 * <p>Only a number with a unit that fits one single figure of the product tells anything; of
 * "highest" and "best" a number of points tells nothing, because many scores are alike.
 */
final class Anchors {
  private static final int FAR = 45;

  /** No other name and no end of a clause stands between a superlative and its number. */
  private static final Pattern BETWEEN = Pattern.compile("(?s)[^.;:!?]*");

  private final FigureSearch search;

  Anchors(FigureSearch search) {
    this.search = search;
  }

  /** The figure that the nearest number of the clause states, if there is exactly one. */
  Optional<Figure> of(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      @Nullable Adjective adjective,
      String product) {
    return sentence.numbers().stream()
        .filter(n -> n.unit() != null && n.unit() != Unit.PERCENT && !n.isRange())
        .filter(n -> isNear(sentence, phrase, n))
        .findFirst()
        .flatMap(n -> stated(sentence, n, product))
        .filter(f -> mayMean(phrase, adjective, f));
  }

  private static boolean mayMean(
      SuperlativePhrase phrase, @Nullable Adjective adjective, Figure figure) {
    return phrase.isOfSize()
        || phrase.isOfQuality()
        || phrase.isOfShade()
        || adjective != null && adjective.takes().contains(figure.take());
  }

  private static boolean isNear(
      SentenceClaims sentence, SuperlativePhrase phrase, NumberPhrase number) {
    int between = number.start() - phrase.end();
    return between >= 0
        && between < FAR
        && BETWEEN.matcher(sentence.text().substring(phrase.end(), number.start())).matches()
        && sentence.context().named().stream()
                .filter(m -> m.start() >= phrase.end() && m.end() <= number.start())
                .count()
            <= 1;
  }

  private Optional<Figure> stated(SentenceClaims sentence, NumberPhrase number, String product) {
    List<Figure> stated =
        search
            .fits(
                sentence.context().at(number.start(), number.end()),
                product,
                NumberKinds.kindOf(sentence, number))
            .stream()
            .map(FigureSearch.Fit::figure)
            .filter(f -> f.kind() != Figure.Kind.NAMEPLATE && f.batch() == null)
            .filter(
                f ->
                    FigureReading.reading(number, f, sentence.text()).finding()
                        == Finding.SUPPORTED)
            .toList();
    return stated.size() == 1 ? Optional.of(stated.get(0)) : Optional.empty();
  }
}
