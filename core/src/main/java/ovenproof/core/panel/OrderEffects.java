package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Did it matter when a sample was served, and after which other? Fitted only where it can be told
 * from the batch: when people had the samples of one batch at different places, and at least 20
 * degrees of freedom remain.
 *
 * @param tests position and previous sample; empty when they cannot be fitted
 * @param reason why not, or empty
 */
record OrderEffects(List<PanelTest> tests, String reason) {

  private static final int FEWEST_RESIDUAL_DEGREES = 20;

  static OrderEffects of(Observations data, String attribute) {
    if (data.ratings().stream().anyMatch(r -> r.position() == null)) {
      return new OrderEffects(List.of(), "");
    }
    if (data.assessors() < 2 || !ordersDiffer(data)) {
      return new OrderEffects(
          List.of(),
          "Everybody had the samples at the same places: serving order cannot be separated from"
              + " batch.");
    }
    Factor position = Factor.of(data.ratings(), r -> String.valueOf(r.position()));
    Factor previous = previous(data);
    Observations ordered =
        withoutBlocks(data).withBlock("position", position).withBlock("previous", previous);
    int parameters =
        data.assessors() + data.product().size() - 1 + position.size() - 1 + previous.size() - 1;
    if (data.n() - parameters < FEWEST_RESIDUAL_DEGREES) {
      return new OrderEffects(
          List.of(), "Too few marks to tell serving order from the rest (20 to spare are needed).");
    }
    MixedModel model = MixedModel.additive(ordered);
    List<PanelTest> tests = new ArrayList<>();
    tests.add(PanelTest.of("position", attribute, model.blockTest(0)));
    tests.add(PanelTest.of("previous sample", attribute, model.blockTest(1)));
    return new OrderEffects(tests, "");
  }

  private static Observations withoutBlocks(Observations data) {
    return new Observations(
        data.ratings(), data.y(), data.product(), data.assessor(), data.batch(), Map.of());
  }

  /** Whether at least half of the samples were served at different places to different people. */
  private static boolean ordersDiffer(Observations data) {
    Map<String, Integer> first = new HashMap<>();
    Map<String, Boolean> differs = new HashMap<>();
    for (Rating r : data.ratings()) {
      String sample = r.product() + "\u0000" + r.session() + "\u0000" + r.batch();
      int position = r.position() == null ? 0 : r.position();
      Integer seen = first.putIfAbsent(sample, position);
      differs.merge(sample, seen != null && seen != position, Boolean::logicalOr);
    }
    long different = differs.values().stream().filter(d -> d).count();
    return 2 * different >= differs.size();
  }

  private static Factor previous(Observations data) {
    Map<String, String> served = new HashMap<>();
    for (Rating r : data.ratings()) {
      served.put(place(r, 0), r.product());
    }
    return Factor.of(data.ratings(), r -> served.getOrDefault(place(r, -1), "first"));
  }

  private static String place(Rating r, int shift) {
    int position = (r.position() == null ? 0 : r.position()) + shift;
    return r.assessor() + "\u0000" + r.session() + "\u0000" + position;
  }
}
