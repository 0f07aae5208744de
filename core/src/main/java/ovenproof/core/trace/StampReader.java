package ovenproof.core.trace;

import ovenproof.core.trace.RawTable.StampColumn;

/**
 * Reads the stamps of one column fast: neighbouring stamps mostly differ in the digits of the clock
 * alone, so everything else is compared and the date is kept. Not for use by two threads.
 */
final class StampReader {

  private final StampColumn column;
  private final TimeText text = new TimeText();

  private byte[] known = new byte[0];
  private int knownLength;
  private int hourAt = -1;
  private double dateSeconds;
  private double last;

  StampReader(StampColumn column) {
    this.column = column;
  }

  /** Seconds of a stamp: since 1970, of the day, or elapsed; NaN when the text is no stamp. */
  double seconds(byte[] b, int from, int to) {
    if (hourAt >= 0 && to - from == knownLength) {
      double quick = sameDay(b, from);
      if (quick >= 0) {
        return quick;
      }
    }
    TimeText.Kind kind = text.parse(b, from, to);
    return kind == TimeText.Kind.NONE ? Double.NaN : full(b, from, to, kind);
  }

  /**
   * How long the stamp is that begins at a place and differs from the last one in the digits of its
   * clock alone; 0 when none does. {@link #last} then says its seconds.
   *
   * @param limit index that must not be reached
   */
  int sameLength(byte[] b, int from, int limit) {
    if (hourAt < 0 || from + knownLength >= limit) {
      return 0;
    }
    last = sameDay(b, from);
    return last >= 0 ? knownLength : 0;
  }

  double last() {
    return last;
  }

  private double full(byte[] b, int from, int to, TimeText.Kind kind) {
    boolean wanted = kind == column.kind();
    boolean clockAsDuration =
        column.kind() == TimeText.Kind.DURATION && kind == TimeText.Kind.CLOCK;
    boolean dateForBoth =
        column.kind() == TimeText.Kind.DATE_AND_CLOCK && kind == TimeText.Kind.DATE;
    if (!wanted && !clockAsDuration && !dateForBoth) {
      return Double.NaN;
    }
    if (column.kind() == TimeText.Kind.DURATION || text.clockParts == 0) {
      return column.kind() == TimeText.Kind.DURATION
          ? text.durationSeconds
          : text.epochDay(column.order()) * 86_400.0;
    }
    double date = 0;
    if (kind == TimeText.Kind.DATE_AND_CLOCK) {
      date = text.epochDay(column.order()) * 86_400.0 - text.zoneMinutes * 60.0;
    }
    learn(b, from, to, date);
    return date + text.clockSeconds;
  }

  /** Only hh:mm:ss with two digits each, without AM and PM, is learned. */
  private void learn(byte[] b, int from, int to, double date) {
    int at = text.clockStart - from;
    boolean plain =
        text.clockParts == 3
            && !text.halfDay
            && text.clockStart > 0
            && to - text.clockStart >= 8
            && b[text.clockStart + 2] == ':'
            && b[text.clockStart + 5] == ':'
            && text.clockEnd >= text.clockStart + 8;
    hourAt = plain ? at : -1;
    dateSeconds = date;
    knownLength = to - from;
    if (plain) {
      known = java.util.Arrays.copyOfRange(b, from, to);
      fractionAt = text.clockEnd - text.clockStart > 8 ? at + 9 : -1;
      fractionEnd = text.clockEnd - from;
    }
  }

  private int fractionAt = -1;
  private int fractionEnd;

  private double sameDay(byte[] b, int from) {
    for (int i = 0; i < hourAt; i++) {
      if (b[from + i] != known[i]) {
        return -1;
      }
    }
    int after = fractionAt > 0 ? fractionEnd : hourAt + 8;
    for (int i = after; i < knownLength; i++) {
      if (b[from + i] != known[i]) {
        return -1;
      }
    }
    int h = from + hourAt;
    int hours = pair(b, h);
    int minutes = pair(b, h + 3);
    int seconds = pair(b, h + 6);
    if ((hours | minutes | seconds) < 0 || b[h + 2] != ':' || b[h + 5] != ':') {
      return -1;
    }
    if (hours > 23 || minutes > 59 || seconds > 60) {
      return -1;
    }
    double whole = dateSeconds + hours * 3600 + minutes * 60 + seconds;
    return fractionAt < 0 ? whole : fraction(b, from, whole);
  }

  private double fraction(byte[] b, int from, double whole) {
    if (b[from + fractionAt - 1] != known[fractionAt - 1]) {
      return -1;
    }
    long value = 0;
    long scale = 1;
    for (int i = from + fractionAt; i < from + fractionEnd; i++) {
      int d = b[i] - '0';
      if (d < 0 || d > 9) {
        return -1;
      }
      value = value * 10 + d;
      scale *= 10;
    }
    return whole + (double) value / scale;
  }

  private static int pair(byte[] b, int at) {
    int tens = b[at] - '0';
    int ones = b[at + 1] - '0';
    return tens < 0 || tens > 9 || ones < 0 || ones > 9 ? -1 : tens * 10 + ones;
  }
}
