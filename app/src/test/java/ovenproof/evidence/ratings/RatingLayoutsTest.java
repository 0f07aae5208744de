package ovenproof.evidence.ratings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
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
import ovenproof.core.statistics.Interval;
import ovenproof.input.InputException;

/** Tables as people type them, read without a word of help. All are invented: make_layouts.py. */
class RatingLayoutsTest {

  private static ReadTable read(String file, ReadingChoices choices) throws IOException {
    try (InputStream in = RatingLayoutsTest.class.getResourceAsStream(file)) {
      return RatingTableReader.read(
          RatingFile.read(file, Objects.requireNonNull(in, file).readAllBytes()), choices);
    }
  }

  private static ReadTable read(String file) throws IOException {
    return read(file, ReadingChoices.none());
  }

  private static ReadTable text(String text) {
    return RatingTableReader.read(
        RatingFile.read("table.csv", text.getBytes(StandardCharsets.UTF_8)));
  }

  /** people, products, attributes, sessions, batches, marks, missing */
  @ParameterizedTest
  @CsvSource({
    "long-two-attributes.csv,                LONG,                6, 4, 2, 0, 0,  48, 0",
    "long-attribute-rows.csv,                LONG_ATTRIBUTES,     6, 4, 3, 0, 0,  72, 0",
    "products-in-columns.csv,                PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  24, 0",
    "judges-in-columns.csv,                  PRODUCTS_IN_ROWS,    6, 4, 1, 0, 0,  24, 0",
    "unnamed-rows-of-products.csv,           PRODUCTS_IN_ROWS,   12, 4, 1, 0, 0,  48, 0",
    "unnamed-rows-of-people.csv,             PRODUCTS_IN_COLUMNS,12, 4, 1, 0, 0,  48, 0",
    "sessions-and-repetitions.csv,           LONG,                6, 4, 3, 2, 0, 288, 0",
    "batches-and-order.csv,                  LONG,                6, 4, 1, 0, 3,  72, 0",
    "batches-named-once.csv,                 LONG,                6, 4, 1, 0, 8,  48, 0",
    "two-header-lines.csv,                   PRODUCTS_IN_COLUMNS, 6, 3, 2, 0, 0,  36, 0",
    "product-and-attribute-in-header.csv,    PRODUCTS_IN_COLUMNS, 6, 4, 3, 0, 0,  72, 0",
    "repetitions-in-header.csv,              PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  72, 0",
    "decimal-commas.csv,                     LONG,                6, 4, 2, 2, 0,  96, 0",
    "title-totals-notes.csv,                 PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  24, 0",
    "facts-and-comments.csv,                 LONG,                6, 4, 1, 0, 0,  24, 0",
    "missing-cells.csv,                      LONG,                6, 4, 2, 0, 0,  44, 4",
    "row-names-tabs.txt,                     LONG,                6, 4, 2, 0, 0,  48, 0",
    "spaces.txt,                             LONG,                6, 4, 1, 0, 0,  48, 0",
    "sections.csv,                           PRODUCTS_IN_COLUMNS, 6, 4, 1, 3, 0,  72, 0",
    "blind-codes.csv,                        PRODUCTS_IN_COLUMNS, 6, 4, 1, 0, 0,  24, 0",
    "subject-by-rater.csv,                   PRODUCTS_IN_ROWS,    3,20, 1, 0, 0,  60, 0",
    "several-scales.csv,                     LONG,               36, 3, 3, 0, 0, 324, 0",
    "liking-in-words.csv,                    LONG,                6, 4, 1, 0, 0,  24, 0",
    "blind-duplicate.csv,                    LONG,                6, 4, 3, 2, 0, 180, 0",
    "no-header.csv,                          LONG,                6, 4, 1, 0, 0,  24, 0",
    "lid-on-and-off.csv,                     LONG,                6, 4, 2, 0, 0,  96, 0",
    "nobody-named.csv,                       UNNAMED,             0, 4, 1, 0, 0,  60, 0",
    "names-on-both-sides.csv,                PRODUCTS_IN_COLUMNS, 6, 3, 1, 0, 0,  18, 0",
    "numbers-for-everything.csv,             LONG,                8, 4, 1, 2, 0,  64, 0",
    "products-down-attributes-across.csv,    LONG,                6, 4, 3, 0, 0,  72, 0",
    "two-sessions.xlsx,                      PRODUCTS_IN_COLUMNS, 6, 4, 1, 2, 0,  48, 0",
    "sheet-per-attribute.xlsx,               PRODUCTS_IN_COLUMNS, 6, 4, 2, 0, 0,  48, 0",
    "different-words.xlsx,                   LONG,                6, 5, 2, 2, 0,  48, 0",
    "two-spellings.csv,                      LONG,                7, 5, 1, 2, 0,  48, 0",
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
    assertThat(table.layout()).isEqualTo(layout);
    assertThat(count(table, Rating::assessor)).as("people").isEqualTo(people);
    assertThat(count(table, Rating::product)).as("products").isEqualTo(products);
    assertThat(count(table, Rating::attribute)).as("attributes").isEqualTo(attributes);
    assertThat(count(table, Rating::session)).as("sessions").isEqualTo(sessions);
    assertThat(count(table, Rating::batch)).as("batches").isEqualTo(batches);
    assertThat(table.ratings()).as("marks").hasSize(marks);
    assertThat(table.missing()).as("missing").isEqualTo(missing);
    assertThat(table.problems()).isEmpty();
    assertThat(table.columns()).isNotEmpty().allSatisfy(c -> assertThat(c.why()).isNotBlank());
  }

  private static long count(ReadTable table, Function<Rating, String> name) {
    Set<String> names = new HashSet<>();
    table.ratings().forEach(r -> names.add(name.apply(r)));
    names.remove(null);
    return names.size();
  }

  @Test
  void whatIsNoRatingIsSaid() throws IOException {
    ReadTable table = read("facts-and-comments.csv");
    assertThat(roles(table))
        .contains(
            "id IGNORED",
            "timestamp IGNORED",
            "age IGNORED",
            "gender IGNORED",
            "price IGNORED",
            "comments IGNORED",
            "participant ASSESSOR",
            "sample PRODUCT",
            "liking MARK");
    assertThat(read("title-totals-notes.csv").notes())
        .anyMatch(n -> n.contains("totals or means"))
        .anyMatch(n -> n.contains("above the table"))
        .anyMatch(n -> n.contains("below the table"))
        .anyMatch(n -> n.contains("blank line"));
    assertThat(roles(read("lid-on-and-off.csv"))).contains("Lid CONDITION");
  }

  private static List<String> roles(ReadTable table) {
    return table.columns().stream()
        .map(c -> c.header() + " " + c.role())
        .collect(Collectors.toList());
  }

  @Test
  void twoSpellingsAreAskedAndMergedOnlyOnAWord() throws IOException {
    ReadTable asked = read("two-spellings.csv");
    assertThat(asked.questions())
        .anyMatch(q -> q.contains("Fenna") && q.contains("fenna"))
        .anyMatch(q -> q.contains("Dogwood") && q.contains("Dogwod"));
    ReadTable merged =
        read(
            "two-spellings.csv",
            ReadingChoices.none().withSame("fenna", "Fenna").withSame("Dogwod", "Dogwood"));
    assertThat(merged.questions()).isEmpty();
    assertThat(count(merged, Rating::assessor)).isEqualTo(6);
    assertThat(count(merged, Rating::product)).isEqualTo(4);
  }

  @Test
  void sheetsWithOtherWordsAreAsked() throws IOException {
    assertThat(read("different-words.xlsx").questions())
        .anyMatch(q -> q.contains("Crispness") && q.contains("Crunchiness"))
        .anyMatch(q -> q.contains("Dogwood 20"));
  }

  @Test
  void marksTypedTwiceAreSaidWithBothLines() throws IOException {
    ReadTable table = read("typed-twice.csv");
    assertThat(table.problems()).hasSize(2);
    assertThat(table.problems())
        .anyMatch(p -> p.found().contains("Anna marked Cedar") && p.found().contains("lines 4, 27"))
        .allMatch(p -> p.line() > 0 && p.column() == 3);
    assertThat(table.ratings()).hasSize(24);
  }

  @Test
  void marksBeyondTheScaleAreSaidWithTheirPlace() throws IOException {
    ReadTable table = read("out-of-scale.csv");
    assertThat(table.problems()).extracting(p -> p.line()).containsExactly(7, 32);
    assertThat(table.ratings()).hasSize(46);
    ReadTable declared =
        read("out-of-scale.csv", ReadingChoices.none().withScale(new Interval(5, 9)));
    assertThat(declared.problems().size()).isGreaterThan(2);
  }

  @Test
  void everythingWrongIsSaidAtOnce() {
    ReadTable table =
        text(
            "taster,oven,score\nAnna,Alder,7\nAnna,Birch,very good\nBela,Alder,6\nBela,Birch,5\n"
                + "Bela,,4\nCarlo,Alder,5\nCarlo,Birch,6\nDina,Alder,8\nDina,Birch,7\n"
                + "Emil,Alder,8\nEmil,Birch,7\nFenna,Alder,8\nFenna,Birch,77\nFenna,Alder,8\n");
    assertThat(table.problems()).extracting(p -> p.line()).containsExactlyInAnyOrder(3, 6, 14, 15);
    assertThat(table.ratings()).hasSize(11 - 1);
  }

  @Test
  void chosenRolesWin() {
    String table = "x,y,z\na,p,1\na,q,2\nb,p,3\nb,q,4\nc,p,5\nc,q,6\n";
    ReadTable read =
        RatingTableReader.read(
            RatingFile.read("t.csv", table.getBytes(StandardCharsets.UTF_8)),
            ReadingChoices.none().with("x", Role.PRODUCT).with("y", Role.ASSESSOR));
    assertThat(count(read, Rating::product)).isEqualTo(3);
    assertThat(count(read, Rating::assessor)).isEqualTo(2);
  }

  @Test
  void aPersonCalledMaxIsNoSummary() {
    ReadTable table =
        text("taster,Oak,Elm\nAnna,3,8\nMax,4,6\nJo,5,7\nUli,6,5\nEva,2,4\nMean,4,6\n");
    assertThat(count(table, Rating::assessor)).isEqualTo(5);
  }

  @Test
  void bytesThatAreNoTableAreRefusedInWords() {
    assertThatThrownBy(() -> RatingFile.read("a.csv", new byte[0]))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("empty file");
    assertThatThrownBy(() -> RatingFile.read("a.xlsx", new byte[] {'P', 'K', 3, 4}))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("workbook");
    assertThat(text("just a sentence").problems()).hasSize(1);
    assertThat(text("\n\n\n").problems()).hasSize(1);
  }

  @Test
  void oldEncodingsAreRead() {
    byte[] latin =
        "Prüfer;Gerät;Note\nJörg;Öfen;3\nÄnne;Öfen;4\nJörg;B;5\nÄnne;B;6\n"
            .getBytes(Charset.forName("windows-1252"));
    ReadTable table = RatingTableReader.read(RatingFile.read("t.csv", latin));
    assertThat(table.ratings()).extracting(Rating::assessor).contains("Jörg", "Änne");
    byte[] wide =
        "\uFEFFtaster,oven,score\nA,X,1\nA,Y,2\nB,X,2\nB,Y,4\n".getBytes(StandardCharsets.UTF_16LE);
    assertThat(RatingTableReader.read(RatingFile.read("t.csv", wide)).ratings()).hasSize(4);
  }
}
