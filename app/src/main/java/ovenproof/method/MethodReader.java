package ovenproof.method;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Problems;
import ovenproof.input.Written;
import ovenproof.input.YamlDocument;
import ovenproof.input.YamlMap;

/**
 * Reads {@code method.yaml}. Everything wrong is reported in one pass, at its line and column; what
 * could be read is returned even then, so that the tables of a campaign can be checked against it,
 * but a method whose problems hold an error must not be used.
 */
public final class MethodReader {
  static final List<String> METHOD_KEYS =
      List.of(
          "format",
          "method",
          "title",
          "version",
          "population",
          "why",
          "facts",
          "rated",
          "features",
          "scoring",
          "tests",
          "profiles");
  static final List<String> FACT_KEYS = List.of("id", "name", "unit", "how", "why");
  static final List<String> RATED_KEYS = List.of("id", "name", "steps", "raters", "why");
  static final List<String> FEATURE_KEYS = List.of("id", "name", "group", "parts", "why");
  static final List<String> SCORING_KEYS =
      List.of("combine", "seed", "draws", "decimals", "unit_to_unit", "run_spread");
  static final List<String> PROFILE_KEYS = List.of("id", "name", "parts");

  private static final int STEPS = 5;
  private static final int MOST_PARTS = 1000;

  private final Map<String, MeasureDescription> measures = new LinkedHashMap<>();

  /**
   * @param measures every registered measure
   */
  public MethodReader(Collection<MeasureDescription> measures) {
    measures.forEach(m -> this.measures.put(m.id(), m));
  }

  /**
   * The method; empty when the text is no YAML.
   *
   * @param file as problems name it
   */
  public Optional<Method> read(String file, String text, Problems problems) {
    return YamlDocument.read(file, text, problems).map(this::method);
  }

  private Method method(YamlMap top) {
    top.only(METHOD_KEYS);
    top.need("format").ifPresent(w -> w.mustBe("1"));
    List<Method.Fact> facts = facts(top);
    List<Method.RatedFact> rated = rated(top);
    List<Method.Feature> features = features(top);
    Keys.unique(top.maps("facts"), top.maps("rated"), top.maps("features"));
    List<TestPlan> tests = new ArrayList<>();
    MethodScope scope = new MethodScope(measures, facts, rated, features);
    for (YamlMap test : top.maps("tests")) {
      tests.add(new TestPlanReader(scope, test).read());
    }
    Keys.unique(top.maps("tests"));
    checkTests(top, tests);
    return new Method(
        Keys.key(top, "method"),
        top.text("title"),
        top.text("version"),
        top.text("population"),
        top.textOrNull("why"),
        facts,
        rated,
        features,
        tests,
        scoring(top),
        profiles(top, tests));
  }

  private static void checkTests(YamlMap top, List<TestPlan> tests) {
    if (tests.isEmpty()) {
      top.problems().error(top.place("tests"), "no tests", "at least one test", "add one");
    } else if (tests.stream().allMatch(t -> t.parts() == 0)) {
      top.problems()
          .error(
              top.place("tests"),
              "weights that sum to nothing",
              "parts above 0 in at least one test",
              "");
    }
  }

  private static List<Method.Fact> facts(YamlMap top) {
    List<Method.Fact> facts = new ArrayList<>();
    for (YamlMap map : top.maps("facts")) {
      map.only(FACT_KEYS);
      facts.add(
          new Method.Fact(
              Keys.key(map, "id"),
              map.text("name"),
              map.need("unit").flatMap(Written::unit).orElse(Unit.ONE),
              map.textOrNull("how"),
              map.textOrNull("why")));
    }
    return facts;
  }

  private static List<Method.RatedFact> rated(YamlMap top) {
    List<Method.RatedFact> rated = new ArrayList<>();
    for (YamlMap map : top.maps("rated")) {
      map.only(RATED_KEYS);
      List<String> steps = map.list("steps").stream().map(Written::text).toList();
      if (steps.size() != STEPS || steps.stream().anyMatch(String::isBlank)) {
        map.problems()
            .error(
                map.place("steps"),
                steps.size() + " steps",
                "five worded steps, 0 to 4",
                "say what each step looks like, so that two people can agree on it");
      }
      rated.add(
          new Method.RatedFact(
              Keys.key(map, "id"), map.text("name"), steps, raters(map), map.textOrNull("why")));
    }
    return rated;
  }

  private static List<Method.Feature> features(YamlMap top) {
    List<Method.Feature> features = new ArrayList<>();
    Map<String, Written> names = new LinkedHashMap<>();
    for (YamlMap map : top.maps("features")) {
      map.only(FEATURE_KEYS);
      Optional<Written> name = map.need("name");
      name.ifPresent(w -> once(w, names));
      features.add(
          new Method.Feature(
              Keys.key(map, "id"),
              name.map(Written::text).orElse("").strip(),
              map.find("group").flatMap(Written::key).orElse(null),
              map.find("parts").flatMap(w -> w.wholeNumber(0, MOST_PARTS)).orElse(1),
              map.textOrNull("why")));
    }
    return features;
  }

  /** The checklist is kept by name, whatever its capitals. */
  private static void once(Written name, Map<String, Written> names) {
    Written first = names.putIfAbsent(name.text().strip().toLowerCase(Locale.ROOT), name);
    if (first != null) {
      name.error("a name of its own", "the first stands in line " + first.place().line());
    }
  }

  private static int raters(YamlMap map) {
    Optional<Written> written = map.find("raters");
    int raters = written.flatMap(w -> w.wholeNumber(1, 20)).orElse(2);
    if (raters == 1) {
      written.ifPresent(
          w -> w.warning("two raters", "one person's step shows that person's taste as well"));
    }
    return raters;
  }

  private static Method.Scoring scoring(YamlMap top) {
    Method.Scoring usual = Method.Scoring.DEFAULT;
    Optional<YamlMap> written = top.map("scoring");
    if (written.isEmpty()) {
      return usual;
    }
    YamlMap map = written.get();
    map.only(SCORING_KEYS);
    return new Method.Scoring(
        map.find("combine").flatMap(w -> w.word(Combine.class)).orElse(usual.combine()),
        map.find("seed").flatMap(MethodReader::seed).orElse(usual.seed()),
        map.find("draws").flatMap(w -> w.wholeNumber(1000, 1_000_000)).orElse(usual.draws()),
        map.find("decimals").flatMap(w -> w.wholeNumber(0, 2)).orElse(usual.decimals()),
        map.find("unit_to_unit").flatMap(w -> w.number(0, 10)).orElse(null),
        map.find("run_spread")
            .flatMap(w -> w.word(Method.RunSpread.class))
            .orElse(usual.runSpread()));
  }

  private static Optional<Long> seed(Written written) {
    if (written.text().matches("[+-]?\\d{1,18}")) {
      return Optional.of(Long.parseLong(written.text()));
    }
    written.error("a whole number of up to 18 digits", "");
    return Optional.empty();
  }

  private static List<Method.Profile> profiles(YamlMap top, List<TestPlan> tests) {
    List<String> ids = tests.stream().map(TestPlan::id).toList();
    List<Method.Profile> profiles = new ArrayList<>();
    for (YamlMap map : top.maps("profiles")) {
      map.only(PROFILE_KEYS);
      Map<String, Integer> parts = new LinkedHashMap<>();
      List<YamlMap.Pair> entries = map.map("parts").map(YamlMap::entries).orElse(List.of());
      for (YamlMap.Pair entry : entries) {
        Optional<String> test = entry.first().oneOf(ids, "a test of this method");
        Optional<Integer> weight = entry.second().wholeNumber(0, MOST_PARTS);
        test.ifPresent(t -> weight.ifPresent(w -> parts.put(t, w)));
      }
      if (!tests.isEmpty()
          && tests.stream().allMatch(t -> parts.getOrDefault(t.id(), t.parts()) == 0)) {
        map.problems()
            .error(
                map.place("parts"), "weights that sum to nothing", "parts above 0 in a test", "");
      }
      profiles.add(new Method.Profile(Keys.key(map, "id"), map.text("name"), parts));
    }
    Keys.unique(top.maps("profiles"));
    return profiles;
  }

  /** Weight of a node, in whole parts; must be said. */
  static int parts(YamlMap map) {
    return map.need("parts").flatMap(w -> w.wholeNumber(0, MOST_PARTS)).orElse(1);
  }

  /** Points from 0 to 10. */
  static Optional<BigDecimal> points(Written written) {
    return written.number(0, 10).map(BigDecimal::valueOf);
  }
}
