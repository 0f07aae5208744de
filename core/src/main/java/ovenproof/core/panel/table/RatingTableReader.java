package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.Rating;

/** Turns sheets of cells into ratings and says how. */
public final class RatingTableReader {

  /** Pairs of products grow with the square; no tasting compares more. */
  private static final int MOST_PRODUCTS = 200;

  private final ReadingChoices choices;
  private final List<TableProblem> problems = new ArrayList<>();
  private final List<String> questions = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<FoundMark> found = new ArrayList<>();
  private final List<ColumnReading> plainColumns = new ArrayList<>();
  private Layout plainLayout = Layout.UNREADABLE;
  private final Set<String> remarked = new LinkedHashSet<>();
  private int missing;

  private RatingTableReader(ReadingChoices choices) {
    this.choices = choices;
  }

  /** Reads without any choice made. */
  public static ReadTable read(List<Sheet> sheets) {
    return read(sheets, ReadingChoices.none());
  }

  /**
   * @param sheets in order; empty ones are passed over
   * @param choices what a person decided
   */
  public static ReadTable read(List<Sheet> sheets, ReadingChoices choices) {
    return new RatingTableReader(choices).readAll(sheets);
  }

  private ReadTable readAll(List<Sheet> sheets) {
    List<SheetReader> readers = new ArrayList<>();
    for (Sheet sheet : sheets) {
      Grid grid = Grid.of(sheet);
      if (grid.body().isEmpty()) {
        if (!sheet.rows().isEmpty()) {
          notes.add(named(sheet.name()) + "holds no table and was passed over.");
        }
        continue;
      }
      if (!isPlainTable(grid)) {
        readers.add(new SheetReader(grid, choices).decide());
      }
    }
    List<SheetReader> telling = readers.stream().filter(r -> !r.labels().isEmpty()).toList();
    String use = sheetUse(telling);
    for (SheetReader reader : readers) {
      if (telling.size() > 0 && !telling.contains(reader)) {
        notes.add(named(reader.grid().sheet()) + "holds no marks and was passed over.");
        continue;
      }
      notes.addAll(reader.grid().notes());
      notes.addAll(reader.notes());
      questions.addAll(reader.questions());
      collect(reader, use);
    }
    if (!remarked.isEmpty()) {
      notes.add(
          "Remarks beside marks (\"7*\", \"7 (burnt)\") were left out, the numbers kept: lines "
              + String.join(", ", remarked)
              + ".");
    }
    if (readers.size() > telling.size()) {
      KeySheet.apply(
          readers.stream().filter(r -> !telling.contains(r)).map(SheetReader::grid).toList(),
          found,
          notes);
    }
    if (telling.size() > 1) {
      SheetWords.ask(telling.stream().map(r -> r.grid().sheet()).toList(), found, use, questions);
    }
    Spelling.ask(found, questions);
    if (choices.scale() == null) {
      missing += MissingCodes.drop(found, questions);
    }
    Map<String, String> scales = Scales.check(found, choices.scale(), problems);
    List<Rating> ratings = ofATasting(Duplicates.settle(found, problems, notes));
    notes.addAll(Ranks.notes(ratings));
    Layout layout =
        telling.isEmpty()
            ? readers.isEmpty() ? plainLayout : readers.get(0).layout()
            : "assessor".equals(use) ? Layout.LONG : telling.get(0).layout();
    if (ratings.isEmpty() && problems.isEmpty()) {
      problems.add(nothingFound(readers));
    }
    List<ColumnReading> columns = new ArrayList<>(plainColumns);
    readers.forEach(r -> columns.addAll(r.readings()));
    return new ReadTable(
        ratings, layout, columns, scales, missing, problems, distinct(questions), distinct(notes));
  }

  /** The ratings; none, and the reason, where more was rated than a tasting can compare. */
  private List<Rating> ofATasting(List<Rating> ratings) {
    Set<String> products = ratings.stream().map(Rating::product).collect(Collectors.toSet());
    if (products.size() <= MOST_PRODUCTS) {
      return ratings;
    }
    problems.add(
        new TableProblem(
            "",
            0,
            0,
            products.size() + " different products",
            "at most " + MOST_PRODUCTS,
            "say which column names what was rated (--product), or read a part of the table"));
    return List.of();
  }

  /** Counts of marks and placings need no keys to be found: the cells' meaning is in the header. */
  private boolean isPlainTable(Grid grid) {
    if (!choices.roles().isEmpty() || choices.inColumns() != null) {
      return false;
    }
    Optional<TallyTable> tally = TallyTable.in(grid);
    if (tally.isPresent()) {
      take(Layout.TALLY, tally.get().marks(), tally.get().columns());
      notes.add(tally.get().note());
      return true;
    }
    Optional<PlacingsTable> placings = PlacingsTable.in(grid);
    placings.ifPresent(p -> take(Layout.PLACINGS, p.marks(), p.columns()));
    return placings.isPresent();
  }

  private void take(Layout layout, List<FoundMark> marks, List<ColumnReading> columns) {
    plainLayout = layout;
    found.addAll(marks);
    plainColumns.addAll(columns);
  }

  private static TableProblem nothingFound(List<SheetReader> readers) {
    List<String> summaries =
        readers.stream()
            .flatMap(r -> r.readings().stream())
            .map(ColumnReading::header)
            .filter(Vocabulary::isSummary)
            .toList();
    if (!summaries.isEmpty()) {
      return new TableProblem(
          "",
          0,
          0,
          "means or deviations only (" + String.join(", ", summaries) + ")",
          "the marks themselves, one per person and product",
          "read the table that they were computed from");
    }
    for (SheetReader reader : readers) {
      for (Column column : reader.wordy()) {
        return new TableProblem(
            reader.grid().sheet(),
            0,
            column.index + 1,
            "no numbers; \""
                + column.name()
                + "\" holds words: "
                + column.levels.keySet().stream().limit(4).collect(Collectors.joining(", ")),
            "marks as numbers, or the words of the nine steps of liking, of just about right, or bad"
                + " to excellent",
            "write the number of each step");
      }
    }
    return new TableProblem(
        "",
        0,
        0,
        "no marks",
        "a table with a column or row of names and numbers beside it",
        "say which column is what: --assessor, --product, --mark");
  }

  private static List<String> distinct(List<String> lines) {
    return new ArrayList<>(new LinkedHashSet<>(lines));
  }

  private static String named(String sheet) {
    return sheet.isEmpty() ? "The file " : "Sheet \"" + sheet + "\" ";
  }

  /** What the names of several sheets stand for: "session", "attribute", "product" or nothing. */
  private String sheetUse(List<SheetReader> readers) {
    if (readers.size() < 2) {
      return "";
    }
    Set<String> names =
        readers.stream()
            .map(r -> r.grid().sheet())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    boolean session = readers.stream().anyMatch(r -> r.key(Role.SESSION) != null);
    boolean attribute =
        readers.stream()
            .anyMatch(
                r ->
                    r.key(Role.ATTRIBUTE) != null
                        || r.labels().stream().anyMatch(l -> l.attribute() != null));
    if (LabelKind.of(names) == Role.ATTRIBUTE && !attribute) {
      notes.add("The sheets' names were read as attributes.");
      return "attribute";
    }
    boolean persons = LabelKind.of(names) == Role.ASSESSOR || isFormEach(readers, names);
    if (persons && readers.stream().allMatch(r -> r.key(Role.ASSESSOR) == null)) {
      notes.add("The sheets' names were read as people.");
      readers.forEach(SheetReader::peopleAreSheets);
      return "assessor";
    }
    if (!session) {
      notes.add("The sheets' names were read as sessions.");
      return "session";
    }
    return "";
  }

  /** One sheet per person: nobody is named in it, every product stands in it once. */
  private static boolean isFormEach(List<SheetReader> readers, Set<String> names) {
    return names.stream().noneMatch(Vocabulary::isSession)
        && LabelKind.of(names) == Role.IGNORED
        && readers.stream()
            .allMatch(
                r -> {
                  Column product = r.key(Role.PRODUCT);
                  return r.layout() == Layout.UNNAMED && product != null && product.isUnique();
                });
  }

  private void collect(SheetReader reader, String use) {
    Grid grid = reader.grid();
    Column assessorKey = reader.key(Role.ASSESSOR);
    List<Sheet.Row> body = grid.body();
    String sectionUse = sectionUse(reader);
    for (int r = 0; r < body.size(); r++) {
      if (reader.summaryRows().contains(r)) {
        continue;
      }
      for (int m = 0; m < reader.labels().size(); m++) {
        Column column = reader.marks().get(m);
        WideLabel label = reader.labels().get(m);
        collectCell(reader, r, column, label, assessorKey, use, sectionUse);
      }
    }
    if (!sectionUse.isEmpty()) {
      notes.add("Lines with a single word were read as " + sectionUse + "s.");
    }
  }

  private static String sectionUse(SheetReader reader) {
    Set<String> sections = new LinkedHashSet<>(reader.grid().sections());
    sections.remove("");
    if (sections.isEmpty()) {
      return "";
    }
    Role kind = LabelKind.of(sections);
    if (kind == Role.SESSION
        || sections.stream().allMatch(s -> Vocabulary.role(s) == Role.SESSION)) {
      return "session";
    }
    if (kind == Role.ASSESSOR && reader.key(Role.ASSESSOR) == null) {
      return "assessor";
    }
    if (reader.key(Role.PRODUCT) == null && reader.layout() == Layout.UNNAMED) {
      return "product";
    }
    return "attribute";
  }

  private void collectCell(
      SheetReader reader,
      int row,
      Column column,
      WideLabel label,
      @Nullable Column assessorKey,
      String use,
      String sectionUse) {
    Grid grid = reader.grid();
    int line = grid.line(row, column.index);
    String cell = column.text[row];
    if (Mark.isNoMark(cell)) {
      missing++;
      return;
    }
    double value = column.number[row];
    if (Double.isNaN(value)) {
      problems.add(
          new TableProblem(
              grid.sheet(),
              line,
              grid.column(row, column.index),
              quote(cell),
              "a number",
              remedy(cell)));
      return;
    }
    if (Mark.hasRemark(cell)) {
      remarked.add(String.valueOf(line));
    }
    String section = grid.sections().get(row);
    String product = name(label.product(), reader.key(Role.PRODUCT), row);
    String assessor = name(label.assessor(), assessorKey, row);
    if ("assessor".equals(use)) {
      assessor = grid.sheet();
    }
    if ("assessor".equals(sectionUse)) {
      assessor = section;
    }
    if (product == null) {
      product = productElsewhere(reader, row, label, section, sectionUse);
    }
    if (product == null || reader.key(Role.ASSESSOR) != null && assessor == null) {
      problems.add(
          new TableProblem(
              grid.sheet(),
              line,
              0,
              "a mark without " + (product == null ? "a product" : "a person"),
              "a name",
              "left out"));
      return;
    }
    if (assessor == null && reader.layout() == Layout.PRODUCTS_IN_COLUMNS) {
      assessor = "row " + (row + 1);
    }
    found.add(
        found(reader, row, column, label, product, assessor, value, use, section, sectionUse));
  }

  /** The product where no key names it; null when a key exists and its cell is empty. */
  private static @Nullable String productElsewhere(
      SheetReader reader, int row, WideLabel label, String section, String sectionUse) {
    if (sectionUse.equals("product")) {
      return section;
    }
    if (reader.key(Role.PRODUCT) != null || label.product() != null) {
      return null;
    }
    return reader.layout() == Layout.PRODUCTS_IN_ROWS ? "row " + (row + 1) : "the product";
  }

  private FoundMark found(
      SheetReader reader,
      int row,
      Column column,
      WideLabel label,
      String product,
      @Nullable String assessor,
      double value,
      String use,
      String section,
      String sectionUse) {
    Grid grid = reader.grid();
    String attribute = name(label.attribute(), reader.key(Role.ATTRIBUTE), row);
    if (reader.key(Role.ATTRIBUTE) != null) {
      attribute = name(null, reader.key(Role.ATTRIBUTE), row);
    }
    if ("attribute".equals(use)) {
      attribute = grid.sheet();
    }
    if ("attribute".equals(sectionUse)) {
      attribute = section;
    }
    String session = name(label.session(), reader.key(Role.SESSION), row);
    if ("session".equals(use)) {
      session = grid.sheet();
    }
    if ("session".equals(sectionUse)) {
      session = section;
    }
    Map<String, String> conditions = new LinkedHashMap<>();
    for (Column condition : reader.conditions()) {
      conditions.put(condition.name(), condition.text[row]);
    }
    Column order = reader.key(Role.ORDER);
    Integer position =
        order == null || Double.isNaN(order.number[row]) ? null : (int) order.number[row];
    Rating rating =
        new Rating(
            assessor,
            product,
            session,
            name(null, reader.key(Role.BATCH), row),
            attribute == null ? "mark" : attribute,
            value,
            position,
            conditions);
    return new FoundMark(
        rating,
        grid.sheet(),
        grid.line(row, column.index),
        grid.column(row, column.index),
        name(label.replicate(), reader.key(Role.REPLICATE), row));
  }

  /** The label of the column, else the key's cell; null when there is none. */
  private @Nullable String name(@Nullable String label, @Nullable Column key, int row) {
    String text =
        label != null ? label : key == null || Mark.isMissing(key.text[row]) ? null : key.text[row];
    return text == null ? null : choices.same().getOrDefault(text, text);
  }

  private static String remedy(String cell) {
    return Mark.isDate(cell)
        ? "left out; perhaps a fraction such as 7/10 that a spreadsheet took for a date"
        : "left out";
  }

  static String quote(String text) {
    return "\"" + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + "\"";
  }
}
