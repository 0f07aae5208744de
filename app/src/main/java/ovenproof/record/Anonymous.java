package ovenproof.record;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.RoleWords;
import ovenproof.campaign.Run;

/**
 * Records of a campaign without the names of people: who tasted or entered something becomes {@code
 * assessor-2} or {@code person-1}, and a name inside a text becomes "someone". Roles (lead, cook)
 * stay.
 */
final class Anonymous {
  private static final Set<String> ASSESSORS = Set.of("assessor", "rater");

  /** Keys: left as they are, and looked at afterwards. */
  private static final Set<String> KEYS =
      Set.of(
          "id",
          "product",
          "test",
          "variant",
          "run",
          "specimen",
          "session",
          "bench",
          "mark",
          "measure",
          "fact",
          "piece",
          "face",
          "instrument",
          "code",
          "redoOf",
          "corrects",
          "currency",
          "place",
          "sha256");

  private final Map<String, String> pseudonyms = new LinkedHashMap<>();
  private final @Nullable Pattern pattern;
  private final @Nullable Pattern products;
  private final Set<String> ownNames;
  private final Map<String, String> files;

  /**
   * @param whole the campaign with everybody in it
   * @param words that must stay although a person may be called so: the product's own names
   * @param files new names of files by their old ones
   */
  Anonymous(Campaign whole, Collection<String> words, Map<String, String> files) {
    this.files = Map.copyOf(files);
    Set<String> assessors = new TreeSet<>();
    whole.ratings().forEach(r -> assessors.add(r.assessor()));
    whole.ratedSteps().forEach(r -> assessors.add(r.rater()));
    Set<String> others = new TreeSet<>();
    whole.runs().stream().map(Run::by).filter(java.util.Objects::nonNull).forEach(others::add);
    Stream.of(
            whole.events(),
            whole.deviations(),
            whole.readings(),
            whole.ratings(),
            whole.facts(),
            whole.ratedSteps(),
            whole.features())
        .flatMap(Collection::stream)
        .map(e -> ((Entry) e).origin().by())
        .filter(java.util.Objects::nonNull)
        .forEach(others::add);
    name(assessors, "assessor-");
    name(others, "person-");
    pattern = pattern(words);
    this.products = products(whole);
    this.ownNames =
        words.stream().map(w -> w.toLowerCase(Locale.ROOT)).collect(Collectors.toUnmodifiableSet());
  }

  /**
   * Names of all products, the longest first, so that one name inside another is read as the longer
   * one: of Alder and Alder Mini, either may be the one that is handed out.
   */
  private static @Nullable Pattern products(Campaign whole) {
    String names =
        whole.products().stream()
            .flatMap(p -> Stream.of(p.name(), p.id()))
            .filter(n -> n.length() >= 2)
            .sorted(Comparator.comparingInt(String::length).reversed())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    return names.isEmpty()
        ? null
        : Pattern.compile(
            "(?<![\\p{L}\\p{N}])(?:" + names + ")(?![\\p{L}\\p{N}])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  private void name(Set<String> names, String prefix) {
    int number = 0;
    for (String name : names) {
      if (!RoleWords.isRole(name) && !pseudonyms.containsKey(name)) {
        pseudonyms.put(name, prefix + ++number);
      }
    }
  }

  private @Nullable Pattern pattern(Collection<String> words) {
    Set<String> kept =
        words.stream().map(w -> w.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    String names =
        pseudonyms.keySet().stream()
            .map(String::strip)
            .filter(n -> n.length() >= 2 && !n.matches("[A-Za-z]{1,2}-?\\d{1,3}"))
            .filter(n -> !kept.contains(n.toLowerCase(Locale.ROOT)))
            .sorted(Comparator.comparingInt(String::length).reversed())
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    return names.isEmpty()
        ? null
        : Pattern.compile(
            "(?<![\\p{L}\\p{N}])(?:" + names + ")(?![\\p{L}\\p{N}])",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  /** A text without names of people and of other products. */
  String text(String text) {
    String unnamed = replaced(pattern, text, "someone");
    return products == null
        ? unnamed
        : products
            .matcher(unnamed)
            .replaceAll(
                m -> Matcher.quoteReplacement(isOwn(m.group()) ? m.group() : "another product"));
  }

  private boolean isOwn(String name) {
    return ownNames.contains(name.toLowerCase(Locale.ROOT));
  }

  private static String replaced(@Nullable Pattern pattern, String text, String by) {
    return pattern == null ? text : pattern.matcher(text).replaceAll(Matcher.quoteReplacement(by));
  }

  boolean mentions(String text) {
    return pattern != null && pattern.matcher(text).find()
        || products != null && products.matcher(text).results().anyMatch(m -> !isOwn(m.group()));
  }

  <R extends Record> List<R> all(List<R> records) {
    return records.stream().map(this::one).toList();
  }

  /** The record with every person's name taken out. */
  <R extends Record> R one(R record) {
    RecordComponent[] components = record.getClass().getRecordComponents();
    Class<?>[] types = new Class<?>[components.length];
    @Nullable Object[] values = new Object[components.length];
    try {
      for (int i = 0; i < components.length; i++) {
        types[i] = components[i].getType();
        components[i].getAccessor().setAccessible(true);
        values[i] = value(components[i].getName(), components[i].getAccessor().invoke(record));
      }
      @SuppressWarnings("unchecked") // the class of a record of type R
      Constructor<R> constructor = (Constructor<R>) record.getClass().getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("a record cannot be made again: " + record.getClass(), e);
    }
  }

  private @Nullable Object value(String component, @Nullable Object value) {
    if (value instanceof Entry.Provenance origin) {
      return one(origin);
    }
    if (!(value instanceof String text)) {
      return value;
    }
    if (component.equals("by") || ASSESSORS.contains(component)) {
      return pseudonyms.getOrDefault(text, text);
    }
    if (component.equals("file") || component.equals("photo")) {
      return files.getOrDefault(text, text);
    }
    return KEYS.contains(component) ? text : text(text);
  }
}
