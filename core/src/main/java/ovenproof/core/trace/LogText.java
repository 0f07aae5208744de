package ovenproof.core.trace;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The bytes of a log as text: encoding found, UTF-16 turned into UTF-8, everything else left where
 * it is.
 *
 * @param bytes text in {@code charset}, which agrees with ASCII below 128
 * @param from after a byte order mark
 * @param to before trailing NUL bytes and blanks
 * @param charset UTF-8 or Windows-1252
 * @param encoding name for a person
 * @param lineEnd byte that ends a line
 * @param problem null when this is text
 */
record LogText(
    byte[] bytes,
    int from,
    int to,
    Charset charset,
    String encoding,
    byte lineEnd,
    @Nullable String problem) {

  private static final int LOOKED_AT = 1 << 20;
  private static final int LONGEST_LINE = 1 << 20;

  static LogText of(byte[] bytes) {
    if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
      return wide(bytes, 2, StandardCharsets.UTF_16LE, "UTF-16 (little endian)");
    }
    if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
      return wide(bytes, 2, StandardCharsets.UTF_16BE, "UTF-16 (big endian)");
    }
    int[] zeros = zeros(bytes);
    int looked = Math.min(bytes.length, 4096) / 2;
    if (looked > 8 && zeros[1] > 0.7 * looked && zeros[0] < 0.1 * looked) {
      return wide(bytes, 0, StandardCharsets.UTF_16LE, "UTF-16 (little endian, no mark)");
    }
    if (looked > 8 && zeros[0] > 0.7 * looked && zeros[1] < 0.1 * looked) {
      return wide(bytes, 0, StandardCharsets.UTF_16BE, "UTF-16 (big endian, no mark)");
    }
    return narrow(bytes);
  }

  /** How many of the first bytes are zero at even and at odd places. */
  private static int[] zeros(byte[] bytes) {
    int[] zeros = new int[2];
    for (int i = 0; i < Math.min(bytes.length, 4096); i++) {
      zeros[i % 2] += bytes[i] == 0 ? 1 : 0;
    }
    return zeros;
  }

  private static LogText wide(byte[] bytes, int skip, Charset charset, String encoding) {
    byte[] utf8 =
        new String(bytes, skip, bytes.length - skip, charset).getBytes(StandardCharsets.UTF_8);
    return finish(utf8, 0, StandardCharsets.UTF_8, encoding);
  }

  private static LogText narrow(byte[] bytes) {
    boolean mark =
        bytes.length >= 3
            && (bytes[0] & 0xFF) == 0xEF
            && (bytes[1] & 0xFF) == 0xBB
            && (bytes[2] & 0xFF) == 0xBF;
    boolean ascii = isAscii(bytes);
    if (ascii || isUtf8(bytes)) {
      String name = mark ? "UTF-8 with mark" : ascii ? "ASCII" : "UTF-8";
      return finish(bytes, mark ? 3 : 0, StandardCharsets.UTF_8, name);
    }
    for (String name : List.of("windows-31j", "GBK", "windows-1251")) {
      if (Charset.isSupported(name) && speaks(bytes, Charset.forName(name))) {
        return wide(bytes, 0, Charset.forName(name), name);
      }
    }
    return finish(bytes, 0, Charset.forName("windows-1252"), "Latin-1 (Windows-1252)");
  }

  /** Words of a header that only the right encoding gives. */
  private static final Pattern HEADER_WORDS =
      Pattern.compile("温度|日時|時刻|時間|日付|电压|电流|功率|时间|日期|湿度|電力|電圧|℃|[Вв]ремя|[Тт]емпература|[Дд]ата");

  private static boolean speaks(byte[] bytes, Charset charset) {
    int length = Math.min(bytes.length, 8192);
    while (length > 0 && length < bytes.length && bytes[length - 1] != '\n') {
      length--;
    }
    try {
      CharBuffer text =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes, 0, length));
      return HEADER_WORDS.matcher(text).find();
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static boolean isAscii(byte[] bytes) {
    for (int i = 0; i < Math.min(bytes.length, LOOKED_AT); i++) {
      if (bytes[i] < 0) {
        return false;
      }
    }
    return true;
  }

  private static boolean isUtf8(byte[] bytes) {
    int length = Math.min(bytes.length, LOOKED_AT);
    while (length > 0 && length < bytes.length && (bytes[length] & 0xC0) == 0x80) {
      length--; // never cut a character in two
    }
    try {
      StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(bytes, 0, length));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static LogText finish(byte[] bytes, int from, Charset charset, String encoding) {
    int to = bytes.length;
    while (to > from && (bytes[to - 1] == 0 || bytes[to - 1] == 0x1A)) {
      to--; // a logger that lost its power leaves zeros; old systems end a text with 1A
    }
    String problem = problem(bytes, from, to);
    return new LogText(bytes, from, to, charset, encoding, lineEnd(bytes, from, to), problem);
  }

  private static @Nullable String problem(byte[] bytes, int from, int to) {
    if (to == from) {
      return "The file is empty. Expected a log with at least two rows of numbers.";
    }
    String known = ForeignFile.problem(bytes, from, to);
    if (known != null) {
      return known;
    }
    int controls = 0;
    int looked = Math.min(to - from, 65_536);
    for (int i = from; i < from + looked; i++) {
      byte b = bytes[i];
      controls +=
          b >= 0 && b < 32 && b != '\t' && b != '\n' && b != '\r' && b != 0x0C && b != 0x1B ? 1 : 0;
    }
    if (controls > 0.05 * looked) {
      return "The file holds binary data, not text. Export the log as CSV, text or XLSX from the"
          + " logger's program and open that.";
    }
    return null;
  }

  private static byte lineEnd(byte[] bytes, int from, int to) {
    for (int i = from; i < Math.min(to, from + LOOKED_AT); i++) {
      if (bytes[i] == '\n') {
        return '\n';
      }
    }
    for (int i = from; i < Math.min(to, from + LOOKED_AT); i++) {
      if (bytes[i] == '\r') {
        return '\r';
      }
    }
    return '\n';
  }

  /** A line with its place. */
  record Line(String text, int offset, int number) {}

  /** Text of the bytes between two offsets. */
  String text(int start, int end) {
    CharBuffer chars = charset.decode(ByteBuffer.wrap(bytes, start, end - start));
    return chars.toString();
  }

  /** End of the line that starts at an offset: the index of its line end, or {@link #to}. */
  int lineEndAfter(int start) {
    int i = start;
    while (i < to && bytes[i] != lineEnd) {
      i++;
    }
    return i;
  }

  /** Up to {@code count} lines from an offset that starts a line; long ones are cut. */
  List<Line> lines(int start, int count, int maximumBytes) {
    List<Line> lines = new ArrayList<>();
    int i = start;
    int number = 1;
    while (i < to && lines.size() < count && i - start < maximumBytes) {
      int end = lineEndAfter(i);
      int cut = Math.min(end, i + LONGEST_LINE);
      String text = text(i, cut);
      lines.add(
          new Line(text.endsWith("\r") ? text.substring(0, text.length() - 1) : text, i, number++));
      i = end + 1;
    }
    return lines;
  }

  /** The start of the first line at or after an offset. */
  int lineStartFrom(int offset) {
    int i = Math.max(from, Math.min(to, offset));
    while (i > from && i < to && bytes[i - 1] != lineEnd) {
      i++;
    }
    return i;
  }
}
