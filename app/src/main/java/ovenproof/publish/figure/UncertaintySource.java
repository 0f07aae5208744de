package ovenproof.publish.figure;

import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.core.measure.Component;

/**
 * A source of uncertainty in words. Sources are named for computing ({@code
 * probe:air-B1@2026-02-26}); readers get a sentence and what else the same error moves.
 *
 * @param what where the error comes from
 * @param sharedWith what else it moves alike; {@code nothing else} for what belongs to one value
 */
public record UncertaintySource(String what, String sharedWith) {

  private record Rule(Pattern pattern, Function<Matcher, UncertaintySource> words) {
    static Rule of(String regex, Function<Matcher, UncertaintySource> words) {
      return new Rule(Pattern.compile(regex), words);
    }
  }

  private static final List<Rule> RULES =
      List.of(
          Rule.of(
              "set of probe:(.+)@(.+)",
              m ->
                  words(
                      "calibration of the probes beside " + m.group(1) + ", " + m.group(2),
                      "every run with these probes")),
          Rule.of(
              "probe:(.+)@(.+)",
              m ->
                  words(
                      "calibration of " + m.group(1) + ", " + m.group(2),
                      "everything read with it")),
          Rule.of(
              "radiation",
              m -> words("elements and walls that a bare probe feels", "every bare probe alike")),
          Rule.of(
              "radiation:(.+)",
              m -> words("elements and walls of " + m.group(1), "every run of " + m.group(1))),
          Rule.of(
              "camera:(.+)/(.+)",
              m -> words("colour calibration of " + m.group(1), "every picture of that session")),
          Rule.of(
              "panel:([^:]+):([^:]+):(.+)",
              m ->
                  words(
                      "tasters' own taste for " + m.group(3),
                      "every batch of " + m.group(3) + " they tasted")),
          Rule.of(
              "panel:([^:]+):([^:]+)",
              m -> words("level of these tasters", "every product they tasted")),
          Rule.of(
              "instrument:(.+)",
              m -> words(m.group(1) + " as declared", "everything read with it")),
          Rule.of("fact:.*", m -> words("measuring it once", "nothing else")));

  /** Of a mean over runs. */
  public static UncertaintySource ofMean(Component component) {
    return component.isShared()
        ? of(component.source())
        : words("between and within runs", "nothing else");
  }

  /** Of a fact, a rated fact or a feature of the product. */
  public static UncertaintySource ofProduct(Component component) {
    return component.isShared()
        ? of(component.source())
        : words("measuring or rating it", "nothing else");
  }

  /** Of one run. */
  public static UncertaintySource ofRun(Component component) {
    return component.isShared() ? of(component.source()) : words("this run", "nothing else");
  }

  private static UncertaintySource of(String source) {
    for (Rule rule : RULES) {
      Matcher matcher = rule.pattern().matcher(source);
      if (matcher.matches()) {
        return rule.words().apply(matcher);
      }
    }
    return words(source, "everything with this source");
  }

  private static UncertaintySource words(String what, String sharedWith) {
    return new UncertaintySource(what, sharedWith);
  }
}
