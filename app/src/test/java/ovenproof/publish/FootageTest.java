package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.input.InputException;
import ovenproof.publish.footage.Chapters;
import ovenproof.publish.footage.ClipList;
import ovenproof.publish.footage.ClipMarkers;
import ovenproof.publish.fragment.Spoken;
import ovenproof.web.Chromium;

class FootageTest {
  @TempDir Path folder;

  @Test
  void aMarkerAllowsForTheCamerasOwnClock() {
    var campaign = SmallCampaign.edition(SmallCampaign.write(folder.resolve("c"))).campaign();
    Instant benchStart = campaign.run("alder-toast-1").orElseThrow().started();
    // The camera is 40 s slow: its clock says 10:09:20 when the bench says 10:10:00.
    var clip = new ClipMarkers.Clip("a.mov", benchStart.minusSeconds(100), 600, 40);
    var first = ClipMarkers.of(campaign, clip).markers().get(0);
    assertThat(first.words()).isEqualTo("Alder, Toast, run 1: start");
    assertThat(first.seconds()).isEqualTo(60);
  }

  @Test
  void eachCameraHasItsOwnClockAndTheirMarkersMeet() {
    var campaign = SmallCampaign.edition(SmallCampaign.write(folder.resolve("c"))).campaign();
    List<ClipMarkers.Clip> clips =
        ClipList.parse(
            "clips.csv",
            """
            clip;starts;length;clock_offset
            wide.mov;2026-03-02 10:08:00;10:00;+30 s
            close.mov;2026-03-02T10:10:30Z;8 min;-1:30
            """,
            ZoneId.of("Europe/Dublin"));
    // Alder's first toast starts at 10:10:00 by the bench: 90 s into the first, 60 s into the
    // second.
    assertThat(ClipMarkers.of(campaign, clips.get(0)).markers().get(0).seconds()).isEqualTo(90);
    assertThat(ClipMarkers.of(campaign, clips.get(1)).markers().get(0).seconds()).isEqualTo(60);
  }

  @Test
  void everyLineOfAClipListThatCannotBeUsedIsNamed() {
    String list =
        "clip,starts,length\n,2026-03-02T10:00,5 min\na.mov,soon,5 min\nb.mov,2026-03-02T10:00,\n";
    assertThatThrownBy(() -> ClipList.parse("clips.csv", list, ZoneId.of("UTC")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("clips.csv:2")
        .hasMessageContaining("clips.csv:3")
        .hasMessageContaining("clips.csv:4");
    assertThatThrownBy(() -> ClipList.parse("clips.csv", "", ZoneId.of("UTC")))
        .hasMessageContaining("no clip");
  }

  @Test
  void aClipInWhichNothingHappenedIsSaid() {
    var edition = SmallCampaign.edition(SmallCampaign.write(folder.resolve("c")));
    var clip = new ClipMarkers.Clip("a.mov", Instant.parse("2020-01-01T00:00:00Z"), 600, 0);
    assertThat(
            EditorKit.write(edition, folder.resolve("kit"), List.of(clip), null, List.of())
                .warnings())
        .singleElement()
        .satisfies(w -> assertThat(w).contains("a.mov").contains("clock_offset"));
  }

  /** The parser of WebVTT (W3C) in a browser reads what was meant, markup and arrows included. */
  @Test
  void aBrowserReadsChaptersAndMarkers() {
    Chapters chapters =
        Chapters.parse(
            "cues.txt", "0:00 Start --> here\n1:05 Toast & <jam>\n1:02:03.5 Fin\u00e9\n");
    var campaign = SmallCampaign.edition(SmallCampaign.write(folder.resolve("c"))).campaign();
    Instant start = campaign.run("alder-toast-1").orElseThrow().started();
    var markers = ClipMarkers.of(campaign, new ClipMarkers.Clip("a.mov", start, 5, 0));
    try (Playwright playwright = Chromium.driver();
        Browser browser = playwright.chromium().launch(Chromium.options())) {
      Page page = browser.newPage();
      assertThat(cues(page, chapters.webVtt(3800)))
          .containsExactly(
              "0 65 Start --> here", "65 3723.5 Toast & <jam>", "3723.5 3800 Fin\u00e9");
      assertThat(cues(page, markers.webVtt()))
          .containsExactly("0 1 Alder, Toast, run 1: start", "5 6 Alder, Toast, run 1: load");
    }
  }

  private static List<String> cues(Page page, String webVtt) {
    List<?> cues =
        (List<?>)
            page.evaluate(
                """
            text => new Promise((done, fail) => {
              const video = document.createElement('video');
              const track = document.createElement('track');
              track.src = URL.createObjectURL(new Blob([text], {type: 'text/vtt'}));
              track.onload = () => done([...track.track.cues].map(c =>
                c.startTime + ' ' + c.endTime + ' ' + c.getCueAsHTML().textContent));
              track.onerror = () => fail('no WebVTT');
              video.append(track);
              document.body.append(video);
              track.track.mode = 'hidden';
            })""",
                webVtt);
    return cues.stream().map(String::valueOf).toList();
  }

  /** WebVTT (W3C): header line, blank line, hours:minutes:seconds.thousandths. */
  @Test
  void chaptersAreWrittenAsWebVttAndPlain() {
    Chapters chapters = Chapters.parse("cues.txt", "0:00 Start\n1:05 Toast & <jam>\n1:02:03 End\n");
    assertThat(chapters.plain()).isEqualTo("0:00 Start\n1:05 Toast & <jam>\n1:02:03 End\n");
    assertThat(chapters.webVtt(3800))
        .startsWith("WEBVTT\n\n00:00:00.000 --> 00:01:05.000\nStart\n\n")
        .contains("00:01:05.000 --> 01:02:03.000\nToast &amp; &lt;jam&gt;");
  }

  @Test
  void everyLineThatIsNoCueIsNamed() {
    assertThatThrownBy(() -> Chapters.parse("cues.txt", "0:00 A\nnonsense\n0:00 B\n1:75 C\n"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("cues.txt:2")
        .hasMessageContaining("cues.txt:3")
        .hasMessageContaining("cues.txt:4");
  }

  @ParameterizedTest
  @CsvSource({
    "8.1, eight point one",
    "0.05, zero point zero five",
    "-12, minus twelve",
    "21, twenty-one",
    "119, one hundred and nineteen",
    "2005, two thousand and five",
    "1300, one thousand three hundred"
  })
  void numbersAreSpoken(BigDecimal number, String words) {
    assertThat(Spoken.number(number)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({
    "6 min 31 s, six minutes thirty-one seconds",
    "1 h 5 min, one hour five minutes",
    "74 °C, seventy-four degrees Celsius",
    "0.45 kWh, zero point four five kilowatt-hours",
    "1 °C, one degree Celsius",
    "9.1 °F, nine point one degrees Fahrenheit",
    "2083 cm², two thousand and eighty-three square centimetres"
  })
  void figuresAreSpoken(String printed, String words) {
    assertThat(Spoken.figure(printed)).isEqualTo(words);
  }
}
