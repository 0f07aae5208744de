package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Numbers of the method: settings, limits, sample sizes and definitions, which are the same for
 * every oven and are held against the method rather than against what was measured.
 */
final class MethodNumbers {
  private static final Pattern SETTING_BEFORE =
      Pattern.compile(
          "(?is).*\\b(set(ting)?s?( (it|them|both|all|each|every oven))?( at| to| of)?|dial(led)?( (at|to|of|in|says|said|stood|stands|read|reads)){0,2}|asks? (it |them )?for|asked (it |them )?for|thermostat( at| to)|cap( of| at| is| was)?|limit( of| at| is| was)?|target( of)?|baked? at|roast(ed)? at|bakes at|for \\d+ minutes at|minutes at|hours? at|preset)\\s+(a |an |the |their |our )?$");

  static final Pattern LIMIT_BEFORE =
      Pattern.compile(
          "(?is).*\\b(permitted|limit|cap|capped|ceiling|cannot exceed|can['’]t exceed|stops?|allow(s|ed)?|allowance|maximum of|at most)(\\s+(is|are|was|at|of|to|the|our|all|be))*\\s+$");

  private static final Pattern SETTING_AFTER =
      Pattern.compile(
          "(?is)^\\s*(on the dial|setting|cap\\b|limit\\b|mark on|as (the )?(setting|limit|cap)).*");

  private static final Pattern CONSTANT_SUBJECT =
      Pattern.compile(
          "\\b(we|each|every|all|any|our|everything|everyone|method|rule|the ovens?|a batch|the cap|they|must|is allowed|are allowed|stops?|stopped|shake|shaken|turn(ed)?)\\b",
          Pattern.CASE_INSENSITIVE);

  private final Constants constants;

  MethodNumbers(Constants constants) {
    this.constants = constants;
  }

  /** "220 °C (428 °F)": the second states the first again in the other unit. */
  Optional<Constants.Constant> dualOfDefinition(SentenceClaims sentence, NumberPhrase number) {
    return sentence.numbers().stream()
        .filter(n -> n.end() <= number.start() && n.unit() != null && n.unit() != number.unit())
        .filter(
            n ->
                Wording.is(
                    sentence.text().substring(n.end(), number.start()),
                    "(?is)\\s*[(/,]\\s*(?:or |that is |i\\.e\\. |that['’]s )?"))
        .findFirst()
        .flatMap(constants::definition)
        .filter(c -> constants.definition(number).isPresent());
  }

  /** Whether the sentence says what all ovens get, rather than what one of them did. */
  static boolean speaksOfTheMethod(SentenceClaims sentence, NumberPhrase number) {
    boolean named =
        sentence.context().mentions().stream().anyMatch(m -> m.start() < number.start());
    return !named && CONSTANT_SUBJECT.matcher(sentence.text()).find();
  }

  /** A definition or limit repeated beside a product: "… to reach 220 °C". */
  boolean saysTheMethod(
      SentenceClaims sentence, NumberPhrase number, Focus focus, List<String> products) {
    Optional<Constants.Constant> constant =
        constants.matching(number, focus).or(() -> constants.definition(number));
    boolean definition =
        constant.isPresent()
            && products.size() == 1
            && constant.get().isLimit()
            && Wording.is(
                sentence.text().substring(0, number.start()),
                "(?is).*\\b(to|past|over|above|below|under|exceed(s|ed)?|reach(es|ed)?|at most|cap(ped)?|capped at|limit|than|hit|get to|got to|(?:core |inner )?temperature of|core of)\\s+(the |our |its |a )?$");
    boolean beside =
        constant.isPresent()
            && constant.get().what().startsWith("definition")
            && NumberKinds.isTemperature(number)
            && BY_THE_WAY.matcher(Wording.before(sentence.text(), number.start())).matches()
            && sentence.numbers().stream()
                .anyMatch(n -> n.unit() != null && n.unit().dimension() == Dimension.TIME);
    boolean sample =
        constants
            .matching(number, focus)
            .filter(c -> c.what().startsWith("sample") && focus.tests().contains(c.test()))
            .isPresent();
    if (sample) {
      constant(sentence, number, constants.matching(number, focus).orElseThrow());
      return true;
    }
    if (definition || beside) {
      constant(sentence, number, constant.get());
    }
    return definition || beside;
  }

  /** "At 220 °C in under twelve minutes", "57 s after 220 °C". */
  private static final Pattern BY_THE_WAY =
      Pattern.compile(
          "(?is).*\\b(are at|is at|was at|were at|at|after|before|until|till|for|by)\\s+$");

  /** What the method gives every oven. */
  private static final Pattern EVERY_OVEN =
      Pattern.compile(
          "(?is)[\\s*•-]*(?:each|every|all)\\b.{0,60}\\b(?:baked?|cooked?|toasted|roasted|got|gets|ran|stayed|spent|for)\\b.*");

  void withoutProduct(SentenceClaims sentence, NumberPhrase number, Focus focus) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    Kind kind = NumberKinds.isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    List<Constants.Constant> rules = constants.ofTests(number, focus);
    if (!rules.isEmpty() && EVERY_OVEN.matcher(sentence.text()).matches()) {
      Constants.Constant rule = rules.get(0);
      sentence.add(
          number,
          kind,
          new Ruling(
              Finding.CONTRADICTED, rule.quantity().toString(), "the method says " + rule.what()),
          List.of("method: " + rule.what()));
      return;
    }
    sentence.add(
        number,
        kind,
        new Ruling(Finding.UNCLEAR, null, "the text does not say which product this is"),
        List.of());
  }

  /** A number at "set to", "dial at": held against the method, not against what was measured. */
  void setting(SentenceClaims sentence, NumberPhrase number, Focus focus) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    List<Constants.Constant> settings = constants.settings(number, focus);
    if (settings.isEmpty()) {
      withoutProduct(sentence, number, focus);
      return;
    }
    Constants.Constant first = settings.get(0);
    sentence.add(
        number,
        Kind.QUANTITY,
        new Ruling(
            settings.size() == 1 ? Finding.CONTRADICTED : Finding.UNCLEAR,
            first.quantity().toString(),
            "the method says " + first.quantity() + ": " + first.what()),
        List.of("method: " + first.what()));
  }

  void constant(SentenceClaims sentence, NumberPhrase number, Constants.Constant constant) {
    sentence.add(
        number,
        Kind.QUANTITY,
        new Ruling(
            Finding.SUPPORTED,
            constant.quantity().toString(),
            "the method says so: " + constant.what()),
        List.of("method: " + constant.what()));
  }

  /** A number after "set to", "dial at": the setting, not what was measured. */
  static boolean isSetting(SentenceClaims sentence, NumberPhrase number) {
    String before = Wording.before(sentence.text(), number.start());
    String after = Wording.after(sentence.text(), number.end());
    boolean temperature =
        number.scale() == Scale.DEGREES
            || number.unit() != null && number.unit().dimension() == Dimension.TEMPERATURE;
    return (temperature || Wording.is(before, "(?is).*\\b(cap|limit|preset)\\b.*"))
        && (SETTING_BEFORE.matcher(before).matches() || SETTING_AFTER.matcher(after).matches());
  }
}
