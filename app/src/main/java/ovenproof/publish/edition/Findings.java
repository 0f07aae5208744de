package ovenproof.publish.edition;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/**
 * What was found, as headings and sentences that the tiers carry.
 *
 * <p>"Leads" is said of a tier of one; products of one tier lead together. Inside a test, where no
 * margin was computed, a product is called ahead only when its whole interval lies above all
 * others.
 */
public final class Findings {
  private final Edition edition;

  public Findings(Edition edition) {
    this.edition = edition;
  }

  /** The heading of the review. */
  public String headline() {
    List<ProductVerdict> ranked = edition.ranked();
    int all = edition.verdict().products().size();
    if (ranked.isEmpty()) {
      return withoutRanks();
    }
    List<String> best = names(edition.verdict().tier(1));
    if (ranked.size() == 1) {
      return best.get(0) + " is the only one of " + Words.number(all) + " that holds a place";
    }
    if (best.size() == ranked.size()) {
      return Words.capital(Words.number(ranked.size()))
          + " products, and "
          + runs()
          + " cannot tell any two of them apart";
    }
    if (best.size() == 1) {
      return best.get(0) + " leads the " + Words.number(all) + " we tested";
    }
    if (best.size() > 5) {
      return Words.capital(Words.number(best.size()))
          + " of "
          + Words.number(all)
          + " lead; "
          + runs()
          + " cannot tell them apart";
    }
    return Words.list(best) + " lead; " + runs() + " cannot tell them apart";
  }

  private String withoutRanks() {
    List<ProductVerdict> scored =
        edition.verdict().products().stream().filter(p -> p.score().value() != null).toList();
    if (scored.isEmpty()) {
      return "Nothing can be ranked yet: no product has a score";
    }
    ProductVerdict first = scored.get(0);
    return first.name()
        + " scores "
        + Scores.words(first.score())
        + (scored.size() == 1
            ? "; one product: no rank"
            : "; too few runs to say whether it is ahead");
  }

  /** {@code three runs}, or {@code these runs} when their number differs between tests. */
  private String runs() {
    List<Integer> numbers =
        edition.campaign().method().tests().stream()
            .map(TestPlan::replicates)
            .filter(n -> n > 0)
            .distinct()
            .toList();
    return numbers.size() == 1 ? Words.count(numbers.get(0), "run", "runs") : "these runs";
  }

  /** What was done, in a sentence below the heading. */
  public String summary() {
    long tests =
        edition.campaign().method().tests().stream().filter(t -> t.replicates() > 0).count();
    int counted = edition.campaign().countedRuns().size();
    return Words.capital(Words.count(edition.verdict().products().size(), "product", "products"))
        + ", "
        + Words.count((int) tests, "test", "tests")
        + ", "
        + Words.count(counted, "counted run", "counted runs")
        + " of "
        + edition.campaign().runs().size()
        + ".";
  }

  /** The heading of a product's page. */
  public String product(ProductVerdict product) {
    String score = product.name() + ": " + Scores.words(product.score());
    if (product.score().value() != null) {
      score += " of 10";
    }
    return score + product(product, level(product));
  }

  private String product(ProductVerdict product, List<String> level) {
    if (product.tier() == null) {
      return product.score().note() == null ? "" : "; " + product.score().note();
    }
    String place = product.tier() == 1 ? "in the first tier" : "in tier " + product.tier();
    if (level.isEmpty()) {
      return product.tier() == 1 ? ", ahead of all others we tested" : ", alone " + place;
    }
    if (level.size() > 4) {
      return ", level with " + Words.number(level.size()) + " others " + place;
    }
    return ", level with " + Words.list(level);
  }

  /** Names of the other products of its tier. */
  public List<String> level(ProductVerdict product) {
    if (product.tier() == null) {
      return List.of();
    }
    return names(
        edition.verdict().tier(product.tier()).stream()
            .filter(p -> !p.id().equals(product.id()))
            .toList());
  }

  /** The heading of a test's page. */
  public String test(TestPlan test) {
    List<Candidate> candidates = candidates(test.id());
    String name = test.name();
    if (candidates.isEmpty()) {
      return name + ": nothing scored";
    }
    BigDecimal highestLow = null;
    for (Candidate candidate : candidates) {
      if (candidate.low() != null && (highestLow == null || gt(candidate.low(), highestLow))) {
        highestLow = candidate.low();
      }
    }
    if (highestLow == null) {
      Candidate first = candidates.get(0);
      return name + ": " + first.name() + " scores " + first.value() + "; no interval, no order";
    }
    return name + ": " + leaders(candidates, highestLow);
  }

  private static String leaders(List<Candidate> candidates, BigDecimal highestLow) {
    List<Candidate> level =
        candidates.stream()
            .filter(c -> c.high() == null || c.high().compareTo(highestLow) >= 0)
            .toList();
    if (candidates.size() == 1) {
      return candidates.get(0).name() + " scores " + candidates.get(0).value();
    }
    if (level.size() == 1) {
      return level.get(0).name() + " ahead of the field with " + level.get(0).value();
    }
    if (level.size() == candidates.size()) {
      return "no product stands out; all intervals overlap";
    }
    if (level.size() > 4) {
      return Words.number(level.size()) + " score highest, their intervals overlap";
    }
    return Words.list(level.stream().map(Candidate::name).toList())
        + " score highest, their intervals overlap";
  }

  private record Candidate(
      String name, BigDecimal value, @Nullable BigDecimal low, @Nullable BigDecimal high) {}

  private List<Candidate> candidates(String test) {
    List<Candidate> found = new ArrayList<>();
    for (ProductVerdict product : edition.verdict().products()) {
      product
          .test(test)
          .map(Node::score)
          .filter(s -> s.value() != null && s.known() != Score.Known.CANNOT_DO)
          .ifPresent(s -> found.add(candidate(product.name(), s)));
    }
    found.sort(Comparator.comparing(Candidate::value).reversed());
    return found;
  }

  private static Candidate candidate(String name, Score score) {
    BigDecimal value = java.util.Objects.requireNonNull(score.value());
    return new Candidate(name, value, score.low(), score.high());
  }

  private static boolean gt(BigDecimal a, BigDecimal b) {
    return a.compareTo(b) > 0;
  }

  /** What must be said beside a product's score: gates that did not simply pass, and gaps. */
  public List<String> reservations(ProductVerdict product) {
    List<String> said = new ArrayList<>();
    for (GateOutcome gate : product.gates()) {
      if (gate.state() != GateOutcome.State.PASSED) {
        said.add(GateWords.sentence(edition, gate));
      }
    }
    if (!product.missing().isEmpty()) {
      said.add(missing(product.missing()));
    }
    return said;
  }

  /** A limit and what it said, in a sentence. */
  public String gate(GateOutcome gate) {
    return GateWords.sentence(edition, gate);
  }

  /** Runs that are listed but do not count, each with the reason. */
  public List<String> notCounted(String product) {
    return edition.campaign().runs().stream()
        .filter(r -> r.product().equals(product))
        .filter(r -> edition.campaign().whyNotCounted(r).isPresent())
        .map(this::notCounted)
        .toList();
  }

  private String notCounted(Run run) {
    return run.id() + ": " + edition.campaign().whyNotCounted(run).orElse("");
  }

  private static List<String> names(List<ProductVerdict> products) {
    return products.stream().map(ProductVerdict::name).collect(Collectors.toList());
  }

  /** Lower-case first letter, for a name inside a sentence that is no proper name. */
  static String inside(String name) {
    return name.isEmpty()
        ? name
        : name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }

  /** One gap is named; several are counted, because the product's own page lists them. */
  private static String missing(List<String> gaps) {
    return gaps.size() == 1
        ? "Missing: " + gaps.get(0)
        : "Missing: " + gaps.size() + " criteria, listed on its page";
  }
}
