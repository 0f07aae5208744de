package ovenproof.tracepage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;

/**
 * Whose heat a channel may be: a run, every run of a product, or the room's.
 *
 * @param value as a form sends it
 */
public record RunChoice(
    String value, String words, @Nullable String run, @Nullable String product) {

  private static final RunChoice ROOM =
      new RunChoice("room", "the room, for every run", null, null);

  static List<RunChoice> all(Campaign c) {
    List<RunChoice> all = new ArrayList<>();
    for (Campaign.Product p : c.products()) {
      all.add(
          new RunChoice(
              "product:" + p.id(), p.name() + ", every run while it was logged", null, p.id()));
    }
    for (Run r : c.runs()) {
      all.add(of(c, r));
    }
    all.add(ROOM);
    return all;
  }

  static RunChoice of(Campaign c, Run r) {
    String product = c.product(r.product()).map(Campaign.Product::name).orElse(r.product());
    String test = c.method().test(r.test()).map(TestPlan::name).orElse(r.test());
    String words = product + ", " + test + ", run " + r.replicate() + " (" + r.id() + ")";
    return new RunChoice("run:" + r.id(), words, r.id(), null);
  }

  static Optional<RunChoice> find(Campaign c, String value) {
    return all(c).stream().filter(r -> r.value().equals(value)).findFirst();
  }
}
