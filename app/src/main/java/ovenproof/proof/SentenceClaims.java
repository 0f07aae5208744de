package ovenproof.proof;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Proof.Claim;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * One sentence while it is read: its numbers, what is already taken, and the claims found so far.
 */
final class SentenceClaims {
  private final Context context;
  private final List<NumberPhrase> numbers;
  private final BitSet taken = new BitSet();
  private final List<Claim> claims = new ArrayList<>();

  /**
   * @param numbers of the sentence, with the units that speech leaves out
   */
  SentenceClaims(Context context, List<NumberPhrase> numbers) {
    this.context = context;
    this.numbers = new ArrayList<>(numbers);
  }

  private @Nullable Figure last;

  /** Remembers the figure that a number was found to state: the next one may be of its kind. */
  void speaksOf(Figure figure) {
    last = figure;
  }

  boolean isParallel(Figure figure) {
    return last != null
        && last.kind() == figure.kind()
        && last.use().equals(figure.use())
        && java.util.Objects.equals(last.test(), figure.test());
  }

  /** Reads a number anew, when the words after it change its meaning. */
  void replace(NumberPhrase old, NumberPhrase read) {
    numbers.replaceAll(n -> n.equals(old) ? read : n);
  }

  List<NumberPhrase> numbers() {
    return numbers;
  }

  Context context() {
    return context;
  }

  String text() {
    return context.sentence().text();
  }

  /** "Who wins?", "which is the fastest?" states nothing. */
  boolean isQuestion() {
    return text().strip().endsWith("?")
        && Wording.is(
            text(),
            "(?is)[\\s\"'“‘*]*(?:so |and |but |now |okay )?(?:who|which|what|whose|is|was|are|does|do|did|can|could|will|would|should|how|why|want|need|looking for)\\b.*");
  }

  List<Claim> claims() {
    return claims;
  }

  /** Numbers that no reader has taken yet. */
  List<NumberPhrase> freeNumbers() {
    return numbers.stream().filter(n -> isFree(n.start(), n.end())).toList();
  }

  boolean isFree(int start, int end) {
    int next = taken.nextSetBit(start);
    return next < 0 || next >= end;
  }

  /** Marks a stretch as understood, without a claim about it. */
  void take(int start, int end) {
    taken.set(start, end);
  }

  void add(
      int start,
      int end,
      Kind kind,
      Finding finding,
      String stated,
      @Nullable String expected,
      List<String> evidence,
      String why) {
    take(start, end);
    claims.add(
        new Claim(
            context.sentence().written(start, end),
            context.sentence().line(start),
            context.sentence().column(start),
            context.sentence().timecode(start),
            kind,
            finding,
            stated,
            expected,
            evidence,
            why));
  }

  /** Adds what a number was found to be, in the words it stands in. */
  void add(NumberPhrase number, Kind kind, Judge.Ruling ruling, List<String> evidence) {
    add(
        number.start(),
        number.end(),
        kind,
        ruling.finding(),
        number.text(),
        ruling.expected(),
        evidence,
        ruling.why());
  }
}
