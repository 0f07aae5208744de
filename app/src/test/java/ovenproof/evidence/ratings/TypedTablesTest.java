package ovenproof.evidence.ratings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.panel.Rating;
import ovenproof.core.panel.table.Layout;
import ovenproof.core.panel.table.RatingTableReader;
import ovenproof.core.panel.table.ReadTable;
import ovenproof.core.panel.table.ReadingChoices;
import ovenproof.core.panel.table.Role;

/**
 * Tables as they come out of forms, spreadsheets and other people's programs. All are invented:
 * typed/make_typed.py makes them, and the counts below are those it was written to make.
 */
class TypedTablesTest {

  private static ReadTable read(String file, ReadingChoices choices) throws IOException {
    try (InputStream in = TypedTablesTest.class.getResourceAsStream("typed/" + file)) {
      return RatingTableReader.read(
          RatingFile.read(file, Objects.requireNonNull(in, file).readAllBytes()), choices);
    }
  }

  private static ReadTable read(String file) throws IOException {
    return read(file, ReadingChoices.none());
  }

  /** people, products, attributes, sessions, batches, marks, missing */
  @ParameterizedTest
  @CsvSource({
    "merged-header.csv,           PRODUCTS_IN_COLUMNS, 6, 4, 3, 0, 0,  72, 0",
    "blank-corners.csv,           PRODUCTS_IN_COLUMNS, 6, 3, 2, 0, 0,  36, 0",
    "blank-corner-short.csv,      PRODUCTS_IN_COLUMNS, 6, 2, 2, 0, 0,  24, 0",
    "attribute-over-products.csv, PRODUCTS_IN_COLUMNS, 6, 3, 2, 0, 0,  36, 0",
    "rows-of-attributes.csv,      PRODUCTS_IN_ROWS,    6, 3, 3, 0, 0,  54, 0",
    "codes-per-session.csv,       LONG,                6, 2, 1, 2, 0,  24, 0",
    "initials-long.csv,           LONG,                6, 3, 2, 0, 2,  72, 0",
    "panel-no-names.csv,          UNNAMED,             0, 3, 2, 0, 0,  48, 0",
    "three-headers.csv,           PRODUCTS_IN_COLUMNS, 6, 2, 2, 2, 0,  48, 0",
    "session-in-cell.csv,         PRODUCTS_IN_COLUMNS, 6, 4, 1, 2, 0,  48, 0",
    "attribute-over-tasters.csv,  PRODUCTS_IN_ROWS,    6, 4, 2, 0, 0,  48, 0",
    "side-by-side.csv,            PRODUCTS_IN_COLUMNS, 6, 4, 2, 0, 0,  48, 0",
    "offset-table.xlsx,           PRODUCTS_IN_COLUMNS, 6, 3, 2, 0, 0,  36, 0",
    "units-row.csv,               LONG,                6, 4, 2, 0, 0,  48, 0",
    "named-once.csv,              LONG,                6, 4, 2, 0, 0,  48, 0",
    "german.csv,                  LONG,                6, 4, 2, 2, 0,  96, 0",
    "italian.csv,                 LONG,                6, 4, 2, 2, 0,  96, 0",
    "blind-codes-scales.csv,      LONG,                6, 4, 3, 0, 0,  72, 0",
    "form-questions.csv,          PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  24, 0",
    "form-grid.csv,               PRODUCTS_IN_COLUMNS, 6, 4, 2, 0, 0,  48, 0",
    "emails.csv,                  LONG,                6, 4, 2, 0, 0,  48, 0",
    "full-names.csv,              LONG,                6, 4, 2, 0, 0,  48, 0",
    "initials.csv,                PRODUCTS_IN_ROWS,    6, 4, 1, 0, 0,  24, 0",
    "stacked-blocks.csv,          PRODUCTS_IN_ROWS,    6, 4, 2, 0, 0,  48, 0",
    "transposed.csv,              LONG,                6, 4, 2, 0, 0,  48, 0",
    "r-export.csv,                LONG,                6, 4, 2, 0, 0, 192, 0",
    "pandas.csv,                  LONG,                6, 4, 1, 0, 0,  24, 0",
    "cr-tabs-spaces.txt,          LONG,                6, 4, 1, 0, 0,  24, 0",
    "sep-line.csv,                LONG,                6, 4, 1, 0, 0,  24, 0",
    "markdown.md,                 LONG,                6, 4, 2, 0, 0,  48, 0",
    "nbsp.csv,                    LONG,                6, 4, 1, 0, 0,  24, 0",
    "day-product.csv,             PRODUCTS_IN_COLUMNS, 6, 4, 1, 2, 0,  48, 0",
    "loaf-in-name.csv,            PRODUCTS_IN_ROWS,    6, 4, 1, 0, 12, 72, 0",
    "batch-rows.csv,              PRODUCTS_IN_ROWS,    6, 4, 1, 0, 3,  72, 0",
    "batch-attr-rows.csv,         PRODUCTS_IN_ROWS,    4, 4, 2, 0, 2,  64, 0",
    "long-batches.csv,            LONG_ATTRIBUTES,     6, 4, 3, 2, 16, 288, 0",
    "averages.csv,                PRODUCTS_IN_ROWS,    6, 4, 1, 0, 0,  24, 0",
    "code-column.csv,             PRODUCTS_IN_ROWS,    5, 4, 1, 0, 0,  20, 0",
    "facts.csv,                   LONG,                6, 4, 3, 0, 0,  72, 0",
    "notes.csv,                   PRODUCTS_IN_COLUMNS, 6, 3, 1, 0, 0,  18, 0",
    "stars.csv,                   LONG,                6, 4, 1, 0, 0,  24, 0",
    "words.csv,                   LONG,                6, 4, 2, 0, 0,  48, 0",
    "quality-words.csv,           LONG,                6, 4, 1, 0, 0,  24, 0",
    "number-and-word.csv,         LONG,                6, 4, 1, 0, 0,  24, 0",
    "units.csv,                   LONG,                6, 4, 1, 0, 0,  24, 0",
    "footnotes.csv,               LONG,                6, 4, 1, 0, 0,  24, 0",
    "apostrophes.csv,             LONG,                6, 4, 1, 0, 0,  24, 0",
    "quoted-comma.csv,            LONG,                6, 4, 1, 0, 0,  24, 0",
    "mixed-decimals.csv,          LONG,                6, 4, 1, 0, 0,  24, 0",
    "constant.csv,                LONG,                6, 4, 1, 0, 0,  24, 0",
    "two-products.csv,            PRODUCTS_IN_COLUMNS, 7, 2, 1, 0, 0,  13, 3",
    "short-headers.csv,           LONG,                6, 4, 1, 0, 0,  48, 0",
    "no-header.dat,               LONG,                6, 4, 2, 0, 0,  96, 0",
    "consumers-incomplete.csv,    LONG,               60, 4, 1, 3, 0, 180, 0",
    "consumers-in-columns.csv,    PRODUCTS_IN_ROWS,   40, 6, 1, 0, 0, 240, 0",
    "consumers-with-facts.csv,    LONG,               40, 4, 4, 0, 0, 640, 0",
    "wide-consumers.csv,          PRODUCTS_IN_COLUMNS,40, 4, 3, 0, 0, 480, 0",
    "information-as-circumstance.csv, LONG,           30, 4, 1, 0, 0, 240, 0",
    "many-attributes.csv,         LONG,               12, 4, 7, 2, 0, 672, 0",
    "two-factors-and-bottles.csv, LONG,                9, 4, 2, 0, 8, 144, 0",
    "incomplete-blocks.txt,       LONG,               12, 4, 1, 0, 0,  24, 0",
    "line-scale.tsv,              LONG,                8, 3, 4, 0, 0, 192, 0",
    "three-parts.csv,             PRODUCTS_IN_COLUMNS, 8, 3, 2, 0, 0,  96, 0",
    "person-attribute.csv,        PRODUCTS_IN_ROWS,    6, 4, 2, 0, 0,  48, 0",
    "taster-attr.csv,             PRODUCTS_IN_ROWS,    3, 4, 2, 0, 0,  24, 0",
    "space-pairs.csv,             PRODUCTS_IN_COLUMNS, 6, 3, 2, 0, 0,  36, 0",
    "score-columns.csv,           LONG,                6, 4, 1, 0, 0,  72, 0",
    "repeated-headers.csv,        PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  48, 0",
    "tasting-notes.csv,           LONG,                6, 4, 2, 0, 0,  43, 5",
    "minus-one.csv,               LONG,                6, 4, 1, 0, 0,  21, 3",
    "ranks.csv,                   PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  24, 0",
    "sheet-per-taster.xlsx,       LONG,                6, 4, 2, 0, 0,  48, 0",
    "with-summary-and-key.xlsx,   LONG,                6, 4, 2, 0, 0,  48, 0",
    "measured-by-nobody.csv,      UNNAMED,             0, 3, 1, 0, 0,  72, 0",
    "one-taster.csv,              UNNAMED,             0, 4, 2, 0, 0,   8, 0",
    "tiny.csv,                    PRODUCTS_IN_COLUMNS, 2, 2, 1, 0, 0,   4, 0",
  })
  void tablesAreReadAsTheyWereMeant(
      String file,
      Layout layout,
      int people,
      int products,
      int attributes,
      int sessions,
      int batches,
      int marks,
      int missing)
      throws IOException {
    ReadTable table = read(file);
    assertThat(table.problems()).isEmpty();
    assertThat(table.layout()).isEqualTo(layout);
    assertThat(names(table, Rating::assessor)).as("people").hasSize(people);
    assertThat(names(table, Rating::product)).as("products").hasSize(products);
    assertThat(names(table, Rating::attribute)).as("attributes").hasSize(attributes);
    assertThat(names(table, Rating::session)).as("sessions").hasSize(sessions);
    assertThat(names(table, Rating::batch)).as("batches").hasSize(batches);
    assertThat(table.ratings()).as("marks").hasSize(marks);
    assertThat(table.missing()).as("missing").isEqualTo(missing);
  }

  private static Set<String> names(ReadTable table, Function<Rating, String> name) {
    Set<String> names = new HashSet<>();
    table.ratings().forEach(r -> names.add(name.apply(r)));
    names.remove(null);
    return names;
  }

  @Test
  void namesAreThoseThatPeopleWrote() throws IOException {
    Set<String> trees = Set.of("Rowan", "Hazel", "Juniper", "Larch");
    for (String file :
        List.of("merged-header.csv", "form-grid.csv", "day-product.csv", "loaf-in-name.csv")) {
      assertThat(names(read(file), Rating::product)).as(file).isEqualTo(trees);
    }
    assertThat(names(read("form-questions.csv"), Rating::product))
        .containsExactlyInAnyOrder("471", "832", "219", "605");
    assertThat(names(read("with-summary-and-key.xlsx"), Rating::product))
        .containsExactlyInAnyOrder("Alder", "Birch", "Cedar", "Dogwood");
    assertThat(names(read("three-parts.csv"), Rating::attribute))
        .containsExactlyInAnyOrder("crisp", "taste");
  }

  @Test
  void whatWasDoneToTheTableIsSaid() throws IOException {
    assertThat(read("named-once.csv").notes()).anyMatch(n -> n.contains("stand once above"));
    assertThat(read("transposed.csv").notes()).anyMatch(n -> n.contains("lies on its side"));
    assertThat(read("units-row.csv").notes()).anyMatch(n -> n.contains("Line 2 explains"));
    assertThat(read("footnotes.csv").notes()).anyMatch(n -> n.contains("Remarks beside marks"));
    assertThat(read("loaf-in-name.csv").notes()).anyMatch(n -> n.contains("batch of \"Rowan\""));
    assertThat(read("ranks.csv").notes()).anyMatch(n -> n.contains("are ranks"));
    assertThat(read("with-summary-and-key.xlsx").notes())
        .anyMatch(n -> n.contains("Codes were replaced"))
        .anyMatch(n -> n.contains("\"Summary\" holds no marks"));
  }

  @Test
  void whatIsUncertainIsAsked() throws IOException {
    assertThat(read("minus-one.csv").questions()).anyMatch(q -> q.contains("Does -1 mean"));
    assertThat(read("short-headers.csv").questions()).anyMatch(q -> q.contains("Is \"j\" who"));
    assertThat(read("two-spellings.csv").questions())
        .anyMatch(q -> q.contains("ANNA"))
        .anyMatch(q -> q.contains("rowan"))
        .anyMatch(q -> q.contains("Junipar"));
  }

  @Test
  void verbalAnswersOfJustAboutRightHaveTheirSteps() throws IOException {
    List<Double> steps =
        read("words.csv").ratings().stream()
            .filter(r -> r.attribute().equals("Browning"))
            .map(Rating::value)
            .distinct()
            .sorted()
            .collect(Collectors.toList());
    assertThat(steps).containsExactly(2.0, 3.0, 4.0);
  }

  @Test
  void marksThatAreGuessesAreSaidWithTheirPlace() throws IOException {
    ReadTable table = read("typed-scores.csv");
    assertThat(table.ratings()).hasSize(24);
    assertThat(table.problems()).extracting(p -> p.line()).containsExactly(26, 27, 28, 29);
    assertThat(table.problems()).allMatch(p -> p.column() == 3);
  }

  @Test
  void aFractionTurnedIntoADateIsRecognised() throws IOException {
    assertThat(read("date-mangled.csv").problems())
        .isNotEmpty()
        .allMatch(p -> p.remedy().contains("took for a date"));
  }

  @Test
  void tablesWithoutMarksAreRefusedWithTheReason() throws IOException {
    assertThat(read("aggregated.csv").problems())
        .singleElement()
        .matches(p -> p.found().contains("means or deviations only (Mean, SD)"));
    assertThat(read("letter-grades.csv").problems())
        .singleElement()
        .matches(p -> p.found().contains("\"Grade\" holds words"));
    assertThat(read("yes-no.csv").problems())
        .singleElement()
        .matches(p -> p.found().contains("\"Would serve again?\" holds words"));
    assertThat(read("not-ratings.csv").problems()).hasSize(1);
    assertThat(read("no-product.csv").problems()).hasSize(1);
    assertThat(read("no-product.csv").questions()).anyMatch(q -> q.contains("--product"));
  }

  @Test
  void everythingWrongInAJunkTableIsSaidAtOnce() throws IOException {
    ReadTable table = read("junk.csv");
    assertThat(table.problems()).extracting(p -> p.line()).containsExactlyInAnyOrder(3, 5, 7, 8);
    assertThat(table.ratings()).hasSize(7);
  }

  @Test
  void aBatchColumnNamedByAPersonSplitsNumberedNames() throws IOException {
    ReadTable table = read("loaf-in-name.csv", ReadingChoices.none().with("Loaf", Role.PRODUCT));
    assertThat(names(table, Rating::product)).hasSize(12);
    assertThat(table.questions()).anyMatch(q -> q.contains("several batches of \"Rowan\""));
  }
}
