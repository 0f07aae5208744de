package ovenproof.files;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problems;

/** Reads one table: comma or semicolon, header first, {@code #} comments, quotes where needed. */
final class CsvTable {
  private final Table table;
  private final String text;
  private final Problems problems;
  private final char separator;
  private final CellPlaces places;
  private boolean whole = true;

  CsvTable(Table table, String text, Problems problems) {
    this.table = table;
    this.text = text.replace("\r\n", "\n").replace('\r', '\n');
    this.problems = problems;
    this.separator = separator(this.text);
    this.places = new CellPlaces(table.file(), this.text, separator);
  }

  /** Semicolon if the header has more of them than commas. */
  static char separator(String text) {
    String header =
        text.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).findFirst().orElse("");
    long commas = header.chars().filter(c -> c == ',').count();
    long semicolons = header.chars().filter(c -> c == ';').count();
    return semicolons > commas ? ';' : ',';
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    List<String> header = null;
    long lastLine = 1;
    try (CsvReader<CsvRecord> reader = reader()) {
      for (Iterator<CsvRecord> records = reader.iterator(); records.hasNext(); ) {
        CsvRecord record = records.next();
        lastLine = record.getStartingLineNumber();
        if (record.getFields().stream().allMatch(String::isBlank)) {
          continue;
        }
        if (header == null) {
          header = header(record);
        } else {
          rows.add(row(header, record));
        }
      }
    } catch (CsvParseException broken) {
      whole = false;
      problems.error(
          new Place(table.file(), (int) lastLine, 0),
          "cells that cannot be told apart at or after this line",
          "a closing quote for every opening one",
          "write \"\" for a quote inside a quoted cell");
    } catch (java.io.IOException impossible) {
      throw new java.io.UncheckedIOException(impossible);
    }
    return rows;
  }

  private CsvReader<CsvRecord> reader() {
    return CsvReader.builder()
        .fieldSeparator(separator)
        .commentStrategy(CommentStrategy.SKIP)
        .skipEmptyLines(true)
        .allowExtraFields(true)
        .allowMissingFields(true)
        .allowExtraCharsAfterClosingQuote(false)
        .allowUnclosedQuote(false)
        .ofCsvRecord(text);
  }

  private List<String> header(CsvRecord record) {
    List<String> header = record.getFields().stream().map(String::strip).toList();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < header.size(); i++) {
      checkName(header.get(i), seen, record.getStartingLineNumber(), i);
    }
    for (Column column : table.columns()) {
      boolean missing = column.need() == Column.Need.REQUIRED && !header.contains(column.name());
      whole &= !missing;
      if (missing && !isMisspelt(column.name(), header)) {
        problems.error(
            new Place(table.file(), (int) record.getStartingLineNumber(), 0),
            "no column \"" + column.name() + "\"",
            "the columns " + String.join(", ", required()),
            "add it to the header row");
      }
    }
    return header;
  }

  /** Whether an unknown column, reported as such, was probably meant to be this one. */
  private boolean isMisspelt(String name, List<String> header) {
    return header.stream()
        .filter(h -> table.column(h).isEmpty())
        .anyMatch(h -> NearestWord.to(h, table.columnNames()).filter(name::equals).isPresent());
  }

  /** Whether every row could be read, with the columns that it needs. */
  boolean isWhole() {
    return whole;
  }

  private void checkName(String name, Set<String> seen, long line, int index) {
    if (table.column(name).isEmpty() && !name.isEmpty()) {
      problems.error(
          places.of(line, index),
          "the column \"" + name + "\"",
          "one of " + String.join(", ", table.columnNames()),
          NearestWord.remedy(name, table.columnNames()));
    } else if (!name.isEmpty() && !seen.add(name)) {
      problems.error(
          places.of(line, index), "the column \"" + name + "\" twice", "each column once", "");
    }
  }

  private List<String> required() {
    return table.columns().stream()
        .filter(c -> c.need() == Column.Need.REQUIRED)
        .map(Column::name)
        .toList();
  }

  private Row row(List<String> header, CsvRecord record) {
    List<String> cells = record.getFields();
    long line = record.getStartingLineNumber();
    for (int i = header.size(); i < cells.size(); i++) {
      if (!cells.get(i).isBlank()) {
        problems.error(
            places.of(line, i),
            "a cell without a column: \"" + cells.get(i).strip() + "\"",
            header.size() + " cells, as in the header",
            "put quotes around a cell that contains \"" + separator + "\"");
      }
    }
    for (int i = 0; i < Math.min(header.size(), cells.size()); i++) {
      if (header.get(i).isEmpty() && !cells.get(i).isBlank()) {
        problems.error(
            places.of(line, i), "a cell under an empty header", "a column name in the header", "");
      }
    }
    return new Row(table, header, cells, line, places, problems);
  }
}
