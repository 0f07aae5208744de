package ovenproof.verdict.question;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.years.PoolBridge;
import ovenproof.core.years.SelfStartingChart;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.verdict.VerdictService.Scored;

/** Questions that reach over more than one campaign, method version or publication. */
public final class YearsQuestions {

  private YearsQuestions() {}

  // --- the reference appliance ---

  /**
   * Whether the reference appliance behaved as before.
   *
   * @param seasons in order of time, the latest last
   */
  public static QuestionAnswer reference(List<ReferenceChart.Season> seasons, String product) {
    Campaign latest = seasons.get(seasons.size() - 1).campaign();
    if (latest.products().stream().noneMatch(p -> p.id().equals(product))) {
      throw new InputException(
          Problem.error(
              Place.of("products.csv"),
              "no product \"" + product + "\"",
              "the key of the reference appliance",
              "one of "
                  + String.join(
                      ", ", latest.products().stream().map(Campaign.Product::id).toList())));
    }
    List<List<Object>> rows = new ArrayList<>();
    for (ReferenceChart chart : ReferenceChart.of(seasons, product)) {
      rows.add(row(chart));
    }
    return new QuestionAnswer(
        "reference",
        "The reference appliance over the sessions: " + product,
        List.of(
            "measure",
            "sessions",
            "latest",
            "earlier mean",
            "z",
            "EWMA",
            "chart",
            "of a drift taken off"),
        rows,
        referenceSentences(rows));
  }

  private static List<Object> row(ReferenceChart chart) {
    List<SelfStartingChart.Point> points = chart.points();
    SelfStartingChart.Point last = points.get(points.size() - 1);
    double before =
        chart.sessions().subList(0, points.size() - 1).stream()
            .mapToDouble(ReferenceChart.Session::mean)
            .average()
            .orElse(Double.NaN);
    return List.of(
        chart.label(),
        points.size(),
        figure(last.value()) + " " + chart.unit(),
        figure(before),
        figure(last.z()),
        Double.isNaN(last.ewma())
            ? "–"
            : figure(last.ewma()) + " (limit " + figure(last.ewmaLimit()) + ")",
        signals(chart),
        String.format(Locale.ROOT, "%.0f %%", 100 * chart.correction().share()));
  }

  /** Every session that gave a signal, by name; what the chart says now when none did. */
  private static String signals(ReferenceChart chart) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < chart.points().size(); i++) {
      SelfStartingChart.Signal signal = chart.points().get(i).signal();
      if (signal == SelfStartingChart.Signal.SHEWHART) {
        found.add(chart.sessions().get(i).name() + " far out");
      } else if (signal == SelfStartingChart.Signal.EWMA) {
        found.add(chart.sessions().get(i).name() + " shifted");
      }
    }
    if (!found.isEmpty()) {
      return String.join("; ", found);
    }
    return chart.points().size() < SelfStartingChart.FIRST_JUDGED
        ? "too few sessions to judge"
        : "as before";
  }

  private static List<String> referenceSentences(List<List<Object>> rows) {
    if (rows.isEmpty()) {
      return List.of(
          "No measure of it was taken in two sessions. Cook the same appliance in every session and"
              + " name the session of each run.");
    }
    return List.of(
        "Each session is held against all earlier ones; judged from the sixth. Far out: |z| above 3."
            + " Shifted: the smoothed z beyond its limit. Of healthy years with 20 sessions, about 8 in"
            + " 100 give a signal.",
        "Nothing is taken off before five sessions, and never all of a drift: the reference's own runs"
            + " are noise too. The correction is not applied to the verdict by itself.");
  }

  // --- crossing from one pool to another ---

  /** Products of an earlier campaign on the scale of this one. */
  public static QuestionAnswer bridge(Scored earlier, Scored now, String name) {
    return crossing(
        "bridge", "Products of " + name + " on today's scale", earlier, now, "tested there");
  }

  /**
   * Products that were tested after the verdict was published, beside what was tested again then.
   *
   * @param published the field as it was published
   * @param later the runs after it
   */
  public static QuestionAnswer later(Scored published, Scored later) {
    return crossing("later", "Tested after publication", later, published, "tested later");
  }

  /** Whether a run belongs to the time after publication. */
  public static Optional<Instant> publication(Campaign campaign) {
    return Optional.ofNullable(campaign.info().published())
        .map(day -> day.plusDays(1).atStartOfDay(campaign.info().zone()).toInstant());
  }

  /** Products all of whose runs started after the moment. */
  public static List<String> onlyAfter(Campaign campaign, Instant moment) {
    List<String> late = new ArrayList<>();
    for (Campaign.Product product : campaign.products()) {
      List<Run> runs =
          campaign.runs().stream().filter(r -> r.product().equals(product.id())).toList();
      boolean all = runs.stream().allMatch(r -> r.started() != null && r.started().isAfter(moment));
      if (!runs.isEmpty() && all) {
        late.add(product.id());
      }
    }
    return late;
  }

  /** A product with a plain total in both. */
  private record Shared(String label, double from, double to) {}

  private static QuestionAnswer crossing(
      String id, String title, Scored from, Scored to, String there) {
    List<Shared> shared = shared(from, to);
    double[] old = shared.stream().mapToDouble(Shared::from).toArray();
    double[] current = shared.stream().mapToDouble(Shared::to).toArray();
    double allowed = allowed(to);
    Optional<PoolBridge> bridge = PoolBridge.of(old, current, allowed);
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : from.result().products()) {
      if (!isPlain(to.result().product(product.id()).orElse(null))) {
        rows.add(crossed(product, bridge, to));
      }
    }
    return new QuestionAnswer(
        id,
        title,
        List.of("product", there, "on this scale", "90 %", "places it may hold"),
        rows,
        sentences(shared, bridge, allowed, rows));
  }

  private static List<Shared> shared(Scored from, Scored to) {
    List<Shared> shared = new ArrayList<>();
    for (ProductScore product : from.result().products()) {
      ProductScore other = to.result().product(product.id()).orElse(null);
      if (isPlain(product) && other != null && isPlain(other)) {
        shared.add(new Shared(product.label(), product.total().low(), other.total().low()));
      }
    }
    return shared;
  }

  private static boolean isPlain(@org.jspecify.annotations.Nullable ProductScore product) {
    return product != null && product.total().scored() && !product.total().bounded();
  }

  /** An offset that is less sure than what splits two products bridges nothing. */
  private static double allowed(Scored to) {
    Double margin = to.verdict().margin();
    return margin == null || !(margin > 0) ? 0.5 : margin;
  }

  private static List<Object> crossed(
      ProductScore product, Optional<PoolBridge> bridge, Scored to) {
    NodeScore total = product.total();
    if (!isPlain(product)) {
      return List.of(product.label(), "no plain score", "–", "–", "unranked");
    }
    String own = Objects.requireNonNull(total.displayedLow()).toString();
    double error = total.standardError();
    if (bridge.isEmpty() || Double.isNaN(error)) {
      return List.of(product.label(), own, "–", "–", "unranked");
    }
    double score = Math.max(0, Math.min(10, bridge.get().cross(total.low())));
    double u = bridge.get().uncertainty(error);
    double half = 1.645 * u;
    return List.of(
        product.label(),
        own,
        String.format(Locale.ROOT, "%.1f", score),
        String.format(
            Locale.ROOT, "%.1f–%.1f", Math.max(0, score - half), Math.min(10, score + half)),
        places(score, u, to));
  }

  /** One margin for the field, as inside it. */
  private static String places(double score, double u, Scored to) {
    Optional<Comparison> compared = to.result().compared();
    if (compared.isEmpty() || !(compared.get().margin().c() > 0)) {
      return "unranked";
    }
    double c = compared.get().margin().c();
    int above = 0;
    int below = 0;
    for (String id : compared.get().ids()) {
      NodeScore other = to.result().product(id).orElseThrow().total();
      double needed = c * Math.sqrt(u * u + other.standardError() * other.standardError());
      above += other.low() - score > needed ? 1 : 0;
      below += score - other.high() > needed ? 1 : 0;
    }
    int size = compared.get().ids().size() + 1;
    int low = 1 + above;
    int high = size - below;
    return (low == high ? String.valueOf(low) : low + "–" + high) + " of " + size;
  }

  private static List<String> sentences(
      List<Shared> shared, Optional<PoolBridge> bridge, double allowed, List<List<Object>> rows) {
    List<String> said = new ArrayList<>();
    String names = String.join(", ", shared.stream().map(Shared::label).toList());
    if (rows.isEmpty()) {
      said.add("No product needs a bridge.");
    }
    if (bridge.isPresent()) {
      said.add(
          String.format(
              Locale.ROOT,
              "The bridge holds: %s were tested in both; the scale moved by %+.2f points (90 %%: %+.2f"
                  + " to %+.2f), single products by ± %.2f about it.",
              names,
              bridge.get().offset(),
              bridge.get().interval().low(),
              bridge.get().interval().high(),
              bridge.get().scatter()));
      said.add(
          "Places take the offset's uncertainty and that scatter into account, with the margin of the"
              + " whole field.");
    } else if (shared.size() < PoolBridge.FEWEST) {
      said.add(
          String.format(
              Locale.ROOT,
              "No bridge: %d tested in both%s, %d are needed. What was only tested there stays"
                  + " unranked here.",
              shared.size(),
              names.isEmpty() ? "" : " (" + names + ")",
              PoolBridge.FEWEST));
    } else {
      said.add(
          String.format(
              Locale.ROOT,
              "No bridge: %s were tested in both, but they moved so differently that the offset is less"
                  + " sure than the %.2f points that split two products. What was only tested there"
                  + " stays unranked here.",
              names,
              allowed));
    }
    return said;
  }

  private static String figure(double value) {
    return Double.isNaN(value)
        ? "–"
        : String.format(Locale.ROOT, Math.abs(value) >= 100 ? "%.0f" : "%.2f", value)
            .replace('-', '−');
  }

  // --- another method version ---

  /**
   * What a method version moves in a campaign. Nothing is saved: a frozen verdict stays as it was.
   *
   * @param then under the campaign's own method
   * @param now under the other one
   */
  public static QuestionAnswer rescored(
      Campaign campaign, Scored then, Campaign under, Scored now, int threads) {
    QuestionAnswer moved =
        new VerdictQuestions(under, now, threads)
            .moved(then.scoringCase(), "method " + campaign.method().version());
    List<List<Object>> rows = new ArrayList<>();
    for (List<Object> row : moved.rows()) {
      String label = row.get(0).toString();
      rows.add(
          List.of(
              label,
              row.get(1),
              row.get(2),
              row.get(3),
              place(then, label) + " → " + place(now, label),
              row.get(4)));
    }
    List<String> sentences = new ArrayList<>(moved.sentences());
    sentences.add(
        "A verdict that was frozen or published stays as it was; this table is only shown.");
    return new QuestionAnswer(
        "under",
        campaign.info().title()
            + ": method "
            + campaign.method().version()
            + " → "
            + under.method().version(),
        List.of("product", "then", "now", "difference", "tier", "because of"),
        rows,
        sentences);
  }

  private static String place(Scored scored, String label) {
    return scored.result().products().stream()
        .filter(p -> p.label().equals(label))
        .map(p -> p.tier() == null ? "unranked" : String.valueOf(p.tier()))
        .findFirst()
        .orElse("–");
  }
}
