package ovenproof.files;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.method.TestPlan;

/** Weights that can be, samples as the method wants them, and lots that products share. */
final class PieceChecks {
  private static final String WHOLE_BATCH = "all";

  private final Context context;
  private final Sections sections;
  private final Map<String, Run> runs = new LinkedHashMap<>();

  PieceChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
    sections.runs().forEach(r -> runs.putIfAbsent(r.value().id(), r.value()));
  }

  void run() {
    sections.pieces().forEach(PieceChecks::weights);
    Map<String, List<Rowed<Piece>>> byTest = new LinkedHashMap<>();
    for (Rowed<Piece> piece : sections.pieces()) {
      Run run = runs.get(piece.value().run());
      if (run != null) {
        byTest.computeIfAbsent(run.test(), t -> new ArrayList<>()).add(piece);
      }
    }
    byTest.forEach(this::test);
  }

  private static void weights(Rowed<Piece> piece) {
    Quantity before = piece.value().before();
    Quantity after = piece.value().after();
    if (before != null && before.contract() <= 0) {
      piece.row().error("before", before.toString(), "a mass above 0", "");
    }
    if (after != null && after.contract() < 0) {
      piece.row().error("after", after.toString(), "a mass of at least 0", "");
    }
    if (before != null && after != null && after.contract() > before.contract()) {
      piece
          .row()
          .error(
              "after",
              after + ", more than before (" + before + ")",
              "a mass up to " + before,
              "exchanged, or weighed with its tray?");
    }
  }

  private void test(String testId, List<Rowed<Piece>> pieces) {
    lots(testId, pieces);
    context
        .method()
        .flatMap(m -> m.test(testId))
        .map(TestPlan::sample)
        .ifPresent(sample -> masses(sample, pieces));
  }

  private static void masses(TestPlan.Sample sample, List<Rowed<Piece>> pieces) {
    ToleratedQuantity wanted = sample.mass();
    if (wanted == null || wanted.tolerance().contract() == 0) {
      return;
    }
    List<Rowed<Piece>> outside =
        pieces.stream().filter(p -> isOutside(p.value(), wanted, sample.pieces())).toList();
    if (!outside.isEmpty()) {
      Rowed<Piece> first = outside.get(0);
      first
          .row()
          .warning(
              "before",
              first.value().before() + others(outside.size()),
              wanted
                  + (first.value().piece().equals(WHOLE_BATCH)
                      ? " for each of " + sample.pieces() + " pieces"
                      : ""),
              "enter a deviation where it mattered");
    }
  }

  private static String others(int count) {
    return count == 1 ? "" : " and " + (count - 1) + " more outside the tolerance";
  }

  private static boolean isOutside(Piece piece, ToleratedQuantity wanted, int pieces) {
    if (piece.before() == null) {
      return false;
    }
    int share = piece.piece().equals(WHOLE_BATCH) ? pieces : 1;
    Quantity each = new Quantity(piece.before().value() / share, piece.before().unit());
    return !wanted.allows(each);
  }

  /**
   * A lot effect can be told from a product effect only if lots and products are connected: one can
   * walk from every product to every other through lots that both were given.
   */
  private void lots(String testId, List<Rowed<Piece>> pieces) {
    Map<String, Set<String>> lotsOf = new LinkedHashMap<>();
    for (Rowed<Piece> piece : pieces) {
      String lot = piece.value().lot();
      Optional<Run> run = Optional.ofNullable(runs.get(piece.value().run()));
      if (lot != null && run.filter(r -> r.kind() == Run.Kind.COUNTED).isPresent()) {
        lotsOf.computeIfAbsent(run.get().product(), p -> new LinkedHashSet<>()).add(lot);
      }
    }
    if (lotsOf.size() < 2) {
      return;
    }
    Set<String> reached = reached(lotsOf);
    if (!reached.containsAll(lotsOf.keySet())) {
      Rowed<Piece> first = pieces.get(0);
      first
          .row()
          .warning(
              "lot",
              "lots of " + testId + " that no two groups of products share",
              "every lot given to several products",
              "a difference between products may be one between lots");
    }
  }

  private static Set<String> reached(Map<String, Set<String>> lotsOf) {
    Set<String> products = new LinkedHashSet<>();
    Set<String> lots = new HashSet<>();
    products.add(lotsOf.keySet().iterator().next());
    int before = -1;
    while (products.size() != before) {
      before = products.size();
      products.forEach(p -> lots.addAll(lotsOf.getOrDefault(p, Set.of())));
      lotsOf.forEach(
          (product, own) -> {
            if (own.stream().anyMatch(lots::contains)) {
              products.add(product);
            }
          });
    }
    return products;
  }
}
