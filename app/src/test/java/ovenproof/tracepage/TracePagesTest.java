package ovenproof.tracepage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.trace.Trace;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.measure.RunTraces;
import ovenproof.web.PageSession;
import ovenproof.web.WebServer;

/** Traces over HTTP, without a browser, on both databases. */
class TracePagesTest {
  private static final String C = "/c/" + HeatedDesk.CID;
  private static final String DROP = "drop-of-the-test";

  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aCurveIsShownAndADroppedFileIsReadBeforeItIsKept(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      HeatedDesk.fill(desk);
      try (WebServer server = WebServer.start(desk, 0)) {
        PageSession session = new PageSession(server.port());
        theCurveLeadsToItsDefinitions(session);
        theModelAnswersTheSlider(session);
        thePicturesCanBeTakenAway(session);
        allProductsStandOnOneAxis(session);
        nothingIsKeptBeforeSomeoneSaysSo(session, desk);
        anAnswerIsAnEntryAndTheNextReadingUsesIt(session, desk);
        whatCannotBeReadIsSaidInWords(session);
      }
    }
  }

  private static void theCurveLeadsToItsDefinitions(PageSession session) throws Exception {
    String page = session.get(C + "/runs/alder-1/trace").body();
    assertThat(page).contains("Heat of Alder").contains("200").contains("Set to");
    Matcher mark = Pattern.compile("<a href=\"#(m-[a-z-]+)\" aria-label=\"\\d+: ").matcher(page);
    int marks = 0;
    while (mark.find()) {
      assertThat(page).contains("id=\"" + mark.group(1) + "\"");
      marks++;
    }
    assertThat(marks).isGreaterThan(2);
    assertThat(page.getBytes(StandardCharsets.UTF_8).length).isLessThan(200_000);
  }

  /**
   * The curve levels off at 200 °C (20 + 180): 230 °C is never reached, 150 °C after 600·ln(180/50)
   * s = 12:49.
   */
  private static void theModelAnswersTheSlider(PageSession session) throws Exception {
    String at = C + "/runs/alder-1/trace/prediction?at=";
    assertThat(session.get(at + 230).body()).contains("is not reached").contains("200");
    Matcher time =
        Pattern.compile("150.°C after (\\d+):(\\d\\d) min; 90 % interval")
            .matcher(session.get(at + 150).body());
    assertThat(time.find()).isTrue();
    double seconds = 60 * Double.parseDouble(time.group(1)) + Double.parseDouble(time.group(2));
    assertThat(seconds).isCloseTo(600 * Math.log(180 / 50.0), within(5.0));
  }

  private static void thePicturesCanBeTakenAway(PageSession session) throws Exception {
    var svg = session.bytes(C + "/runs/alder-1/trace.svg");
    assertThat(svg.headers().firstValue("Content-Disposition").orElse("")).contains("attachment");
    assertThat(new String(svg.body(), StandardCharsets.UTF_8)).contains("<style>");
    byte[] png = session.bytes(C + "/runs/alder-1/trace.png").body();
    assertThat(png).startsWith(0x89, 'P', 'N', 'G');
    String data = session.get(C + "/runs/alder-1/trace.json").body();
    assertThat(data).contains("\"name\":\"centre\"");
  }

  private static void allProductsStandOnOneAxis(PageSession session) throws Exception {
    String page = session.get(C + "/tests/heat/traces").body();
    assertThat(page).contains("1 run on one axis").contains("/runs/alder-1/trace");
    assertThat(session.bytes(C + "/tests/heat/traces.png").body()).startsWith(0x89, 'P');
  }

  private static void nothingIsKeptBeforeSomeoneSaysSo(PageSession session, Desk desk)
      throws Exception {
    int before = desk.attachments(HeatedDesk.CID).size();
    String page =
        session
            .post(
                C + "/drop",
                Map.of("drop", DROP),
                Map.of("<b>odd.txt", HeatedDesk.log("Oven °C", 5, false)))
            .body();
    assertThat(page)
        .contains("Read, not yet kept: 1 file")
        .contains("How many seconds lie between two rows?")
        .doesNotContain("<b>odd");
    assertThat(desk.attachments(HeatedDesk.CID)).hasSize(before);
    String kept =
        session
            .post(
                C + "/drop/log",
                Map.of(
                    "drop",
                    DROP,
                    "index",
                    "0",
                    "what",
                    "keep",
                    "whose",
                    "run:alder-1",
                    "place-0",
                    "back-left",
                    "key",
                    "kept-by-the-test"),
                Map.of())
            .body();
    assertThat(kept).contains("back-left").contains("How it was read");
    assertThat(desk.attachments(HeatedDesk.CID)).hasSize(before + 1);
    assertThat(new Incoming(folderOf(desk)).files(DROP)).isEmpty();
  }

  private static Path folderOf(Desk desk) {
    return desk.location().folder();
  }

  private static void anAnswerIsAnEntryAndTheNextReadingUsesIt(PageSession session, Desk desk)
      throws Exception {
    TraceBinding bound = odd(desk.load(HeatedDesk.CID));
    assertThat(bound.readAs()).isNull();
    int before = desk.entries(HeatedDesk.CID).size();
    String refused =
        session
            .post(
                C + "/log/reading",
                Map.of("path", bound.file(), "interval", "minus one", "key", "answer-refused"),
                Map.of())
            .body();
    assertThat(refused).contains("minus one");
    assertThat(desk.entries(HeatedDesk.CID)).hasSize(before);
    session.post(
        C + "/log/reading",
        Map.of("path", bound.file(), "interval", "5 s", "note", "set so", "key", "answer-of-test"),
        Map.of());
    Campaign after = desk.load(HeatedDesk.CID);
    assertThat(odd(after).readAs()).isEqualTo(new TraceBinding.ReadAs(5.0, null, null));
    assertThat(desk.entries(HeatedDesk.CID)).hasSize(before + 1);
    Trace trace =
        new RunTraces(after, desk.evidenceOf(HeatedDesk.CID))
            .of(after.run("alder-1").orElseThrow()).stream()
                .filter(p -> p.binding().place().equals("back-left"))
                .findFirst()
                .orElseThrow()
                .trace();
    assertThat(trace.lastSecond()).isEqualTo(3600);
  }

  private static TraceBinding odd(Campaign c) {
    List<TraceBinding> bound =
        c.traces().stream().filter(t -> t.place().equals("back-left")).toList();
    assertThat(bound).hasSize(1);
    return bound.get(0);
  }

  private static void whatCannotBeReadIsSaidInWords(PageSession session) throws Exception {
    String page =
        session
            .post(
                C + "/drop",
                Map.of("drop", "drop-of-bad-files"),
                Map.of(
                    "empty.csv", new byte[0],
                    "noise.bin", new byte[] {0, 1, 2, 3, (byte) 0xff, 0, 7, 0, 9},
                    "broken.jpg", new byte[] {(byte) 0xff, (byte) 0xd8, 1, 2}))
            .body();
    assertThat(page).contains("Not read:").contains("broken.jpg").doesNotContain("Exception");
    assertThat(session.get(C + "/log?path=no-such.csv").statusCode()).isEqualTo(404);
    assertThat(session.get(C + "/drop?drop=..%2F..%2Fetc").statusCode()).isEqualTo(404);
  }
}
