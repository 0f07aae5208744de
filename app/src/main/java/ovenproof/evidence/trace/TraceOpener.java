package ovenproof.evidence.trace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import ovenproof.core.trace.LogSource;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TraceFile;
import ovenproof.core.trace.TraceReader;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Opens a logger's file, text or workbook. */
public final class TraceOpener {

  /** Larger files are refused before they are read. */
  public static final long LARGEST_BYTES = 1L << 34;

  private static final long LARGEST_WORKBOOK_BYTES = 300L << 20;

  /** Eight for the number, as many while a column is brought to its unit, and room for measures. */
  private static final long BYTES_PER_NUMBER = 24;

  /** A line as text, its cells, and what becomes of them. */
  private static final long BYTES_PER_TEXT_BYTE = 12;

  private TraceOpener() {}

  /**
   * @throws InputException when there is no such file or it is too large
   * @throws OutsideException when the disk fails
   */
  public static TraceFile open(Path file, ReadOptions options) {
    if (!Files.isRegularFile(file)) {
      String found = Files.isDirectory(file) ? "a folder" : "no such file";
      throw problem(file, found, "a logger's file", "check the path");
    }
    try (FileSource source = new FileSource(file)) {
      if (source.size() > LARGEST_BYTES) {
        String most = "at most " + (LARGEST_BYTES >> 20) + " MB";
        throw problem(file, (source.size() >> 20) + " MB", most, "split it");
      }
      return read(source, fitting(options));
    } catch (UncheckedIOException e) {
      IOException cause = e.getCause();
      throw failed(file, cause == null ? new IOException(e) : cause);
    } catch (IOException e) {
      throw failed(file, e);
    }
  }

  private static OutsideException failed(Path file, IOException e) {
    return new OutsideException("Could not read " + file + ": " + e.getMessage(), e);
  }

  /** No more numbers than fit into this process beside what is made of them. */
  private static ReadOptions fitting(ReadOptions options) {
    long memory = Runtime.getRuntime().maxMemory();
    return options
        .withMaximumNumbers(Math.min(memory / BYTES_PER_NUMBER, options.maximumNumbers()))
        .withMaximumTextBytes(
            (int) Math.min(memory / BYTES_PER_TEXT_BYTE, options.maximumTextBytes()));
  }

  private static InputException problem(Path file, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(file.toString()), found, expected, remedy));
  }

  /** Reads bytes that are already here; a workbook is known by its first bytes. */
  public static TraceFile read(byte[] bytes, ReadOptions options) {
    return read(LogSource.of(bytes), options);
  }

  private static TraceFile read(LogSource source, ReadOptions options) {
    byte[] first = source.bytes(0, (int) Math.min(source.size(), 9));
    boolean zip = first.length > 4 && first[0] == 'P' && first[1] == 'K' && first[2] == 3;
    if (zip) {
      return source.size() > LARGEST_WORKBOOK_BYTES
          ? TraceReader.unreadable(
              "XLSX",
              "The workbook is larger than "
                  + (LARGEST_WORKBOOK_BYTES >> 20)
                  + " MB. Save the sheet as CSV and open that.")
          : Workbook.read(source.bytes(0, (int) source.size()), options);
    }
    boolean oldWorkbook =
        first.length > 8 && (first[0] & 0xFF) == 0xD0 && (first[1] & 0xFF) == 0xCF;
    if (oldWorkbook) {
      return TraceReader.unreadable(
          "XLS", "This is a workbook of the old kind (XLS). Save it as XLSX or CSV and open that.");
    }
    return TraceReader.with(options).read(source);
  }
}
