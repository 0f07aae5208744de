package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Long or wide, once the keys are known; what stands in the columns of a wide table. */
final class SheetShape {

  static final String NOBODY_NAMED = "People are not named: every mark counts as another person's.";

  private final SheetRoles sheet;

  SheetShape(SheetRoles sheet) {
    this.sheet = sheet;
  }

  /** Long or wide, once the keys are known. */
  void shape() {
    Column assessor = sheet.keys.get(Role.ASSESSOR);
    Column product = sheet.keys.get(Role.PRODUCT);
    List<Column> numeric = sheet.open().stream().filter(c -> c.isNumeric()).toList();
    if (sheet.marks.stream().anyMatch(sheet::isChosen)) {
      numeric = List.of();
    }
    List<Column> values = new ArrayList<>(sheet.marks);
    values.addAll(numeric);
    if (values.isEmpty()) {
      values.addAll(lastResort());
    }
    values.sort(Comparator.comparingInt(v -> v.index));
    if (assessor == null && product == null) {
      bothOpen(values);
    } else if (assessor != null && product != null) {
      oneRowPerProduct(values);
    } else if (assessor != null) {
      wideOrNothing(values, Role.PRODUCT);
    } else {
      personsMissing(values);
    }
  }

  private void oneRowPerProduct(List<Column> values) {
    Set<Role> dimensions = columnRoles(values);
    if (dimensions.equals(Set.of(Role.ASSESSOR))
        && values.size() > 1
        && isRowKey(sheet.keys.get(Role.ASSESSOR))) {
      // subject × rater1 … raterK: the "subject" is what was rated.
      sheet.demote(Role.ASSESSOR);
      sheet.layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    sheet.layout = sheet.keys.containsKey(Role.ATTRIBUTE) ? Layout.LONG_ATTRIBUTES : Layout.LONG;
    for (Column value : values) {
      if (!sheet.marks.contains(value)) {
        sheet.set(value, Role.MARK, "numbers beside person and product");
      }
    }
    orderMarks();
    sheet.labels = attributeLabels();
  }

  /** Attributes side by side, repetitions side by side, or both ("crisp 1", "crisp 2" …). */
  private List<WideLabel> attributeLabels() {
    List<String[]> parts = pairs(sheet.marks);
    List<Role> kinds = new ArrayList<>();
    for (int i = 0; !parts.isEmpty() && i < parts.get(0).length; i++) {
      int part = i;
      kinds.add(LabelKind.of(parts.stream().map(p -> p[part]).collect(Collectors.toSet())));
    }
    int repeats = sheet.marks.size() > 1 ? kinds.indexOf(Role.REPLICATE) : -1;
    List<WideLabel> all = new ArrayList<>();
    for (int m = 0; m < sheet.marks.size(); m++) {
      Column mark = sheet.marks.get(m);
      if (repeats < 0 || kinds.size() > 2) {
        all.add(new WideLabel(null, null, attributeName(mark), null, null));
      } else {
        String attribute = kinds.size() == 1 ? "mark" : parts.get(m)[1 - repeats];
        all.add(new WideLabel(null, null, attribute, null, parts.get(m)[repeats]));
      }
    }
    return all;
  }

  /** Ranks, or numbers under a header that usually is no rating, when there is nothing else. */
  private List<Column> lastResort() {
    Column order = sheet.keys.get(Role.ORDER);
    if (order != null) {
      sheet.demote(Role.ORDER);
      sheet.notes.add(
          "The only numbers are ranks: 1 is the first place, so a low mean is a good one.");
      return List.of(order);
    }
    List<Column> numbers = new ArrayList<>();
    for (Column column : sheet.columns) {
      ColumnReading reading = sheet.readings.get(column.index);
      boolean byHeader =
          reading != null
              && reading.role() == Role.IGNORED
              && reading.why().equals(SheetRoles.BY_HEADER);
      if (byHeader
          && !Vocabulary.isSummary(column.header)
          && !column.header.equalsIgnoreCase("n")
          && column.isNumeric()
          && !column.isRowNumber()
          && !column.isUnique()) {
        sheet.readings.remove(column.index);
        numbers.add(column);
      }
    }
    return numbers;
  }

  /** Without a header a single attribute is called mark. */
  private String attributeName(Column value) {
    return value.header.isEmpty() && sheet.marks.size() == 1 ? "mark" : value.name();
  }

  private boolean isRowKey(@Nullable Column column) {
    return column != null && column.isUnique();
  }

  private void orderMarks() {
    sheet.marks =
        new ArrayList<>(
            sheet.marks.stream().sorted(Comparator.comparingInt(m -> m.index)).toList());
  }

  private void personsMissing(List<Column> values) {
    Column product = sheet.keys.get(Role.PRODUCT);
    boolean uniqueRows = product != null && rowsAreUnique(product);
    Set<Role> roles = columnRoles(values);
    boolean attributes = roles.equals(Set.of(Role.ATTRIBUTE));
    if (uniqueRows && values.size() >= 2 && !attributes) {
      sheet.layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    if (roles.contains(Role.ASSESSOR) && values.size() >= 2) {
      sheet.layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    sheet.layout = Layout.UNNAMED;
    sheet.notes.add(NOBODY_NAMED);
    oneRowPerProduct(values);
    sheet.layout = Layout.UNNAMED;
  }

  /** Whether product with session, batch, repetition or attribute names each row once. */
  private boolean rowsAreUnique(Column product) {
    Set<String> seen = new HashSet<>();
    int rows = 0;
    for (int r = 0; r < product.text.length; r++) {
      if (sheet.summaryRows.contains(r)) {
        continue;
      }
      StringBuilder name = new StringBuilder(product.text[r]);
      for (Role role : List.of(Role.SESSION, Role.BATCH, Role.REPLICATE, Role.ATTRIBUTE)) {
        Column key = sheet.keys.get(role);
        name.append('\u0000').append(key == null ? "" : key.text[r]);
      }
      for (Column condition : sheet.conditions) {
        name.append('\u0000').append(condition.text[r]);
      }
      name.append('\u0000').append(sheet.grid.sections().get(r));
      seen.add(name.toString());
      rows++;
    }
    return seen.size() >= 0.9 * rows;
  }

  private void wideOrNothing(List<Column> values, Role missing) {
    if (values.size() < 2) {
      if (values.size() == 1 && sheet.keys.get(Role.ASSESSOR) != null) {
        sheet.questions.add("No column tells what was rated. Say --product NAME.");
      }
      sheet.layout = Layout.UNREADABLE;
      return;
    }
    boolean said = sheet.choices.inColumns() != null;
    if (!said && columnRoles(values).equals(Set.of(Role.ATTRIBUTE))) {
      sheet.layout = Layout.LONG;
      sheet.questions.add(
          "No column tells what was rated, and the columns look like attributes: read as one"
              + " product. If they are products, say --products-in columns.");
      oneRowPerProduct(values);
      return;
    }
    if (sheet.choices.inColumns() == Role.ASSESSOR
        || !said && columnRoles(values).equals(Set.of(Role.ASSESSOR))) {
      Column rows = sheet.keys.get(Role.ASSESSOR);
      sheet.demote(Role.ASSESSOR);
      if (rows != null) {
        sheet.set(rows, Role.PRODUCT, "people stand in the columns");
      }
      sheet.layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    sheet.layout = Layout.PRODUCTS_IN_COLUMNS;
    wide(values, missing);
  }

  /**
   * Numbers of people and of products beside the marks, under headers that say nothing: columns of
   * many repeated whole numbers that no scale of marks has.
   */
  private boolean takeNumberedKeys(List<Column> values) {
    List<Column> numbered =
        values.stream()
            .filter(c -> c.whole && c.isRepeated() && c.levels.size() > 12 && c.smallest >= 0)
            .sorted(Comparator.comparingInt((Column c) -> -c.levels.size()))
            .toList();
    boolean two = numbered.size() >= 2 && values.size() > 2;
    if (!two || !KeysByShape.crosses(numbered.get(0), numbered.get(1)) || sameScale(values)) {
      return false;
    }
    sheet.set(numbered.get(0), Role.ASSESSOR, "many repeated numbers, the most levels");
    sheet.set(numbered.get(1), Role.PRODUCT, "many repeated numbers");
    sheet.questions.add(
        String.format(
            Locale.ROOT,
            "Is \"%s\" who rated and \"%s\" what was rated? The headers do not say; they were read"
                + " so because they hold many repeated numbers. Say --assessor and --product if not.",
            numbered.get(0).name(),
            numbered.get(1).name()));
    new LeftOutColumns(sheet).leaveOut();
    return true;
  }

  /** Marks that stand side by side reach about as high. */
  private static boolean sameScale(List<Column> values) {
    double low = values.stream().mapToDouble(c -> c.largest).min().orElse(1);
    double high = values.stream().mapToDouble(c -> c.largest).max().orElse(1);
    return high <= 3 * low;
  }

  /** Neither key has a header that says so. */
  private void bothOpen(List<Column> values) {
    if (sheet.choices.inColumns() == null && takeNumberedKeys(values)) {
      oneRowPerProduct(values.stream().filter(sheet::isOpen).toList());
      return;
    }
    Column rows =
        sheet.columns.stream()
            .filter(c -> sheet.isOpen(c) && !values.contains(c) && c.isUnique())
            .findFirst()
            .orElse(null);
    Column first = sheet.columns.isEmpty() ? null : sheet.columns.get(0);
    List<Column> marksOnly = new ArrayList<>(values);
    if (rows == null
        && first != null
        && values.contains(first)
        && values.size() >= 3
        && isKeyLikeNumber(first)) {
      rows = first;
      marksOnly.remove(first);
    }
    if (marksOnly.isEmpty()) {
      return;
    }
    Role inColumns = dimensionOf(marksOnly, rows);
    if (rows != null) {
      sheet.set(
          rows,
          inColumns == Role.ASSESSOR ? Role.PRODUCT : Role.ASSESSOR,
          "the row's name; "
              + (inColumns == Role.ASSESSOR ? "people" : "products")
              + " stand in the columns");
    }
    if (inColumns == Role.ATTRIBUTE) {
      sheet.layout = Layout.UNNAMED;
      sheet.questions.add(
          "The columns look like attributes of one product. If they are products, say --products-in columns.");
      oneRowPerProduct(marksOnly);
      return;
    }
    sheet.layout =
        inColumns == Role.ASSESSOR ? Layout.PRODUCTS_IN_ROWS : Layout.PRODUCTS_IN_COLUMNS;
    wide(marksOnly, inColumns);
  }

  private boolean isKeyLikeNumber(Column first) {
    return first.isUnique()
        && first.whole
        && (first.isRowNumber()
            || first.header.isEmpty()
            || Vocabulary.tokens(first.header).contains("id")
            || Vocabulary.tokens(first.header).contains("no")
            || Vocabulary.tokens(first.header).contains("nr"));
  }

  /** Products or people in the columns? */
  private Role dimensionOf(List<Column> values, @Nullable Column rows) {
    if (sheet.choices.inColumns() != null) {
      return sheet.choices.inColumns();
    }
    Set<Role> roles = columnRoles(values);
    if (roles.contains(Role.ASSESSOR)) {
      return Role.ASSESSOR;
    }
    if (roles.contains(Role.PRODUCT)) {
      return Role.PRODUCT;
    }
    if (roles.equals(Set.of(Role.ATTRIBUTE))) {
      return Role.ATTRIBUTE;
    }
    if (rows == null) {
      return Role.PRODUCT;
    }
    if (KeysByShape.personShare(rows) >= 0.6) {
      return Role.PRODUCT;
    }
    boolean numberedColumns = values.stream().allMatch(v -> v.header.matches("[A-Za-z]{0,3}\\d+"));
    if (numberedColumns && values.size() > rows.levels.size()) {
      return Role.ASSESSOR;
    }
    if (rows.isNumeric()) {
      return Role.PRODUCT;
    }
    Role decided = values.size() > rows.levels.size() ? Role.ASSESSOR : Role.PRODUCT;
    sheet.questions.add(
        String.format(
            Locale.ROOT,
            "Are the columns (%s …) %s? They were read so because there are %s of them than rows."
                + " Say --products-in %s if not.",
            values.get(0).name(),
            decided == Role.ASSESSOR ? "people" : "products",
            decided == Role.ASSESSOR ? "more" : "no more",
            decided == Role.ASSESSOR ? "columns" : "rows"));
    return decided;
  }

  /** What the headers of mark columns name. */
  private Set<Role> columnRoles(List<Column> values) {
    if (values.isEmpty()) {
      return Set.of();
    }
    Set<Role> roles = new LinkedHashSet<>();
    List<Set<String>> parts = parts(values);
    for (Set<String> part : parts) {
      roles.add(LabelKind.of(part));
    }
    boolean unknown = roles.remove(Role.IGNORED);
    if (unknown && parts.size() >= 2 && !roles.contains(Role.PRODUCT)) {
      roles.add(sheet.keys.containsKey(Role.PRODUCT) ? Role.ASSESSOR : Role.PRODUCT);
    }
    return roles;
  }

  /** Label sets of the mark columns: one, or two when the headers are pairs. */
  private List<Set<String>> parts(List<Column> values) {
    List<Set<String>> sets = new ArrayList<>();
    for (String[] pair : pairs(values)) {
      for (int i = 0; i < pair.length; i++) {
        if (sets.size() <= i) {
          sets.add(new LinkedHashSet<>());
        }
        sets.get(i).add(pair[i]);
      }
    }
    return sets;
  }

  /** Headers as they are, or split in two where all combinations occur. */
  private List<String[]> pairs(List<Column> values) {
    int parts = values.isEmpty() ? 1 : sheet.grid.headers().get(values.get(0).index).size();
    boolean grouped =
        values.stream().allMatch(v -> sheet.grid.headers().get(v.index).size() == parts);
    if (grouped && parts > 1 && values.size() > 1) {
      return values.stream()
          .map(v -> sheet.grid.headers().get(v.index).toArray(new String[0]))
          .toList();
    }
    return HeaderParts.of(values.stream().map(Column::name).toList());
  }

  /** Reads mark columns as levels of {@code main}, perhaps with attribute or repetition. */
  private void wide(List<Column> all, Role main) {
    List<Column> values = all.stream().filter(c -> !isBesideMarks(c, all)).toList();
    List<String[]> pairs = pairs(values);
    List<Role> roles = WideLabel.partRoles(pairs, main, sheet.questions);
    List<WideLabel> named = new ArrayList<>();
    sheet.marks = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      named.add(WideLabel.of(pairs.get(i), roles));
      sheet.set(
          values.get(i),
          Role.MARK,
          "marks; the header names " + WideLabel.words(pairs.get(i), roles));
    }
    sheet.labels = named;
  }

  /** A rank or a year in a row of marks: numbers of another kind than those beside them. */
  private boolean isBesideMarks(Column column, List<Column> all) {
    List<Column> others = all.stream().filter(c -> c != column).toList();
    if (others.size() < 3 || sheet.isChosen(column)) {
      return false;
    }
    boolean rank = Vocabulary.role(column.header) == Role.ORDER && column.isUnique();
    double top = others.stream().mapToDouble(c -> c.largest).sorted().toArray()[others.size() / 2];
    boolean elsewhere = column.smallest > 5 * top;
    if (rank || elsewhere) {
      sheet.set(
          column,
          Role.IGNORED,
          rank ? "places beside the marks" : "numbers far above the marks beside them");
    }
    return rank || elsewhere;
  }
}
