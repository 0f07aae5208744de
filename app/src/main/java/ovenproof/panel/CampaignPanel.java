package ovenproof.panel;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Run;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.Rating;
import ovenproof.method.TestPlan;

/**
 * The marks of a campaign's counted runs of scored variants, and what they say. A batch of a run is
 * a batch of its product.
 *
 * @param ratings products by their names, attributes as "Test, Mark"
 */
public record CampaignPanel(List<Rating> ratings, PanelAnalysis analysis) {

  public CampaignPanel {
    ratings = List.copyOf(ratings);
  }

  public static CampaignPanel of(Campaign campaign) {
    Map<String, Run> counted = new HashMap<>();
    for (Run run : campaign.runs()) {
      boolean scored =
          campaign
              .method()
              .test(run.test())
              .map(t -> t.scoredVariant().id().equals(run.variant()))
              .orElse(false);
      if (scored && campaign.whyNotCounted(run).isEmpty()) {
        counted.put(run.id(), run);
      }
    }
    Map<String, String> names = new HashMap<>();
    campaign.products().forEach(p -> names.put(p.id(), p.name()));
    List<Rating> ratings = new ArrayList<>();
    for (ovenproof.campaign.Rating mark : Entry.effective(campaign.ratings())) {
      Run run = counted.get(mark.run());
      if (run != null) {
        ratings.add(rating(campaign, mark, run, names.getOrDefault(run.product(), run.product())));
      }
    }
    return new CampaignPanel(ratings, PanelAnalysis.of(ratings));
  }

  private static Rating rating(
      Campaign campaign, ovenproof.campaign.Rating mark, Run run, String product) {
    return new Rating(
        mark.assessor(),
        product,
        mark.session(),
        run.id() + (mark.batch() == null ? "" : "/" + mark.batch()),
        attribute(campaign, run.test(), mark.mark()),
        mark.value(),
        mark.order(),
        Map.of());
  }

  private static String attribute(Campaign campaign, String test, String mark) {
    return campaign
        .method()
        .test(test)
        .map(plan -> plan.name() + ", " + markName(plan, mark))
        .orElse(mark);
  }

  private static String markName(TestPlan plan, String mark) {
    return plan.marks().stream()
        .filter(m -> m.id().equals(mark))
        .map(m -> m.name())
        .findFirst()
        .orElse(mark);
  }
}
