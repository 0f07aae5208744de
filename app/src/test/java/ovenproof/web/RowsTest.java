package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Long lists in parts; every expected number is counted by hand. */
class RowsTest {
  private static final List<String> OVENS =
      IntStream.rangeClosed(1, 95).mapToObj(i -> (i % 2 == 0 ? "Öfchen " : "فرن ") + i).toList();

  private static Rows<String> asked(String... query) {
    Map<String, String> asked = new java.util.HashMap<>();
    for (int i = 0; i < query.length; i += 2) {
      asked.put(query[i], query[i + 1]);
    }
    return Rows.of(OVENS, 40, "/c/x/products", asked, name -> name);
  }

  @Test
  void theFirstPageLeadsToTheSecondAndTheLastEnds() {
    assertThat(asked().shown()).hasSize(40);
    assertThat(asked().words()).isEqualTo("1 to 40 of 95");
    assertThat(asked().before()).isEmpty();
    assertThat(asked().after()).isEqualTo("/c/x/products?from=40");
    assertThat(asked("from", "80").words()).isEqualTo("81 to 95 of 95");
    assertThat(asked("from", "80").after()).isEmpty();
  }

  @Test
  void aNameIsFoundInAnyCaseAndScript() {
    assertThat(asked("find", "ÖFCHEN").found()).isEqualTo(47);
    assertThat(asked("find", "ÖFCHEN", "from", "40").shown()).hasSize(7);
    assertThat(asked("find", "فرن 9").shown())
        .containsExactly("فرن 9", "فرن 91", "فرن 93", "فرن 95");
    assertThat(asked("find", "nobody").words()).isEqualTo("none of 95 that hold “nobody”");
  }

  @Test
  void linksKeepWhatElseThePageWasAsked() {
    Rows<String> rows = asked("show", "all", "find", "a&b=c", "session", "", "_csrf", "secret");
    assertThat(rows.kept()).containsOnly(Map.entry("show", "all"));
    assertThat(asked("show", "all", "find", "ö").after())
        .isEqualTo("/c/x/products?find=%C3%B6&from=40&show=all");
  }

  @ParameterizedTest
  @ValueSource(strings = {"-1", "x", "2147483648", "999999999", "41", ""})
  void aBeginningThatIsNoneIsTakenForTheNearest(String from) {
    assertThat(asked("from", from).from()).isIn(0, 40, 80);
    assertThat(asked("from", from).shown()).isNotEmpty();
  }

  @Test
  void aListThatFitsSaysNothing() {
    Rows<String> few = Rows.of(List.of("Alder"), 40, "/", Map.of(), name -> name);
    assertThat(few.isPart()).isFalse();
    assertThat(Rows.of(List.<String>of(), 40, "/", Map.of("from", "7"), n -> n).shown()).isEmpty();
  }
}
