package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Keys and marks whose headers say what they are. Headers are believed before anything else. */
final class KeysByHeader {

  private final SheetRoles sheet;

  KeysByHeader(SheetRoles sheet) {
    this.sheet = sheet;
  }

  void takeChoices() {
    for (Column column : sheet.columns) {
      Role chosen = sheet.choices.roles().get(column.header);
      if (chosen == null) {
        chosen = sheet.choices.roles().get(Vocabulary.fold(column.header));
      }
      if (chosen != null) {
        sheet.set(column, chosen, "as you said");
      }
    }
  }

  /** "Unnamed: 0.1": row numbers that a table collects each time a program writes it out. */
  void takeExportedIndexes() {
    for (Column column : sheet.open()) {
      if (column.index > 0 && column.header.matches("(?i)unnamed: ?\\d+(\\.\\d+)*")) {
        sheet.set(column, Role.IGNORED, "row numbers of an earlier export");
      }
    }
  }

  /**
   * One row per person and a questionnaire around the marks: only the columns that cross products
   * with attributes are marks.
   */
  void takeGridOfMarks() {
    List<Column> crossed = MarkGrid.among(sheet.open().stream().filter(Column::isNumeric).toList());
    Column row = crossed.isEmpty() ? null : rowName(crossed);
    if (row == null) {
      return;
    }
    Role inRows = Vocabulary.role(row.header) == Role.PRODUCT ? Role.PRODUCT : Role.ASSESSOR;
    sheet.set(row, inRows, "one row each");
    for (Column column : sheet.open()) {
      if (!crossed.contains(column)) {
        sheet.set(column, Role.IGNORED, "no column of the table of products and attributes");
      }
    }
  }

  /** The column that names each row once, by its header or as the first. */
  private @Nullable Column rowName(List<Column> crossed) {
    return sheet.open().stream()
        .filter(c -> c.isUnique() && !crossed.contains(c))
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
  void takeFinerProducts() {
    Column product = sheet.keys.get(Role.PRODUCT);
    if (product == null || sheet.isChosen(product)) {
      return;
    }
    for (Column column : sheet.open()) {
      if (Vocabulary.role(column.header) != Role.PRODUCT || !column.isRepeated()) {
        continue;
      }
      boolean groups = product.isDecidedBy(column);
      if (groups && column.isDecidedBy(product)) {
        sheet.set(column, Role.IGNORED, "another name of " + product.name());
      } else if (column.isDecidedBy(product)) {
        sheet.set(column, Role.IGNORED, "groups of " + product.name());
      } else if (groups) {
        sheet.demote(Role.PRODUCT);
        sheet.set(product, Role.IGNORED, "groups of " + column.name());
        sheet.set(column, Role.PRODUCT, "finer than " + product.name() + ", which it decides");
        product = column;
      }
    }
  }

  void takeHeaders() {
    Map<Role, Integer> numbered = numberedHeaders();
    List<Column> keysFirst = new ArrayList<>(sheet.open());
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
    for (Column column : sheet.open()) {
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
    if (sheet.keys.containsKey(role)) {
      leaveOutSecond(column, role);
      return;
    }
    sheet.set(column, role, SheetRoles.BY_HEADER);
  }

  /** A second column for the sitting, the batch or the repetition is part of the plan, no mark. */
  private void leaveOutSecond(Column column, Role role) {
    boolean planned = role == Role.SESSION || role == Role.BATCH || role == Role.REPLICATE;
    if (planned && Vocabulary.tokens(column.header).size() == 1) {
      sheet.set(column, Role.IGNORED, "another column already tells " + role.words());
    }
  }

  private boolean hasOtherProduct(Column column) {
    return sheet.open().stream()
        .anyMatch(c -> c != column && Vocabulary.role(c.header) == Role.PRODUCT);
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
        sheet.open().stream()
            .anyMatch(c -> c != column && Vocabulary.role(c.header) == Role.ASSESSOR);
    if (id && !named && !sheet.keys.containsKey(Role.ASSESSOR)) {
      return false;
    }
    Column assessor = sheet.keys.get(Role.ASSESSOR);
    boolean factor =
        !column.isNumeric()
            && column.isEven()
            && column.levels.size() <= 6
            && assessor != null
            && assessor.isRepeated()
            && !column.isDecidedBy(assessor);
    return !factor && !(id && tokens.stream().anyMatch(KeysByHeader::roleWord));
  }

  private static boolean roleWord(String token) {
    Role role = Vocabulary.role(token);
    return role == Role.ASSESSOR || role == Role.PRODUCT || role == Role.BATCH;
  }

  /** A second table to the right has its own names; they must be those of the first. */
  void twinKeys() {
    for (Map.Entry<Role, Column> key : sheet.keys.entrySet()) {
      Column first = key.getValue();
      for (Column column : sheet.columns) {
        boolean twin = column.index > first.index && column.header.equals(first.header);
        if (twin
            && !first.header.isEmpty()
            && !sheet.readings.containsKey(column.index)
            && !Arrays.equals(column.text, first.text)) {
          sheet.questions.add(
              "Two tables stand side by side, and their rows do not name the same under \""
                  + first.header
                  + "\": the names on the left were used for both. Put one below the other.");
        }
      }
    }
  }

  void findMarks() {
    for (Column column : sheet.open()) {
      if (Vocabulary.role(column.header) == Role.MARK
          && (column.isNumeric() || LeftOutColumns.isPoorlyTyped(column))) {
        sheet.set(column, Role.MARK, SheetRoles.BY_HEADER);
      }
    }
  }
}
