package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one row of a table can get wrong. Each asserts place, found, expected and remedy. */
class TableProblemsTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void anUnknownColumnIsSaidWithTheNearest() {
    folder.replace("runs.csv", "specimen,session", "specimn,session");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:1:28: found the column \"specimn\", expected one of run, product, test, replicate, variant, specimen, kind, session, bench, started, redo_of, cause, cause_at, by, note; did you mean \"specimen\"?");
  }

  @Test
  void aMisspeltColumnIsSaidOnce() {
    folder.replace("runs.csv", "run,product", "rnu,product");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:1:1: found the column \"rnu\", expected one of run, product, test, replicate, variant, specimen, kind, session, bench, started, redo_of, cause, cause_at, by, note; did you mean \"run\"?");
  }

  @Test
  void aMissingColumnIsSaidOnce() {
    folder.write("left-out.csv", "name\nCedar 12\nDeal 9\n");
    assertThat(folder.lines())
        .containsExactly(
            "left-out.csv:1: found no column \"why\", expected the columns name, why; add it to the header row");
  }

  @Test
  void aMissingCellIsSaid() {
    folder.replace("products.csv", "birch,Birch 18", "birch,");
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:3:7: found an empty cell, expected \"name\"; fill it in, or delete the row");
  }

  @Test
  void twoProductsOfOneNameAreSaid() {
    folder.replace("products.csv", "alder,Alder 20", "alder,BIRCH 18");
    assertThat(folder.lines())
        .containsExactly(
            "warning: products.csv:3:7: found the name of another product, expected a name of its own; line 2 has it already; add what tells the two apart");
  }

  @Test
  void aCellTooManyIsSaid() {
    folder.replace("products.csv", "birch,Birch 18", "birch,Birch, 18");
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:3:13: found a cell without a column: \"18\", expected 2 cells, as in the header; put quotes around a cell that contains \",\"");
  }

  @Test
  void anUnclosedQuoteIsSaid() {
    folder.replace("products.csv", "birch,Birch 18", "birch,\"Birch 18");
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:2: found cells that cannot be told apart at or after this line, expected a closing quote for every opening one; write \"\" for a quote inside a quoted cell");
  }

  @Test
  void aRunOfAnUnknownProductIsSaidWithTheNearest() {
    folder.replace("runs.csv", "birch-1,birch", "birch-1,brich");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:9: found \"brich\", expected a product of products.csv (alder, birch); did you mean \"birch\"?");
  }

  @Test
  void aRunOfAnUnknownTestIsSaid() {
    folder.replace("runs.csv", "birch-1,birch,toast", "birch-1,birch,toats");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:15: found \"toats\", expected a test of the method (toast, use); did you mean \"toast\"?");
  }

  @Test
  void aRunOfAnUnknownSpecimenIsSaid() {
    folder.replace("runs.csv", "1,B1", "1,B2");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:23: found \"B2\", expected a specimen of specimens.csv (A1, B1); did you mean \"B1\"?");
  }

  @Test
  void anUnknownRunIsSaid() {
    folder.replace("readings.csv", "alder-1", "alder-11");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:2:1: found \"alder-11\", expected a run of runs.csv (alder-1, birch-1); did you mean \"alder-1\"?");
  }

  @Test
  void anUnknownReadingIsSaid() {
    folder.replace("readings.csv", "skin", "skn");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:2:9: found \"skn\", expected a reading of the test toast (skin); did you mean \"skin\"?");
  }

  @Test
  void anUnknownMarkIsSaid() {
    folder.replace("ratings.csv", "crisp", "crsip");
    assertThat(folder.lines())
        .containsExactly(
            "ratings.csv:2:28: found \"crsip\", expected a mark of the test toast (crisp); did you mean \"crisp\"?");
  }

  @Test
  void anUnknownInstrumentIsSaid() {
    folder.replace("readings.csv", "P1", "P2");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:2:21: found \"P2\", expected an instrument of instruments.csv (P1); did you mean \"P1\"?");
  }

  @Test
  void anUnknownEventIsSaid() {
    folder.replace("events.csv", "alder-1,load", "alder-1,laod");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:2:9: found \"laod\", expected one of start, signal, load, door-open, door-close, turn, shake, probe-in, probe-out, power-off, stop, remove, photo, taste, note; did you mean \"load\"?");
  }

  @Test
  void anUnknownStopCauseIsSaid() {
    folder.replace("events.csv", "ends-by-itself", "ends-itself");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:3:34: found \"ends-itself\", expected what ended the run (ends-by-itself, time, core, shade, mass-loss, cap, abort); did you mean \"ends-by-itself\"?");
  }

  @Test
  void aReadingInAnotherUnitIsSaid() {
    folder.replace("readings.csv", "176 °F", "176 g");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:2:14: found \"176 g\", expected a temperature; for example 230 °C or 446 °F");
  }

  @Test
  void aReadingWithoutUnitIsSaid() {
    folder.replace("readings.csv", "176 °F", "176");
    assertThat(folder.lines())
        .containsExactly(
            "readings.csv:2:14: found \"176\", expected a temperature with its unit; for example 230 °C or 446 °F");
  }

  @Test
  void aRatingOffTheScaleIsSaid() {
    folder.replace("ratings.csv", "7.5", "75");
    assertThat(folder.lines())
        .containsExactly("ratings.csv:2:34: found \"75\", expected a number from 0 to 10");
  }

  @Test
  void aBatchBeyondTheMethodsIsSaid() {
    folder.replace("ratings.csv", "alder-1,1,", "alder-1,3,");
    assertThat(folder.lines())
        .containsExactly(
            "ratings.csv:2:26: found \"3\", expected a batch from 1 to 2, as the method says; correct it, or raise \"batches\" of toast in a new version");
  }

  @Test
  void aStepOffTheScaleIsSaid() {
    folder.write("rated.csv", "product,fact,rater,step\nalder,controls,ann,5\n");
    assertThat(folder.lines())
        .containsExactly("rated.csv:2:20: found \"5\", expected a whole number from 0 to 4");
  }

  @Test
  void aStateOfAFeatureIsOneOfThreeWords() {
    folder.write("features.csv", "product,feature,state\nalder,Door light,maybe\n");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .startsWith("features.csv:2:18: found \"maybe\", expected")
        .contains("yes", "no", "not-applicable");
  }

  @Test
  void aFeatureOfAProductStandsOnceUnlessCorrected() {
    folder.write(
        "features.csv",
        "product,feature,state,entry,corrects\nalder,Light,yes,x1,\nalder,Light,no,x2,\n");
    assertThat(folder.lines())
        .singleElement()
        .asString()
        .contains("features.csv:3:1", "for the second time", "line 2");
    folder.write(
        "features.csv",
        "product,feature,state,entry,corrects\nalder,Light,yes,x1,\nalder,Light,no,x2,x1\n");
    assertThat(folder.lines()).isEmpty();
  }

  @Test
  void aFeatureInTwoSpellingsIsWarnedOf() {
    folder.write("features.csv", "product,feature,state\nalder,Light,yes\nbirch,light,no\n");
    assertThat(folder.lines()).singleElement().asString().contains("one spelling of a feature");
  }

  @Test
  void aDayFirstDateIsNotGuessed() {
    folder.replace("calibrations.csv", "2026-03-02", "02/03/2026");
    assertThat(folder.lines())
        .containsExactly(
            "calibrations.csv:2:4: found \"02/03/2026\", expected a date such as 2026-03-04; write year-month-day: day and month cannot be told apart");
  }

  @Test
  void aTimeThatTheClockSkippedIsNotGuessed() {
    folder.replace("runs.csv", "2026-03-04T11:00", "2026-03-29T01:30");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:32: found \"2026-03-29T01:30\", expected a time that the clock in Europe/Dublin shows once; it was skipped when the clock changed: add the offset, for example 2026-03-29T01:30Z");
  }

  @Test
  void aTimeThatCameTwiceIsNotGuessed() {
    folder.replace("runs.csv", "2026-03-04T11:00", "2026-10-25T01:30");
    assertThat(folder.lines())
        .containsExactly(
            "runs.csv:3:32: found \"2026-10-25T01:30\", expected a time that the clock in Europe/Dublin shows once; it came twice when the clock changed: add the offset, for example 2026-10-25T01:30+01:00");
  }

  @Test
  void aClockTimeNeedsAKnownStart() {
    folder.replace("runs.csv", "2026-03-04T10:00:00", "");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:3:14: found \"2026-03-04T10:06:30\", expected a time since the run's start, or a run whose start is known; fill in \"started\" of alder-1 in runs.csv, or write +6:30");
  }

  @Test
  void timeSinceTheStartHasASign() {
    folder.replace("events.csv", "+10 min", "10:00");
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:4:14: found \"10:00\", expected a time such as 2026-03-04T10:12:30, or +6:30 since the run's start; write +10:00 if it is the time since the start");
  }

  @Test
  void aTimeOnAnotherDayIsWarnedOf() {
    folder.replace("events.csv", "2026-03-04T10:06:30,ends-by-itself", "2026-03-05T10:06:30,abort");
    assertThat(folder.lines())
        .containsExactly(
            "warning: events.csv:3:14: found \"2026-03-05T10:06:30\", expected a time within a day of the run's start; is the date right?");
  }

  @Test
  void aKeyWithSpacesIsSaidWithARemedy() {
    folder.append("products.csv", "cedar oven,Cedar 12");
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:4:1: found \"cedar oven\", expected a key of letters, digits, - _ . (at most 100 characters); write cedar-oven");
  }

  @Test
  void aThousandsCommaIsAmbiguous() {
    folder.replace("pieces.csv", "152 g", "\"1,152 g\"");
    assertThat(folder.lines())
        .containsExactly(
            "pieces.csv:2:15: found \"1,152 g\", expected a number without thousands separators; write 1152 or 1.152");
  }

  @Test
  void boxesHaveTheirForm() {
    folder.write("p.jpg", Pictures.jpeg(8, 8));
    folder.write("photos.csv", "file,run,batch,face,boxes\np.jpg,alder-1,1,top,\"1:2,3,4\"\n");
    assertThat(folder.lines())
        .containsExactly(
            "photos.csv:2:21: found \"1:2,3,4\", expected a box such as 1:120,80,300,280 (piece:x,y,width,height)");
  }
}
