package ovenproof.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** How reasons of several runs are told as one. */
class AnswersTest {
  @Test
  void runsThatFailedAlikeAreSaidOnce() {
    assertThat(Answers.joined(List.of("drift of 5.1 K", "drift of 4.1 K", "drift of 4.7 K")))
        .isEqualTo("drift of 5.1 K (and alike in 2 more)");
    assertThat(Answers.joined(List.of("nobody tasted it", "nobody tasted it")))
        .isEqualTo("nobody tasted it");
  }

  @Test
  void unlikeReasonsAreAllSaid() {
    assertThat(Answers.joined(List.of("no trace", "the probe fell out at 3 min")))
        .isEqualTo("no trace; the probe fell out at 3 min");
  }
}
