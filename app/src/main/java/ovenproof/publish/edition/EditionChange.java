package ovenproof.publish.edition;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.edition.FrozenEdition.Standing;
import ovenproof.publish.edition.FrozenEdition.TestStanding;

/**
 * What an edition changed against the one before it.
 *
 * @param moves everything printed that is different, product by product
 */
public record EditionChange(FrozenEdition before, FrozenEdition after, List<Move> moves) {

  public EditionChange {
    moves = List.copyOf(moves);
  }

  /** What moved. */
  public enum Kind {
    LISTED,
    SCORE,
    RANK,
    TIER,
    TEST_SCORE,
    PRICE;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
  }

  /**
   * One printed thing that is different.
   *
   * @param what its name: {@code score}, {@code rank}, or a test's name
   * @param was as printed before; null when the product is new
   * @param is as printed now; null when it is no longer listed
   */
  public record Move(
      String product,
      String name,
      Kind kind,
      String what,
      @Nullable String was,
      @Nullable String is) {

    /** {@code score 6.6 → 6.9 (+0.3)}, {@code is new}, {@code is no longer listed}. */
    public String words() {
      if (was == null) {
        return kind == Kind.LISTED ? "is new" : what + " now " + is;
      }
      if (is == null) {
        return kind == Kind.LISTED ? "is no longer listed" : what + " was " + was + ", now none";
      }
      return what + " " + was + " → " + is + difference(was, is);
    }

    private static String difference(String was, String is) {
      if (!was.matches("−?\\d+(\\.\\d+)?") || !is.matches("−?\\d+(\\.\\d+)?")) {
        return "";
      }
      if (!was.contains(".") || !is.contains(".")) {
        return "";
      }
      BigDecimal change =
          new BigDecimal(is.replace('−', '-')).subtract(new BigDecimal(was.replace('−', '-')));
      return " (" + (change.signum() < 0 ? "−" : "+") + change.abs().toPlainString() + ")";
    }
  }

  /** Compares two editions; products in the order of the later one. */
  public static EditionChange between(FrozenEdition before, FrozenEdition after) {
    List<Move> moves = new ArrayList<>();
    for (Standing now : after.products()) {
      Optional<Standing> then = before.product(now.id());
      if (then.isEmpty()) {
        moves.add(new Move(now.id(), now.name(), Kind.LISTED, "listed", null, now.score()));
      } else {
        compare(then.get(), now, moves);
      }
    }
    for (Standing then : before.products()) {
      if (after.product(then.id()).isEmpty()) {
        moves.add(new Move(then.id(), then.name(), Kind.LISTED, "listed", then.score(), null));
      }
    }
    return new EditionChange(before, after, moves);
  }

  private static void compare(Standing then, Standing now, List<Move> moves) {
    move(now, Kind.SCORE, "score", then.score(), now.score(), moves);
    move(now, Kind.RANK, "rank", then.rank(), now.rank(), moves);
    if (then.tier() != null || !then.tests().isEmpty()) {
      move(now, Kind.TIER, "tier", tier(then), tier(now), moves);
    }
    if (!then.tests().isEmpty()) {
      for (TestStanding test : now.tests()) {
        move(now, Kind.TEST_SCORE, test.name(), score(then, test.id()), test.score(), moves);
      }
      move(now, Kind.PRICE, "price", then.price(), now.price(), moves);
    }
  }

  private static String tier(Standing standing) {
    return standing.tier() == null ? "none" : standing.tier().toString();
  }

  private static @Nullable String score(Standing standing, String test) {
    return standing.tests().stream()
        .filter(t -> t.id().equals(test))
        .map(TestStanding::score)
        .findFirst()
        .orElse(null);
  }

  private static void move(
      Standing now,
      Kind kind,
      String what,
      @Nullable String was,
      @Nullable String is,
      List<Move> moves) {
    if (!Objects.equals(was, is)) {
      moves.add(new Move(now.id(), now.name(), kind, what, was, is));
    }
  }

  /** Moves of one kind. */
  public List<Move> moves(Kind kind) {
    return moves.stream().filter(m -> m.kind() == kind).toList();
  }

  /** What it did to the order, in a sentence. */
  public String effectOnRanks() {
    List<Move> ranks = moves(Kind.RANK);
    List<Move> listed = moves(Kind.LISTED);
    if (ranks.isEmpty() && listed.isEmpty()) {
      return moves(Kind.SCORE).isEmpty()
          ? "No printed score or rank moved."
          : "Scores moved; no printed rank did.";
    }
    List<String> said = new ArrayList<>();
    ranks.forEach(m -> said.add(m.name() + " " + m.was() + " → " + m.is()));
    listed.forEach(m -> said.add(m.name() + " " + m.words()));
    return "Ranks: " + String.join("; ", said) + "." + first();
  }

  private String first() {
    List<String> was = leaders(before);
    List<String> is = leaders(after);
    if (was.isEmpty() || is.isEmpty() || was.equals(is)) {
      return "";
    }
    return " The first tier was " + Words.list(was) + "; it is " + Words.list(is) + ".";
  }

  private static List<String> leaders(FrozenEdition edition) {
    return edition.products().stream()
        .filter(p -> p.tier() != null && p.tier() == 1)
        .map(Standing::name)
        .toList();
  }

  /** Everything in one sentence: versions, scores, ranks. */
  public String sentence() {
    StringBuilder said =
        new StringBuilder("Verdict " + before.verdict() + " became " + after.verdict() + ": ");
    List<Move> main =
        moves.stream()
            .filter(m -> m.kind() == Kind.SCORE || m.kind() == Kind.RANK || m.kind() == Kind.LISTED)
            .toList();
    if (main.isEmpty()) {
      return said.append("no printed score or rank moved.").toString();
    }
    List<String> products = new ArrayList<>();
    for (String product : main.stream().map(Move::product).distinct().toList()) {
      List<Move> own = main.stream().filter(m -> m.product().equals(product)).toList();
      String glue = own.get(0).kind() == Kind.LISTED ? " " : ", ";
      products.add(
          own.get(0).name() + glue + String.join(", ", own.stream().map(Move::words).toList()));
    }
    return said.append(String.join("; ", products)).append('.').toString();
  }
}
