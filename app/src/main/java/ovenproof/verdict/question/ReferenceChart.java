package ovenproof.verdict.question;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.years.SelfStartingChart;
import ovenproof.core.years.SessionCorrection;
import ovenproof.measure.Measured;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * One measure of the reference appliance over the sessions of one or several campaigns.
 *
 * @param label test and measure
 * @param unit of the values
 * @param sessions in order of time
 * @param points of the chart, one per session
 * @param correction what may be taken off the products of a session
 */
public record ReferenceChart(
    String label,
    String unit,
    List<Session> sessions,
    List<SelfStartingChart.Point> points,
    SessionCorrection correction) {

  public ReferenceChart {
    sessions = List.copyOf(sessions);
    points = List.copyOf(points);
  }

  /**
   * Runs of the reference appliance in one session.
   *
   * @param campaign its title
   * @param name of the session
   * @param runs values, at least one
   */
  public record Session(String campaign, String name, double[] runs) {
    public double mean() {
      return Descriptive.of(runs).mean();
    }
  }

  /** A campaign with what was measured of it. */
  public record Season(Campaign campaign, Measured measured) {}

  /** Name and unit of a measure that several campaigns share. */
  private record Key(String test, String use) {}

  /** A session that is being gathered. */
  private record Gathered(
      @Nullable Instant first, String campaign, String name, List<Double> runs) {}

  /**
   * Every numeric measure of a product that has runs in at least two sessions; by test and measure
   * as the latest method names them.
   *
   * @param seasons campaigns in order of time, the latest last
   * @param product key of the reference appliance, the same in all of them
   */
  public static List<ReferenceChart> of(List<Season> seasons, String product) {
    Campaign latest = seasons.get(seasons.size() - 1).campaign();
    List<ReferenceChart> charts = new ArrayList<>();
    for (TestPlan test : latest.method().tests()) {
      for (MeasureUse use : test.measures()) {
        Key key = new Key(test.id(), use.id());
        List<Session> sessions = new ArrayList<>();
        seasons.forEach(season -> sessions.addAll(sessions(season, key, product)));
        if (sessions.size() >= 2) {
          String name = use.name() == null ? use.id() : use.name();
          charts.add(chart(test.name() + ", " + name, unit(seasons, key), sessions));
        }
      }
    }
    return charts;
  }

  private static ReferenceChart chart(String label, String unit, List<Session> sessions) {
    double[] means = sessions.stream().mapToDouble(Session::mean).toArray();
    return new ReferenceChart(
        label,
        unit,
        sessions,
        SelfStartingChart.of(means),
        SessionCorrection.of(sessions.stream().map(Session::runs).toList()));
  }

  private static String unit(List<Season> seasons, Key key) {
    return seasons.stream()
        .flatMap(s -> s.measured().of(key.test(), key.use()).stream())
        .map(v -> v.value().unit().symbol())
        .findFirst()
        .orElse("");
  }

  /** Censored runs and runs without a session are left out. */
  private static List<Session> sessions(Season season, Key key, String product) {
    Map<String, Gathered> byName = new LinkedHashMap<>();
    for (Measured.Value value : season.measured().counted(key.test(), key.use(), product)) {
      Double exact = value.value().value();
      Optional<Run> run =
          season.campaign().runs().stream().filter(r -> r.id().equals(value.run())).findFirst();
      String session = run.map(Run::session).orElse(null);
      if (exact != null && session != null) {
        Instant started = run.get().started();
        Gathered before = byName.get(session);
        if (before == null) {
          before =
              new Gathered(started, season.campaign().info().title(), session, new ArrayList<>());
        }
        before.runs().add(exact);
        byName.put(
            session,
            new Gathered(
                earlier(before.first(), started), before.campaign(), session, before.runs()));
      }
    }
    return byName.values().stream()
        .sorted(
            Comparator.comparing(Gathered::first, Comparator.nullsFirst(Comparator.naturalOrder())))
        .map(
            g ->
                new Session(
                    g.campaign(),
                    g.name(),
                    g.runs().stream().mapToDouble(Double::doubleValue).toArray()))
        .toList();
  }

  private static @Nullable Instant earlier(@Nullable Instant a, @Nullable Instant b) {
    if (a == null || b == null) {
      return a == null ? b : a;
    }
    return a.isBefore(b) ? a : b;
  }
}
