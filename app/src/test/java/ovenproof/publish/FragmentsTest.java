package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.fragment.Fragments;

class FragmentsTest {
  @TempDir static Path folder;
  private static Map<String, String> files = Map.of();

  @BeforeAll
  static void write() {
    files =
        new Fragments(SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign"))))
            .files();
  }

  private static String file(String name) {
    return files.get(name).replace('\u00a0', ' ');
  }

  @Test
  void aPointForAProductNamesWhatWasMeasuredAndInWhichRuns() {
    assertThat(file("for-and-against.md"))
        .contains("Evidence: runs alder-toast-1, alder-toast-2, alder-toast-3")
        .containsPattern("Time to done \\d min \\d+ s, middle of the field");
  }

  /** Times 51, 58, 65 min and one beyond 90 min: the middle lies between 58 and 65. */
  @Test
  void aRunBeyondItsCapIsPartOfTheField() {
    assertThat(file("for-and-against.md"))
        .contains("Time to done over 1 h 23 min 55 s, middle of the field 1 h 2 min");
  }

  @Test
  void theNarrationSheetHasEachFigureAsPrintedAndAsSpoken() {
    assertThat(file("narration.md"))
        .contains("Price €289: two hundred and eighty-nine euros")
        .contains("the fourteenth of March twenty twenty-six")
        .contains("out of ten; the interval runs from")
        .containsPattern("\\d min \\d+ s: three minutes [a-z-]+ seconds \\(mean of three runs\\)")
        .doesNotContain("Euro,");
  }

  @Test
  void aPhotographOfARunThatDoesNotCountBoastsNoScore() {
    assertThat(file("captions.tsv").lines().skip(1))
        .isNotEmpty()
        .allSatisfy(line -> assertThat(line.split("\t")).hasSize(3))
        .anySatisfy(
            line ->
                assertThat(line)
                    .contains("Alder, Toast, run 1 of 3, top. The test: ")
                    .contains("Toast, 1 piece of White sandwich bread from Alder"));
  }

  @Test
  void aNameplateFarFromWhatWasMeasuredIsSaidInTheBox() {
    assertThat(file("facts.md"))
        .contains("Usable volume: 18.2 L (0.64 cu ft), measured; nameplate 22.0 L")
        .contains(": measured 17 % less");
  }

  @Test
  void howItWasTestedSaysWhatCountedAndWhatWeighs() {
    assertThat(file("how-we-tested.md"))
        .contains("Toast (White sandwich bread): three runs of each product, 4 of 10 parts")
        .contains("The other one was a trial, void or redone; it is listed.")
        .contains("Dunnock was lent by its maker");
  }

  @Test
  void theRowOfAProductIsHeadedByItsName() {
    assertThat(file("table.html")).contains("<th scope=\"row\">Alder</th>");
  }
}
