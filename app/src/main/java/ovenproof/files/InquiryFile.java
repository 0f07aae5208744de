package ovenproof.files;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.InquiryStep;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problems;

/**
 * {@code inquiries.csv} of a campaign folder: one row a step. Several sentences or runs stand in
 * one cell, one a line.
 */
public final class InquiryFile {
  public static final String NAME = "inquiries.csv";
  private static final List<String> COLUMNS =
      List.of(
          "inquiry",
          "step",
          "at",
          "by",
          "from",
          "product",
          "sentences",
          "runs",
          "deadline",
          "words",
          "outcome",
          "edition");

  private InquiryFile() {}

  /** The steps as CSV text. */
  public static String text(List<InquiryStep> steps) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      csv.writeRecord(COLUMNS);
      for (InquiryStep step : steps) {
        csv.writeRecord(
            step.inquiry(),
            step.kind().word(),
            step.at().toString(),
            step.by(),
            step.from() == null ? "" : step.from().word(),
            step.product() == null ? "" : step.product(),
            String.join("\n", step.sentences()),
            String.join("\n", step.runs()),
            step.deadline() == null ? "" : step.deadline().toString(),
            step.words(),
            step.outcome() == null ? "" : step.outcome().word(),
            step.edition() == null ? "" : step.edition().toString());
      }
    } catch (IOException impossible) {
      throw new java.io.UncheckedIOException("text in memory cannot fail", impossible);
    }
    return text.toString();
  }

  /**
   * Reads the file of a folder; empty when there is none.
   *
   * @throws ovenproof.input.InputException with every row that cannot be read
   */
  public static List<InquiryStep> read(Path folder) {
    Path file = folder.resolve(NAME);
    if (!Files.isRegularFile(file)) {
      return List.of();
    }
    Problems problems = new Problems();
    List<InquiryStep> steps = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(file)) {
      for (NamedCsvRecord row : rows) {
        try {
          steps.add(step(row));
        } catch (DateTimeException
            | IllegalArgumentException
            | java.util.NoSuchElementException e) {
          problems.error(
              new Place(NAME, (int) row.getStartingLineNumber(), 0),
              String.valueOf(e.getMessage()),
              "one step of an inquiry",
              "columns: " + String.join(", ", COLUMNS));
        }
      }
    } catch (de.siegmar.fastcsv.reader.CsvParseException e) {
      problems.error(Place.of(NAME), "no CSV that can be read", "a CSV table in UTF-8", "");
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
    problems.throwIfErrors();
    return steps;
  }

  private static InquiryStep step(NamedCsvRecord row) {
    return new InquiryStep(
        need(row, "inquiry"),
        InquiryStep.Kind.valueOf(need(row, "step").toUpperCase(Locale.ROOT)),
        Instant.parse(need(row, "at")),
        need(row, "by"),
        word(row, "from") == null
            ? null
            : InquiryStep.From.valueOf(need(row, "from").toUpperCase(Locale.ROOT)),
        word(row, "product"),
        lines(row, "sentences"),
        lines(row, "runs"),
        word(row, "deadline") == null ? null : LocalDate.parse(need(row, "deadline")),
        row.getField("words"),
        word(row, "outcome") == null
            ? null
            : InquiryStep.Outcome.valueOf(need(row, "outcome").toUpperCase(Locale.ROOT)),
        word(row, "edition") == null ? null : Integer.valueOf(need(row, "edition")));
  }

  private static String need(NamedCsvRecord row, String column) {
    String text = row.getField(column).strip();
    if (text.isEmpty()) {
      throw new IllegalArgumentException("nothing in column " + column);
    }
    return text;
  }

  private static @Nullable String word(NamedCsvRecord row, String column) {
    String text = row.getField(column).strip();
    return text.isEmpty() ? null : text;
  }

  private static List<String> lines(NamedCsvRecord row, String column) {
    return row.getField(column).lines().map(String::strip).filter(s -> !s.isEmpty()).toList();
  }
}
