package ovenproof.photopage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.measure.Measurement;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.NewEntry;
import ovenproof.measure.MeasureService;
import ovenproof.tracepage.HeatedDesk;
import ovenproof.web.PageSession;
import ovenproof.web.WebServer;

/** Photographs over HTTP, without a browser, on both databases. */
class PhotoPagesTest {
  private static final String C = "/c/" + HeatedDesk.CID;
  private static final String PAGE = C + "/photo?path=" + HeatedDesk.PHOTO;
  private static final String LEFT = "left: 90,60 260,60 260,200 90,200";
  private static final String FOUR =
      LEFT
          + "\nright: 370,60 540,60 540,200 370,200\nlow: 90,270 260,270 260,410 90,410\n"
          + "last: 370,270 540,270 540,410 370,410";

  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void outlinesAreShownMendedKeptAndMeasured(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      HeatedDesk.fill(desk);
      try (WebServer server = WebServer.start(desk, 0)) {
        PageSession session = new PageSession(server.port());
        threeLooksWithoutMetadata(session);
        aCountThatDoesNotFitNeedsAReason(session, desk);
        theNextMeasuringUsesTheOutlines(session, desk);
        whoMendsAnOldVersionIsTold(session, desk);
        badOutlinesAreSaidAllAtOnce(session, desk);
        theSheetShowsEveryProduct(session);
        cornersThatHoldNoChartAreSaid(session, desk);
        theFrontIsKept(session, desk);
        aFrameIsSharedBetweenRuns(session, desk);
      }
    }
  }

  private static void threeLooksWithoutMetadata(PageSession session) throws Exception {
    assertThat(session.get(PAGE).body())
        .contains("class=\"edge\"")
        .contains("4 outlined, 4 expected");
    for (Look look : Look.values()) {
      byte[] bytes =
          session
              .bytes(C + "/picture?path=" + HeatedDesk.PHOTO + "&look=" + look.word() + "&side=320")
              .body();
      var image = ImageIO.read(new ByteArrayInputStream(bytes));
      assertThat(image.getWidth()).as(look.word()).isEqualTo(320);
      // The middle of the table is the table in the original, in the map by definition.
      assertThat(bytes).startsWith(0xff, 0xd8);
      assertThat(new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1))
          .doesNotContain("Exif");
    }
  }

  private static Map<String, String> form(Desk desk, String outlines, String why) {
    Map<String, String> form = new HashMap<>();
    form.put("path", HeatedDesk.PHOTO);
    form.put("entry", holding(desk));
    form.put("outlines", outlines);
    form.put("why", why);
    return form;
  }

  private static String holding(Desk desk) {
    var all = desk.entries(HeatedDesk.CID);
    return all.stream()
        .filter(e -> e.body() instanceof Photo)
        .filter(e -> all.stream().noneMatch(o -> e.key().equals(o.corrects())))
        .findFirst()
        .orElseThrow()
        .key();
  }

  private static Photo photo(Desk desk) {
    List<Photo> photos = desk.load(HeatedDesk.CID).photos();
    assertThat(photos).hasSize(1);
    return photos.get(0);
  }

  private static void aCountThatDoesNotFitNeedsAReason(PageSession session, Desk desk)
      throws Exception {
    String refused = session.post(C + "/photo/outlines", form(desk, LEFT, ""), Map.of()).body();
    assertThat(refused).contains("Found 1 outline, the method expects 4").contains(LEFT);
    assertThat(photo(desk).outlines()).isEmpty();
    session.post(C + "/photo/outlines", form(desk, LEFT, "three fell off the rack"), Map.of());
    assertThat(photo(desk).outlines()).hasSize(1);
    assertThat(photo(desk).note()).isEqualTo("three fell off the rack");
  }

  private static void theNextMeasuringUsesTheOutlines(PageSession session, Desk desk)
      throws Exception {
    session.post(C + "/photo/outlines", form(desk, FOUR, ""), Map.of());
    Campaign c = desk.load(HeatedDesk.CID);
    List<Measurement> parts =
        MeasureService.withDefaults()
            .measure(c, desk.evidenceOf(HeatedDesk.CID))
            .ofRun("heat", "shade", HeatedDesk.RUN)
            .orElseThrow()
            .parts();
    assertThat(parts)
        .extracting(m -> m.subject().piece())
        .containsExactly("left", "right", "low", "last");
    // Each slice was painted darker than the one before.
    assertThat(parts)
        .extracting(Measurement::value)
        .isSortedAccordingTo(java.util.Comparator.reverseOrder());
    assertThat(session.get(PAGE).body()).contains(">left<").contains(">last<");
  }

  private static void whoMendsAnOldVersionIsTold(PageSession session, Desk desk) throws Exception {
    Map<String, String> old = form(desk, FOUR.replace("left", "mine"), "");
    session.post(C + "/photo/outlines", form(desk, FOUR.replace("left", "theirs"), ""), Map.of());
    String told = session.post(C + "/photo/outlines", old, Map.of()).body();
    assertThat(told).contains("Somebody mended these outlines meanwhile").contains("mine: 90,60");
    assertThat(photo(desk).outlines().get(0).piece()).isEqualTo("theirs");
  }

  private static void badOutlinesAreSaidAllAtOnce(PageSession session, Desk desk) throws Exception {
    String bad = LEFT + "\n" + LEFT + "\nflat: 1,1 2,2 3,3\n<script>: 1,2 3,4 5,9";
    String page = session.post(C + "/photo/outlines", form(desk, bad, "x"), Map.of()).body();
    assertThat(page)
        .contains("Two pieces are called “left”")
        .contains("“flat” holds no area")
        .contains("expected an outline such as")
        .doesNotContain("<script>: 1");
    Map<String, String> again = form(desk, "", "");
    again.put("what", "again");
    session.post(C + "/photo/outlines", again, Map.of());
    assertThat(photo(desk).outlines()).isEmpty();
  }

  private static void theSheetShowsEveryProduct(PageSession session) throws Exception {
    assertThat(session.get(C + "/tests/heat/photos").body())
        .contains("look=calibrated")
        .contains("Alder, run 1, top");
    assertThat(session.get(C + "/photos").body()).contains("1 photograph of 1 test");
    assertThat(session.get(C + "/runs/alder-1/photos").body()).contains("Alder, run 1, top");
    assertThat(session.get(C + "/photo?path=nothing.jpg").statusCode()).isEqualTo(404);
  }

  private static Map<String, String> frame(Desk desk, String corners, String front) {
    Map<String, String> form = form(desk, "", "");
    form.put("corners", corners);
    form.put("front", front);
    return form;
  }

  private static void cornersThatHoldNoChartAreSaid(PageSession session, Desk desk)
      throws Exception {
    String few = session.post(C + "/photo/frame", frame(desk, "1,2 3,4", ""), Map.of()).body();
    assertThat(few).contains("Found “1,2 3,4”, expected four corners such as");
    String crossed =
        session.post(C + "/photo/frame", frame(desk, "0,0 90,90 90,0 0,90", ""), Map.of()).body();
    assertThat(crossed).contains("in the order in which one walks around the chart");
    String toast =
        session
            .post(C + "/photo/frame", frame(desk, "90,60 260,60 260,200 90,200", ""), Map.of())
            .body();
    assertThat(toast)
        .contains("has not the colours of a 24-patch chart")
        .contains("value=\"90,60 260,60 260,200 90,200\"");
    assertThat(photo(desk).frame().chartCorners()).isEmpty();
  }

  private static void theFrontIsKept(PageSession session, Desk desk) throws Exception {
    session.post(C + "/photo/frame", frame(desk, "", "top"), Map.of());
    assertThat(photo(desk).frame().front()).isEqualTo(ShadeSettings.Front.TOP);
  }

  private static void secondRun(Desk desk, String id) {
    Run first = desk.load(HeatedDesk.CID).run(HeatedDesk.RUN).orElseThrow();
    Run second =
        new Run(
            id,
            first.product(),
            null,
            first.test(),
            first.variant(),
            2,
            first.kind(),
            first.session(),
            first.bench(),
            first.started(),
            null,
            null,
            null,
            first.by(),
            null);
    NewEntry.Stamp stamp = NewEntry.Stamp.of("lead", desk.clock().instant());
    desk.append(
        HeatedDesk.CID, List.of(new NewEntry("second-run", EntryKind.RUN, second, stamp, null)));
  }

  private static void aFrameIsSharedBetweenRuns(PageSession session, Desk desk) throws Exception {
    session.post(C + "/photo/outlines", form(desk, FOUR, ""), Map.of());
    String other = "alder-2";
    secondRun(desk, other);
    Map<String, String> form = form(desk, "", "");
    form.put("pieces", "low, nobody");
    form.put("other", "no-such-run");
    assertThat(session.post(C + "/photo/share", form, Map.of()).body())
        .contains("No piece here is called “nobody”")
        .contains("Found “no-such-run”, expected another run");
    form.put("pieces", "low, last");
    form.put("other", other);
    session.post(C + "/photo/share", form, Map.of());
    List<Photo> photos = desk.load(HeatedDesk.CID).photos();
    assertThat(photos).extracting(Photo::file).containsOnly(HeatedDesk.PHOTO);
    assertThat(photos).extracting(Photo::run).containsExactlyInAnyOrder(HeatedDesk.RUN, other);
    for (Photo photo : photos) {
      assertThat(photo.outlines())
          .extracting(Photo.Drawn::piece)
          .isEqualTo(photo.run().equals(other) ? List.of("low", "last") : List.of("left", "right"));
    }
    assertThat(session.get(PAGE + "&run=" + other).body()).contains(">low<").contains("Also of");
  }
}
