package ovenproof.evidence.ratings;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import ovenproof.core.panel.table.Sheet;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Opens a rating table and gives its cells. */
public final class RatingFile {

  /** Larger files are refused before they are read. */
  static final long MOST_BYTES = 200L << 20;

  private RatingFile() {}

  /**
   * The sheets of a file: one for text, all visible ones for a workbook.
   *
   * @throws InputException if the file is no table that can be opened
   * @throws OutsideException if it cannot be read
   */
  public static List<Sheet> read(Path file) {
    try {
      if (Files.isRegularFile(file) && Files.size(file) > MOST_BYTES) {
        throw problem(file, "a file of more than 200 MB", "a rating table", "split it");
      }
      return read(file.toString(), Files.readAllBytes(file));
    } catch (NoSuchFileException e) {
      throw problem(file, "no such file", "a rating table", "check the name");
    } catch (IOException e) {
      throw new OutsideException("Reading " + file + " failed: " + e.getMessage(), e);
    }
  }

  /** As {@link #read(Path)}, for bytes already here; {@code name} appears in messages only. */
  public static List<Sheet> read(String name, byte[] bytes) {
    Path file = Path.of(name);
    if (bytes.length == 0) {
      throw problem(file, "an empty file", "a rating table", "");
    }
    if (startsWith(bytes, 'P', 'K')) {
      return Workbook.read(name, new ByteArrayInputStream(bytes));
    }
    if (startsWith(bytes, 0xD0, 0xCF)) {
      throw problem(file, "an old workbook (.xls)", "CSV or .xlsx", "save it as .xlsx or CSV");
    }
    if (startsWith(bytes, '%', 'P')) {
      throw problem(file, "a PDF", "CSV or .xlsx", "copy the table into a spreadsheet");
    }
    return List.of(TextTable.read(name, bytes));
  }

  private static boolean startsWith(byte[] bytes, int first, int second) {
    return bytes.length > 1 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  static InputException problem(Path file, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(file.toString()), found, expected, remedy));
  }
}
