package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/**
 * Reads one stamp: a date, a time of day, both, or a duration, in the world's common forms. Keeps
 * the parts of the last stamp read; not for use by two threads.
 */
final class TimeText {

  /** What kind of stamp a text is. */
  enum Kind {
    NONE,
    DATE,
    CLOCK,
    DATE_AND_CLOCK,
    /** Contains whole days or is signed: cannot be a time of day. */
    DURATION
  }

  /** Beginnings of the months' names in the languages that loggers' computers speak. */
  private static final String[] MONTHS = {
    "jan,ene,gen,sty,tam,leden,ledn,янв,січ,oca,ιαν",
    "feb,fev,fév,lut,hel,únor,фев,лют,şub,φεβ",
    "mar,mär,maa,mrt,mrz,břez,мар,бер,már,μαρ",
    "apr,avr,abr,kwi,huh,dubn,duben,апр,кві,nisan,ápr,απρ",
    "may,mai,maj,mag,mei,tou,kvě,май,мая,тра,máj,μαϊ,μάι,mayıs",
    "jun,juin,giu,cze,kes,červn,июн,чер,hazi,jún,iun,ιουν",
    "jul,juil,lug,lip,hei,červe,июл,лип,temm,júl,iul,ιουλ",
    "aug,aou,aoû,ago,sie,elo,srp,авг,сер,ağu,αυγ",
    "sep,set,wrz,syy,zář,сен,вер,eylü,szep,σεπ",
    "oct,okt,out,ott,paz,paź,lok,říj,окт,жов,ekim,οκτ",
    "nov,lis,mar.,ноя,kası,νοε",
    "dec,dez,déc,dic,gru,jou,pros,дек,гру,aral,δεκ"
  };

  private static final String WEEKDAYS =
      ",mon,tue,wed,thu,fri,sat,sun,mo,di,mi,do,fr,sa,so,lun,mar,mer,jeu,ven,sam,dim,mié,jue,vie,"
          + "sáb,dom,monday,tuesday,wednesday,thursday,friday,saturday,sunday,montag,dienstag,"
          + "mittwoch,donnerstag,freitag,samstag,sonntag,";

  /** Words before or inside a date that say nothing: le 14 mars, 14 de marzo de 2026, kl. 9.30. */
  private static final java.util.Set<String> PREPOSITIONS =
      java.util.Set.of("le", "am", "den", "de", "del", "of", "kl", "à", "at", "um", "the", "el");

  /** Names of zones that say nothing sure about the offset: several zones share them. */
  private static final java.util.Set<String> ZONES =
      java.util.Set.of(
          "cet", "cest", "est", "edt", "cst", "cdt", "mst", "mdt", "pst", "pdt", "bst", "ist",
          "jst", "msk", "aest", "aedt", "eet", "eest", "wet", "west");

  private byte[] b = new byte[0];
  private int i;
  private int end;

  // Parts of the last stamp.
  int year;
  int month;
  int day;
  boolean orderOpen;
  boolean shortYear;
  boolean yearKnown;
  double clockSeconds;
  int clockParts;
  boolean fraction;
  boolean hasZone;
  int zoneMinutes;
  boolean halfDay;
  double durationSeconds;
  int clockStart;
  int clockEnd;

  static boolean isTime(Kind kind) {
    return kind != Kind.NONE;
  }

  Kind parse(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return parse(bytes, 0, bytes.length);
  }

  /** The kind of the stamp, {@link Kind#NONE} when the text is not wholly one. */
  Kind parse(byte[] bytes, int from, int to) {
    reset(bytes, from, to);
    if (end - i < 3 || end - i > 80) {
      return Kind.NONE;
    }
    boolean signed = peek() == '-' || peek() == '+';
    boolean negative = peek() == '-';
    if (signed) {
      i++;
    }
    Kind kind = skipDayZero() ? clock() : start();
    if (kind == Kind.NONE || !atEnd()) {
      return Kind.NONE;
    }
    if (signed) {
      if (kind != Kind.CLOCK && kind != Kind.DURATION) {
        return Kind.NONE;
      }
      durationSeconds = negative ? -durationSeconds : durationSeconds;
      return Kind.DURATION;
    }
    return kind;
  }

  private void reset(byte[] bytes, int from, int to) {
    b = bytes;
    i = from;
    end = to;
    orderOpen = false;
    shortYear = false;
    yearKnown = true;
    clockSeconds = 0;
    clockParts = 0;
    fraction = false;
    hasZone = false;
    zoneMinutes = 0;
    halfDay = false;
    durationSeconds = 0;
    clockStart = 0;
    clockEnd = 0;
    while (i < end && (b[i] == ' ' || b[i] == '[' || b[i] == '(' || b[i] == '"')) {
      i++;
    }
    while (end > i
        && (b[end - 1] == ' ' || b[end - 1] == ']' || b[end - 1] == ')' || b[end - 1] == '"')) {
      end--;
    }
  }

  /** What spreadsheets write before a clock without a date: the day they count from. */
  private static final String[] DAYS_ZERO = {
    "1899-12-30",
    "1899-12-31",
    "1900-01-00",
    "1900-01-01",
    "30.12.1899",
    "12/30/1899",
    "1/0/1900",
    "30/12/1899"
  };

  private boolean skipDayZero() {
    if (end - i < 13 || peek() != '1' && peek() != '3') {
      return false;
    }
    for (String day : DAYS_ZERO) {
      int k = 0;
      while (k < day.length() && at(i + k) == day.charAt(k)) {
        k++;
      }
      boolean clock = k == day.length() && (at(i + k) == ' ' || at(i + k) == 'T');
      if (clock && isDigit(at(i + k + 1))) {
        i += k + 1;
        return true;
      }
    }
    return false;
  }

  private Kind start() {
    if (peek() == 'P' && at(i + 1) == 'T' && isDigit(at(i + 2))) {
      i += 2;
      return spelledDuration();
    }
    if (isLetter(peek()) || peek() < 0 && !isIdeographHalfDay()) {
      String word = word();
      int asMonth = month(word);
      boolean weekday = WEEKDAYS.contains("," + word + ",");
      boolean preposition = PREPOSITIONS.contains(word);
      skip(" ,.");
      if (preposition) {
        return isDigit(peek()) ? digitsFirst() : Kind.NONE;
      }
      if (weekday && asMonth > 0) {
        return marchOrTuesday(asMonth);
      }
      if (weekday && (isDigit(peek()) || month(peekWord()) > 0)) {
        return isDigit(peek()) ? digitsFirst() : monthFirst(month(word()));
      }
      return asMonth > 0 ? monthFirst(asMonth) : Kind.NONE;
    }
    if (peek() < 0) {
      return clock();
    }
    return isDigit(peek()) ? digitsFirst() : Kind.NONE;
  }

  /** "mar" is March in many languages and Tuesday in some. */
  private Kind marchOrTuesday(int asMonth) {
    int mark = i;
    Kind kind = monthFirst(asMonth);
    if (kind != Kind.NONE && atEnd()) {
      return kind;
    }
    i = mark;
    yearKnown = true;
    return isDigit(peek()) ? digitsFirst() : Kind.NONE;
  }

  /** Nov 25, 2026 11:15 – or Nov 25 11:15:53 UTC 2026. */
  private Kind monthFirst(int monthFound) {
    skip(" .-/");
    if (!isDigit(peek())) {
      return Kind.NONE;
    }
    int d = number();
    skip(" ,-/");
    if (!isDigit(peek())) {
      return Kind.NONE;
    }
    int mark = i;
    int y = number();
    if (i - mark == 4) {
      return date(y, monthFound, d) ? clockOrEnd() : Kind.NONE;
    }
    i = mark;
    yearKnown = false;
    if (!date(1970, monthFound, d)) {
      return Kind.NONE;
    }
    if (clock() == Kind.NONE) {
      return Kind.NONE;
    }
    skip(" ");
    if (isDigit(peek())) {
      mark = i;
      y = number();
      if (i - mark == 4) {
        year = y;
        yearKnown = true;
      }
    }
    return Kind.DATE_AND_CLOCK;
  }

  private Kind digitsFirst() {
    int mark = i;
    long first = longNumber();
    int length = i - mark;
    int c = peek();
    if (length >= 8 && (length == 8 || length == 14)) {
      return compact(first, length);
    }
    if (length > 4) {
      return Kind.NONE;
    }
    if (c == ':' || (c == 'h' && isDigit(at(i + 1)))) {
      i = mark;
      return clockFirst();
    }
    if (c == 'h' || c == 'm' || c == 'H' || c == 'M') {
      i = mark;
      return spelledDuration();
    }
    if (c == 'd' || (c == ' ' && at(i + 1) == 'd' && at(i + 2) == 'a')) {
      return days(first);
    }
    if ((c == '-' || c == '/' || c == '.') && isDigit(at(i + 1))) {
      return numericDate((int) first, length, c);
    }
    int blank = c == ' ' || c == '-' || c == '/' || c == '.' ? 1 : 0;
    if (c == '.' && at(i + 1) == ' ') {
      blank = 2;
    }
    boolean spaced = c == '.' && at(i + 1) == ' ' && isDigit(at(i + 2));
    if (spaced) {
      return numericDate((int) first, length, c);
    }
    if ((isLetter(at(i + blank)) || at(i + blank) < 0 && length <= 2 && c != 0 && blank > 0)
        && length <= 2) {
      i += blank;
      return dayMonthName((int) first);
    }
    if (length == 4 && c < 0) {
      return ideographDate((int) first);
    }
    return Kind.NONE;
  }

  /** 09:30:00, and 09:30:00 14/03/2026 where the date stands behind it. */
  private Kind clockFirst() {
    Kind kind = clock();
    int rest = i;
    skip(" ,");
    if (kind != Kind.CLOCK || i == rest || !isDigit(peek()) || hasZone) {
      i = rest;
      return kind;
    }
    double clock = clockSeconds;
    int parts = clockParts;
    int from = clockStart;
    int to = clockEnd;
    Kind date = digitsFirst();
    clockSeconds = clock;
    clockParts = parts;
    clockStart = from;
    clockEnd = to;
    return date == Kind.DATE ? Kind.DATE_AND_CLOCK : Kind.NONE;
  }

  /** 1h 02m 03s, 2m10.5s. */
  private Kind spelledDuration() {
    double seconds = 0;
    int parts = 0;
    int last = 3;
    while (isDigit(peek())) {
      double value = number();
      if (peek() == '.' && isDigit(at(i + 1))) {
        i++;
        value += fractionDigits();
      }
      skip(" ");
      int unit = lower(peek());
      int rank = unit == 'h' ? 2 : unit == 'm' ? 1 : unit == 's' ? 0 : 3;
      if (rank >= last) {
        return Kind.NONE;
      }
      last = rank;
      seconds += value * (rank == 2 ? 3600 : rank == 1 ? 60 : 1);
      parts++;
      while (isLetter(peek())) {
        i++;
      }
      skip(" ");
    }
    durationSeconds = seconds;
    clockSeconds = seconds;
    clockParts = 3;
    return parts >= 2 ? Kind.DURATION : Kind.NONE;
  }

  /** 2026年1月2日. */
  private Kind ideographDate(int y) {
    skipNonAscii();
    int m = isDigit(peek()) ? number() : 0;
    skipNonAscii();
    int d = isDigit(peek()) ? number() : 0;
    skipNonAscii();
    return date(y, m, d) ? clockOrEnd() : Kind.NONE;
  }

  private void skipNonAscii() {
    while (i < end && b[i] < 0) {
      i++;
    }
  }

  private Kind dayMonthName(int d) {
    skipOrdinal();
    String word = word();
    skip(" ");
    if (PREPOSITIONS.contains(word)) {
      word = word();
    }
    int m = month(word);
    skip(" .,-/");
    if (m > 0 && PREPOSITIONS.contains(peekWord())) {
      word();
      skip(" ");
    }
    if (m == 0 || !isDigit(peek())) {
      return Kind.NONE;
    }
    int mark = i;
    int y = number();
    if (peek() == ':') {
      i = mark;
      yearKnown = false;
      return date(1970, m, d) && clock() != Kind.NONE ? Kind.DATE_AND_CLOCK : Kind.NONE;
    }
    if (i - mark == 2) {
      y += 2000;
    }
    return date(y, m, d) ? clockOrEnd() : Kind.NONE;
  }

  /** The st, nd, rd and th of 14th March. */
  private void skipOrdinal() {
    if (java.util.Set.of("st", "nd", "rd", "th").contains(peekWord())) {
      word();
      skip(" ");
    }
  }

  /** 20260102 with T120000 behind it, or all fourteen digits. */
  private Kind compact(long digits, int length) {
    long dateDigits = length == 14 ? digits / 1_000_000 : digits;
    int y = (int) (dateDigits / 10_000);
    if (y < 1990
        || y > 2100
        || !date(y, (int) (dateDigits / 100 % 100), (int) (dateDigits % 100))) {
      return Kind.NONE;
    }
    if (length == 14) {
      return compactClock((int) (digits % 1_000_000)) ? Kind.DATE_AND_CLOCK : Kind.NONE;
    }
    if (i == end) {
      return Kind.NONE; // eight digits alone are a number until a header says otherwise
    }
    skip(" T_-,");
    int mark = i;
    if (!isDigit(peek())) {
      return Kind.NONE;
    }
    int clockDigits = number();
    if (i - mark == 6 && compactClock(clockDigits)) {
      fractionAndZone();
      return Kind.DATE_AND_CLOCK;
    }
    if (i - mark == 4 && compactClock(clockDigits * 100)) {
      return Kind.DATE_AND_CLOCK;
    }
    i = mark;
    return clock() == Kind.NONE ? Kind.NONE : Kind.DATE_AND_CLOCK;
  }

  private boolean compactClock(int hhmmss) {
    int h = hhmmss / 10_000;
    int m = hhmmss / 100 % 100;
    int s = hhmmss % 100;
    clockSeconds = h * 3600 + m * 60 + s;
    clockParts = 3;
    return h < 24 && m < 60 && s < 61;
  }

  private void fractionAndZone() {
    if (peek() == '.' || peek() == ',') {
      i++;
      clockSeconds += fractionDigits();
    }
    zone();
  }

  /** 0 days 00:00:05, 1d 02:03:04. */
  private Kind days(long days) {
    skip(" ");
    while (isLetter(peek())) {
      i++;
    }
    skip(" ,+");
    if (i == end) {
      durationSeconds = days * 86_400.0;
      return Kind.DURATION;
    }
    if (clock() != Kind.CLOCK) {
      return Kind.NONE;
    }
    durationSeconds = days * 86_400.0 + clockSeconds;
    return Kind.DURATION;
  }

  private Kind numericDate(int first, int firstLength, int separator) {
    i++;
    skipBlankBehindPoint(separator);
    int mark = i;
    int second = number();
    int secondLength = i - mark;
    if (firstLength == 4 && secondLength == 3 && separator != '.') {
      return ordinalDate(first, second);
    }
    if (peek() != separator) {
      return separator == '/' && secondLength <= 2 ? yearlessDate(first, second) : Kind.NONE;
    }
    i++;
    skipBlankBehindPoint(separator);
    if (!isDigit(peek())) {
      return Kind.NONE;
    }
    mark = i;
    int third = number();
    int thirdLength = i - mark;
    if (secondLength > 2 || (firstLength > 2 && thirdLength > 2)) {
      return Kind.NONE;
    }
    if (firstLength == 4 || first > 31) {
      return date(firstLength == 4 ? first : first + 2000, second, third)
          ? clockOrEnd()
          : Kind.NONE;
    }
    if (separator == '.'
        && i == end
        && thirdLength <= 2
        && third < 60
        && first < 24
        && second < 60) {
      return dottedClock(first, second, third);
    }
    int y = thirdLength <= 2 ? third + 2000 : third;
    shortYear = firstLength == 2 && secondLength == 2 && thirdLength == 2;
    year = y;
    month = first;
    day = second;
    orderOpen = true;
    boolean possible =
        Math.max(first, second) <= 31
            && Math.min(first, second) >= 1
            && Math.min(first, second) <= 12
            && y < 2200;
    return possible ? clockOrEnd() : Kind.NONE;
  }

  /** 2026-073: a year and the number of the day in it. */
  private Kind ordinalDate(int y, int dayOfYear) {
    boolean possible = dayOfYear >= 1 && dayOfYear <= 366 && date(y, 1, 1);
    if (!possible) {
      return Kind.NONE;
    }
    java.time.LocalDate date = java.time.LocalDate.ofEpochDay(epochDay(y, 1, 1) + dayOfYear - 1);
    return date(date.getYear(), date.getMonthValue(), date.getDayOfMonth())
        ? clockOrEnd()
        : Kind.NONE;
  }

  /** 14. 3. 2026, as Czech, Slovak and some German programs write it. */
  private void skipBlankBehindPoint(int separator) {
    if (separator == '.' && peek() == ' ') {
      i++;
    }
  }

  /** 12.03.10 alone is a time of day where points stand for colons. */
  private Kind dottedClock(int h, int m, int s) {
    clockSeconds = h * 3600 + m * 60 + s;
    durationSeconds = clockSeconds;
    clockParts = 3;
    year = s + 2000;
    month = h;
    day = m;
    return Kind.CLOCK;
  }

  /** 11/25 14:00:00. */
  private Kind yearlessDate(int first, int second) {
    if (peek() != ' ' || first > 31 || second > 31 || Math.min(first, second) > 12) {
      return Kind.NONE;
    }
    year = 1970;
    yearKnown = false;
    month = first;
    day = second;
    orderOpen = true;
    return clockOrEnd() == Kind.DATE_AND_CLOCK ? Kind.DATE_AND_CLOCK : Kind.NONE;
  }

  private boolean date(int y, int m, int d) {
    year = y;
    month = m;
    day = d;
    return m >= 1 && m <= 12 && d >= 1 && d <= 31 && y >= 1900 && y < 2200;
  }

  private Kind clockOrEnd() {
    skip(" ,T_;@-");
    if ((isLetter(peek()) || peek() < 0) && PREPOSITIONS.contains(peekWord())) {
      word();
      skip(" .");
    }
    if (i >= end) {
      return Kind.DATE;
    }
    if (dashedClock()) {
      return Kind.DATE_AND_CLOCK;
    }
    return clock() == Kind.NONE ? Kind.NONE : Kind.DATE_AND_CLOCK;
  }

  /** 09-30-05 behind a date, as names of files have it. */
  private boolean dashedClock() {
    boolean dashed =
        isDigit(peek())
            && isDigit(at(i + 1))
            && at(i + 2) == '-'
            && isDigit(at(i + 3))
            && isDigit(at(i + 4))
            && at(i + 5) == '-'
            && isDigit(at(i + 6))
            && isDigit(at(i + 7));
    if (!dashed) {
      return false;
    }
    int h = number();
    i++;
    int m = number();
    i++;
    boolean possible = compactClock(h * 10_000 + m * 100 + number());
    fractionAndZone();
    return possible;
  }

  /** h:mm, h:mm:ss, with fraction, AM or PM, zone. mm:ss.f reads as minutes and seconds. */
  private Kind clock() {
    boolean ideographPm = ideographHalfDay();
    clockStart = i;
    if (!isDigit(peek())) {
      return Kind.NONE;
    }
    long[] parts = new long[4];
    int[] lengths = new int[4];
    int n = 0;
    while (n < 4 && isDigit(peek())) {
      int mark = i;
      parts[n] = longNumber();
      lengths[n++] = i - mark;
      int c = peek();
      boolean more =
          (c == ':' || c == 'h' || c == 'm' || (c == '.' && n < 3 && dotsAsColons()))
              && isDigit(at(i + 1));
      if (!more) {
        break;
      }
      i++;
    }
    if (n < 2 || lengths[1] > 2) {
      return Kind.NONE;
    }
    double fractionOfSecond = 0;
    if ((peek() == '.' || peek() == ',') && isDigit(at(i + 1))) {
      i++;
      fractionOfSecond = fractionDigits();
      fraction = true;
    }
    if (peek() == 's') {
      i++;
    }
    clockEnd = i;
    if (peek() == ' ' && at(i + 1) == 'U' && at(i + 2) == 'h' && at(i + 3) == 'r') {
      i += 4;
    }
    return assemble(parts, lengths, n, fractionOfSecond, ideographPm);
  }

  private Kind assemble(
      long[] parts, int[] lengths, int n, double fractionOfSecond, boolean ideographPm) {
    clockParts = n;
    boolean days = false;
    if (n == 4 && lengths[3] == 3) {
      fractionOfSecond = parts[3] / 1000.0;
      fraction = true;
    } else if (n == 4) {
      days = true;
    }
    if (n == 4 && days) {
      durationSeconds =
          parts[0] * 86_400.0 + parts[1] * 3600 + parts[2] * 60 + parts[3] + fractionOfSecond;
      return parts[1] < 24 && parts[2] < 60 && parts[3] < 60 ? Kind.DURATION : Kind.NONE;
    }
    boolean minutesAndSeconds = n == 2 && fraction;
    double seconds =
        minutesAndSeconds
            ? parts[0] * 60 + parts[1]
            : parts[0] * 3600 + parts[1] * 60 + (n >= 3 ? parts[2] : 0);
    if (parts[1] >= 60 || (n >= 3 && parts[2] >= 61)) {
      return Kind.NONE;
    }
    clockSeconds = seconds + fractionOfSecond;
    durationSeconds = clockSeconds;
    halfDay(ideographPm);
    zone();
    return Kind.CLOCK;
  }

  private boolean dotsAsColons() {
    return clockStart > 0
        && i - clockStart <= 5
        && isDigit(at(i + 1))
        && isDigit(at(i + 2))
        && (at(i + 3) == '.' || !isDigit(at(i + 3)));
  }

  private static final List<String> MORNINGS = List.of("上午", "午前", "오전");
  private static final List<String> AFTERNOONS = List.of("下午", "午後", "오후");

  private boolean isIdeographHalfDay() {
    String rest = new String(b, i, Math.min(6, end - i), StandardCharsets.UTF_8);
    return MORNINGS.contains(rest) || AFTERNOONS.contains(rest);
  }

  private boolean ideographHalfDay() {
    String rest =
        i < end && b[i] < 0 ? new String(b, i, Math.min(6, end - i), StandardCharsets.UTF_8) : "";
    boolean pm = AFTERNOONS.contains(rest);
    if (pm || MORNINGS.contains(rest)) {
      halfDay = true;
      i += 6;
      skip(" ");
    }
    return pm;
  }

  private void halfDay(boolean ideographPm) {
    int mark = i;
    skip(" \u00a0");
    while (i < end && b[i] < 0) {
      i++; // narrow no-break space of newer date formats
    }
    int c = lower(peek());
    boolean letterM =
        lower(at(i + 1)) == 'm'
            || (at(i + 1) == '.' && lower(at(i + 2)) == 'm')
            || (at(i + 1) == '.' && at(i + 2) == ' ' && lower(at(i + 3)) == 'm');
    boolean pm = ideographPm;
    if ((c == 'a' || c == 'p') && (letterM || i + 1 == end)) {
      halfDay = true;
      pm = c == 'p';
      while (i < end && (isLetter(peek()) || peek() == '.')) {
        i++;
      }
      if (peek() == ' ' && lower(at(i + 1)) == 'm') {
        i += 2;
        skip(".");
      }
    } else {
      i = mark;
    }
    if (halfDay && clockSeconds < 13 * 3600) {
      double hours = Math.floor(clockSeconds / 3600);
      clockSeconds += (hours == 12 ? -12 * 3600 : 0) + (pm ? 12 * 3600 : 0);
    }
  }

  private void zone() {
    if (i >= end) {
      return;
    }
    int mark = i;
    skip(" ");
    if (peek() == 'Z' && !isLetter(at(i + 1))) {
      i++;
      hasZone = true;
      return;
    }
    String word = isLetter(peek()) ? peekWord() : "";
    if (word.equals("utc") || word.equals("gmt")) {
      i += 3;
      hasZone = true;
    } else if (ZONES.contains(word)) {
      i += word.length();
    }
    if ((peek() == '+' || peek() == '-') && isDigit(at(i + 1)) && isDigit(at(i + 2))) {
      int sign = peek() == '-' ? -1 : 1;
      i++;
      int hours = (b[i] - '0') * 10 + b[i + 1] - '0';
      i += 2;
      if (peek() == ':') {
        i++;
      }
      int minutes = isDigit(peek()) && isDigit(at(i + 1)) ? number() : 0;
      hasZone = true;
      zoneMinutes = sign * (hours * 60 + minutes);
    }
    if (i == mark + 1 && !hasZone) {
      i = mark;
    }
    if (hasZone && peek() == ' ' && at(i + 1) == '(') {
      i = end; // the zone once more, by its name
    }
  }

  private double fractionDigits() {
    double value = 0;
    double place = 0.1;
    while (isDigit(peek())) {
      value += (b[i++] - '0') * place;
      place /= 10;
    }
    return Math.rint(value * 1e9) / 1e9;
  }

  /** Days since 1970-01-01 of the last date, in the given order where its form leaves it open. */
  long epochDay(DateOrder order) {
    int m = month;
    int d = day;
    if (orderOpen && shortYear && order == DateOrder.YEAR_FIRST) {
      return epochDay(2000 + month, day, year - 2000);
    }
    if (orderOpen && order == DateOrder.DAY_FIRST) {
      m = day;
      d = month;
    }
    return epochDay(year, m, d);
  }

  /** Proleptic Gregorian calendar. */
  static long epochDay(int y, int m, int d) {
    long shifted = m <= 2 ? y - 1L : y;
    long era = Math.floorDiv(shifted, 400);
    long yearOfEra = shifted - era * 400;
    long dayOfYear = (153L * (m + (m > 2 ? -3 : 9)) + 2) / 5 + d - 1;
    long dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    return era * 146_097 + dayOfEra - 719_468;
  }

  private boolean atEnd() {
    skip(" ");
    return i >= end;
  }

  private int peek() {
    return i < end ? b[i] : 0;
  }

  private int at(int index) {
    return index < end ? b[index] : 0;
  }

  private int number() {
    return (int) Math.min(Integer.MAX_VALUE, longNumber());
  }

  private long longNumber() {
    long value = 0;
    while (i < end && isDigit(b[i])) {
      value = value < 1_000_000_000_000_000L ? value * 10 + b[i] - '0' : value;
      i++;
    }
    return value;
  }

  private void skip(String characters) {
    while (i < end && characters.indexOf(b[i]) >= 0) {
      i++;
    }
  }

  private String word() {
    int mark = i;
    while (i < end && (isLetter(b[i]) || b[i] < 0)) {
      i++;
    }
    return new String(b, mark, i - mark, StandardCharsets.UTF_8).toLowerCase(Locale.ROOT);
  }

  private String peekWord() {
    int mark = i;
    String word = word();
    i = mark;
    return word;
  }

  private static int month(String word) {
    if (word.length() < 3) {
      return 0;
    }
    for (int m = 0; m < 12; m++) {
      for (String name : MONTHS[m].split(",")) {
        if (word.startsWith(name)) {
          return m + 1;
        }
      }
    }
    return 0;
  }

  private static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isLetter(int c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }

  private static int lower(int c) {
    return c >= 'A' && c <= 'Z' ? c + 32 : c;
  }
}
