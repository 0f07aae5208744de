package ovenproof.method;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Problems;
import ovenproof.input.Words;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;
import ovenproof.method.TestPlan.PanelMark;
import ovenproof.method.TestPlan.StopRule;

/** Reads one test of a method. */
final class TestPlanReader {
  static final List<String> TEST_KEYS =
      List.of(
          "id",
          "name",
          "why",
          "parts",
          "variants",
          "sample",
          "setting",
          "start",
          "preheat",
          "rack",
          "batches",
          "replicates",
          "actions",
          "stops",
          "photos",
          "marks",
          "measures",
          "combine",
          "criteria",
          "gates",
          "cautions");
  static final List<String> VARIANT_KEYS = List.of("id", "name", "role", "note");
  static final List<String> SAMPLE_KEYS =
      List.of("food", "pieces", "mass", "thickness", "start", "prepare");
  static final List<String> SETTING_KEYS = List.of("rule", "mode", "dial", "note");
  static final List<String> ACTION_KEYS = List.of("do", "at", "within");
  static final List<String> STOP_KEYS = List.of("when", "at", "note");
  static final List<String> MARK_KEYS = List.of("id", "name", "scale", "kind", "anchors", "why");

  private static final Pattern SCALE =
      Pattern.compile("(-?\\d+(?:\\.\\d+)?)\\s*(?:to|–)\\s*(-?\\d+(?:\\.\\d+)?)");
  private static final TestPlan.Variant STANDARD =
      new TestPlan.Variant("standard", "Standard", TestPlan.Variant.Role.SCORED, null);
  private static final Quantity USUAL_WITHIN = Quantity.of(10, Unit.SECOND);
  private static final int MOST_MARKS = 4;

  private final MethodScope scope;
  private final YamlMap map;
  private final Problems problems;

  TestPlanReader(MethodScope scope, YamlMap map) {
    this.scope = scope;
    this.map = map;
    this.problems = map.problems();
  }

  TestPlan read() {
    map.only(TEST_KEYS);
    int batches = map.find("batches").flatMap(w -> w.wholeNumber(1, 50)).orElse(1);
    int replicates = map.need("replicates").flatMap(w -> w.wholeNumber(0, 100)).orElse(1);
    List<StopRule> stops = stops();
    TestPlan.PhotoPlan photos =
        map.map("photos").map(p -> new PhotoPlanReader(p).read()).orElse(null);
    List<PanelMark> marks = marks();
    TestScope within = new TestScope(scope, batches, replicates, stops, photos, marks);
    List<MeasureUse> measures = new MeasureUseReader(within, map.maps("measures")).read();
    ValueTreeReader values = new ValueTreeReader(within, measures, map);
    return new TestPlan(
        Keys.key(map, "id"),
        map.text("name"),
        map.textOrNull("why"),
        MethodReader.parts(map),
        variants(),
        sample(),
        setting(),
        start(),
        map.textOrNull("preheat"),
        map.textOrNull("rack"),
        batches,
        replicates,
        actions(stops),
        stops,
        photos,
        marks,
        measures,
        map.find("combine").flatMap(w -> w.word(Combine.class)).orElse(Combine.ARITHMETIC),
        values.criteria(),
        values.gates(),
        map.list("cautions").stream().map(Written::text).toList());
  }

  private List<TestPlan.Variant> variants() {
    List<TestPlan.Variant> variants = new ArrayList<>();
    for (YamlMap variant : map.maps("variants")) {
      variant.only(VARIANT_KEYS);
      variants.add(
          new TestPlan.Variant(
              Keys.key(variant, "id"),
              variant.text("name"),
              variant
                  .need("role")
                  .flatMap(w -> w.word(TestPlan.Variant.Role.class))
                  .orElse(TestPlan.Variant.Role.COMPARED),
              variant.textOrNull("note")));
    }
    Keys.unique(map.maps("variants"));
    if (variants.isEmpty()) {
      return List.of(STANDARD);
    }
    long scored = variants.stream().filter(v -> v.role() == TestPlan.Variant.Role.SCORED).count();
    if (scored != 1) {
      problems.error(
          map.place("variants"),
          scored + " scored variants",
          "exactly one scored variant",
          "give the others the role compared");
    }
    return variants;
  }

  private TestPlan.@Nullable Sample sample() {
    Optional<YamlMap> written = map.map("sample");
    if (written.isEmpty()) {
      return null;
    }
    YamlMap sample = written.get();
    sample.only(SAMPLE_KEYS);
    return new TestPlan.Sample(
        sample.text("food"),
        sample.need("pieces").flatMap(w -> w.wholeNumber(1, 1000)).orElse(1),
        sample.find("mass").flatMap(w -> w.tolerated(Dimension.MASS)).orElse(null),
        sample.find("thickness").flatMap(w -> w.tolerated(Dimension.LENGTH)).orElse(null),
        sample.find("start").flatMap(w -> w.tolerated(Dimension.TEMPERATURE)).orElse(null),
        sample.textOrNull("prepare"));
  }

  private Method.@Nullable Setting setting() {
    Optional<YamlMap> written = map.map("setting");
    if (written.isEmpty()) {
      return null;
    }
    YamlMap setting = written.get();
    setting.only(SETTING_KEYS);
    return new Method.Setting(
        setting
            .need("rule")
            .flatMap(w -> w.word(Method.SettingRule.class))
            .orElse(Method.SettingRule.AS_USER_WOULD),
        setting.textOrNull("mode"),
        setting.find("dial").flatMap(Written::anyQuantity).orElse(null),
        setting.textOrNull("note"));
  }

  private TestPlan.StartState start() {
    TestPlan.StartState start =
        map.find("start")
            .flatMap(w -> w.word(TestPlan.StartState.class))
            .orElse(TestPlan.StartState.COLD);
    if (start == TestPlan.StartState.PREHEATED && !map.has("preheat")) {
      problems.error(
          map.place("start"),
          "preheated, without saying how",
          "\"preheat\"",
          "say when the appliance counts as preheated");
    }
    return start;
  }

  private List<TestPlan.TimedAction> actions(List<StopRule> stops) {
    Optional<Quantity> cap =
        stops.stream().filter(s -> s.when() == StopRule.When.CAP).findFirst().map(StopRule::at);
    List<TestPlan.TimedAction> actions = new ArrayList<>();
    for (YamlMap action : map.maps("actions")) {
      action.only(ACTION_KEYS);
      Quantity at =
          action
              .need("at")
              .flatMap(w -> w.quantity(Dimension.TIME))
              .orElse(Quantity.of(0, Unit.SECOND));
      if (cap.isPresent() && at.contract() >= cap.get().contract()) {
        problems.warning(
            action.place("at"), "an action at " + at, "a time before the cap of " + cap.get(), "");
      }
      actions.add(
          new TestPlan.TimedAction(
              action.text("do"),
              at,
              action.find("within").flatMap(w -> w.quantity(Dimension.TIME)).orElse(USUAL_WITHIN)));
    }
    return actions;
  }

  private List<StopRule> stops() {
    List<StopRule> stops = new ArrayList<>();
    for (YamlMap stop : map.maps("stops")) {
      stop.only(STOP_KEYS);
      Optional<StopRule.When> when = stop.need("when").flatMap(w -> w.word(StopRule.When.class));
      if (when.isEmpty()) {
        continue;
      }
      Quantity at = stopAt(stop, when.get());
      if (stops.stream().anyMatch(s -> s.when() == when.get())) {
        problems.error(
            stop.place("when"), "\"" + Words.of(when.get()) + "\" twice", "each rule once", "");
      }
      stops.add(new StopRule(when.get(), at, stop.textOrNull("note")));
    }
    checkCap(stops);
    return stops;
  }

  private @Nullable Quantity stopAt(YamlMap stop, StopRule.When when) {
    Optional<Dimension> expected =
        switch (when) {
          case TIME, CAP -> Optional.of(Dimension.TIME);
          case CORE -> Optional.of(Dimension.TEMPERATURE);
          case MASS_LOSS -> Optional.of(Dimension.RATIO);
          case ENDS_BY_ITSELF, SHADE -> Optional.empty();
        };
    if (expected.isPresent()) {
      return stop.need("at").flatMap(w -> w.quantity(expected.get())).orElse(null);
    }
    stop.find("at")
        .ifPresent(
            w ->
                w.error(
                    "no \"at\" where the "
                        + (when == StopRule.When.SHADE ? "shade" : "appliance")
                        + " decides",
                    "delete it"));
    return null;
  }

  private void checkCap(List<StopRule> stops) {
    Optional<StopRule> cap = stops.stream().filter(s -> s.when() == StopRule.When.CAP).findFirst();
    boolean open =
        stops.stream()
            .anyMatch(s -> s.when() != StopRule.When.CAP && s.when() != StopRule.When.TIME);
    if (cap.isEmpty() && open) {
      problems.warning(
          map.place("stops"),
          "no cap",
          "a cap: the longest that the desk waits",
          "add {when: cap, at: …}; a run that reaches it is known only as longer");
    }
    for (StopRule stop : stops) {
      boolean never =
          stop.when() == StopRule.When.TIME
              && stop.at() != null
              && cap.isPresent()
              && cap.get().at() != null
              && stop.at().contract() > cap.get().at().contract();
      if (never) {
        problems.error(
            map.place("stops"),
            "a stop at " + stop.at() + " behind the cap of " + cap.get().at(),
            "a time up to the cap",
            "");
      }
    }
  }

  private List<PanelMark> marks() {
    List<PanelMark> marks = new ArrayList<>();
    for (YamlMap mark : map.maps("marks")) {
      marks.add(mark(mark));
    }
    Keys.unique(map.maps("marks"));
    if (marks.size() > MOST_MARKS) {
      problems.warning(
          map.place("marks"),
          marks.size() + " marks",
          "at most four for one food",
          "a panel that marks more marks worse");
    }
    return marks;
  }

  private PanelMark mark(YamlMap mark) {
    mark.only(MARK_KEYS);
    Matcher scale = SCALE.matcher(mark.has("scale") ? mark.text("scale") : "0 to 10");
    double lowest = scale.matches() ? Double.parseDouble(scale.group(1)) : 0;
    double highest = scale.matches() ? Double.parseDouble(scale.group(2)) : 10;
    if (!scale.matches() || !(lowest < highest)) {
      problems.error(
          mark.place("scale"),
          "\"" + mark.text("scale") + "\"",
          "a scale such as 0 to 10, lowest first",
          "");
      lowest = 0;
      highest = 10;
    }
    return new PanelMark(
        Keys.key(mark, "id"),
        mark.text("name"),
        lowest,
        highest,
        mark.need("kind")
            .flatMap(w -> w.word(PanelMark.MarkKind.class))
            .orElse(PanelMark.MarkKind.INTENSITY),
        anchors(mark, lowest, highest),
        mark.textOrNull("why"));
  }

  private List<PanelMark.Anchor> anchors(YamlMap mark, double lowest, double highest) {
    List<PanelMark.Anchor> anchors = new ArrayList<>();
    for (YamlMap.Pair entry : mark.map("anchors").map(YamlMap::entries).orElse(List.of())) {
      entry
          .first()
          .number(lowest, highest)
          .ifPresent(p -> anchors.add(new PanelMark.Anchor(p, entry.second().text())));
    }
    anchors.sort(Comparator.comparingDouble(PanelMark.Anchor::point));
    if (anchors.size() < 2) {
      problems.warning(
          mark.has("anchors") ? mark.place("anchors") : mark.place(),
          anchors.size() + " anchors",
          "a thing to taste or look at for both ends of the scale",
          "without anchors each taster uses a scale of their own");
    }
    return anchors;
  }
}
