package ovenproof.evidence.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TimeAxis;
import ovenproof.core.trace.TraceFile;

/**
 * Workbooks put together by hand after ECMA-376: shared and inline strings, styles of dates, sheets
 * without rows, cells that are left out. All data are invented.
 */
class WorkbookTest {

  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String RELATIONS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

  /** Style 1 is date and time (built-in format 22), 2 a duration, 3 a time of day. */
  private static final String STYLES =
      "<styleSheet xmlns=\""
          + MAIN
          + "\"><numFmts count=\"2\"><numFmt numFmtId=\"164\" formatCode=\"[h]:mm:ss\"/>"
          + "<numFmt numFmtId=\"165\" formatCode=\"hh:mm:ss\"/></numFmts>"
          + "<fonts count=\"1\"><font/></fonts><fills count=\"1\"><fill/></fills>"
          + "<borders count=\"1\"><border/></borders><cellStyleXfs count=\"1\"><xf/></cellStyleXfs>"
          + "<cellXfs count=\"4\"><xf numFmtId=\"0\"/><xf numFmtId=\"22\"/><xf numFmtId=\"164\"/>"
          + "<xf numFmtId=\"165\"/></cellXfs></styleSheet>";

  /** 2026-03-14 09:30:00 as a spreadsheet counts: days since 1899-12-30. */
  private static final double START = 46_095 + 9.5 / 24;

  private static byte[] workbook(String... sheets) throws IOException {
    Map<String, String> parts = new LinkedHashMap<>();
    StringBuilder types = new StringBuilder();
    StringBuilder names = new StringBuilder();
    StringBuilder relations = new StringBuilder();
    for (int k = 1; k <= sheets.length; k++) {
      String part = "worksheets/sheet" + k + ".xml";
      types.append(
          "<Override PartName=\"/xl/"
              + part
              + "\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>");
      names.append("<sheet name=\"Sheet " + k + "\" sheetId=\"" + k + "\" r:id=\"r" + k + "\"/>");
      relations.append(
          "<Relationship Id=\"r"
              + k
              + "\" Type=\""
              + RELATIONS
              + "/worksheet\" Target=\""
              + part
              + "\"/>");
      parts.put(
          "xl/" + part,
          "<worksheet xmlns=\""
              + MAIN
              + "\"><sheetData>"
              + sheets[k - 1]
              + "</sheetData></worksheet>");
    }
    parts.put(
        "[Content_Types].xml",
        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
            + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
            + "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
            + "<Override PartName=\"/xl/styles.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml\"/>"
            + types
            + "</Types>");
    parts.put(
        "_rels/.rels",
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"w\" Type=\""
            + RELATIONS
            + "/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>");
    parts.put(
        "xl/workbook.xml",
        "<workbook xmlns=\""
            + MAIN
            + "\" xmlns:r=\""
            + RELATIONS
            + "\"><sheets>"
            + names
            + "</sheets></workbook>");
    parts.put(
        "xl/_rels/workbook.xml.rels",
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + relations
            + "<Relationship Id=\"s\" Type=\""
            + RELATIONS
            + "/styles\" Target=\"styles.xml\"/></Relationships>");
    parts.put("xl/styles.xml", STYLES);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, String> part : parts.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(
            ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + part.getValue())
                .getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  private static String row(int r, String... cells) {
    return "<row r=\"" + r + "\">" + String.join("", cells) + "</row>";
  }

  private static String text(String at, String value) {
    return "<c r=\"" + at + "\" t=\"inlineStr\"><is><t>" + value + "</t></is></c>";
  }

  private static String number(String at, double value, int style) {
    return "<c r=\"" + at + "\" s=\"" + style + "\"><v>" + value + "</v></c>";
  }

  private static double heat(int i) {
    return Math.rint((200 - 179 * Math.exp(-i / 24.0)) * 10) / 10;
  }

  private static TraceFile read(byte[] bytes) {
    return TraceOpener.read(bytes, ReadOptions.withDefaults());
  }

  @Test
  void datesAreReadByTheirStyleAndLeftOutCellsAreMissing() throws IOException {
    StringBuilder sheet =
        new StringBuilder(row(1, text("A1", "Invented logger 4")))
            .append(
                row(3, text("A3", "Date/Time"), text("B3", "Oven (°C)"), text("D3", "Power (W)")));
    for (int i = 0; i < 60; i++) {
      int r = 4 + i;
      sheet.append(
          row(
              r,
              number("A" + r, START + i * 5 / 86_400.0, 1),
              i == 10 ? "" : number("B" + r, heat(i), 0),
              number("D" + r, 1400, 0)));
    }
    TraceFile file = read(workbook(row(1, text("A1", "Cover")), sheet.toString()));
    assertThat(file.problems()).isEmpty();
    assertThat(file.layout().form().word()).isEqualTo("workbook");
    assertThat(file.rows()).isEqualTo(60);
    assertThat(file.time().form()).isEqualTo(TimeAxis.Form.DATE_AND_TIME);
    assertThat(file.time().startEpochMillis())
        .isEqualTo(java.time.Instant.parse("2026-03-14T09:30:00Z").toEpochMilli());
    assertThat(file.time().seconds()[59]).isCloseTo(295, within(0.01));
    Channel oven = file.channel("Oven").orElseThrow();
    assertThat(oven.values()[0]).isEqualTo(21.0);
    assertThat(oven.values()[10]).isNaN();
    assertThat(oven.values()[59]).isEqualTo(heat(59));
    assertThat(file.channel("Power").orElseThrow().values()[59]).isEqualTo(1400);
  }

  @Test
  void durationsAndTimesOfDayAreTimes() throws IOException {
    for (int style : new int[] {2, 3}) {
      StringBuilder sheet = new StringBuilder(row(1, text("A1", "Time"), text("B1", "T1 °F")));
      double start = style == 2 ? 0 : 9.5 / 24;
      for (int i = 0; i < 40; i++) {
        int r = 2 + i;
        sheet.append(
            row(
                r,
                number("A" + r, start + i * 5 / 86_400.0, style),
                number("B" + r, heat(i) * 1.8 + 32, 0)));
      }
      TraceFile file = read(workbook(sheet.toString()));
      assertThat(file.problems()).isEmpty();
      assertThat(file.time().form())
          .isEqualTo(style == 2 ? TimeAxis.Form.ELAPSED : TimeAxis.Form.TIME_OF_DAY);
      assertThat(file.time().medianStepSeconds()).isCloseTo(5, within(0.01));
      assertThat(file.channels().get(0).values()[39]).isCloseTo(heat(39), within(1e-6));
    }
  }

  @Test
  void numbersKeptAsTextAreNumbers() throws IOException {
    StringBuilder sheet =
        new StringBuilder(row(1, text("A1", "Zeit (s)"), text("B1", "T Ofen (°C)")));
    for (int i = 0; i < 40; i++) {
      int r = 2 + i;
      String comma = String.valueOf(heat(i)).replace('.', ',');
      sheet.append(row(r, text("A" + r, String.valueOf(5 * i)), text("B" + r, comma)));
    }
    TraceFile file = read(workbook(sheet.toString()));
    assertThat(file.problems()).isEmpty();
    assertThat(file.channels().get(0).values()[39]).isEqualTo(heat(39));
  }

  @Test
  void aDamagedAnEmptyAndAnOldWorkbookAreAnsweredInWords() throws IOException {
    byte[] whole = workbook(row(1, text("A1", "nothing")));
    byte[] cut = java.util.Arrays.copyOf(whole, whole.length / 2);
    assertThat(read(cut).problems()).singleElement().asString().contains("cannot be opened");
    assertThat(read(whole).problems()).singleElement().asString().contains("No rows");
    byte[] old = new byte[600];
    old[0] = (byte) 0xD0;
    old[1] = (byte) 0xCF;
    assertThat(read(old).problems()).singleElement().asString().contains("XLSX or CSV");
  }

  @Test
  void aWorkbookThatUnpacksToFarMoreIsRefusedInWords() throws IOException {
    String row = row(1, text("A1", "0".repeat(1 << 20)));
    ReadOptions small = ReadOptions.withDefaults().withMaximumTextBytes(1 << 19);
    TraceFile file = TraceOpener.read(workbook(row), small);
    assertThat(file.problems()).singleElement().asString().contains("unpacks to more");
  }

  @Test
  void cellsFarToTheRightDoNotFillTheMemory() throws IOException {
    StringBuilder rows = new StringBuilder();
    for (int r = 1; r <= 2000; r++) {
      rows.append(row(r, number("A" + r, r, 0), number("EAA" + r, r, 0)));
    }
    ReadOptions small = ReadOptions.withDefaults().withMaximumNumbers(1_000_000);
    TraceFile file = TraceOpener.read(workbook(rows.toString()), small);
    assertThat(file.problems()).singleElement().asString().contains("unpacks to more");
  }

  @Test
  void durationsBeyondADayGoOn() throws IOException {
    StringBuilder rows = new StringBuilder(row(1, text("A1", "Elapsed"), text("B1", "Oven °C")));
    for (int i = 0; i < 40; i++) {
      double days = (23 * 3600 + 55 * 60 + i * 30) / 86_400.0;
      rows.append(row(i + 2, number("A" + (i + 2), days, 2), number("B" + (i + 2), heat(i), 0)));
    }
    TraceFile file = read(workbook(rows.toString()));
    assertThat(file.problems()).isEmpty();
    assertThat(file.time().medianStepSeconds()).isCloseTo(30, within(1e-3));
    assertThat(file.segments()).hasSize(1);
    assertThat(file.time().seconds()[39]).isCloseTo(39 * 30, within(1e-3));
  }
}
