package ovenproof.verdict;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Run;

/** The same campaign with less in it: earlier, or without a person. */
public final class CampaignViews {

  private CampaignViews() {}

  /** Without the ratings of one assessor. */
  public static Campaign withoutAssessor(Campaign campaign, String assessor) {
    List<Rating> left =
        campaign.ratings().stream().filter(r -> !r.assessor().equals(assessor)).toList();
    return copy(campaign, campaign.runs(), left, null);
  }

  /** Without some runs; what else was written about them no longer counts for anything. */
  public static Campaign withoutRuns(Campaign campaign, Set<String> runs) {
    List<Run> left = campaign.runs().stream().filter(r -> !runs.contains(r.id())).toList();
    List<Rating> ratings =
        campaign.ratings().stream().filter(r -> !runs.contains(r.run())).toList();
    return copy(campaign, left, ratings, null);
  }

  /**
   * As it was known at a moment: runs started and entries made after it are left out; what they
   * corrected holds again. Runs and entries without a time count as known.
   */
  public static Campaign asOf(Campaign campaign, Instant moment) {
    List<Run> runs = campaign.runs().stream().filter(r -> known(r.started(), moment)).toList();
    return copy(campaign, runs, entries(campaign.ratings(), moment), moment);
  }

  /** With the runs that started after a moment only; facts and prices stay. */
  public static Campaign startedAfter(Campaign campaign, Instant moment) {
    List<Run> runs = campaign.runs().stream().filter(r -> after(r.started(), moment)).toList();
    return copy(campaign, runs, campaign.ratings(), null);
  }

  private static boolean after(@Nullable Instant at, Instant moment) {
    return at != null && at.isAfter(moment);
  }

  private static boolean known(@Nullable Instant at, @Nullable Instant moment) {
    return at == null || moment == null || !at.isAfter(moment);
  }

  private static <E extends Entry> List<E> entries(List<E> entries, @Nullable Instant moment) {
    return entries.stream().filter(e -> known(e.origin().at(), moment)).toList();
  }

  private static Campaign copy(
      Campaign c, List<Run> runs, List<Rating> ratings, @Nullable Instant moment) {
    return new Campaign(
        c.info(),
        c.method(),
        c.products(),
        c.leftOut(),
        c.specimens(),
        c.prices(),
        entries(c.facts(), moment),
        entries(c.ratedSteps(), moment),
        entries(c.features(), moment),
        c.settingCards(),
        c.plan(),
        runs,
        c.notRun(),
        entries(c.events(), moment),
        entries(c.deviations(), moment),
        entries(c.readings(), moment),
        c.lots(),
        c.pieces(),
        ratings,
        c.instruments(),
        c.calibrations(),
        c.traces(),
        c.photos(),
        c.evidence());
  }
}
