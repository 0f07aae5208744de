package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Keys whose headers say nothing, told by how the columns are filled: keys repeat evenly and cross
 * each other.
 */
final class KeysByShape {

  private final SheetRoles sheet;

  KeysByShape(SheetRoles sheet) {
    this.sheet = sheet;
  }

  /** Keys whose header says nothing. */
  void findKeysByShape() {
    unnamedKey();
    productsInBatchNames();
    List<Column> categories = sheet.open().stream().filter(this::isCategory).toList();
    if (!sheet.keys.containsKey(Role.ASSESSOR)) {
      takeAddresses();
    }
    if (!categories.isEmpty()) {
      findPeople(categories);
      Column people = sheet.keys.get(Role.ASSESSOR);
      boolean wide = people != null && people.isUnique() && numericOpen() >= 2;
      if (!sheet.keys.containsKey(Role.PRODUCT) && !wide) {
        takeProduct(categories);
      }
    }
    if (sheet.keys.containsKey(Role.PRODUCT)) {
      findConditions(categories);
    }
  }

  private void findPeople(List<Column> categories) {
    Column product = sheet.keys.get(Role.PRODUCT);
    if (sheet.keys.containsKey(Role.ASSESSOR)) {
      return;
    }
    if (product != null && product.isUnique()) {
      categories.stream()
          .filter(c -> sheet.isOpen(c) && !c.isNumeric())
          .forEach(
              c -> sheet.set(c, Role.IGNORED, "one row per product: a fact about the product"));
    } else {
      takeAssessor(categories, product != null);
    }
  }

  /** Where nothing else tells people apart, their addresses do. */
  private void takeAddresses() {
    for (Column column : sheet.columns) {
      ColumnReading reading = sheet.readings.get(column.index);
      if (reading != null
          && reading.role() == Role.IGNORED
          && column.levels.size() > 1
          && column.levels.keySet().stream().allMatch(t -> t.contains("@"))) {
        sheet.readings.remove(column.index);
        sheet.set(column, Role.ASSESSOR, "addresses tell the people apart");
        return;
      }
    }
  }

  private void findConditions(List<Column> categories) {
    for (Column column : sheet.open()) {
      boolean setting = Vocabulary.isQuantity(column.header) && isDesigned(column);
      if ((categories.contains(column) || setting) && column.isRepeated()) {
        takeCondition(column);
      }
    }
  }

  private void takeCondition(Column column) {
    Column assessor = sheet.keys.get(Role.ASSESSOR);
    Column product = sheet.keys.get(Role.PRODUCT);
    if (assessor != null && column.isDecidedBy(assessor)) {
      sheet.set(column, Role.IGNORED, "the same in all rows of a person: a fact about the person");
    } else if (product != null && column.isDecidedBy(product)) {
      sheet.set(
          column, Role.IGNORED, "the same in all rows of a product: a fact about the product");
    } else if (column.levels.size() <= 12 && meetsMost(column, product)) {
      sheet.set(
          column, Role.CONDITION, "crossed with people and products; taken out as a circumstance");
    } else {
      sheet.set(column, Role.IGNORED, "words that follow no plan");
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
    for (Column column : sheet.open()) {
      boolean blank =
          column.header.isEmpty()
              || column.header.matches("(?i)unnamed.*|\\.\\.\\.\\d+|x|v1|rownames?");
      if (!blank
          || column.index > 0
          || sheet.grid.headers().stream().allMatch(h -> h.get(0).isEmpty())) {
        continue;
      }
      boolean assessor = sheet.keys.containsKey(Role.ASSESSOR);
      boolean product = sheet.keys.containsKey(Role.PRODUCT);
      if (assessor && product) {
        sheet.set(column, Role.IGNORED, "row names");
      } else if (assessor) {
        sheet.set(column, Role.PRODUCT, "the unnamed first column; people stand elsewhere");
      } else if (product) {
        if (column.isRepeated() || !column.isRowNumber()) {
          sheet.set(column, Role.ASSESSOR, "the unnamed first column; products stand elsewhere");
        } else {
          sheet.set(column, Role.IGNORED, "running row numbers");
        }
      }
    }
  }

  /** Alder #1, Alder #2, Birch #1 …: each batch is named by its product and a number. */
  private void productsInBatchNames() {
    Column batch = sheet.keys.get(Role.BATCH);
    if (batch == null
        || sheet.keys.containsKey(Role.PRODUCT)
        || !NumberedName.all(batch.levels.keySet())) {
      askNumberedProducts();
      return;
    }
    sheet.keys.put(Role.PRODUCT, batch.derived(NumberedName::name));
    sheet.notes.add(
        "The batches' names hold the product and a number: \""
            + batch.text[0]
            + "\" is a batch of \""
            + NumberedName.name(batch.text[0])
            + "\".");
  }

  private void askNumberedProducts() {
    Column product = sheet.keys.get(Role.PRODUCT);
    if (product != null && NumberedName.all(product.levels.keySet())) {
      String first = product.levels.keySet().iterator().next();
      sheet.questions.add(
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
      Column key = sheet.keys.get(role);
      if (key != null) {
        others.add(key);
      }
    }
    for (Column other : sheet.open()) {
      if (others.size() < 2 && other != column && other.isEven() && column.isCrossedWith(other)) {
        others.add(other);
      }
    }
    return !others.isEmpty()
        && others.stream().allMatch(o -> o.isRepeated() && column.isCrossedWith(o));
  }

  private void takeAssessor(List<Column> categories, boolean productKnown) {
    List<Column> repeated =
        categories.stream().filter(c -> sheet.isOpen(c) && c.isRepeated()).toList();
    Column best = null;
    for (Column column : repeated) {
      if (personShare(column) >= 0.6 && (best == null || personShare(column) > personShare(best))) {
        best = column;
      }
    }
    if (best != null) {
      sheet.set(best, Role.ASSESSOR, "its words look like names or numbers of people");
      return;
    }
    Column named =
        repeated.stream().filter(c -> Vocabulary.isName(c.header)).findFirst().orElse(null);
    if (named != null && (productKnown || repeated.size() > 1 || hasRepeatedId())) {
      sheet.set(named, Role.ASSESSOR, "names; nothing else tells who rated");
      return;
    }
    Column id =
        sheet.columns.stream()
            .filter(
                c ->
                    sheet.isOpen(c) && Vocabulary.tokens(c.header).contains("id") && c.isRepeated())
            .findFirst()
            .orElse(null);
    if (id != null) {
      sheet.set(id, Role.ASSESSOR, "repeated identifiers");
      return;
    }
    if (productKnown
        && repeated.size() == 1
        && crosses(repeated.get(0), sheet.keys.get(Role.PRODUCT))) {
      sheet.set(
          repeated.get(0), Role.ASSESSOR, "the only other column that repeats across products");
    } else if (!productKnown && repeated.size() >= 2) {
      mostLevels(repeated);
    }
  }

  private boolean hasRepeatedId() {
    return sheet.columns.stream()
        .anyMatch(
            c -> sheet.isOpen(c) && Vocabulary.tokens(c.header).contains("id") && c.isRepeated());
  }

  /** Of keys without a telling header, people are usually the most (common practice). */
  private void mostLevels(List<Column> repeated) {
    List<Column> sorted =
        repeated.stream().sorted(Comparator.comparingInt((Column c) -> -c.levels.size())).toList();
    Column more = sorted.get(0);
    Column fewer = sorted.get(1);
    if (crosses(more, fewer)
        && sheet.marks.size() + numericOpen() > 0
        && cellsAreFew(more, fewer)) {
      sheet.set(more, Role.ASSESSOR, "more levels than the other key");
      sheet.questions.add(
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
    return sheet.open().stream().filter(Column::isNumeric).count();
  }

  static boolean crosses(Column a, @Nullable Column b) {
    return b != null && !a.isDecidedBy(b) && !b.isDecidedBy(a);
  }

  static double personShare(Column column) {
    long persons = column.levels.keySet().stream().filter(Vocabulary::isPerson).count();
    return persons / (double) column.levels.size();
  }

  private void takeProduct(List<Column> categories) {
    Column assessor = sheet.keys.get(Role.ASSESSOR);
    Column batch = sheet.keys.get(Role.BATCH);
    List<Column> candidates =
        categories.stream()
            .filter(c -> sheet.isOpen(c) && c.isRepeated() && c.levels.size() <= 100)
            .filter(c -> assessor == null || !c.isDecidedBy(assessor))
            .toList();
    if (candidates.isEmpty()) {
      takeIdAsProduct();
      return;
    }
    Column named =
        candidates.stream().max(Comparator.comparingLong(KeysByShape::productWords)).get();
    Column best = productWords(named) > 0 ? named : largest(candidates);
    if (batch != null && candidates.size() > 1) {
      List<Column> above = candidates.stream().filter(c -> c.isDecidedBy(batch)).toList();
      if (above.size() > 1) {
        Column together = Column.joined(above);
        above.forEach(c -> sheet.set(c, Role.PRODUCT, "together with others, what each batch was"));
        sheet.keys.put(Role.PRODUCT, together);
        sheet.notes.add("The product is the combination of " + together.header + ".");
        return;
      }
      best = above.isEmpty() ? best : above.get(0);
    }
    if (candidates.size() == 1) {
      sheet.set(best, Role.PRODUCT, "the only other column that repeats");
    } else {
      sheet.set(best, Role.PRODUCT, "the column that repeats with the most levels");
      String chosen = best.name();
      String others =
          candidates.stream()
              .map(Column::name)
              .filter(n -> !n.equals(chosen))
              .collect(Collectors.joining(", "));
      sheet.questions.add(
          "Is \""
              + best.name()
              + "\" the product? It was read so; "
              + others
              + " is taken as a circumstance. Say --product NAME if not.");
    }
  }

  /** "mead_id" beside names of people: numbers of what was rated. */
  private void takeIdAsProduct() {
    sheet.open().stream()
        .filter(c -> Vocabulary.tokens(c.header).contains("id") && c.isRepeated() && c.whole)
        .findFirst()
        .ifPresent(
            c -> sheet.set(c, Role.PRODUCT, "repeated identifiers; people are named elsewhere"));
  }

  private static long productWords(Column column) {
    return column.levels.keySet().stream().filter(Vocabulary::isProduct).count();
  }

  private static Column largest(List<Column> candidates) {
    return candidates.stream().max(Comparator.comparingInt(c -> c.levels.size())).orElseThrow();
  }
}
