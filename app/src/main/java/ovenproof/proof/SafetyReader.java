package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.core.safety.PublishedFloor;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Safety temperatures. A published minimum is a floor: quoting it as a range, for the wrong food or
 * rounded down is contradicted, whatever was measured.
 */
final class SafetyReader implements ClaimReader {
  private static final Pattern SAFETY =
      Pattern.compile(
          "\\b(safe(ly|ty)?(-wise)?|minimum|recommend(s|ed)?|guideline|usda|fsis|authorit(y|ies)|must (reach|hit|get to|be)|should (reach|hit|be)|needs? to (reach|hit|get to|be)|ha(s|ve) to (reach|hit|get to|be)|cook(ed)? (\\w+ ){0,3}(to|until)|cooked through|(?:is|are) (?:plenty|enough|fine)|done at|done when|until it (reach|hit|read)s|use a thermometer|in the (thickest|middle|centre|center|core)( part)?)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern POULTRY =
      Pattern.compile(
          "\\b(poultry|chicken|turkey|duck|wings?|thighs?)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern POULTRY_COLON =
      Pattern.compile("\\b(poultry|chicken|turkey)\\b[^.;]{0,20}:", Pattern.CASE_INSENSITIVE);
  private static final Pattern GROUND =
      Pattern.compile("\\b(ground|minced?|mince|burgers?|sausages?)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern WHOLE =
      Pattern.compile(
          "\\b(beef|pork|lamb|veal|steaks?|roasts?|chops?)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern FISH =
      Pattern.compile("\\b(fish|shellfish|salmon|prawns?|shrimp)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern UNSAFE =
      Pattern.compile(
          "\\b(?:not (?:yet )?safe|unsafe|isn['’]t (?:yet )?safe|not enough|too low|isn['’]t enough)\\b",
          Pattern.CASE_INSENSITIVE);

  @Override
  public void read(SentenceClaims sentence) {
    String around =
        sentence.text()
            + " "
            + sentence.context().sentence().heading()
            + " "
            + String.join(" ", sentence.context().testsAbove())
            + (speaksOf(sentence, "poultry turkey chicken") ? " poultry" : "");
    Optional<PublishedFloor> floor = floor(around);
    boolean before =
        sentence.context().mentions().isEmpty() && speaksOf(sentence, "safety safe")
            || sentence.context().mentions().isEmpty()
                && (sentence.context().at(0, 0).weight(Stems.of("poultry")) > 0.5
                    || POULTRY_COLON.matcher(sentence.text()).find());
    if (sentence.isQuestion()) {
      return;
    }
    if (floor.isEmpty() || !before && !SAFETY.matcher(sentence.text()).find()) {
      return;
    }
    boolean said = SAFETY.matcher(sentence.text()).find();
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (!said && !isNearAFloor(number)) {
        continue;
      }
      boolean celsius =
          number.unit() == Unit.CELSIUS
              || number.scale() == Scale.DEGREES && number.low() > 45 && number.low() <= 100;
      boolean fahrenheit =
          number.unit() == Unit.FAHRENHEIT || number.scale() == Scale.DEGREES && number.low() > 120;
      if (celsius || fahrenheit) {
        claim(sentence, number, floor.get(), celsius);
      }
    }
  }

  private static boolean speaksOf(SentenceClaims sentence, String words) {
    Focus focus = sentence.context().at(0, 0);
    return Stems.ofAll(words).stream().anyMatch(s -> focus.weight(s) > 0);
  }

  /** Where only the words before speak of safety, a number must look like a floor. */
  private static boolean isNearAFloor(NumberPhrase number) {
    double celsius = number.low() > 120 ? (number.low() - 32) / 1.8 : number.low();
    return celsius >= 55 && celsius <= 82;
  }

  private static void claim(
      SentenceClaims sentence, NumberPhrase number, PublishedFloor floor, boolean celsius) {
    double exact = celsius ? floor.celsius() : floor.fahrenheit();
    int decimals = number.decimals();
    double lowest = Rounding.FLOOR_UP.apply(exact, decimals).doubleValue();
    String expected =
        Rounding.FLOOR_UP.text(floor.fahrenheit(), 0)
            + " °F ("
            + Rounding.FLOOR_UP.text(floor.celsius(), 0)
            + " °C) or more"
            + (floor.restSeconds() > 0
                ? ", and " + Math.round(floor.restSeconds() / 60) + " min rest"
                : "");
    Finding finding;
    String why;
    if (number.isRange()) {
      finding = Finding.CONTRADICTED;
      why = "a minimum is a floor, not a range: " + expected;
    } else if (number.low() < lowest - 1e-9 && UNSAFE.matcher(sentence.text()).find()) {
      finding = Finding.SUPPORTED;
      why = "it is said not to be enough, and it is not: " + expected;
    } else if (number.low() < lowest - 1e-9) {
      finding = Finding.CONTRADICTED;
      why = "below the published minimum for " + floor.food() + ": " + expected;
    } else if (number.hedge() != Hedge.PLAIN
        && number.hedge() != Hedge.AT_LEAST
        && number.hedge() != Hedge.OVER) {
      finding = Finding.CONTRADICTED;
      why = "a floor is not \"about\": " + expected;
    } else if (number.low() > lowest + 1e-9) {
      finding = Finding.UNCLEAR;
      why = "safe, but not the published minimum: " + expected;
    } else {
      finding = Finding.SUPPORTED;
      why = "the published minimum for " + floor.food() + "; local rules prevail";
    }
    sentence.add(
        number.start(),
        number.end(),
        Kind.SAFETY_TEMPERATURE,
        finding,
        number.text(),
        expected,
        List.of(floor.source()),
        why);
  }

  /** The floor of the United States chart for the food that the words name. */
  private static Optional<PublishedFloor> floor(String text) {
    boolean ground = GROUND.matcher(text).find();
    if (POULTRY.matcher(text).find()) {
      return named("poultry, all cuts");
    }
    if (ground) {
      return named("ground meat");
    }
    if (WHOLE.matcher(text).find()) {
      return named("beef, pork");
    }
    return FISH.matcher(text).find() ? named("fish") : Optional.empty();
  }

  private static Optional<PublishedFloor> named(String start) {
    return PublishedFloor.all().stream()
        .filter(f -> f.food().toLowerCase(Locale.ROOT).startsWith(start))
        .findFirst();
  }
}
