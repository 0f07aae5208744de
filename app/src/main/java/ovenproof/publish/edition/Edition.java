package ovenproof.publish.edition;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Price;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.Inquiry;
import ovenproof.campaign.Run;
import ovenproof.evidence.EvidenceSource;
import ovenproof.measure.Measured;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * What is published: a campaign, what was measured of it and what that is worth, on a day.
 *
 * @param published the day that is printed as the day of publication
 * @param inquiries what makers and readers asked since, in the order in which it was opened
 */
public record Edition(
    Campaign campaign,
    EvidenceSource evidence,
    Measured measured,
    Verdict verdict,
    LocalDate published,
    List<Inquiry> inquiries) {

  public Edition {
    inquiries = List.copyOf(inquiries);
  }

  /** One that nobody has asked about. */
  public Edition(
      Campaign campaign,
      EvidenceSource evidence,
      Measured measured,
      Verdict verdict,
      LocalDate published) {
    this(campaign, evidence, measured, verdict, published, List.of());
  }

  /** The same with what was asked about it. */
  public Edition with(List<Inquiry> asked) {
    return new Edition(campaign, evidence, measured, verdict, published, asked);
  }

  public boolean isInvented() {
    return campaign.info().provenance() == Campaign.Provenance.INVENTED;
  }

  /** The name that is printed; the key when the product is not in the list. */
  public String name(String product) {
    return campaign.product(product).map(Product::name).orElse(product);
  }

  /** The latest price of a product. */
  public Optional<Price> price(String product) {
    return campaign.prices().stream()
        .filter(p -> p.product().equals(product))
        .max(Comparator.comparing(Price::on));
  }

  /** Products that hold a place, in published order. */
  public List<ProductVerdict> ranked() {
    return verdict.products().stream().filter(p -> p.tier() != null).toList();
  }

  /** Products without a place, in published order. */
  public List<ProductVerdict> unranked() {
    return verdict.products().stream().filter(p -> p.tier() == null).toList();
  }

  /** Counted runs of a product in a test, of the scored variant. */
  public List<Run> countedRuns(String product, String test) {
    String scored = campaign.method().test(test).map(t -> t.scoredVariant().id()).orElse("");
    return campaign.countedRuns().stream()
        .filter(r -> r.product().equals(product) && r.test().equals(test))
        .filter(r -> r.variant().equals(scored))
        .toList();
  }
}
