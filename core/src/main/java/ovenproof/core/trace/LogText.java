package ovenproof.core.trace;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The bytes of a log as text: encoding found, UTF-16 turned into UTF-8, everything else left where
 * it is and fetched when it is looked at.
 *
 * @param source text in {@code charset}, which agrees with ASCII below 128
 * @param from after a byte order mark
 * @param to before trailing NUL bytes and blanks
 * @param charset UTF-8 or Windows-1252
 * @param encoding name for a person
 * @param lineEnd byte that ends a line
 * @param problem null when this is text
 */
record LogText(
    LogSource source,
    long from,
    long to,
    Charset charset,
    String encoding,
    byte lineEnd,
    @Nullable String problem) {

  private static final int LOOKED_AT = 1 << 20;
  private static final int LONGEST_LINE = 1 << 20;

  /** A window in which an end is looked for. */
  private static final int WINDOW_BYTES = 1 << 16;

  /**
   * @param maximumRewrittenBytes size of a file in another encoding, which is rewritten in memory
   */
  static LogText of(LogSource source, int maximumRewrittenBytes) {
    byte[] bytes = source.bytes(0, (int) Math.min(source.size(), LOOKED_AT + 1));
    if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
      return wide(
          source, maximumRewrittenBytes, 2, StandardCharsets.UTF_16LE, "UTF-16 (little endian)");
    }
    if (bytes.length >= 2 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
      return wide(
          source, maximumRewrittenBytes, 2, StandardCharsets.UTF_16BE, "UTF-16 (big endian)");
    }
    int[] zeros = zeros(bytes);
    int looked = Math.min(bytes.length, 4096) / 2;
    if (looked > 8 && zeros[1] > 0.7 * looked && zeros[0] < 0.1 * looked) {
      return wide(
          source,
          maximumRewrittenBytes,
          0,
          StandardCharsets.UTF_16LE,
          "UTF-16 (little endian, no mark)");
    }
    if (looked > 8 && zeros[0] > 0.7 * looked && zeros[1] < 0.1 * looked) {
      return wide(
          source,
          maximumRewrittenBytes,
          0,
          StandardCharsets.UTF_16BE,
          "UTF-16 (big endian, no mark)");
    }
    return narrow(source, maximumRewrittenBytes, bytes);
  }

  /** How many of the first bytes are zero at even and at odd places. */
  private static int[] zeros(byte[] bytes) {
    int[] zeros = new int[2];
    for (int i = 0; i < Math.min(bytes.length, 4096); i++) {
      zeros[i % 2] += bytes[i] == 0 ? 1 : 0;
    }
    return zeros;
  }

  /** Text that has to be written anew is read as a whole; more than an array holds is refused. */
  private static LogText wide(
      LogSource source, int maximumBytes, int skip, Charset charset, String encoding) {
    if (source.size() > maximumBytes) {
      String problem =
          "The file is larger than "
              + (maximumBytes >> 20)
              + " MB and written in "
              + encoding
              + ". Split it, or save it as UTF-8.";
      return new LogText(source, 0, 0, charset, encoding, (byte) '\n', problem);
    }
    byte[] bytes = source.bytes(0, (int) source.size());
    byte[] utf8 =
        new String(bytes, skip, bytes.length - skip, charset).getBytes(StandardCharsets.UTF_8);
    return finish(LogSource.of(utf8), utf8, 0, StandardCharsets.UTF_8, encoding);
  }

  /**
   * Bytes that agree with ASCII below 128.
   *
   * @param bytes the first ones
   */
  private static LogText narrow(LogSource source, int maximumRewrittenBytes, byte[] bytes) {
    boolean mark =
        bytes.length >= 3
            && (bytes[0] & 0xFF) == 0xEF
            && (bytes[1] & 0xFF) == 0xBB
            && (bytes[2] & 0xFF) == 0xBF;
    boolean ascii = isAscii(bytes);
    if (ascii || isUtf8(bytes)) {
      String name = mark ? "UTF-8 with mark" : ascii ? "ASCII" : "UTF-8";
      return finish(source, bytes, mark ? 3 : 0, StandardCharsets.UTF_8, name);
    }
    for (String name : List.of("windows-31j", "GBK", "windows-1251")) {
      if (Charset.isSupported(name) && speaks(bytes, Charset.forName(name))) {
        return wide(source, maximumRewrittenBytes, 0, Charset.forName(name), name);
      }
    }
    return finish(source, bytes, 0, Charset.forName("windows-1252"), "Latin-1 (Windows-1252)");
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
    int length = Math.min(bytes.length, LOOKED_AT);
    return EightBytes.firstAbove127(bytes, 0, length) == length;
  }

  /** Every character above 127 is looked at by itself; what lies between is passed over. */
  private static boolean isUtf8(byte[] bytes) {
    int length = Math.min(bytes.length, LOOKED_AT);
    while (length > 0 && length < bytes.length && (bytes[length] & 0xC0) == 0x80) {
      length--; // never cut a character in two
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT);
    int i = EightBytes.firstAbove127(bytes, 0, length);
    while (i < length) {
      int end = i + 1;
      while (end < length && bytes[end] < 0) {
        end++;
      }
      if (!decodes(decoder, bytes, i, end)) {
        return false;
      }
      i = EightBytes.firstAbove127(bytes, end, length);
    }
    return true;
  }

  private static boolean decodes(CharsetDecoder decoder, byte[] bytes, int from, int to) {
    try {
      decoder.decode(ByteBuffer.wrap(bytes, from, to - from));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static LogText finish(
      LogSource source, byte[] head, int mark, Charset charset, String encoding) {
    int from = mark;
    while (from < head.length && head[from] == 0) {
      from++; // what a logger reserved and did not use
    }
    from = from == head.length ? mark : from;
    long to = endOfText(source, from);
    int headEnd = (int) Math.min(to, head.length);
    String problem = problem(head, from, headEnd);
    byte lineEnd = lineEnd(head, from, headEnd);
    return new LogText(source, from, to, charset, encoding, lineEnd, problem);
  }

  /** A logger that lost its power leaves zeros; old systems end a text with 1A. */
  private static long endOfText(LogSource source, int from) {
    long to = source.size();
    while (to > from) {
      int length = (int) Math.min(WINDOW_BYTES, to - from);
      byte[] window = source.bytes(to - length, length);
      int i = length;
      while (i > 0 && (window[i - 1] == 0 || window[i - 1] == 0x1A)) {
        i--;
      }
      to -= length - i;
      if (i > 0) {
        return to;
      }
    }
    return to;
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
  record Line(String text, long offset, int number) {}

  /** Text of a part of bytes that were copied from this. */
  String text(byte[] bytes, int start, int end) {
    return new String(bytes, start, end - start, charset);
  }

  /** End of the line that starts at an offset: the place of its line end, or {@link #to}. */
  long lineEndAfter(long start) {
    byte[] window = new byte[WINDOW_BYTES];
    for (long at = start; at < to; at += WINDOW_BYTES) {
      int length = (int) Math.min(WINDOW_BYTES, to - at);
      source.copy(at, window, 0, length);
      int found = indexOfLineEnd(window, 0, length);
      if (found < length) {
        return at + found;
      }
    }
    return Math.max(start, to);
  }

  private int indexOfLineEnd(byte[] bytes, int start, int end) {
    int i = start;
    while (i < end && bytes[i] != lineEnd) {
      i++;
    }
    return i;
  }

  /** Up to {@code count} lines from an offset that starts a line; long ones are cut. */
  List<Line> lines(long start, int count, int maximumBytes) {
    List<Line> lines = new ArrayList<>();
    int length = (int) Math.max(0, Math.min(to - start, (long) maximumBytes + LONGEST_LINE));
    byte[] window = source.bytes(start, length);
    long i = 0;
    int number = 1;
    while (i < length && lines.size() < count && i < maximumBytes) {
      int at = (int) i;
      int found = indexOfLineEnd(window, at, length);
      int cut = Math.min(found, at + LONGEST_LINE);
      String text = text(window, at, cut);
      lines.add(
          new Line(
              text.endsWith("\r") ? text.substring(0, text.length() - 1) : text,
              start + at,
              number++));
      i = (found < length ? found : lineEndAfter(start + length) - start) + 1;
    }
    return lines;
  }

  /** The start of the first line at or after an offset. */
  long lineStartFrom(long offset) {
    return offset <= from ? from : Math.min(to, lineEndAfter(Math.min(to, offset) - 1) + 1);
  }
}
