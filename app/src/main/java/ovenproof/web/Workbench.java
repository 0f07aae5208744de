package ovenproof.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskCampaign;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureRegistry;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.measure.MeasurementCache;
import ovenproof.method.Method;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/**
 * A campaign with its measurements and verdict, computed once per version of it. Safe for threads.
 */
public final class Workbench {
  private static final int KEPT = 8;

  private final Desk desk;
  private final MeasureService measures;
  private final VerdictService verdicts = new VerdictService(2);
  private final Map<String, Sheet> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Sheet> eldest) {
          return size() > KEPT;
        }
      };

  public Workbench(Desk desk) {
    this.desk = desk;
    this.measures = new MeasureService(MeasureRegistry.all(), MeasurementCache.none());
  }

  /** One version of a campaign; measured and scored when first asked. */
  public final class Sheet {
    private final DeskCampaign at;
    private final Campaign campaign;
    private @Nullable Measured measured;
    private @Nullable Verdict verdict;

    private Sheet(DeskCampaign at, Campaign campaign) {
      this.at = at;
      this.campaign = campaign;
    }

    public DeskCampaign at() {
      return at;
    }

    public Campaign campaign() {
      return campaign;
    }

    public synchronized Measured measured() {
      Measured known = measured;
      if (known == null) {
        known = measures.measure(campaign, desk.evidenceOf(at.id()));
        measured = known;
      }
      return known;
    }

    /** Empty when nothing can be scored yet. */
    public synchronized Optional<Verdict> verdict() {
      if (campaign.products().isEmpty() || campaign.method().tests().isEmpty()) {
        return Optional.empty();
      }
      Verdict known = verdict;
      if (known == null) {
        known = verdicts.verdict(campaign, measured());
        verdict = known;
      }
      return Optional.of(known);
    }

    /** The verdict under other parts of the tests. */
    public Verdict weighted(Map<String, Integer> parts) {
      Method m = campaign.method();
      Method.Profile yours = new Method.Profile("your-own-parts", "Your own parts", parts);
      Method weighted =
          new Method(
              m.id(),
              m.title(),
              m.version(),
              m.population(),
              m.why(),
              m.facts(),
              m.ratedFacts(),
              m.tests(),
              m.scoring(),
              List.of(yours));
      return verdicts.score(with(campaign, weighted), measured(), yours.id()).verdict();
    }
  }

  /** The newest version. */
  public Sheet sheet(String id) {
    DeskCampaign at = desk.find(id).orElseThrow(() -> noSuch(id));
    String key = id + "@" + at.version();
    synchronized (kept) {
      Sheet known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    Sheet fresh = new Sheet(at, desk.load(id));
    synchronized (kept) {
      return kept.computeIfAbsent(key, k -> fresh);
    }
  }

  /** What the verdict would be under another method; nothing is saved. */
  public Verdict under(String id, Method method) {
    Campaign campaign = desk.loadWith(id, method);
    return verdicts.verdict(campaign, measures.measure(campaign, desk.evidenceOf(id)));
  }

  private static Campaign with(Campaign c, Method method) {
    return new Campaign(
        c.info(),
        method,
        c.products(),
        c.leftOut(),
        c.specimens(),
        c.prices(),
        c.facts(),
        c.ratedSteps(),
        c.settingCards(),
        c.plan(),
        c.runs(),
        c.notRun(),
        c.events(),
        c.deviations(),
        c.readings(),
        c.lots(),
        c.pieces(),
        c.ratings(),
        c.instruments(),
        c.calibrations(),
        c.traces(),
        c.photos(),
        c.evidence());
  }

  private static InputException noSuch(String id) {
    return new InputException(
        Problem.error(Place.of(id), "no such campaign", "a campaign of this desk", "go to Home"));
  }
}
