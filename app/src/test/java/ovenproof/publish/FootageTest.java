package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.input.InputException;
import ovenproof.publish.footage.Chapters;
import ovenproof.publish.footage.ClipMarkers;
import ovenproof.publish.fragment.Spoken;

class FootageTest {
  @TempDir Path folder;

  @Test
  void aMarkerAllowsForTheCamerasOwnClock() {
    var campaign = SmallCampaign.edition(SmallCampaign.write(folder.resolve("c"))).campaign();
    Instant benchStart = campaign.run("alder-toast-1").orElseThrow().started();
    // The camera is 40 s slow: its clock says 10:09:20 when the bench says 10:10:00.
    var clip = new ClipMarkers.Clip("a.mov", benchStart.minusSeconds(100), 600, 40);
    var first = ClipMarkers.of(campaign, clip).markers().get(0);
    assertThat(first.words()).isEqualTo("Alder, Toast: start");
    assertThat(first.seconds()).isEqualTo(60);
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
    "0.45 kWh, zero point four five kilowatt-hours"
  })
  void figuresAreSpoken(String printed, String words) {
    assertThat(Spoken.figure(printed)).isEqualTo(words);
  }
}
