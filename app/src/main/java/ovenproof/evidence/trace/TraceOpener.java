package ovenproof.evidence.trace;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
  public static final long LARGEST_BYTES = 1L << 30;

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
    try {
      long size = Files.size(file);
      long memory = Runtime.getRuntime().maxMemory();
      if (size > LARGEST_BYTES || size * 4 > memory) {
        long most = Math.min(LARGEST_BYTES, memory / 4) >> 20;
        throw problem(file, (size >> 20) + " MB", "at most " + most + " MB", "split it");
      }
      return read(Files.readAllBytes(file), options);
    } catch (IOException e) {
      throw new OutsideException("Could not read " + file + ": " + e.getMessage(), e);
    }
  }

  private static InputException problem(Path file, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(file.toString()), found, expected, remedy));
  }

  /** Reads bytes that are already here; a workbook is known by its first bytes. */
  public static TraceFile read(byte[] bytes, ReadOptions options) {
    boolean zip = bytes.length > 4 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3;
    if (zip) {
      return Workbook.read(new ByteArrayInputStream(bytes), options);
    }
    boolean oldWorkbook =
        bytes.length > 8 && (bytes[0] & 0xFF) == 0xD0 && (bytes[1] & 0xFF) == 0xCF;
    if (oldWorkbook) {
      return TraceReader.unreadable(
          "XLS", "This is a workbook of the old kind (XLS). Save it as XLSX or CSV and open that.");
    }
    return TraceReader.with(options).read(bytes);
  }
}
