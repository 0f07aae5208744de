package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Decides for one sheet which column says what. Headers are believed first; what they leave open is
 * decided by how the columns are filled: keys repeat evenly, facts about people are the same in all
 * their rows, totals are sums of their neighbours.
 */
final class SheetReader {

  private static final String BY_HEADER = "the header says so";

  private static final String NOBODY_NAMED =
      "People are not named: every mark counts as another person's.";

  private final Grid grid;
  private final ReadingChoices choices;
  private final List<Column> columns = new ArrayList<>();
  private final Map<Integer, ColumnReading> readings = new LinkedHashMap<>();
  private final Map<Role, Column> keys = new EnumMap<>(Role.class);
  private final List<Column> conditions = new ArrayList<>();
  private List<Column> marks = new ArrayList<>();
  private List<WideLabel> labels = List.of();
  private final List<String> questions = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final Set<Integer> summaryRows = new HashSet<>();
  private Layout layout = Layout.UNREADABLE;

  SheetReader(Grid grid, ReadingChoices choices) {
    this.grid = grid;
    this.choices = choices;
    for (int c = 0; c < grid.width(); c++) {
      columns.add(new Column(grid, c));
    }
  }

  /** What a mark column stands for beside the keys of its row; parts that do not apply are null. */
  record WideLabel(
      @Nullable String product,
      @Nullable String assessor,
      @Nullable String attribute,
      @Nullable String session,
      @Nullable String replicate) {}

  SheetReader decide() {
    leaveOutSummaryRows();
    takeChoices();
    takeExportedIndexes();
    takeGridOfMarks();
    takeHeaders();
    takeFinerProducts();
    twinKeys();
    leaveOut();
    findMarks();
    findKeysByShape();
    shape();
    return this;
  }

  Grid grid() {
    return grid;
  }

  Layout layout() {
    return layout;
  }

  List<Column> marks() {
    return marks;
  }

  List<WideLabel> labels() {
    return labels;
  }

  @Nullable Column key(Role role) {
    return keys.get(role);
  }

  List<Column> conditions() {
    return conditions;
  }

  Set<Integer> summaryRows() {
    return summaryRows;
  }

  List<String> questions() {
    return questions;
  }

  List<String> notes() {
    return notes;
  }

  List<ColumnReading> readings() {
    List<ColumnReading> all = new ArrayList<>();
    for (Column column : columns) {
      ColumnReading reading = readings.get(column.index);
      if (reading != null) {
        all.add(reading);
      } else if (!column.isEmpty()) {
        all.add(
            new ColumnReading(
                grid.sheet(), column.name(), Role.IGNORED, "nothing tells what it is"));
      }
    }
    return all;
  }

  private void set(Column column, Role role, String why) {
    readings.put(column.index, new ColumnReading(grid.sheet(), column.name(), role, why));
    if (role == Role.CONDITION) {
      conditions.add(column);
    } else if (role == Role.MARK) {
      marks.add(column);
    } else if (role != Role.IGNORED) {
      keys.put(role, column);
    }
  }

  private boolean isOpen(Column column) {
    return !readings.containsKey(column.index) && !column.isEmpty();
  }

  private List<Column> open() {
    return columns.stream().filter(this::isOpen).toList();
  }

  private void leaveOutSummaryRows() {
    Map<String, Boolean> summaries = new HashMap<>();
    for (int r = 0; r < grid.body().size(); r++) {
      for (int c = 0; c < Math.min(2, grid.width()); c++) {
        String cell = grid.body().get(r).cell(c);
        if (!cell.isEmpty()
            && Double.isNaN(columns.get(c).number[r])
            && summaries.computeIfAbsent(cell, Vocabulary::isSummary)
            && (!Vocabulary.isExtreme(cell) || holdsExtremes(r))) {
          summaryRows.add(r);
        }
      }
    }
    if (summaryRows.size() > 6 && summaryRows.size() > grid.body().size() / 3) {
      summaryRows.clear();
    }
    if (!summaryRows.isEmpty()) {
      notes.add(
          "Rows of totals or means were left out: lines "
              + summaryRows.stream()
                  .sorted()
                  .map(r -> String.valueOf(grid.body().get(r).line()))
                  .collect(Collectors.joining(", "))
              + ".");
    }
  }

  /** Max may be a person: only a row that holds each column's extreme is a summary. */
  private boolean holdsExtremes(int row) {
    int numbers = 0;
    int extremes = 0;
    for (Column column : columns) {
      double value = column.number[row];
      if (Double.isNaN(value)) {
        continue;
      }
      numbers++;
      boolean largest = true;
      boolean smallest = true;
      for (int r = 0; r < column.number.length; r++) {
        largest &= !(column.number[r] > value);
        smallest &= !(column.number[r] < value);
      }
      extremes += largest || smallest ? 1 : 0;
    }
    return numbers > 1 && extremes == numbers;
  }

  private void takeChoices() {
    for (Column column : columns) {
      Role chosen = choices.roles().get(column.header);
      if (chosen == null) {
        chosen = choices.roles().get(Vocabulary.fold(column.header));
      }
      if (chosen != null) {
        set(column, chosen, "as you said");
      }
    }
  }

  /** "Unnamed: 0.1": row numbers that a table collects each time a program writes it out. */
  private void takeExportedIndexes() {
    for (Column column : open()) {
      if (column.index > 0 && column.header.matches("(?i)unnamed: ?\\d+(\\.\\d+)*")) {
        set(column, Role.IGNORED, "row numbers of an earlier export");
      }
    }
  }

  /**
   * One row per person and a questionnaire around the marks: only the columns that cross products
   * with attributes are marks.
   */
  private void takeGridOfMarks() {
    List<Column> grid = MarkGrid.among(open().stream().filter(Column::isNumeric).toList());
    Column row = grid.isEmpty() ? null : rowName(grid);
    if (row == null) {
      return;
    }
    Role inRows = Vocabulary.role(row.header) == Role.PRODUCT ? Role.PRODUCT : Role.ASSESSOR;
    set(row, inRows, "one row each");
    for (Column column : open()) {
      if (!grid.contains(column)) {
        set(column, Role.IGNORED, "no column of the table of products and attributes");
      }
    }
  }

  /** The column that names each row once, by its header or as the first. */
  private @Nullable Column rowName(List<Column> grid) {
    return open().stream()
        .filter(c -> c.isUnique() && !grid.contains(c))
        .filter(c -> c.index == 0 || isRowName(c.header))
        .min(Comparator.comparing((Column c) -> Vocabulary.role(c.header) != Role.ASSESSOR))
        .orElse(null);
  }

  private static boolean isRowName(String header) {
    Role role = Vocabulary.role(header);
    return Vocabulary.isName(header)
        || role == Role.ASSESSOR
        || role == Role.PRODUCT
        || Vocabulary.tokens(header).contains("id");
  }

  /** "PROD" and "PRODID", "brand" and "model": of two nested names the finer one was rated. */
  private void takeFinerProducts() {
    Column product = keys.get(Role.PRODUCT);
    if (product == null || isChosen(product)) {
      return;
    }
    for (Column column : open()) {
      if (Vocabulary.role(column.header) != Role.PRODUCT || !column.isRepeated()) {
        continue;
      }
      boolean groups = product.isDecidedBy(column);
      if (groups && column.isDecidedBy(product)) {
        set(column, Role.IGNORED, "another name of " + product.name());
      } else if (column.isDecidedBy(product)) {
        set(column, Role.IGNORED, "groups of " + product.name());
      } else if (groups) {
        demote(Role.PRODUCT);
        set(product, Role.IGNORED, "groups of " + column.name());
        set(column, Role.PRODUCT, "finer than " + product.name() + ", which it decides");
        product = column;
      }
    }
  }

  private void takeHeaders() {
    Map<Role, Integer> numbered = numberedHeaders();
    List<Column> keysFirst = new ArrayList<>(open());
    keysFirst.sort(Comparator.comparing((Column c) -> Vocabulary.role(c.header) == Role.IGNORED));
    for (Column column : keysFirst) {
      Role role = Vocabulary.role(column.header);
      if (role == null || isNumbered(column) && numbered.getOrDefault(role, 0) > 1) {
        continue;
      }
      takeHeader(column, role);
    }
  }

  /** judge1, judge2 …, day 1 alder, day 2 alder …: the header names a level, not a key. */
  private Map<Role, Integer> numberedHeaders() {
    Map<Role, Integer> count = new LinkedHashMap<>();
    for (Column column : open()) {
      Role role = Vocabulary.role(column.header);
      if (role != null && isNumbered(column)) {
        count.merge(role, 1, Integer::sum);
      }
    }
    return count;
  }

  private static boolean isNumbered(Column column) {
    List<String> tokens = Vocabulary.tokens(column.header);
    if (tokens.size() < 2) {
      return false;
    }
    String last = tokens.get(tokens.size() - 1);
    boolean level = last.matches("\\d+|[a-z]");
    for (int i = 1; i < tokens.size(); i++) {
      level |= tokens.get(i).matches("\\d+") && Vocabulary.role(tokens.get(i - 1)) != null;
    }
    return level && column.isNumeric();
  }

  private void takeHeader(Column column, Role role) {
    boolean fits =
        switch (role) {
          case MARK -> false;
          case IGNORED -> isIgnorable(column);
          case ORDER -> column.isNumeric() && column.whole && column.isRepeated();
          case ATTRIBUTE -> !column.isNumeric() || column.whole && column.isEven();
          default -> !column.isNumeric() || column.whole;
        };
    if (role == Role.PRODUCT && isMarkLike(column) && !column.isEven() && hasOtherProduct(column)) {
      fits = false;
    }
    if (role == Role.PRODUCT && column.levels.size() < 2 && hasOtherProduct(column)) {
      fits = false;
    }
    if (!fits) {
      return;
    }
    if (keys.containsKey(role)) {
      leaveOutSecond(column, role);
      return;
    }
    set(column, role, BY_HEADER);
  }

  /** A second column for the sitting, the batch or the repetition is part of the plan, no mark. */
  private void leaveOutSecond(Column column, Role role) {
    boolean planned = role == Role.SESSION || role == Role.BATCH || role == Role.REPLICATE;
    if (planned && Vocabulary.tokens(column.header).size() == 1) {
      set(column, Role.IGNORED, "another column already tells " + role.words());
    }
  }

  private boolean hasOtherProduct(Column column) {
    return open().stream().anyMatch(c -> c != column && Vocabulary.role(c.header) == Role.PRODUCT);
  }

  private static boolean isMarkLike(Column column) {
    return column.isNumeric() && column.levels.size() > 1 && !column.isEven();
  }

  /** "id" above repeated numbers may be the person, and "note" above numbers is a mark. */
  private boolean isIgnorable(Column column) {
    List<String> tokens = Vocabulary.tokens(column.header);
    boolean id =
        tokens.contains("id")
            || tokens.contains("no")
            || tokens.contains("nr")
            || tokens.contains("number");
    boolean named =
        open().stream().anyMatch(c -> c != column && Vocabulary.role(c.header) == Role.ASSESSOR);
    if (id && !named && !keys.containsKey(Role.ASSESSOR)) {
      return false;
    }
    Column assessor = keys.get(Role.ASSESSOR);
    boolean factor =
        !column.isNumeric()
            && column.isEven()
            && column.levels.size() <= 6
            && assessor != null
            && assessor.isRepeated()
            && !column.isDecidedBy(assessor);
    return !factor && !(id && tokens.stream().anyMatch(SheetReader::roleWord));
  }

  private static boolean roleWord(String token) {
    Role role = Vocabulary.role(token);
    return role == Role.ASSESSOR || role == Role.PRODUCT || role == Role.BATCH;
  }

  private void leaveOut() {
    for (Column column : open()) {
      if (isPoorlyTyped(column)) {
        continue;
      }
      if (column.isRemark()) {
        set(column, Role.IGNORED, "sentences, not marks");
      } else if (isAddress(column)) {
        set(column, Role.IGNORED, "dates, times or addresses");
      } else if (column.levels.size() == 1 && !column.isNumeric()) {
        set(column, Role.IGNORED, "the same in every row");
      }
    }
    Column assessor = keys.get(Role.ASSESSOR);
    Column product = keys.get(Role.PRODUCT);
    for (Column column : open()) {
      if (assessor != null && product != null && assessor != product && !isConstantMark(column)) {
        if (repeats(assessor)
            && column.isDecidedBy(assessor)
            && column.levels.size() > 0
            && isFact(column, assessor)) {
          set(column, Role.IGNORED, "the same in all rows of a person: a fact about the person");
        } else if (repeats(product) && column.isDecidedBy(product) && isFact(column, product)) {
          set(column, Role.IGNORED, "the same in all rows of a product: a fact about the product");
        }
      }
    }
    if (assessor != null && product != null && assessor != product) {
      leaveOutPlan(assessor, product);
    }
    leaveOutCodes();
    leaveOutRowNumbers();
    leaveOutTotals();
  }

  /** What never changes while a person is served a product again: its place in the plan. */
  private void leaveOutPlan(Column assessor, Column product) {
    Column cell = Column.joined(List.of(assessor, product));
    for (Column column : open()) {
      if (cell.filled - cell.levels.size() >= 6
          && column.levels.size() > 1
          && Vocabulary.role(column.header) != Role.MARK
          && !Vocabulary.isAttributeWord(column.header)
          && column.isDecidedBy(cell)) {
        set(column, Role.IGNORED, "the same each time a person meets a product: part of the plan");
      }
    }
  }

  /** A panel that agrees completely still rated. */
  private static boolean isConstantMark(Column column) {
    return column.levels.size() == 1
        && column.isNumeric()
        && (Vocabulary.role(column.header) == Role.MARK
            || Vocabulary.isAttributeWord(column.header));
  }

  /** Decided by a key in so many rows that chance cannot have done it. */
  private static boolean isFact(Column column, Column key) {
    return column.filled - key.levels.size() >= 4 || !column.isNumeric();
  }

  private static boolean repeats(Column key) {
    return key.levels.size() < key.filled;
  }

  /** The blind code beside a product that is named. */
  private void leaveOutCodes() {
    Column product = keys.get(Role.PRODUCT);
    for (Column column : open()) {
      List<String> tokens = Vocabulary.tokens(column.header);
      if (product != null
          && (tokens.contains("code") || tokens.contains("codes"))
          && column.whole
          && (column.isUnique() || column.smallest >= 100)) {
        set(column, Role.IGNORED, "codes of the samples");
      }
    }
  }

  private void leaveOutRowNumbers() {
    for (Column column : open()) {
      boolean others =
          columns.stream()
              .anyMatch(
                  c ->
                      c != column
                          && !c.isEmpty()
                          && (keys.containsValue(c) || isOpen(c) && !c.isNumeric()));
      if (column.isRowNumber()
          && others
          && (column.header.isEmpty()
              || Vocabulary.role(column.header) == Role.IGNORED
              || column.index == 0
                  && keys.containsKey(Role.ASSESSOR)
                  && keys.containsKey(Role.PRODUCT))) {
        set(column, Role.IGNORED, "running row numbers");
      }
    }
  }

  /** A column of marks in which many cells are no numbers: each of them is said. */
  private static boolean isPoorlyTyped(Column column) {
    return Vocabulary.role(column.header) == Role.MARK
        && !column.isNumeric()
        && column.numbers >= 0.3 * column.filled
        && column.levels.size() < column.filled;
  }

  private static boolean isAddress(Column column) {
    long like =
        column.levels.keySet().stream()
            .filter(
                t ->
                    t.matches(
                        ".*(@|://).*|\\d{4}-\\d{2}-\\d{2}.*\\d{1,2}:\\d{2}.*|\\d{1,2}[:h]\\d{2}(:\\d{2})?"))
            .count();
    return like > 0 && like >= 0.8 * column.levels.size();
  }

  /** A column that is the sum or the mean of other numeric columns in every row. */
  private void leaveOutTotals() {
    List<Column> numeric = open().stream().filter(Column::isNumeric).toList();
    if (numeric.size() < 3) {
      return;
    }
    for (Column candidate : numeric) {
      List<Column> others = numeric.stream().filter(c -> c != candidate).toList();
      if (isTotal(candidate, others)) {
        set(candidate, Role.IGNORED, "the sum or mean of the other columns");
        return;
      }
    }
  }

  private static boolean isTotal(Column candidate, List<Column> others) {
    int agree = 0;
    int rows = 0;
    boolean varies = false;
    for (int r = 0; r < candidate.number.length; r++) {
      if (Double.isNaN(candidate.number[r])) {
        continue;
      }
      double sum = 0;
      int count = 0;
      for (Column other : others) {
        if (!Double.isNaN(other.number[r])) {
          sum += other.number[r];
          count++;
          varies |= other.number[r] != others.get(0).number[r];
        }
      }
      rows++;
      boolean isSum = Math.abs(candidate.number[r] - sum) < 1e-6;
      boolean isMean = count > 0 && Math.abs(candidate.number[r] - sum / count) < 0.0051;
      agree += isSum || isMean ? 1 : 0;
    }
    return varies && rows >= 3 && agree == rows;
  }

  /** A second table to the right has its own names; they must be those of the first. */
  private void twinKeys() {
    for (Map.Entry<Role, Column> key : keys.entrySet()) {
      Column first = key.getValue();
      for (Column column : columns) {
        boolean twin = column.index > first.index && column.header.equals(first.header);
        if (twin
            && !first.header.isEmpty()
            && !readings.containsKey(column.index)
            && !Arrays.equals(column.text, first.text)) {
          questions.add(
              "Two tables stand side by side, and their rows do not name the same under \""
                  + first.header
                  + "\": the names on the left were used for both. Put one below the other.");
        }
      }
    }
  }

  private void findMarks() {
    for (Column column : open()) {
      if (Vocabulary.role(column.header) == Role.MARK
          && (column.isNumeric() || isPoorlyTyped(column))) {
        set(column, Role.MARK, BY_HEADER);
      }
    }
  }

  /** Keys whose header says nothing. */
  private void findKeysByShape() {
    unnamedKey();
    productsInBatchNames();
    List<Column> categories = open().stream().filter(this::isCategory).toList();
    if (!keys.containsKey(Role.ASSESSOR)) {
      takeAddresses();
    }
    if (!categories.isEmpty()) {
      findPeople(categories);
      Column people = keys.get(Role.ASSESSOR);
      boolean wide = people != null && people.isUnique() && numericOpen() >= 2;
      if (!keys.containsKey(Role.PRODUCT) && !wide) {
        takeProduct(categories);
      }
    }
    if (keys.containsKey(Role.PRODUCT)) {
      findConditions(categories);
    }
  }

  private void findPeople(List<Column> categories) {
    Column product = keys.get(Role.PRODUCT);
    if (keys.containsKey(Role.ASSESSOR)) {
      return;
    }
    if (product != null && product.isUnique()) {
      categories.stream()
          .filter(c -> isOpen(c) && !c.isNumeric())
          .forEach(c -> set(c, Role.IGNORED, "one row per product: a fact about the product"));
    } else {
      takeAssessor(categories, product != null);
    }
  }

  /** Where nothing else tells people apart, their addresses do. */
  private void takeAddresses() {
    for (Column column : columns) {
      ColumnReading reading = readings.get(column.index);
      if (reading != null
          && reading.role() == Role.IGNORED
          && column.levels.size() > 1
          && column.levels.keySet().stream().allMatch(t -> t.contains("@"))) {
        readings.remove(column.index);
        set(column, Role.ASSESSOR, "addresses tell the people apart");
        return;
      }
    }
  }

  /** The sheet's own name says who rated. */
  void peopleAreSheets() {
    notes.remove(NOBODY_NAMED);
  }

  /** Text columns that may have been meant as marks. */
  List<Column> wordy() {
    return columns.stream()
        .filter(c -> !c.isEmpty() && !c.isNumeric() && c.isRepeated() && !keys.containsValue(c))
        .toList();
  }

  private void findConditions(List<Column> categories) {
    for (Column column : open()) {
      boolean setting = Vocabulary.isQuantity(column.header) && isDesigned(column);
      if ((categories.contains(column) || setting) && column.isRepeated()) {
        takeCondition(column);
      }
    }
  }

  private void takeCondition(Column column) {
    Column assessor = keys.get(Role.ASSESSOR);
    Column product = keys.get(Role.PRODUCT);
    if (assessor != null && column.isDecidedBy(assessor)) {
      set(column, Role.IGNORED, "the same in all rows of a person: a fact about the person");
    } else if (product != null && column.isDecidedBy(product)) {
      set(column, Role.IGNORED, "the same in all rows of a product: a fact about the product");
    } else if (column.levels.size() <= 12 && meetsMost(column, product)) {
      set(column, Role.CONDITION, "crossed with people and products; taken out as a circumstance");
    } else {
      set(column, Role.IGNORED, "words that follow no plan");
    }
  }

  /** A circumstance was planned for every product. */
  private static boolean meetsMost(Column condition, @Nullable Column product) {
    return product == null
        || Column.joined(List.of(condition, product)).levels.size()
            >= 0.8 * condition.levels.size() * product.levels.size();
  }

  /** The first column without a header is the row's name unless it only counts rows. */
  private void unnamedKey() {
    for (Column column : open()) {
      boolean blank =
          column.header.isEmpty()
              || column.header.matches("(?i)unnamed.*|\\.\\.\\.\\d+|x|v1|rownames?");
      if (!blank || column.index > 0 || grid.headers().stream().allMatch(h -> h.get(0).isEmpty())) {
        continue;
      }
      boolean assessor = keys.containsKey(Role.ASSESSOR);
      boolean product = keys.containsKey(Role.PRODUCT);
      if (assessor && product) {
        set(column, Role.IGNORED, "row names");
      } else if (assessor) {
        set(column, Role.PRODUCT, "the unnamed first column; people stand elsewhere");
      } else if (product) {
        if (column.isRepeated() || !column.isRowNumber()) {
          set(column, Role.ASSESSOR, "the unnamed first column; products stand elsewhere");
        } else {
          set(column, Role.IGNORED, "running row numbers");
        }
      }
    }
  }

  /** Alder #1, Alder #2, Birch #1 …: each batch is named by its product and a number. */
  private void productsInBatchNames() {
    Column batch = keys.get(Role.BATCH);
    if (batch == null
        || keys.containsKey(Role.PRODUCT)
        || !NumberedName.all(batch.levels.keySet())) {
      askNumberedProducts();
      return;
    }
    keys.put(Role.PRODUCT, batch.derived(NumberedName::name));
    notes.add(
        "The batches' names hold the product and a number: \""
            + batch.text[0]
            + "\" is a batch of \""
            + NumberedName.name(batch.text[0])
            + "\".");
  }

  private void askNumberedProducts() {
    Column product = keys.get(Role.PRODUCT);
    if (product != null && NumberedName.all(product.levels.keySet())) {
      String first = product.levels.keySet().iterator().next();
      questions.add(
          String.format(
              Locale.ROOT,
              "Is \"%s\" one of several batches of \"%s\"? Every name ends in a number; they were kept"
                  + " apart. Say --batch \"%s\" if so.",
              first,
              NumberedName.name(first),
              product.name()));
    }
  }

  private boolean isCategory(Column column) {
    if (column.levels.size() < 2) {
      return false;
    }
    return !column.isNumeric() || isDesigned(column) && !Vocabulary.isQuantity(column.header);
  }

  /** Whole numbers that meet every other key equally often, as only a plan makes them. */
  private boolean isDesigned(Column column) {
    if (!column.whole
        || !column.isEven()
        || column.filled < 8
        || Vocabulary.isAttributeWord(column.header)) {
      return false;
    }
    List<Column> others = new ArrayList<>();
    for (Role role : List.of(Role.ASSESSOR, Role.PRODUCT)) {
      Column key = keys.get(role);
      if (key != null) {
        others.add(key);
      }
    }
    for (Column other : open()) {
      if (others.size() < 2 && other != column && other.isEven() && column.isCrossedWith(other)) {
        others.add(other);
      }
    }
    return !others.isEmpty()
        && others.stream().allMatch(o -> o.isRepeated() && column.isCrossedWith(o));
  }

  private void takeAssessor(List<Column> categories, boolean productKnown) {
    List<Column> repeated = categories.stream().filter(c -> isOpen(c) && c.isRepeated()).toList();
    Column best = null;
    for (Column column : repeated) {
      if (personShare(column) >= 0.6 && (best == null || personShare(column) > personShare(best))) {
        best = column;
      }
    }
    if (best != null) {
      set(best, Role.ASSESSOR, "its words look like names or numbers of people");
      return;
    }
    Column named =
        repeated.stream().filter(c -> Vocabulary.isName(c.header)).findFirst().orElse(null);
    if (named != null && (productKnown || repeated.size() > 1 || hasRepeatedId())) {
      set(named, Role.ASSESSOR, "names; nothing else tells who rated");
      return;
    }
    Column id =
        columns.stream()
            .filter(c -> isOpen(c) && Vocabulary.tokens(c.header).contains("id") && c.isRepeated())
            .findFirst()
            .orElse(null);
    if (id != null) {
      set(id, Role.ASSESSOR, "repeated identifiers");
      return;
    }
    if (productKnown && repeated.size() == 1 && crosses(repeated.get(0), keys.get(Role.PRODUCT))) {
      set(repeated.get(0), Role.ASSESSOR, "the only other column that repeats across products");
    } else if (!productKnown && repeated.size() >= 2) {
      mostLevels(repeated);
    }
  }

  private boolean hasRepeatedId() {
    return columns.stream()
        .anyMatch(c -> isOpen(c) && Vocabulary.tokens(c.header).contains("id") && c.isRepeated());
  }

  /** Of keys without a telling header, people are usually the most (common practice). */
  private void mostLevels(List<Column> repeated) {
    List<Column> sorted =
        repeated.stream().sorted(Comparator.comparingInt((Column c) -> -c.levels.size())).toList();
    Column more = sorted.get(0);
    Column fewer = sorted.get(1);
    if (crosses(more, fewer) && marks.size() + numericOpen() > 0 && cellsAreFew(more, fewer)) {
      set(more, Role.ASSESSOR, "more levels than the other key");
      questions.add(
          String.format(
              Locale.ROOT,
              "Is \"%s\" who rated and \"%s\" what was rated? The headers do not say; it was read"
                  + " so because %s has more levels.",
              more.name(),
              fewer.name(),
              more.name()));
    }
  }

  /** Whether two keys name the rows nearly one by one: so a person and a product would. */
  private static boolean cellsAreFew(Column a, Column b) {
    Set<String> pairs = new HashSet<>();
    for (int r = 0; r < a.text.length; r++) {
      pairs.add(a.text[r] + "\u0000" + b.text[r]);
    }
    return pairs.size() >= a.text.length / 4.0 && (a.levels.size() >= 4);
  }

  private long numericOpen() {
    return open().stream().filter(Column::isNumeric).count();
  }

  private static boolean crosses(Column a, @Nullable Column b) {
    return b != null && !a.isDecidedBy(b) && !b.isDecidedBy(a);
  }

  private static double personShare(Column column) {
    long persons = column.levels.keySet().stream().filter(Vocabulary::isPerson).count();
    return persons / (double) column.levels.size();
  }

  private void takeProduct(List<Column> categories) {
    Column assessor = keys.get(Role.ASSESSOR);
    Column batch = keys.get(Role.BATCH);
    List<Column> candidates =
        categories.stream()
            .filter(c -> isOpen(c) && c.isRepeated() && c.levels.size() <= 100)
            .filter(c -> assessor == null || !c.isDecidedBy(assessor))
            .toList();
    if (candidates.isEmpty()) {
      takeIdAsProduct();
      return;
    }
    Column named =
        candidates.stream().max(Comparator.comparingLong(SheetReader::productWords)).get();
    Column best = productWords(named) > 0 ? named : largest(candidates);
    if (batch != null && candidates.size() > 1) {
      List<Column> above = candidates.stream().filter(c -> c.isDecidedBy(batch)).toList();
      if (above.size() > 1) {
        Column together = Column.joined(above);
        above.forEach(c -> set(c, Role.PRODUCT, "together with others, what each batch was"));
        keys.put(Role.PRODUCT, together);
        notes.add("The product is the combination of " + together.header + ".");
        return;
      }
      best = above.isEmpty() ? best : above.get(0);
    }
    if (candidates.size() == 1) {
      set(best, Role.PRODUCT, "the only other column that repeats");
    } else {
      set(best, Role.PRODUCT, "the column that repeats with the most levels");
      String chosen = best.name();
      String others =
          candidates.stream()
              .map(Column::name)
              .filter(n -> !n.equals(chosen))
              .collect(Collectors.joining(", "));
      questions.add(
          "Is \""
              + best.name()
              + "\" the product? It was read so; "
              + others
              + " is taken as a circumstance. Say --product NAME if not.");
    }
  }

  /** "mead_id" beside names of people: numbers of what was rated. */
  private void takeIdAsProduct() {
    open().stream()
        .filter(c -> Vocabulary.tokens(c.header).contains("id") && c.isRepeated() && c.whole)
        .findFirst()
        .ifPresent(c -> set(c, Role.PRODUCT, "repeated identifiers; people are named elsewhere"));
  }

  private static long productWords(Column column) {
    return column.levels.keySet().stream().filter(Vocabulary::isProduct).count();
  }

  private static Column largest(List<Column> candidates) {
    return candidates.stream().max(Comparator.comparingInt(c -> c.levels.size())).orElseThrow();
  }

  /** Long or wide, once the keys are known. */
  private void shape() {
    Column assessor = keys.get(Role.ASSESSOR);
    Column product = keys.get(Role.PRODUCT);
    List<Column> numeric = open().stream().filter(c -> c.isNumeric()).toList();
    if (marks.stream().anyMatch(this::isChosen)) {
      numeric = List.of();
    }
    List<Column> values = new ArrayList<>(marks);
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
        && isRowKey(keys.get(Role.ASSESSOR))) {
      // subject × rater1 … raterK: the "subject" is what was rated.
      demote(Role.ASSESSOR);
      layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    layout = keys.containsKey(Role.ATTRIBUTE) ? Layout.LONG_ATTRIBUTES : Layout.LONG;
    for (Column value : values) {
      if (!marks.contains(value)) {
        set(value, Role.MARK, "numbers beside person and product");
      }
    }
    orderMarks();
    labels = attributeLabels();
  }

  /** Attributes side by side, repetitions side by side, or both ("crisp 1", "crisp 2" …). */
  private List<WideLabel> attributeLabels() {
    List<String[]> parts = pairs(marks);
    List<Role> kinds = new ArrayList<>();
    for (int i = 0; !parts.isEmpty() && i < parts.get(0).length; i++) {
      int part = i;
      kinds.add(kind(parts.stream().map(p -> p[part]).collect(Collectors.toSet())));
    }
    int repeats = marks.size() > 1 ? kinds.indexOf(Role.REPLICATE) : -1;
    List<WideLabel> all = new ArrayList<>();
    for (int m = 0; m < marks.size(); m++) {
      Column mark = marks.get(m);
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
    Column order = keys.get(Role.ORDER);
    if (order != null) {
      demote(Role.ORDER);
      notes.add("The only numbers are ranks: 1 is the first place, so a low mean is a good one.");
      return List.of(order);
    }
    List<Column> numbers = new ArrayList<>();
    for (Column column : columns) {
      ColumnReading reading = readings.get(column.index);
      boolean byHeader =
          reading != null && reading.role() == Role.IGNORED && reading.why().equals(BY_HEADER);
      if (byHeader
          && !Vocabulary.isSummary(column.header)
          && !column.header.equalsIgnoreCase("n")
          && column.isNumeric()
          && !column.isRowNumber()
          && !column.isUnique()) {
        readings.remove(column.index);
        numbers.add(column);
      }
    }
    return numbers;
  }

  private boolean isChosen(Column column) {
    ColumnReading reading = readings.get(column.index);
    return reading != null && reading.why().equals("as you said");
  }

  /** Without a header a single attribute is called mark. */
  private String attributeName(Column value) {
    return value.header.isEmpty() && marks.size() == 1 ? "mark" : value.name();
  }

  private void demote(Role role) {
    Column column = keys.remove(role);
    if (column != null) {
      readings.remove(column.index);
    }
  }

  private boolean isRowKey(@Nullable Column column) {
    return column != null && column.isUnique();
  }

  private void orderMarks() {
    marks = new ArrayList<>(marks.stream().sorted(Comparator.comparingInt(m -> m.index)).toList());
  }

  private void personsMissing(List<Column> values) {
    Column product = keys.get(Role.PRODUCT);
    boolean uniqueRows = product != null && rowsAreUnique(product);
    Set<Role> roles = columnRoles(values);
    boolean attributes = roles.equals(Set.of(Role.ATTRIBUTE));
    if (uniqueRows && values.size() >= 2 && !attributes) {
      layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    if (roles.contains(Role.ASSESSOR) && values.size() >= 2) {
      layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    layout = Layout.UNNAMED;
    notes.add(NOBODY_NAMED);
    oneRowPerProduct(values);
    layout = Layout.UNNAMED;
  }

  /** Whether product with session, batch, repetition or attribute names each row once. */
  private boolean rowsAreUnique(Column product) {
    Set<String> seen = new HashSet<>();
    int rows = 0;
    for (int r = 0; r < product.text.length; r++) {
      if (summaryRows.contains(r)) {
        continue;
      }
      StringBuilder name = new StringBuilder(product.text[r]);
      for (Role role : List.of(Role.SESSION, Role.BATCH, Role.REPLICATE, Role.ATTRIBUTE)) {
        Column key = keys.get(role);
        name.append('\u0000').append(key == null ? "" : key.text[r]);
      }
      for (Column condition : conditions) {
        name.append('\u0000').append(condition.text[r]);
      }
      name.append('\u0000').append(grid.sections().get(r));
      seen.add(name.toString());
      rows++;
    }
    return seen.size() >= 0.9 * rows;
  }

  private void wideOrNothing(List<Column> values, Role missing) {
    if (values.size() < 2) {
      if (values.size() == 1 && keys.get(Role.ASSESSOR) != null) {
        questions.add("No column tells what was rated. Say --product NAME.");
      }
      layout = Layout.UNREADABLE;
      return;
    }
    boolean said = choices.inColumns() != null;
    if (!said && columnRoles(values).equals(Set.of(Role.ATTRIBUTE))) {
      layout = Layout.LONG;
      questions.add(
          "No column tells what was rated, and the columns look like attributes: read as one"
              + " product. If they are products, say --products-in columns.");
      oneRowPerProduct(values);
      return;
    }
    if (choices.inColumns() == Role.ASSESSOR
        || !said && columnRoles(values).equals(Set.of(Role.ASSESSOR))) {
      Column rows = keys.get(Role.ASSESSOR);
      demote(Role.ASSESSOR);
      if (rows != null) {
        set(rows, Role.PRODUCT, "people stand in the columns");
      }
      layout = Layout.PRODUCTS_IN_ROWS;
      wide(values, Role.ASSESSOR);
      return;
    }
    layout = Layout.PRODUCTS_IN_COLUMNS;
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
    if (!two || !crosses(numbered.get(0), numbered.get(1)) || sameScale(values)) {
      return false;
    }
    set(numbered.get(0), Role.ASSESSOR, "many repeated numbers, the most levels");
    set(numbered.get(1), Role.PRODUCT, "many repeated numbers");
    questions.add(
        String.format(
            Locale.ROOT,
            "Is \"%s\" who rated and \"%s\" what was rated? The headers do not say; they were read"
                + " so because they hold many repeated numbers. Say --assessor and --product if not.",
            numbered.get(0).name(),
            numbered.get(1).name()));
    leaveOut();
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
    if (choices.inColumns() == null && takeNumberedKeys(values)) {
      oneRowPerProduct(values.stream().filter(this::isOpen).toList());
      return;
    }
    Column rows =
        columns.stream()
            .filter(c -> isOpen(c) && !values.contains(c) && c.isUnique())
            .findFirst()
            .orElse(null);
    Column first = columns.isEmpty() ? null : columns.get(0);
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
      set(
          rows,
          inColumns == Role.ASSESSOR ? Role.PRODUCT : Role.ASSESSOR,
          "the row's name; "
              + (inColumns == Role.ASSESSOR ? "people" : "products")
              + " stand in the columns");
    }
    if (inColumns == Role.ATTRIBUTE) {
      layout = Layout.UNNAMED;
      questions.add(
          "The columns look like attributes of one product. If they are products, say --products-in columns.");
      oneRowPerProduct(marksOnly);
      return;
    }
    layout = inColumns == Role.ASSESSOR ? Layout.PRODUCTS_IN_ROWS : Layout.PRODUCTS_IN_COLUMNS;
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
    if (choices.inColumns() != null) {
      return choices.inColumns();
    }
    Set<Role> roles = columnRoles(values);
    if (roles.contains(Role.ASSESSOR)) {
      return Role.ASSESSOR;
    }
    if (roles.contains(Role.PRODUCT)) {
      return Role.PRODUCT;
    }
    if (roles.equals(Set.of(Role.ATTRIBUTE))) {
      return rows != null && rows.isUnique() && values.size() >= 2
          ? Role.ATTRIBUTE
          : Role.ATTRIBUTE;
    }
    if (rows == null) {
      return Role.PRODUCT;
    }
    if (personShare(rows) >= 0.6) {
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
    questions.add(
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
      roles.add(kind(part));
    }
    boolean unknown = roles.remove(Role.IGNORED);
    if (unknown && parts.size() >= 2 && !roles.contains(Role.PRODUCT)) {
      roles.add(keys.containsKey(Role.PRODUCT) ? Role.ASSESSOR : Role.PRODUCT);
    }
    return roles;
  }

  /** Role that a set of labels seems to have; IGNORED when nothing tells. */
  static Role kind(Set<String> labels) {
    double n = labels.size();
    long persons = labels.stream().filter(SheetReader::isPersonLabel).count();
    long products = labels.stream().filter(Vocabulary::isProduct).count();
    long attributes = labels.stream().filter(Vocabulary::isAttributeWord).count();
    long sessions = labels.stream().filter(Vocabulary::isSession).count();
    long repeats = labels.stream().filter(Vocabulary::isReplicate).count();
    if (products >= 0.8 * n) {
      return Role.PRODUCT;
    }
    if (sessions == n
        && labels.stream()
            .anyMatch(l -> Vocabulary.role(l) == Role.SESSION || Vocabulary.isDay(l))) {
      return Role.SESSION;
    }
    if (repeats == n
        && n <= 6
        && labels.stream()
            .allMatch(l -> Vocabulary.tokens(l).stream().noneMatch(t -> t.matches("\\d{3,}")))) {
      return Role.REPLICATE;
    }
    if (persons >= 0.6 * n) {
      return Role.ASSESSOR;
    }
    if (attributes >= 0.4 * n) {
      return Role.ATTRIBUTE;
    }
    return Role.IGNORED;
  }

  private static boolean isPersonLabel(String label) {
    return Vocabulary.isPerson(label) || Vocabulary.role(label) == Role.ASSESSOR;
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
    int parts = values.isEmpty() ? 1 : grid.headers().get(values.get(0).index).size();
    boolean grouped = values.stream().allMatch(v -> grid.headers().get(v.index).size() == parts);
    if (grouped && parts > 1 && values.size() > 1) {
      return values.stream().map(v -> grid.headers().get(v.index).toArray(new String[0])).toList();
    }
    return HeaderParts.of(values.stream().map(Column::name).toList());
  }

  /** Reads mark columns as levels of {@code main}, perhaps with attribute or repetition. */
  private void wide(List<Column> all, Role main) {
    List<Column> values = all.stream().filter(c -> !isBesideMarks(c, all)).toList();
    List<String[]> pairs = pairs(values);
    List<Role> roles = partRoles(pairs, main);
    List<WideLabel> named = new ArrayList<>();
    marks = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      named.add(label(pairs.get(i), roles));
      Role role = roles.get(0);
      set(
          values.get(i),
          Role.MARK,
          "marks; the header names " + words(pairs.get(i), roles) + (role == null ? "" : ""));
    }
    labels = named;
  }

  /** A rank or a year in a row of marks: numbers of another kind than those beside them. */
  private boolean isBesideMarks(Column column, List<Column> all) {
    List<Column> others = all.stream().filter(c -> c != column).toList();
    if (others.size() < 3 || isChosen(column)) {
      return false;
    }
    boolean rank = Vocabulary.role(column.header) == Role.ORDER && column.isUnique();
    double top = others.stream().mapToDouble(c -> c.largest).sorted().toArray()[others.size() / 2];
    boolean elsewhere = column.smallest > 5 * top;
    if (rank || elsewhere) {
      set(
          column,
          Role.IGNORED,
          rank ? "places beside the marks" : "numbers far above the marks beside them");
    }
    return rank || elsewhere;
  }

  private static String words(String[] pair, List<Role> roles) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < pair.length; i++) {
      words.add(noun(roles.get(i)) + " \"" + pair[i] + "\"");
    }
    return String.join(" and ", words);
  }

  private static String noun(Role role) {
    return switch (role) {
      case ASSESSOR -> "the person";
      case PRODUCT -> "the product";
      case ATTRIBUTE -> "the attribute";
      case SESSION -> "the session";
      default -> "the repetition";
    };
  }

  private List<Role> partRoles(List<String[]> pairs, Role main) {
    int parts = pairs.get(0).length;
    if (parts == 1) {
      return List.of(main);
    }
    List<Role> kinds = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      int part = i;
      kinds.add(
          kind(
              pairs.stream()
                  .map(p -> p[part])
                  .collect(Collectors.toCollection(LinkedHashSet::new))));
    }
    int place = kinds.indexOf(main);
    if (place < 0) {
      place = Math.max(0, kinds.indexOf(Role.IGNORED));
      askForPart(pairs, kinds, main);
    }
    List<Role> roles = new ArrayList<>();
    for (int i = 0; i < parts; i++) {
      roles.add(i == place ? main : otherRole(kinds.get(i), main));
    }
    return distinctRoles(roles);
  }

  private void askForPart(List<String[]> pairs, List<Role> kinds, Role main) {
    boolean oneQuestion = pairs.stream().map(p -> p[1]).distinct().count() == 1;
    if (kinds.stream().filter(k -> k == Role.IGNORED).count() > 1 && !oneQuestion) {
      questions.add(
          "Which part of \""
              + String.join(" / ", pairs.get(0))
              + "\" is "
              + (main == Role.PRODUCT ? "the product" : "the person")
              + "? The first was taken, the second as the attribute.");
    }
  }

  /** No two parts say the same: the later one becomes what is still free. */
  private static List<Role> distinctRoles(List<Role> roles) {
    List<Role> free =
        new ArrayList<>(List.of(Role.ATTRIBUTE, Role.REPLICATE, Role.SESSION, Role.PRODUCT));
    free.removeAll(roles);
    List<Role> result = new ArrayList<>();
    for (Role role : roles) {
      result.add(result.contains(role) ? free.remove(0) : role);
    }
    return result;
  }

  private static Role otherRole(Role kind, Role main) {
    boolean people =
        kind == Role.ASSESSOR && main == Role.PRODUCT
            || kind == Role.PRODUCT && main == Role.ASSESSOR;
    boolean plain = kind == Role.SESSION || kind == Role.REPLICATE;
    return people || plain ? kind : Role.ATTRIBUTE;
  }

  private static WideLabel label(String[] parts, List<Role> roles) {
    Map<Role, String> by = new EnumMap<>(Role.class);
    for (int i = 0; i < parts.length; i++) {
      by.put(roles.get(i), parts[i]);
    }
    return new WideLabel(
        by.get(Role.PRODUCT),
        by.get(Role.ASSESSOR),
        by.get(Role.ATTRIBUTE),
        by.get(Role.SESSION),
        by.get(Role.REPLICATE));
  }
}
