package ovenproof.editor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.core.quantity.Dimension;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Criterion;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;
import ovenproof.method.MethodWriter;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.web.FormProblems;

/** A change at one place changes what it says and nothing else, in starters and written methods. */
class MethodTextTest {
  static java.util.stream.Stream<String> texts() {
    return Starters.names().stream()
        .flatMap(
            n ->
                java.util.stream.Stream.of(
                    Starters.text(n), MethodWriter.write(read(Starters.text(n)))));
  }

  private static Method read(String text) {
    Problems problems = new Problems();
    Optional<Method> method =
        new MethodReader(MeasureRegistry.all().measures()).read("method.yaml", text, problems);
    problems.throwIfErrors();
    return method.orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("texts")
  void aNumberChangesAloneAndCommentsStay(String text) {
    Method before = read(text);
    for (TestPlan test : before.tests()) {
      MethodText changed = MethodText.of(text).withNumber(test.id(), "parts", test.parts() + 7);
      assertThat(MethodDifference.between(before, read(changed.toString())))
          .singleElement()
          .asString()
          .contains(test.name() + ", parts")
          .contains("became " + (test.parts() + 7));
      assertThat(changed.toString().lines().filter(l -> l.strip().startsWith("#")).toList())
          .isEqualTo(text.lines().filter(l -> l.strip().startsWith("#")).toList());
      assertThat(changed.withNumber(test.id(), "parts", test.parts()).toString().length())
          .as("and back again, up to a key that was added")
          .isBetween(text.length(), text.length() + 20);
    }
  }

  @ParameterizedTest
  @MethodSource("texts")
  void everyCurveThatCanBeDrawnIsWrittenAndReadAsItWas(String text) {
    Method before = read(text);
    for (TestPlan test : before.tests()) {
      test.criteria().forEach(node -> curve(text, before, test, node));
    }
  }

  private static void curve(String text, Method before, TestPlan test, ValueNode node) {
    if (node instanceof ValueNode.Group group) {
      group.children().forEach(child -> curve(text, before, test, child));
    } else if (node instanceof Criterion c && MethodPage.editable(c.curve())) {
      CurveForm.Shape shape = CurveForm.Shape.of(c.curve());
      FormProblems problems = new FormProblems();
      Dimension dimension = CurveForm.dimension(c.curve());
      var typed = CurveForm.read(CurveForm.fields(c.curve(), shape), shape, dimension, problems);
      assertThat(problems.byField()).isEmpty();
      assertThat(typed).contains(c.curve());
      String changed =
          MethodText.of(text)
              .withCurve(test.id(), c.id(), CurveWords.yaml(typed.orElseThrow()))
              .toString();
      assertThat(read(changed)).isEqualTo(before);
    }
  }

  @ParameterizedTest
  @MethodSource("texts")
  void aTestLeavesAndComesBackWithWhatItNames(String text) {
    Method before = read(text);
    for (TestPlan test : before.tests()) {
      MethodText without = MethodText.of(text).withoutTest(test.id());
      boolean named = before.profiles().stream().anyMatch(p -> p.parts().containsKey(test.id()));
      if (!named && before.tests().size() > 1) {
        assertThat(read(without.toString()).test(test.id())).isEmpty();
        Method again = read(without.withTestOf(MethodText.of(text), test.id()).toString());
        assertThat(again.test(test.id())).isEqualTo(before.test(test.id()));
        assertThat(again.tests()).hasSameSizeAs(before.tests());
      }
    }
  }

  @Test
  void aTestOfAnotherStarterBringsItsRatedFacts() {
    MethodText ovens = MethodText.of(Starters.text("countertop-ovens")).withoutTest("use");
    Method changed =
        read(ovens.withTestOf(MethodText.of(Starters.text("toasters")), "use").toString());
    assertThat(changed.ratedFacts()).anyMatch(f -> f.id().equals("lifting"));
  }

  @ParameterizedTest
  @MethodSource("texts")
  void aVariantComesIsScoredAndGoes(String text) {
    Method before = read(text);
    TestPlan test = before.tests().get(0);
    MethodText more =
        MethodText.of(text).withVariant(test.id(), "dark-2", "Dark: \"two\" # \\ שלום");
    TestPlan with = read(more.toString()).test(test.id()).orElseThrow();
    assertThat(with.variants()).hasSize(test.variants().size() + 1);
    assertThat(with.variants().get(with.variants().size() - 1).name())
        .isEqualTo("Dark: \"two\" # \\ שלום");
    MethodText scored = more.withScoredVariant(test.id(), "dark-2");
    assertThat(read(scored.toString()).test(test.id()).orElseThrow().scoredVariant().id())
        .isEqualTo("dark-2");
    MethodText gone = more.withoutVariant(test.id(), "dark-2");
    assertThat(read(gone.toString()).test(test.id())).isEqualTo(before.test(test.id()));
  }

  @Test
  void theNextVersionRaisesTheLastNumber() {
    assertThat(MethodPage.next("3")).isEqualTo("4");
    assertThat(MethodPage.next("2026.9")).isEqualTo("2026.10");
    assertThat(MethodPage.next("spring")).isEqualTo("spring.1");
  }

  @Test
  void aTextThatIsNoYamlStaysAsItIs() {
    assertThat(MethodText.of("tests: [").withNumber("a", "parts", 3).toString())
        .isEqualTo("tests: [");
  }
}
