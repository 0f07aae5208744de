package ovenproof.core.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * Why a product's displayed total moved between two cases. Each cause gets its Shapley value
 * (Shapley, 1953): its effect averaged over every order in which the causes could have happened.
 * The shares add up to the displayed difference exactly, rounding included.
 *
 * @param before displayed total, at its lower bound where it has bounds
 * @param after likewise
 * @param causes what changed, with its points
 */
public record Attribution(String product, BigDecimal before, BigDecimal after, List<Cause> causes) {
  private static final int MOST = 12;

  public Attribution {
    causes = List.copyOf(causes);
  }

  /**
   * One cause.
   *
   * @param what id of a test whose measurements changed, {@code method} for tree, weights and
   *     curves, {@code gates}, or {@code other tests} when more than ten tests changed
   */
  public record Cause(String what, double points) {}

  /**
   * @throws IllegalArgumentException if the product is missing from a case, or has no total in it
   */
  public static Attribution of(ScoringCase before, ScoringCase after, String product) {
    return new Path(before, after, product).attribution();
  }

  /** The way from one case to the other. */
  private static final class Path {
    private final ScoringCase before;
    private final ScoringCase after;
    private final Candidate old;
    private final Candidate current;
    private final List<String> causes = new ArrayList<>();
    private final Map<String, Set<String>> variables = new LinkedHashMap<>();

    Path(ScoringCase before, ScoringCase after, String product) {
      this.before = before;
      this.after = after;
      old = candidate(before, product);
      current = candidate(after, product);
      tests(before);
      tests(after);
      variables.values().removeIf(own -> own.stream().noneMatch(this::changed));
      merge();
      causes.addAll(variables.keySet());
      if (!before.root().equals(after.root()) && !same(before.root(), after.root())) {
        causes.add("method");
      }
      if (!before.gates().equals(after.gates())) {
        causes.add("gates");
      }
    }

    private static Candidate candidate(ScoringCase scoringCase, String product) {
      return scoringCase
          .product(product)
          .orElseThrow(() -> new IllegalArgumentException("no product \"" + product + "\""));
    }

    /** Curves have no equality of their own; their text is complete. */
    private static boolean same(ValueNode a, ValueNode b) {
      return a.toString().equals(b.toString());
    }

    private void tests(ScoringCase scoringCase) {
      List<ValueNode> tests =
          scoringCase.root() instanceof Group root ? root.children() : List.of(scoringCase.root());
      for (ValueNode test : tests) {
        Set<String> own = variables.computeIfAbsent(test.id(), id -> new LinkedHashSet<>());
        test.all()
            .filter(Criterion.class::isInstance)
            .forEach(c -> own.add(((Criterion) c).variable()));
      }
      Set<String> gated =
          variables.computeIfAbsent("gate measurements", id -> new LinkedHashSet<>());
      scoringCase.gates().forEach(g -> gated.add(g.variable()));
      variables.forEach(
          (id, own) -> {
            if (!id.equals("gate measurements")) {
              gated.removeAll(own);
            }
          });
    }

    private boolean changed(String variable) {
      return !old.answer(variable).equals(current.answer(variable));
    }

    private void merge() {
      if (variables.size() > MOST - 2) {
        List<String> ids = List.copyOf(variables.keySet());
        Set<String> rest = new LinkedHashSet<>();
        ids.subList(MOST - 3, ids.size())
            .forEach(
                id -> {
                  rest.addAll(variables.getOrDefault(id, Set.of()));
                  variables.remove(id);
                });
        variables.put("other tests", rest);
      }
    }

    Attribution attribution() {
      int n = causes.size();
      BigDecimal[] totals = new BigDecimal[1 << n];
      for (int set = 0; set < totals.length; set++) {
        totals[set] = total(set);
      }
      List<Cause> shares = new ArrayList<>();
      for (int cause = 0; cause < n; cause++) {
        shares.add(new Cause(causes.get(cause), shapley(totals, cause, n)));
      }
      return new Attribution(current.id(), totals[0], totals[totals.length - 1], shares);
    }

    private static double shapley(BigDecimal[] totals, int cause, int n) {
      double share = 0;
      for (int set = 0; set < totals.length; set++) {
        if ((set & (1 << cause)) == 0) {
          int size = Integer.bitCount(set);
          double weight = 1;
          for (int i = 1; i <= size; i++) {
            weight *= (double) i / (n - size - 1 + i);
          }
          weight /= n;
          share += weight * totals[set | (1 << cause)].subtract(totals[set]).doubleValue();
        }
      }
      return share;
    }

    /** Displayed total with some of the causes having happened. */
    private BigDecimal total(int happened) {
      Map<String, Answer> answers = new LinkedHashMap<>(old.answers());
      for (int c = 0; c < causes.size(); c++) {
        if ((happened & (1 << c)) != 0) {
          for (String variable : variables.getOrDefault(causes.get(c), Set.of())) {
            answers.put(variable, current.answer(variable));
          }
        }
      }
      ScoringCase tree = happened("method", happened) ? after : before;
      ScoringCase gates = happened("gates", happened) ? after : before;
      Set<String> nodes = new LinkedHashSet<>();
      tree.root().all().forEach(n -> nodes.add(n.id()));
      ScoringCase mixed =
          new ScoringCase(
              tree.root(),
              union(tree, gates),
              gates.gates().stream().filter(g -> nodes.contains(g.node())).toList(),
              List.of(current.withAnswers(answers)),
              after.rules());
      BigDecimal shown = Scoring.points(mixed).get(0).displayedLow();
      if (shown == null) {
        throw new IllegalArgumentException(
            "\"" + current.id() + "\" has no total in one of the cases: a veto, or nothing asked");
      }
      return shown;
    }

    private boolean happened(String cause, int set) {
      int index = causes.indexOf(cause);
      return index < 0 || (set & (1 << index)) != 0;
    }

    private static List<Variable> union(ScoringCase first, ScoringCase second) {
      Map<String, Variable> all = new LinkedHashMap<>();
      second.variables().forEach(v -> all.put(v.id(), v));
      first.variables().forEach(v -> all.put(v.id(), v));
      return List.copyOf(all.values());
    }
  }
}
