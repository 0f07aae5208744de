package ovenproof.publish.edition;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * A published edition as it was printed, never changed afterwards: what readers saw of scores,
 * ranks, tiers and prices.
 *
 * @param number from 1, in order of publication
 * @param published the day printed on it
 * @param verdict version of the verdict
 * @param method id and version of the method; empty when an older site did not note it
 * @param headline the finding as printed; empty when an older site did not note it
 * @param why the reason given for this edition, or null
 * @param countedRuns runs behind it; 0 when not noted
 * @param files pages and documents that keep it
 */
public record FrozenEdition(
    int number,
    LocalDate published,
    String verdict,
    String method,
    String headline,
    @Nullable String why,
    int countedRuns,
    List<Standing> products,
    List<KeptFile> files) {

  public FrozenEdition {
    if (number < 1) {
      throw new IllegalArgumentException("number must be 1 or more, found " + number);
    }
    products = List.copyOf(products);
    files = List.copyOf(files);
  }

  /**
   * What was printed of a product.
   *
   * @param score in words, as printed
   * @param rank as printed, a dash when unranked
   * @param tier from 1; null when unranked or not noted
   * @param price with its date, or null
   */
  public record Standing(
      String id,
      String name,
      String score,
      String interval,
      String rank,
      @Nullable Integer tier,
      @Nullable String price,
      List<TestStanding> tests) {
    public Standing {
      tests = List.copyOf(tests);
    }
  }

  /** What was printed of a product in a test. */
  public record TestStanding(String id, String name, String score) {}

  /** A file that keeps the edition, and the SHA-256 of its bytes. */
  public record KeptFile(String path, String sha256) {}

  /** The edition as it is printed now. */
  public static FrozenEdition of(Edition edition, int number, @Nullable String why) {
    List<Standing> products = new ArrayList<>();
    for (ProductVerdict product : edition.verdict().products()) {
      products.add(standing(edition, product));
    }
    return new FrozenEdition(
        number,
        edition.published(),
        edition.verdict().version(),
        edition.verdict().method(),
        new Findings(edition).headline(),
        why,
        edition.campaign().countedRuns().size(),
        products,
        List.of());
  }

  private static Standing standing(Edition edition, ProductVerdict product) {
    return new Standing(
        product.id(),
        product.name(),
        Scores.words(product.score()),
        Scores.interval(product.score()),
        Scores.rank(product.rank()),
        product.tier(),
        edition.price(product.id()).map(p -> Prices.text(p) + " on " + p.on()).orElse(null),
        product.tests().stream().map(FrozenEdition::test).toList());
  }

  private static TestStanding test(Node test) {
    return new TestStanding(test.id(), test.name(), Scores.words(test.score()));
  }

  public Optional<Standing> product(String id) {
    return products.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  /** Whether readers saw the same, whatever number, day and reason it carries. */
  public boolean printsTheSameAs(FrozenEdition other) {
    return verdict.equals(other.verdict)
        && headline.equals(other.headline)
        && products.equals(other.products);
  }

  public FrozenEdition keptIn(List<KeptFile> kept) {
    return new FrozenEdition(
        number, published, verdict, method, headline, why, countedRuns, products, kept);
  }
}
