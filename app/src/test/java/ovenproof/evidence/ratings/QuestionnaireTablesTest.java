package ovenproof.evidence.ratings;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.Rating;
import ovenproof.core.panel.table.Layout;
import ovenproof.core.panel.table.RatingTableReader;
import ovenproof.core.panel.table.ReadTable;

/**
 * Tables in which the marks stand among the other answers of a form, in the shapes that published
 * tasting data take (common practice). All people, products and marks are invented.
 */
class QuestionnaireTablesTest {

  private static ReadTable read(String text) {
    return RatingTableReader.read(
        RatingFile.read("table.csv", text.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<String> roles(ReadTable table) {
    return table.columns().stream().map(c -> c.header() + " " + c.role()).toList();
  }

  private static Set<String> products(ReadTable table) {
    return table.ratings().stream().map(Rating::product).collect(Collectors.toSet());
  }

  private static Set<String> attributes(ReadTable table) {
    return table.ratings().stream().map(Rating::attribute).collect(Collectors.toSet());
  }

  @Test
  void marksCrossProductsWithAttributesAndOtherAnswersDoNot() {
    ReadTable table =
        read(
            """
            name,gender,first time here,hours since last meal,crispness_A,colour_A,taste_A,mean_calculated,crispness_B,colour_B,taste_B,mean_calculated,guess,d_crispness,d_colour,d_taste
            Wenna,f,N,2,7,6,8,7,5,6,6,5.67,A,2,0,2
            Odric,m,N,3.5,6,6,7,6.33,6,4,5,5,A,0,2,2
            Tamsin,f,Y,4,8,7,6,7,4,5,7,5.33,B,4,2,-1
            Ysolde,f,N,,5,5,6,5.33,5,6,6,5.67,B,0,-1,0
            Bertan,m,N,1,9,7,8,8,6,5,6,5.67,A,3,2,2
            """);
    assertThat(table.layout()).isEqualTo(Layout.PRODUCTS_IN_COLUMNS);
    assertThat(products(table)).containsExactlyInAnyOrder("A", "B");
    assertThat(attributes(table)).containsExactlyInAnyOrder("crispness", "colour", "taste");
    assertThat(table.ratings()).hasSize(30);
    assertThat(roles(table))
        .contains("name ASSESSOR", "hours since last meal IGNORED", "d_crispness IGNORED");
  }

  @Test
  void differencesBetweenProductsAndHabitsOfPeopleAreNoMarks() {
    ReadTable table =
        read(
            """
            id,gender,age,cooking_at_home,favorite_bread,crust_good_alder,crust_good_larch,crust_good_diff,taste_good_alder,taste_good_larch,taste_good_diff,total_diff,taste_better
            1,f,30-39,5,Rye,4,3,1,5,3,2,3,alder
            3,m,18-29,2,Spelt,3,3,0,4,4,0,0,equal
            4,f,40-49,4,Rye,5,4,1,4,3,1,2,alder
            7,m,30-39,3,Other,2,4,2,3,4,1,3,larch
            8,f,18-29,5,Rye,4,2,2,5,4,1,3,alder
            """);
    assertThat(products(table)).containsExactlyInAnyOrder("alder", "larch");
    assertThat(attributes(table)).containsExactlyInAnyOrder("crust_good", "taste_good");
    assertThat(table.ratings()).hasSize(20);
    assertThat(roles(table)).contains("id ASSESSOR", "favorite_bread IGNORED");
  }

  @Test
  void ofTwoNestedNamesTheFinerOneWasRated() {
    StringBuilder rows = new StringBuilder("rownames,RESP,PROD,PRODID,SURENESS,DAY\n");
    int row = 0;
    for (int person = 1; person <= 6; person++) {
      for (int product : new int[] {1, 2, 1, 3, 4, 1}) {
        row++;
        rows.append(
            "%d,%d,%s,%d,%d,%d%n"
                .formatted(
                    row,
                    person,
                    product == 1 ? "Ref" : "Test",
                    product,
                    1 + (person * 7 + row * 5 + product) % 6,
                    row % 6 == 0 || row % 6 > 3 ? 2 : 1));
      }
    }
    ReadTable table = read(rows.toString());
    assertThat(products(table)).containsExactlyInAnyOrder("1", "2", "3", "4");
    assertThat(attributes(table)).containsExactly("SURENESS");
    assertThat(roles(table)).contains("PROD IGNORED", "RESP ASSESSOR", "DAY SESSION");
    assertThat(table.problems()).as("the reference is served twice to everybody").isEmpty();
    assertThat(table.ratings()).hasSize(36);
  }

  @Test
  void placesInThePlanAndTimesOfDayAreNoMarks() {
    StringBuilder rows =
        new StringBuilder("subject,date,product,period,code_as_entered,hour_t0,hunger_t0,liking\n");
    String[] orders = {"ABC", "BCA", "CAB", "CBA"};
    for (int person = 0; person < 4; person++) {
      for (int day = 0; day < 9; day++) {
        int period = day / 3;
        char product = orders[person].charAt(period);
        rows.append(
            "%d,2026-02-%02d,%c,%d,%d,%02dh%02d,%d,%d%n"
                .formatted(
                    12380 + 37 * person,
                    1 + day,
                    product,
                    period + 1,
                    product - 'A' + 1,
                    9 + (person + day) % 5,
                    (person * 17 + day * 13) % 60,
                    2 + (person + day * 5) % 4,
                    9 - (product - 'A') - (person + day) % 3));
      }
    }
    ReadTable table = read(rows.toString());
    assertThat(attributes(table)).containsExactlyInAnyOrder("hunger_t0", "liking");
    assertThat(roles(table))
        .contains("period IGNORED", "code_as_entered IGNORED", "hour_t0 IGNORED");
    assertThat(PanelAnalysis.of(table.ratings()).attributes()).hasSize(2);
  }

  @Test
  void rowNumbersOfEarlierExportsAreNoMarks() {
    ReadTable table =
        read(
            """
            ,Unnamed: 0.1,Unnamed: 0,pie_id,name,rating,sour,sweet
            0,0.0,0.0,0,wenna,3.0,3.0,2.1
            1,1.0,1.0,1,wenna,3.4,2.0,2.1
            2,2.0,2.0,2,wenna,4.0,3.0,3.1
            3,3.0,3.0,0,odric,3.0,3.5,3.0
            4,4.0,,1,odric,3.1,3.0,3.8
            5,5.0,,2,odric,3.8,4.0,2.8
            6,6.0,,0,tamsin,3.0,3.0,3.8
            7,,,1,tamsin,3.0,3.6,2.8
            8,,,2,tamsin,4.0,3.0,3.8
            """);
    assertThat(attributes(table)).containsExactlyInAnyOrder("rating", "sour", "sweet");
    assertThat(roles(table)).contains("name ASSESSOR", "pie_id PRODUCT");
  }

  @Test
  void countsOfEachMarkBecomeMarks() {
    ReadTable table =
        read("Loaf,1,2,3,4,5,Total\nAlder,0,1,3,5,3,12\nBirch,4,4,3,1,0,12\nLarch,1,2,6,2,1,12\n");
    assertThat(table.layout()).isEqualTo(Layout.TALLY);
    assertThat(table.ratings()).hasSize(36);
    // Alder by hand: (0·1 + 1·2 + 3·3 + 5·4 + 3·5) / 12
    assertThat(mean(table, "Alder")).isEqualTo(46.0 / 12);
    assertThat(mean(table, "Birch")).isEqualTo(25.0 / 12);
  }

  @Test
  void marksOfNumberedPeopleAreNoCounts() {
    ReadTable table = read("Oven,1,2,3,4,5\nAlder,7,6,8,5,7\nBirch,4,4,3,6,5\nLarch,6,5,6,7,6\n");
    assertThat(table.layout()).isEqualTo(Layout.PRODUCTS_IN_ROWS);
  }

  @Test
  void placingsAreReadFromTheNamesInTheCells() {
    ReadTable table =
        read(
            "Judge,1st,2nd,3rd\nJ1,Alder,Larch,Birch\nJ2,Alder,Birch,Larch\nJ3,Larch,Alder,Birch\n");
    assertThat(table.layout()).isEqualTo(Layout.PLACINGS);
    assertThat(mean(table, "Alder")).isEqualTo(4.0 / 3);
    assertThat(mean(table, "Birch")).isEqualTo(8.0 / 3);
    assertThat(table.notes()).anyMatch(n -> n.contains("ranks"));
  }

  @Test
  void ranksAndYearsBesideMarksAreNoPeople() {
    ReadTable table =
        read(
            """
            Rank,Loaf,Year,Bakery,Wenna,Odric,Tamsin,Ysolde,Average
            1.,Alder,2024,North,14,15,12,13.5,13.63
            2.,Larch,2023,South,13,14,12.5,11,12.63
            3.,Birch,2025,North,9,12,10,11,10.5
            """);
    assertThat(table.ratings()).hasSize(12);
    assertThat(roles(table)).contains("Rank IGNORED", "Year IGNORED", "Average IGNORED");
  }

  @Test
  void numbersOfPeopleAndProductsAreNotTakenForMarksOfOneScale() {
    StringBuilder rows = new StringBuilder("\"\",\"s\",\"d\",\"dept\",\"y\"\n");
    int row = 0;
    for (int person = 1; person <= 40; person++) {
      for (int product = 1 + person % 3; product <= 20; product += 3) {
        row++;
        rows.append(
            "\"%d\",\"%d\",\"%d\",\"%d\",%d%n"
                .formatted(row, person, product, product % 4, 1 + (person * product + row) % 5));
      }
    }
    ReadTable table = read(rows.toString());
    assertThat(roles(table)).contains("s ASSESSOR", "d PRODUCT", "dept IGNORED", "y MARK");
    assertThat(table.questions()).anyMatch(q -> q.contains("who rated"));
  }

  private static double mean(ReadTable table, String product) {
    return table.ratings().stream()
        .filter(r -> r.product().equals(product))
        .mapToDouble(Rating::value)
        .average()
        .orElseThrow();
  }
}
