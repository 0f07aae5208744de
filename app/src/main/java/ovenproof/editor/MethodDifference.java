package ovenproof.editor;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import ovenproof.method.Criterion;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;

/** What one version of a method changed against another, in words. */
final class MethodDifference {
  private final List<String> words = new ArrayList<>();

  private MethodDifference() {}

  /** One sentence per change; empty when both say the same. */
  static List<String> between(Method before, Method after) {
    MethodDifference difference = new MethodDifference();
    difference.compare("Version", before.version(), after.version());
    difference.compare("Title", before.title(), after.title());
    difference.compare("Population", before.population(), after.population());
    difference.compare("Scoring", before.scoring(), after.scoring());
    difference.tests(before, after);
    if (!before.facts().equals(after.facts())) {
      difference.words.add("The facts changed.");
    }
    if (!before.ratedFacts().equals(after.ratedFacts())) {
      difference.words.add("The rated facts changed.");
    }
    difference.features(before, after);
    return List.copyOf(difference.words);
  }

  private void compare(String what, Object before, Object after) {
    if (!Objects.equals(before, after)) {
      words.add(what + ": " + before + " became " + after + ".");
    }
  }

  private void tests(Method before, Method after) {
    for (TestPlan test : after.tests()) {
      before
          .test(test.id())
          .ifPresentOrElse(
              old -> test(old, test), () -> words.add("Test added: " + test.name() + "."));
    }
    before.tests().stream()
        .filter(t -> after.test(t.id()).isEmpty())
        .forEach(t -> words.add("Test removed: " + t.name() + "."));
  }

  private void features(Method before, Method after) {
    Map<String, Method.Feature> old = new LinkedHashMap<>();
    before.features().forEach(f -> old.put(f.id(), f));
    for (Method.Feature feature : after.features()) {
      Method.Feature was = old.remove(feature.id());
      if (was == null) {
        words.add("Feature added to the checklist: " + feature.name() + ".");
      } else {
        compare("Feature " + feature.name() + ", name", was.name(), feature.name());
        compare("Feature " + feature.name() + ", parts", was.parts(), feature.parts());
        compare(
            "Feature " + feature.name() + ", group",
            Objects.requireNonNullElse(was.group(), "none"),
            Objects.requireNonNullElse(feature.group(), "none"));
      }
    }
    old.values().forEach(f -> words.add("Feature removed from the checklist: " + f.name() + "."));
  }

  private void test(TestPlan old, TestPlan now) {
    int already = words.size();
    String name = now.name();
    compare(name + ", name", old.name(), now.name());
    compare(name + ", parts", old.parts(), now.parts());
    compare(name + ", runs", old.replicates(), now.replicates());
    compare(name + ", batches", old.batches(), now.batches());
    compare(name + ", start", old.start(), now.start());
    Map<String, ValueNode> before = new LinkedHashMap<>();
    Map<String, ValueNode> after = new LinkedHashMap<>();
    flatten(old.criteria(), before);
    flatten(now.criteria(), after);
    after.forEach((id, node) -> node(name, before.get(id), node));
    before.forEach(
        (id, node) -> {
          if (!after.containsKey(id)) {
            words.add(name + ": criterion removed, " + node.name() + ".");
          }
        });
    if (words.size() == already && !old.equals(now)) {
      words.add(
          name + ": sample, setting, stops, photos, marks, measures, gates or cautions changed.");
    }
  }

  private void node(String test, @org.jspecify.annotations.Nullable ValueNode old, ValueNode now) {
    if (old == null) {
      words.add(test + ": criterion added, " + now.name() + ".");
      return;
    }
    compare(test + ", " + now.name() + ", parts", old.parts(), now.parts());
    if (old instanceof Criterion a && now instanceof Criterion b) {
      if (!a.curve().equals(b.curve())) {
        words.add(test + ", " + now.name() + ": the value curve changed.");
      }
      compare(test + ", " + now.name() + ", measure", a.measure(), b.measure());
      compare(
          test + ", " + now.name() + ", points when it cannot be done", a.cannotDo(), b.cannotDo());
    }
  }

  private static void flatten(List<ValueNode> nodes, Map<String, ValueNode> into) {
    for (ValueNode node : nodes) {
      into.put(node.id(), node);
      if (node instanceof ValueNode.Group group) {
        flatten(group.children(), into);
      }
    }
  }
}
