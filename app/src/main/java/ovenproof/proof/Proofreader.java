package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.measure.Measured;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Proof.Claim;
import ovenproof.verdict.Verdict;

/**
 * Proofreads a draft against a campaign: every number, comparison, superlative, rank and count.
 *
 * <p>Reads English running text, Markdown and captions (WebVTT, SRT). Never throws for what a text
 * contains; a text without claims gives an empty proof.
 */
public final class Proofreader {
  private final Figures figures;
  private final Mentions mentions;
  private final Constants constants;
  private final List<ClaimReader> readers;

  public Proofreader(Campaign campaign, Measured measured, Verdict verdict) {
    this.figures = new Figures(campaign, measured, verdict);
    this.mentions = new Mentions(campaign);
    FigureSearch search = new FigureSearch(figures);
    this.constants = new Constants(campaign);
    this.readers =
        List.of(
            new GroupReader(figures),
            new SafetyReader(),
            new StatedDifferenceReader(),
            new PriceChangeReader(figures),
            new SumReader(figures, search),
            new GapReader(figures, search),
            new VerdictReader(figures),
            new PlateReader(figures, search),
            new QuantifierReader(figures, search),
            new FieldSizeReader(figures),
            new TooReader(figures),
            new LimitReader(figures),
            new BatchReader(figures),
            new ComparisonReader(figures, search),
            new SuperlativeReader(figures, search),
            new RankReader(figures),
            new CountReader(figures),
            new ReachReader(figures, search),
            new FieldReader(figures, search),
            new NumberReader(figures, search, constants),
            new OnlyBeyondReader(figures, search),
            new PairComparisonReader(figures, search));
  }

  public Proof read(String draft) {
    List<Claim> claims = new ArrayList<>();
    ContextTracker tracker = new ContextTracker(mentions, constants);
    List<NumberPhrase> last = List.of();
    int paragraph = -1;
    SentenceClaims.@Nullable Spoken spoken = null;
    for (Sentence sentence : DraftText.sentences(draft, mentions.anyName(), mentions.anyFood())) {
      boolean goesOn = sentence.paragraph() == paragraph;
      List<NumberPhrase> before = goesOn ? last : List.of();
      List<NumberPhrase> numbers =
          Elliptic.complete(sentence.text(), NumberScanner.scan(sentence.text()), before);
      SentenceClaims found =
          new SentenceClaims(tracker.enter(sentence, numbers), numbers)
              .after(goesOn ? spoken : null);
      last = Elliptic.remembered(before, found.numbers());
      paragraph = sentence.paragraph();
      readers.forEach(reader -> reader.read(found));
      claims.addAll(found.claims());
      spoken = found.spoken();
    }
    claims.sort(Comparator.comparingInt(Claim::line).thenComparingInt(Claim::column));
    return new Proof(claims);
  }
}
