package ovenproof.home;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ovenproof.campaign.Campaign;
import ovenproof.method.TestPlan;
import ovenproof.web.Workbench;

/** What waits in a campaign, in words. */
final class Waiting {
  private Waiting() {}

  static List<String> of(Workbench.Sheet sheet) {
    Campaign c = sheet.campaign();
    List<String> waiting = new ArrayList<>();
    Map<String, Integer> counted = new LinkedHashMap<>();
    RunState.all(sheet)
        .byRun()
        .forEach(
            (run, state) -> {
              if (state == RunState.COUNTED || state == RunState.RUNNING) {
                counted.merge(run.product() + "/" + run.test(), 1, Integer::sum);
              }
            });
    Set<String> excused = new HashSet<>();
    c.notRun().forEach(n -> excused.add(n.product() + "/" + n.test()));
    for (TestPlan test : c.method().tests()) {
      for (Campaign.Product product : c.products()) {
        String cell = product.id() + "/" + test.id();
        int left = test.replicates() - counted.getOrDefault(cell, 0);
        if (left > 0 && !excused.contains(cell)) {
          waiting.add(
              product.name()
                  + ", "
                  + test.name()
                  + ": "
                  + left
                  + (left == 1 ? " run to do" : " runs to do"));
        }
      }
    }
    return waiting;
  }
}
