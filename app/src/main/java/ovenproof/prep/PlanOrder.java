package ovenproof.prep;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import ovenproof.campaign.Campaign.NotRun;
import ovenproof.campaign.Campaign.PlannedRun;
import ovenproof.campaign.Campaign.Product;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;

/** The runs that a method asks for, in an order that favours nobody. */
final class PlanOrder {
  private PlanOrder() {}

  /**
   * What the method asks and nobody planned yet: every product × test × scored variant × replicate,
   * but for what is not run with a reason. By replicate, then test; within these the products take
   * turns at being first (a cyclic Latin square: Fisher, <i>The Design of Experiments</i>, ch. 5).
   */
  static List<PlannedRun> missing(
      Method method, List<Product> products, List<PlannedRun> planned, List<NotRun> notRun) {
    Set<String> there = new HashSet<>();
    planned.forEach(p -> there.add(key(p.product(), p.test(), p.variant(), p.replicate())));
    Set<String> excused = new HashSet<>();
    notRun.forEach(n -> excused.add(n.product() + "/" + n.test()));
    int most = method.tests().stream().mapToInt(TestPlan::replicates).max().orElse(0);
    int order = planned.stream().mapToInt(PlanOrder::place).max().orElse(0);
    List<PlannedRun> missing = new ArrayList<>();
    for (int replicate = 1; replicate <= most; replicate++) {
      int turn = replicate - 1;
      for (TestPlan test : method.tests()) {
        for (int i = 0; i < products.size() && replicate <= test.replicates(); i++) {
          Product product = products.get((i + turn) % products.size());
          String variant = test.scoredVariant().id();
          boolean open =
              !there.contains(key(product.id(), test.id(), variant, replicate))
                  && !excused.contains(product.id() + "/" + test.id());
          if (open) {
            missing.add(
                new PlannedRun(product.id(), test.id(), variant, replicate, null, null, ++order));
          }
        }
        turn++;
      }
    }
    return missing;
  }

  static String key(String product, String test, String variant, int replicate) {
    return product + "/" + test + "/" + variant + "/" + replicate;
  }

  static int place(PlannedRun run) {
    return run.order() == null ? 0 : run.order();
  }
}
