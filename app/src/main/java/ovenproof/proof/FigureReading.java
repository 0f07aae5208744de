package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;

/**
 * Holds a number against the figures that the words fit: several that fit equally must agree, and
 * one that fits a little less well may still have been meant.
 */
final class FigureReading {
  /** A figure that fits this much worse than the best may still be meant. */
  private static final double NEAR = 2.2;

  private final Figures figures;

  FigureReading(Figures figures) {
    this.figures = figures;
  }

  /** A number that is stated finely fits a wrong figure by chance the more rarely. */
  private static double near(NumberPhrase number, Figure figure) {
    double fineness = number.low() == 0 ? 1 : number.step() / Math.abs(number.low());
    return switch (figure.kind()) {
      case CRITERION_SCORE, MARK -> NEAR;
      case TEST_SCORE -> 2 * NEAR;
      default -> fineness <= 0.02 ? 3 * NEAR : fineness <= 0.06 ? 2 * NEAR : NEAR;
    };
  }

  private static final Pattern SINGLE_RUN =
      Pattern.compile(
          "(?is).*\\b(one (of the|of its) (three )?runs?|(in|on) one (run|day|occasion|attempt)|one run|once|run (one|two|three|\\d)|(best|worst|first|second|third|last|fastest|slowest|longest|shortest) (run|attempt|try)|at (its )?(best|worst|first)|no hotter than|nothing above|never (more|less|above|below|over|under|longer))\\b.*");

  /** Several figures fit the words equally well: only what they agree on is found. */
  Ruling together(
      SentenceClaims sentence,
      NumberPhrase number,
      Focus focus,
      String product,
      List<FigureSearch.Fit> fits) {
    List<Figure> fitting = withTwins(FigureSearch.top(fits), fits);
    List<Ruling> rulings = fitting.stream().map(f -> reading(number, f, sentence.text())).toList();
    for (int i = 0; i < rulings.size(); i++) {
      if (rulings.get(i).finding() == Finding.SUPPORTED) {
        sentence.speaksOf(fitting.get(i), number);
        boolean decided = FigureSearch.top(fits).size() <= 3 || agree(rulings);
        return new Ruling(
            decided || isFine(number) ? Finding.SUPPORTED : Finding.UNCLEAR,
            rulings.get(i).expected(),
            label(product, fitting.get(i)) + ": " + rulings.get(i).why());
      }
    }
    Optional<Figure> other = nearly(number, sentence, focus, fits, fitting);
    Ruling first = rulings.get(0);
    if (other.isPresent() && first.finding() == Finding.CONTRADICTED) {
      return new Ruling(
          Finding.UNCLEAR,
          first.expected(),
          label(product, fitting.get(0))
              + ": "
              + first.why()
              + "; it would fit "
              + label(product, other.get()));
    }
    if (agree(rulings) && (fitting.size() == 1 || pointed(focus, fitting))) {
      return new Ruling(
          first.finding(), first.expected(), label(product, fitting.get(0)) + ": " + first.why());
    }
    Optional<Ruling> none = noneFits(number, sentence, fits, rulings);
    if (none.isPresent()) {
      return new Ruling(
          Finding.CONTRADICTED,
          none.get().expected(),
          label(product, fitting.get(rulings.indexOf(none.get()))) + ": " + none.get().why());
    }
    return agree(rulings) && fitting.size() <= 4
        ? new Ruling(
            first.finding(), first.expected(), label(product, fitting.get(0)) + ": " + first.why())
        : new Ruling(
            Finding.UNCLEAR,
            first.expected(),
            "the words fit several figures of " + figures.name(product) + ", and they differ");
  }

  /** Stated to a hundredth or better, a number does not fit by chance. */
  private static boolean isFine(NumberPhrase number) {
    return number.low() != 0 && number.step() / Math.abs(number.low()) <= 0.01;
  }

  /**
   * Whichever of a product's figures was meant, the number is none of them: then it is wrong even
   * where the words leave open which.
   */
  private static Optional<Ruling> noneFits(
      NumberPhrase number,
      SentenceClaims sentence,
      List<FigureSearch.Fit> fits,
      List<Ruling> rulings) {
    boolean any =
        fits.stream()
            .map(f -> reading(number, f.figure(), sentence.text()).finding())
            .anyMatch(f -> f == Finding.SUPPORTED || f == Finding.UNCLEAR);
    return any
        ? Optional.empty()
        : rulings.stream().filter(r -> r.finding() == Finding.CONTRADICTED).findFirst();
  }

  /** "8.1 for crispness" may be the tasters' mark or the score made of it. */
  private static List<Figure> withTwins(List<Figure> top, List<FigureSearch.Fit> fits) {
    List<Figure> all = new ArrayList<>(top);
    for (FigureSearch.Fit fit : fits) {
      boolean twin = top.stream().anyMatch(f -> isTwin(f, fit.figure()));
      if (twin && !all.contains(fit.figure())) {
        all.add(fit.figure());
      }
    }
    return all;
  }

  private static boolean isTwin(Figure a, Figure b) {
    boolean kinds =
        a.kind() == Figure.Kind.MARK && b.kind() == Figure.Kind.CRITERION_SCORE
            || b.kind() == Figure.Kind.MARK && a.kind() == Figure.Kind.CRITERION_SCORE;
    return kinds && Objects.equals(a.test(), b.test()) && a.label().equals(b.label());
  }

  private static boolean agree(List<Ruling> rulings) {
    return rulings.stream().allMatch(r -> r.finding() == rulings.get(0).finding());
  }

  private static boolean pointed(Focus focus, List<Figure> fitting) {
    return fitting.stream().allMatch(f -> f.words().stream().anyMatch(w -> focus.weight(w) > 1.5));
  }

  /** A figure that fits the words a little less well, and has just this value. */
  private Optional<Figure> nearly(
      NumberPhrase number,
      SentenceClaims sentence,
      Focus focus,
      List<FigureSearch.Fit> fits,
      List<Figure> fitting) {
    double best = fits.get(0).points();
    boolean marked = fitting.get(0).kind() == Figure.Kind.MARK && pointed(focus, fitting);
    boolean open =
        number.unit() != null
            && number.hedge() == Hedge.PLAIN
            && isTelling(number)
            && !named(focus, fitting);
    return fits.stream()
        .filter(
            f ->
                f.points()
                        > best
                            - (open ? OPEN : 1) * margin(number, f.figure(), fitting.get(0), marked)
                    && !fitting.contains(f.figure()))
        .map(FigureSearch.Fit::figure)
        .filter(f -> isClose(number.hedge()))
        .filter(f -> f.kind() != Figure.Kind.MARK || spokenOf(focus, f))
        .filter(f -> reading(number, f, sentence.text()).finding() == Finding.SUPPORTED)
        .findFirst();
  }

  /**
   * Where the clause itself names no measure, figures may be meant that fit its words far worse.
   */
  private static final double OPEN = 4;

  /** Whether few figures of a product fit a number by chance. */
  private static boolean isTelling(NumberPhrase number) {
    return number.low() != 0 && number.step() / Math.abs(number.low()) <= 0.13;
  }

  /** Whether the clause of the number has a word that only these figures have. */
  private static boolean named(Focus focus, List<Figure> fitting) {
    return fitting.stream()
        .allMatch(f -> f.words().stream().anyMatch(w -> focus.weight(w) >= IN_CLAUSE));
  }

  private static final double IN_CLAUSE = 2.9;

  /** A hedge that still says how much. */
  static boolean isClose(Hedge hedge) {
    return switch (hedge) {
      case PLAIN, ABOUT, ALMOST, JUST_OVER -> true;
      case OVER, AT_LEAST, UNDER, AT_MOST -> false;
    };
  }

  /** A figure measured beside a plate's may be meant wherever the plate's may. */
  private static double margin(NumberPhrase number, Figure other, Figure top, boolean marked) {
    if (top.kind() == Figure.Kind.FACT && other.kind() == Figure.Kind.NAMEPLATE) {
      return Double.NEGATIVE_INFINITY;
    }
    if (top.kind() == Figure.Kind.NAMEPLATE && other.kind() == Figure.Kind.FACT) {
      return Double.POSITIVE_INFINITY;
    }
    boolean sameTest = other.test() != null && other.test().equals(top.test());
    return marked
        ? NEAR
        : other.kind() == Figure.Kind.MARK && sameTest ? 3 * NEAR : near(number, other);
  }

  /** Whether a mark's own word was said lately. */
  private static boolean spokenOf(Focus focus, Figure mark) {
    return mark.words().stream().anyMatch(w -> focus.weight(w) >= 0.3);
  }

  private String label(String product, Figure figure) {
    String test =
        figure.test() == null || figure.kind() == Figure.Kind.TEST_SCORE
            ? ""
            : figures.campaign().method().test(figure.test()).map(t -> t.name() + ", ").orElse("");
    String score = figure.isScore() ? " score" : "";
    String batch = figure.batch() == null ? "" : ", batch " + figure.batch();
    return figures.name(product) + ", " + test + figure.label() + score + batch;
  }

  /** "Degrees" without a letter may be either; one run may be meant where the text says so. */
  static Ruling reading(NumberPhrase number, Figure figure, String text) {
    if (number.scale() == Scale.DEGREES) {
      boolean difference = figure.unit() == Unit.KELVIN;
      Figure sized = sized(number, figure);
      Ruling celsius = Judge.rule(number, sized, difference ? Unit.KELVIN : Unit.CELSIUS);
      Optional<Ruling> turned = Deviation.turned(number, figure, text, celsius);
      if (turned.isPresent()) {
        return turned.get();
      }
      Ruling fahrenheit =
          Judge.rule(number, sized, difference ? Unit.FAHRENHEIT_DIFFERENCE : Unit.FAHRENHEIT);
      return celsius.finding() == Finding.SUPPORTED || fahrenheit.finding() != Finding.SUPPORTED
          ? celsius
          : fahrenheit;
    }
    Unit unit = number.unit();
    if (figure.unit() == Unit.KELVIN && unit != null && unit.dimension() == Dimension.TEMPERATURE) {
      unit = unit == Unit.FAHRENHEIT ? Unit.FAHRENHEIT_DIFFERENCE : Unit.KELVIN;
    }
    if (Judge.isBound(number, figure, unit) && !DONE_IN.matcher(before(text, number)).matches()) {
      return new Ruling(
          Finding.SUPPORTED, Judge.bounds(figure, unit, 0), "it was given up there, and not done");
    }
    Ruling mean = Judge.rule(number, sized(number, figure), unit);
    Optional<Ruling> turned = Deviation.turned(number, figure, text, mean);
    if (turned.isPresent()) {
      return turned.get();
    }
    if (mean.finding() == Finding.CONTRADICTED && SINGLE_RUN.matcher(text).matches()) {
      for (double run : figure.runs()) {
        Ruling one = Judge.rule(number, sized(number, figure.withValue(run)), unit);
        if (one.finding() == Finding.SUPPORTED) {
          return one;
        }
      }
    }
    return mean;
  }

  private static String before(String text, NumberPhrase number) {
    return Wording.before(text, Math.min(number.start(), text.length()));
  }

  private static final Pattern DONE_IN =
      Pattern.compile(
          "(?is).*(?<!never )(?<!not )(?<!n['’]t )\\b(took|takes|taking|needed|needs|required|done in|done after|ready in|ready after|finished in|golden in|golden after|cooked in|baked in|managed|managed it in|there in|reached \\S+ \\S+ (?:in|after))\\s+(?:\\p{L}+\\s+){0,2}$");

  /** "18 degrees below the dial" states the size of a negative offset. */
  private static Figure sized(NumberPhrase number, Figure figure) {
    Double value = figure.value();
    boolean difference = figure.unit() == Unit.KELVIN || figure.unit() == Unit.LIGHTNESS;
    return value != null && value < 0 && number.low() >= 0 && difference
        ? figure.withValue(-value)
        : figure;
  }
}
