package ovenproof.publish.site;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.RoleWords;
import ovenproof.campaign.Run;
import ovenproof.publish.edition.Edition;

/**
 * Keeps the names of people out of free text: tasters, raters and whoever entered something are
 * never published, and a note such as "Ana opened the door" says "someone opened the door". Roles
 * (the lead, the cook) name nobody and stay.
 */
final class PrivateNames {
  private final @Nullable Pattern pattern;

  private PrivateNames(Collection<String> names) {
    String alternatives =
        names.stream()
            .filter(n -> n.strip().length() >= 2)
            .sorted(Comparator.comparingInt(String::length).reversed())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    pattern =
        alternatives.isEmpty()
            ? null
            : Pattern.compile(
                "(?<![\\p{L}\\p{N}])(?:" + alternatives + ")(?![\\p{L}\\p{N}])",
                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  static PrivateNames of(Edition edition) {
    Campaign campaign = edition.campaign();
    Set<String> names = new LinkedHashSet<>();
    edition.inquiries().stream()
        .flatMap(i -> i.steps().stream())
        .forEach(step -> names.add(step.by()));
    campaign.ratings().forEach(r -> names.add(r.assessor()));
    campaign.ratedSteps().forEach(r -> names.add(r.rater()));
    campaign.runs().stream().map(Run::by).forEach(names::add);
    Stream.of(
            campaign.events(),
            campaign.deviations(),
            campaign.readings(),
            campaign.ratings(),
            campaign.facts(),
            campaign.ratedSteps(),
            campaign.features())
        .flatMap(Collection::stream)
        .map(entry -> ((Entry) entry).origin().by())
        .forEach(names::add);
    names.removeIf(name -> name == null || RoleWords.isRole(name));
    return new PrivateNames(names);
  }

  /** The text without names; null stays null. */
  @Nullable String hide(@Nullable String text) {
    return text == null ? null : hidden(text);
  }

  String hidden(String text) {
    return pattern == null
        ? text
        : pattern.matcher(text).replaceAll(Matcher.quoteReplacement("someone"));
  }

  boolean mentions(String text) {
    return pattern != null && pattern.matcher(text).find();
  }
}
