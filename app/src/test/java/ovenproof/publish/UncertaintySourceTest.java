package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.measure.Component;
import ovenproof.publish.figure.UncertaintySource;

/** Readers never see the names that computing uses. */
class UncertaintySourceTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "probe:air-B1@2026-02-26 | calibration of air-B1, 2026-02-26 | everything read with it",
        "set of probe:air-B1@2026-02-26 | calibration of the probes beside air-B1, 2026-02-26 | every run with these probes",
        "radiation | elements and walls that a bare probe feels | every bare probe alike",
        "radiation:alder | elements and walls of alder | every run of alder",
        "camera:phone-1-am/L | colour calibration of phone-1-am | every picture of that session",
        "panel:s1+s2:crispness:alder | tasters' own taste for alder | every batch of alder they tasted",
        "panel:s1+s2:crispness | level of these tasters | every product they tasted",
        "instrument:scale-1 | scale-1 as declared | everything read with it",
        "run | between and within runs | nothing else",
      })
  void everySourceHasItsWords(String source, String what, String sharedWith) {
    UncertaintySource words = UncertaintySource.ofMean(new Component(source, 1));
    assertThat(words.what()).isEqualTo(what);
    assertThat(words.sharedWith()).isEqualTo(sharedWith);
  }
}
