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

  private final List<GroupReader.Group> groups = new ArrayList<>();

  /** Notes a part of the field that the sentence speaks of. */
  void narrow(GroupReader.Group group) {
    groups.add(group);
  }

  List<GroupReader.Group> groups() {
    return groups;
  }

  /** A figure with the number that was said of it. */
  record Spoken(Figure figure, NumberPhrase number) {}

  private @Nullable Spoken last;
  private @Nullable Spoken before;

  private @Nullable Figure compared;

  /** What the last superlative compared: "smallest for Hornbeam and largest for Rowan". */
  @Nullable Figure compared() {
    return compared;
  }

  void compares(Figure figure) {
    compared = figure;
  }

  /** What a number of the sentence before spoke of: a bare "the Rowan fifteen" goes on with it. */
  SentenceClaims after(@Nullable Spoken spoken) {
    before = spoken;
    return this;
  }

  /** What the last number spoke of, in this sentence or the one before. */
  @Nullable Spoken spoken() {
    return last != null ? last : before;
  }

  @Nullable Figure spokenOf() {
    Spoken spoken = spoken();
    return spoken == null ? null : spoken.figure();
  }

  /** Remembers the figure that a number was found to state: the next one may be of its kind. */
  void speaksOf(Figure figure, NumberPhrase number) {
    last = new Spoken(figure, number);
  }

  /** Whether the number before was one of this sentence. */
  boolean spokeHere() {
    return last != null;
  }

  boolean isParallel(Figure figure) {
    Figure spoken = spokenOf();
    return spoken != null
        && spoken.kind() == figure.kind()
        && spoken.use().equals(figure.use())
        && java.util.Objects.equals(spoken.test(), figure.test());
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
    return (text().strip().endsWith("?") || text().strip().length() < 30 && isUnmarked())
        && Wording.is(
            text(),
            "(?is)[\\s\"'“‘*]*(?:so |and |but |now |okay )?(?:who|which|what|whose|is|was|are|does|do|did|can|could|will|would|should|how|why|want|need|looking for)\\b.*");
  }

  /** Speech that was written down without marks: "so who wins". */
  private boolean isUnmarked() {
    return Wording.is(
        text().strip(), "(?is)(?:so |and |but |now |okay )?(?:who|which|what)\\b[^.!,;:]*");
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
