package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import ovenproof.core.quantity.Unit;

/** What a person answers goes before what the reader would guess. */
class ReaderAnswersTest {

  /** A count in half steps: 21 to 200 degrees within six of them fits minutes, not seconds. */
  private static byte[] steep() {
    StringBuilder text = new StringBuilder("time,T1\n");
    for (int i = 0; i < 40; i++) {
      text.append(i * 0.5).append(',').append(200 - 179 * Math.exp(-i / 4.0)).append('\n');
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void whatATimeColumnCountsIsAskedAndTheAnswerBelieved() {
    TraceFile guessed = TraceReader.withDefaults().read(steep());
    assertThat(guessed.questions()).extracting(Question::id).containsExactly("time-unit");
    assertThat(guessed.time().medianStepSeconds()).isCloseTo(30, within(1e-6));

    ReadOptions seconds = ReadOptions.withDefaults().withCounted(Unit.SECOND);
    TraceFile told = TraceReader.with(seconds).read(steep());
    assertThat(told.questions()).isEmpty();
    assertThat(told.time().medianStepSeconds()).isCloseTo(0.5, within(1e-6));
  }

  @Test
  void onlyAUnitOfTimeCanBeCounted() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ReadOptions.withDefaults().withCounted(Unit.CELSIUS))
        .withMessageContaining("°C");
  }
}
