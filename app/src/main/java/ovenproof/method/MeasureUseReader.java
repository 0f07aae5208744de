package ovenproof.method;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.photo.BatchMeasureCatalogue;
import ovenproof.core.photo.FacePairs;
import ovenproof.core.photo.PieceClasses.ShadeClass;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;

/** Reads the measures of one test and checks them against the registered descriptions. */
final class MeasureUseReader {
  static final List<String> MEASURE_KEYS =
      List.of("id", "name", "take", "unit", "place", "face", "batch", "of", "summary");

  /** Parameter of photo measures that the photo plan gives. */
  private static final String TARGET = "target";

  private final TestScope scope;
  private final List<YamlMap> written;

  MeasureUseReader(TestScope scope, List<YamlMap> written) {
    this.scope = scope;
    this.written = written;
  }

  List<MeasureUse> read() {
    List<MeasureUse> uses = new ArrayList<>();
    for (YamlMap map : written) {
      uses.add(use(map));
    }
    Keys.unique(written);
    return uses;
  }

  private MeasureUse use(YamlMap map) {
    Map<String, MeasureDescription> known = scope.method().measures();
    Optional<MeasureDescription> description =
        map.need("take").flatMap(w -> w.oneOf(known.keySet(), "a measure")).map(known::get);
    MeasureUse use =
        new MeasureUse(
            Keys.key(map, "id"),
            map.textOrNull("name"),
            map.has("take") ? map.text("take") : "",
            map.find("unit").flatMap(Written::unit).orElse(null),
            map.find("place").flatMap(Written::key).orElse(null),
            map.find("face")
                .flatMap(w -> w.oneOf(scope.faces(), "a face of the photos"))
                .orElse(null),
            map.find("batch").flatMap(w -> w.wholeNumber(1, scope.batches())).orElse(null),
            map.find("of").flatMap(Written::key).orElse(null),
            map.find("summary")
                .flatMap(w -> w.word(MeasureUse.Summary.class))
                .orElse(MeasureUse.Summary.MEAN),
            description.map(d -> parameters(map, d)).orElse(Map.of()));
    description.ifPresent(d -> check(map, use, d));
    return use;
  }

  private Map<String, String> parameters(YamlMap map, MeasureDescription description) {
    List<Parameter> own =
        description.parameters().stream().filter(p -> !p.id().equals(TARGET)).toList();
    if (own.size() < description.parameters().size()) {
      checkTarget(map);
    }
    List<String> ids = own.stream().map(Parameter::id).toList();
    map.only(Stream.concat(MEASURE_KEYS.stream(), ids.stream()).toList());
    Map<String, String> parameters = new LinkedHashMap<>();
    for (Parameter parameter : own) {
      Optional<Written> value =
          parameter.fallback().isEmpty() ? map.need(parameter.id()) : map.find(parameter.id());
      value.ifPresent(
          w ->
              w.quantity(parameter.dimension())
                  .ifPresent(q -> parameters.put(parameter.id(), w.text())));
    }
    return parameters;
  }

  /** The wanted shade is the photo plan's, one for all measures of the test. */
  private void checkTarget(YamlMap map) {
    if (scope.photos() != null && !scope.photos().hasTarget()) {
      error(
          map,
          "take",
          "a measure against a shade that is not given",
          "\"target\" in \"photos\"",
          "for example target: {L: 62, a: 9, b: 31}, or target: {from: shade-card}");
    }
  }

  private void check(YamlMap map, MeasureUse use, MeasureDescription description) {
    checkSource(map, use, description);
    checkSummary(map, use);
    boolean ofProduct = description.evidence() == EvidenceKind.FACTS;
    if (scope.replicates() == 0 && !ofProduct) {
      error(map, "take", "a measure of runs in a test without runs", "replicates above 0", "");
    }
    boolean unitIsFixed = description.unit() != Unit.ONE;
    if (use.unit() != null
        && unitIsFixed
        && use.unit().dimension() != description.unit().dimension()) {
      error(map, "unit", use.unit().symbol(), description.unit().dimension().words(), "");
    }
  }

  private void checkSource(YamlMap map, MeasureUse use, MeasureDescription description) {
    switch (description.evidence()) {
      case READING -> checkReading(map, use, description);
      case RATINGS ->
          named(map, use, scope.marks().stream().map(TestPlan.PanelMark::id).toList(), "a mark");
      case FACTS -> checkFacts(map, use, description);
      case PHOTO -> {
        if (scope.photos() == null) {
          error(map, "take", "a photo measure in a test without photos", "\"photos\"", "add them");
        } else {
          checkPhotos(map, use, description, scope.photos());
        }
      }
      case TRACE, EVENTS, PIECES -> {
        // Needs nothing else of the test.
      }
    }
  }

  private void checkReading(YamlMap map, MeasureUse use, MeasureDescription description) {
    if (use.unit() == null && description.unit() == Unit.ONE) {
      error(map, "take", "a reading without unit", "\"unit\"", "add it, for example unit: °C");
    }
  }

  private static void checkPhotos(
      YamlMap map, MeasureUse use, MeasureDescription description, TestPlan.PhotoPlan plan) {
    String id = description.id();
    boolean ofClass =
        id.equals(BatchMeasureCatalogue.CLASS_SHARE.id())
            || id.equals(BatchMeasureCatalogue.CLASS_AREA.id());
    if (ofClass && plan.classes().isEmpty()) {
      error(
          map,
          "take",
          "a share of a class without classes",
          "\"classes\" in \"photos\"",
          "for example classes: [{id: pale, from: 65}, {id: golden, from: 50}, {id: dark}]");
    } else if (ofClass) {
      named(map, use, plan.classes().stream().map(ShadeClass::name).toList(), "a class");
    } else if (id.equals(FacePairs.TOP_MINUS_UNDERSIDE.id())) {
      needsFace(map, plan, "underside");
    } else if (id.equals(FacePairs.BEFORE_MINUS_AFTER.id())) {
      needsFace(map, plan, "before");
    }
  }

  private static void needsFace(YamlMap map, TestPlan.PhotoPlan plan, String face) {
    if (!plan.faces().contains(face)) {
      error(
          map,
          "take",
          "a difference to a face that is not photographed",
          face + " among the faces of \"photos\"",
          "add it to faces: [" + String.join(", ", plan.faces()) + "]");
    }
  }

  private void checkFacts(YamlMap map, MeasureUse use, MeasureDescription description) {
    List<Method.Feature> features = scope.method().features();
    if (use.take().equals(MeasureUse.FEATURES)) {
      checkShare(map, use, features);
    } else if (use.take().equals(MeasureUse.FEATURE)) {
      named(map, use, features.stream().map(Method.Feature::id).toList(), "a feature");
    } else if (description.unit() == Unit.POINTS) {
      List<Method.RatedFact> rated = scope.method().rated();
      named(map, use, rated.stream().map(Method.RatedFact::id).toList(), "a rated fact");
    } else {
      List<Method.Fact> facts = scope.method().facts();
      named(map, use, facts.stream().map(Method.Fact::id).toList(), "a fact");
    }
  }

  private static void checkShare(YamlMap map, MeasureUse use, List<Method.Feature> features) {
    if (use.of() != null) {
      named(
          map,
          use,
          features.stream().map(Method.Feature::group).filter(Objects::nonNull).distinct().toList(),
          "a group of features");
    }
    boolean weighs =
        features.stream()
            .filter(f -> use.of() == null || use.of().equals(f.group()))
            .anyMatch(f -> f.parts() > 0);
    if (!weighs
        && (use.of() == null || features.stream().anyMatch(f -> use.of().equals(f.group())))) {
      error(
          map,
          "take",
          "a share of features that weigh nothing",
          "\"features\" at the top of the method, one with parts above 0 at least",
          "for example features: [{id: door-light, name: Door light, parts: 2}]");
    }
  }

  private static void named(YamlMap map, MeasureUse use, List<String> known, String what) {
    String key = map.has("of") ? "of" : "id";
    new Written(use.ofOrId(), map.place(key), map.problems())
        .oneOf(known, what + " of this method");
  }

  private void checkSummary(YamlMap map, MeasureUse use) {
    switch (use.summary()) {
      case CHANGE, ABSOLUTE_CHANGE, SLOPE -> {
        int fewest = use.summary() == MeasureUse.Summary.SLOPE ? 3 : 2;
        if (scope.batches() < fewest) {
          String found =
              fewest == 2
                  ? "a change over one batch"
                  : "a slope over "
                      + scope.batches()
                      + (scope.batches() == 1 ? " batch" : " batches");
          error(map, "summary", found, "batches: " + fewest + " or more", "");
        }
        if (use.batch() != null) {
          error(map, "batch", "one batch of a change over batches", "no \"batch\"", "delete it");
        }
      }
      case FACE_DIFFERENCE -> {
        if (scope.faces().size() < 2) {
          error(map, "summary", "a difference of one face", "two faces in \"photos\"", "");
        }
      }
      case MEAN, LARGEST, SMALLEST, SPREAD -> {
        // Always possible.
      }
    }
  }

  private static void error(
      YamlMap map, String key, String found, String expected, @Nullable String remedy) {
    map.problems().error(map.place(key), found, expected, remedy == null ? "" : remedy);
  }
}
