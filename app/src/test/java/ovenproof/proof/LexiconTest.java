package ovenproof.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import ovenproof.method.MeasureUse;
import ovenproof.proof.Vocabulary.Direction;

/** English by common usage: which end of what an adjective means. */
class LexiconTest {
  private final Lexicon lexicon = Lexicon.load();

  @Test
  void everyMeasureAndFactOfTheCampaignHasWords() {
    FrozenCampaign campaign = FrozenCampaign.again();
    for (var test : campaign.campaign.method().tests()) {
      for (MeasureUse use : test.measures()) {
        boolean other = List.of("mark", "rated", "fact").contains(use.take());
        if (!other) {
          assertThat(lexicon.words(use.take())).as(use.take()).isNotEmpty();
        }
      }
    }
    campaign
        .campaign
        .method()
        .facts()
        .forEach(f -> assertThat(lexicon.words(f.id())).as(f.id()).isNotEmpty());
  }

  @Test
  void adjectivesMeanTheEndThatPeopleMean() {
    assertThat(lexicon.adjective(Stems.of("thriftiest")).direction()).isEqualTo(Direction.LOW);
    assertThat(lexicon.adjective(Stems.of("thirstiest")).takes()).contains("energy");
    assertThat(lexicon.adjective(Stems.of("roomiest")).direction()).isEqualTo(Direction.HIGH);
    assertThat(lexicon.adjective(Stems.of("alike")).takes()).contains("lightness-mean:spread");
    assertThat(lexicon.isLowEndOfMark(Stems.of("soggiest"))).isTrue();
    assertThat(lexicon.isLowEndOfMark(Stems.of("crispest"))).isFalse();
  }

  @Test
  void aWordThatIsAnAdjectiveOfAMeasureIsNoMark() {
    assertThat(lexicon.wordsOfMark(java.util.Set.of(Stems.of("moistness"))))
        .doesNotContain(Stems.of("dry"));
  }
}
