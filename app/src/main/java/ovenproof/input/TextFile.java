package ovenproof.input;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * A text that a person or a program wrote, read as UTF-8 within limits: a file too long, or one
 * line without end, is refused after the limit and never held in memory.
 */
public final class TextFile {
  /** Longest text: documents and tables of a campaign stay far below. */
  public static final long LONGEST_BYTES = 64L << 20;

  /** Longest line in bytes. */
  public static final int LONGEST_LINE = 1 << 20;

  private static final int BLOCK = 1 << 16;

  private TextFile() {}

  /**
   * The text without byte order mark; empty when it was refused, which is reported.
   *
   * @param name the file as problems name it
   * @throws OutsideException if it cannot be read
   */
  public static Optional<String> read(InputStream in, String name, Problems problems) {
    try {
      Optional<byte[]> bytes = bytes(in, name, problems);
      return bytes.flatMap(b -> decode(b, name, problems));
    } catch (IOException failure) {
      throw new OutsideException(
          "could not read " + name + " (" + failure.getMessage() + "); check the disk", failure);
    }
  }

  private static Optional<byte[]> bytes(InputStream in, String name, Problems problems)
      throws IOException {
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    byte[] block = new byte[BLOCK];
    LineLengths lines = new LineLengths();
    for (int read = in.read(block); read >= 0; read = in.read(block)) {
      lines.add(block, read);
      if (lines.longest() > LONGEST_LINE) {
        problems.error(
            new Place(name, lines.longestLine(), 0),
            "a line longer than 1 MiB",
            "lines of ordinary length",
            "is this the file you meant, and not a picture or a binary log?");
        return Optional.empty();
      }
      whole.write(block, 0, read);
      if (whole.size() > LONGEST_BYTES) {
        problems.error(Place.of(name), "more than 64 MiB", "a file of up to 64 MiB", "split it");
        return Optional.empty();
      }
    }
    return Optional.of(whole.toByteArray());
  }

  private static Optional<String> decode(byte[] bytes, String name, Problems problems) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    String text = out.flip().toString();
    if (result.isError()) {
      problems.error(
          placeAtEnd(name, text),
          String.format("the byte 0x%02X", in.get(in.position())),
          "text in UTF-8",
          "save the file as UTF-8 (spreadsheets: \"CSV UTF-8\")");
      return Optional.empty();
    }
    return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
  }

  private static Place placeAtEnd(String name, String text) {
    int line = (int) text.chars().filter(c -> c == '\n').count() + 1;
    int column = text.length() - (text.lastIndexOf('\n') + 1) + 1;
    return new Place(name, line, column);
  }
}
