package ovenproof.publish.footage;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.QuantityFormatException;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Problems;

/**
 * The list of clips: CSV with the columns {@code clip}, {@code starts} (by the camera's clock, in
 * the campaign's zone unless it names its own), {@code length}, and {@code clock_offset}, which is
 * added to the camera's clock to get the bench's. Lengths and offsets as {@code 12 min 30 s} or
 * {@code 12:30}. Separated by commas, semicolons or tabs.
 */
public final class ClipList {

  private static final String HEADER = "clip,starts,length,clock_offset";

  private ClipList() {}

  /**
   * Reads a list.
   *
   * @param file its name, for messages
   * @throws InputException with everything that is wrong
   */
  public static List<ClipMarkers.Clip> parse(String file, String text, ZoneId zone) {
    Problems problems = new Problems();
    List<ClipMarkers.Clip> clips = new ArrayList<>();
    try (CsvReader<NamedCsvRecord> reader =
        CsvReader.builder()
            .fieldSeparator(separator(text))
            .ofNamedCsvRecord(text.replace("\ufeff", ""))) {
      for (NamedCsvRecord row : reader) {
        clip(new Place(file, (int) row.getStartingLineNumber(), 0), row, zone, problems)
            .ifPresent(clips::add);
      }
    } catch (CsvParseException | java.io.IOException e) {
      throw new InputException(
          Problem.error(Place.of(file), "no CSV that can be read", HEADER, ""));
    }
    if (clips.isEmpty()) {
      problems.error(Place.of(file), "no clip", "a header and a line for each clip: " + HEADER, "");
    }
    problems.throwIfErrors();
    return clips;
  }

  /** What the header is separated by. */
  private static char separator(String text) {
    String header = text.lines().findFirst().orElse("");
    return header.contains("\t") ? '\t' : header.contains(";") ? ';' : ',';
  }

  private static Optional<ClipMarkers.Clip> clip(
      Place place, NamedCsvRecord row, ZoneId zone, Problems problems) {
    String name = row.findField("clip").orElse("").strip();
    String starts = row.findField("starts").orElse("").strip();
    String length = row.findField("length").orElse("").strip();
    String offset = row.findField("clock_offset").orElse("").strip();
    if (name.isEmpty()) {
      problems.error(place, "no name", "the clip's file in the column clip", "");
      return Optional.empty();
    }
    try {
      return Optional.of(
          new ClipMarkers.Clip(
              name, moment(starts, zone), seconds(length), offset.isEmpty() ? 0 : seconds(offset)));
    } catch (DateTimeException e) {
      problems.error(place, '"' + starts + '"', "a moment such as 2026-03-04T10:12:30", "");
    } catch (QuantityFormatException e) {
      String found = "length \"" + length + "\", clock_offset \"" + offset + '"';
      problems.error(place, found, "times such as 12 min 30 s, 12:30 and -2.5 s", "");
    }
    return Optional.empty();
  }

  private static Instant moment(String written, ZoneId zone) {
    String text = written.replaceFirst("(?<=\\d) (?=\\d)", "T");
    boolean zoned = text.matches(".*(?:Z|[+-]\\d\\d:?\\d\\d)");
    return zoned
        ? OffsetDateTime.parse(text).toInstant()
        : LocalDateTime.parse(text).atZone(zone).toInstant();
  }

  private static double seconds(String text) {
    String plain = text.replace('−', '-');
    boolean minus = plain.startsWith("-");
    String size = plain.replaceFirst("^[+-]", "");
    Optional<Double> clock = Timecode.parse(size);
    double value =
        clock.isPresent() ? clock.get() : QuantityParser.parse(size, Dimension.TIME).contract();
    return minus ? -value : value;
  }
}
