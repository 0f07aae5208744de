package ovenproof.verdict;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Rating;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.ranking.Pairs;
import ovenproof.core.ranking.RankSet;
import ovenproof.core.scoring.Attribution;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.LeaveOneOut;
import ovenproof.core.scoring.MoreRuns;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.PriceFront;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.RankAcceptability;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.core.scoring.ScoringRules;
import ovenproof.core.scoring.SuitedTo;
import ovenproof.core.scoring.TestWorth;
import ovenproof.core.scoring.Unseating;
import ovenproof.core.scoring.ValueNode;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.Measured;
import ovenproof.method.Method;
import ovenproof.verdict.VerdictService.Scored;

/** The questions that a lead asks of a verdict. */
public final class VerdictQuestions {
  private static final int SAMPLES = 10_000;

  private final Campaign campaign;
  private final Scored scored;
  private final ScoringCase scoringCase;
  private final ScoringResult result;
  private final int threads;

  public VerdictQuestions(Campaign campaign, Scored scored, int threads) {
    this.campaign = campaign;
    this.scored = scored;
    this.threads = threads;
    scoringCase = scored.scoringCase();
    result = scored.result();
  }

  /** Why one product stands above another: test by test, adding up to the displayed difference. */
  public QuestionAnswer why(String first, String second) {
    ProductScore a = product(first);
    ProductScore b = product(second);
    List<List<Object>> rows = new ArrayList<>();
    BigDecimal total = difference(a.total(), b.total());
    double explained = 0;
    for (NodeScore test : a.total().children()) {
      NodeScore other = b.total().find(test.id()).orElse(test);
      double points = test.share() * shown(test) - other.share() * shown(other);
      boolean adds = !Double.isNaN(points);
      explained += adds ? points : 0;
      rows.add(
          List.of(
              test.label(),
              percent(test.share()),
              text(test),
              text(other),
              adds ? signed(points) : "open"));
    }
    String rest = signed(total.doubleValue() - explained);
    rows.add(List.of("rounding, gates, other than a weighted mean", "", "", "", rest));
    rows.add(List.of("total", "", text(a.total()), text(b.total()), signed(total.doubleValue())));
    return new QuestionAnswer(
        "why",
        "Why " + a.label() + " and " + b.label() + " stand where they do",
        List.of("test", "weight", a.label(), b.label(), "points of the total"),
        rows,
        whySentences(a, b));
  }

  private List<String> whySentences(ProductScore a, ProductScore b) {
    Optional<Comparison> compared = result.compared();
    int i = compared.map(c -> c.ids().indexOf(a.id())).orElse(-1);
    int j = compared.map(c -> c.ids().indexOf(b.id())).orElse(-1);
    if (compared.isEmpty() || i < 0 || j < 0) {
      return List.of("not both are ranked: " + reason(a) + reason(b));
    }
    Pairs pairs = compared.get().pairs();
    boolean firstAbove = pairs.gap(i, j) >= 0;
    int up = firstAbove ? i : j;
    int down = firstAbove ? j : i;
    String above = firstAbove ? a.label() : b.label();
    String below = firstAbove ? b.label() : a.label();
    Pairs.Separation separation = pairs.separation(up, down);
    String edge = separation.onTheEdge() ? " (on the edge)" : "";
    String first =
        String.format(
            Locale.ROOT,
            "P(%s better than %s) = %.2f.",
            above,
            below,
            pairs.probabilityLow(up, down));
    String second =
        String.format(
            Locale.ROOT,
            "Unrounded difference %.2f points; this field separates the two at %.2f: %s%s.",
            pairs.gap(up, down),
            pairs.needed(up, down),
            separation.separated() ? "separated" : "not separated",
            edge);
    return List.of(first, second);
  }

  private static String reason(ProductScore product) {
    return product.why() == null ? "" : product.label() + ": " + product.why() + ". ";
  }

  /** What would unseat the winner. */
  public QuestionAnswer unseat() {
    ProductScore winner = winner();
    List<List<Object>> rows = new ArrayList<>();
    List<Unseating.Change> changes = new ArrayList<>();
    for (ProductScore rival : result.products()) {
      if (!rival.id().equals(winner.id()) && rival.total().scored()) {
        changes.add(Unseating.change(scoringCase, winner.id(), rival.id()));
      }
    }
    changes.sort(
        Comparator.comparingDouble(
            c -> Double.isNaN(c.moved()) ? Double.POSITIVE_INFINITY : c.moved()));
    for (Unseating.Change change : changes) {
      rows.add(
          List.of(
              label(change.rival()),
              Double.isNaN(change.moved()) ? "never" : percent(change.moved()),
              how(change.how()),
              moves(change)));
    }
    return new QuestionAnswer(
        "unseat",
        "What would unseat " + winner.label(),
        List.of("rival", "weight moved", "found by", "how"),
        rows,
        List.of(
            "The share of all weight that must change place for a rival to draw level, scores as"
                + " they are.",
            "A linear program finds the least there is; a search may miss a smaller change."));
  }

  private static String how(Unseating.How how) {
    return switch (how) {
      case LINEAR_PROGRAM -> "linear program";
      case SEARCH -> "search";
      case IMPOSSIBLE -> "no weights do it";
    };
  }

  private String moves(Unseating.Change change) {
    return change.after().entrySet().stream()
        .filter(e -> Math.abs(e.getValue() - before(change, e.getKey())) > 5e-4)
        .map(
            e ->
                nodeLabel(e.getKey())
                    + " "
                    + percent(before(change, e.getKey()))
                    + " → "
                    + percent(e.getValue()))
        .collect(Collectors.joining(", "));
  }

  private static double before(Unseating.Change change, String node) {
    return change.before().getOrDefault(node, 0.0);
  }

  /** Totals under the weights of every reader that the method names. */
  public QuestionAnswer profiles() {
    List<String> columns = new ArrayList<>(List.of("product", "the method's own"));
    List<List<NodeScore>> totals = new ArrayList<>();
    List<String> leaders = new ArrayList<>();
    for (Method.Profile profile : campaign.method().profiles()) {
      List<NodeScore> points = Scoring.points(scoringCase.withParts(profile.parts()));
      columns.add(profile.name());
      totals.add(points);
      leaders.add(leader(profile.name(), points));
    }
    List<String> ids = scoringCase.products().stream().map(p -> p.id()).toList();
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : result.products()) {
      List<Object> row = new ArrayList<>(List.of(product.label(), text(product.total())));
      totals.forEach(points -> row.add(text(points.get(ids.indexOf(product.id())))));
      rows.add(row);
    }
    leaders.add(
        leaders.isEmpty()
            ? "The method names no other readers; profiles in method.yaml do."
            : "The whole verdict of a reader, with intervals and tiers: --profile.");
    return new QuestionAnswer("profiles", "For other readers", columns, rows, leaders);
  }

  private String leader(String reader, List<NodeScore> points) {
    double best = Double.NEGATIVE_INFINITY;
    List<String> first = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      double shown = shown(points.get(i));
      if (points.get(i).scored() && shown >= best) {
        if (shown > best) {
          first.clear();
        }
        best = shown;
        first.add(scoringCase.products().get(i).label());
      }
    }
    return reader + ": " + (first.isEmpty() ? "nobody" : String.join(" and ", first)) + " first.";
  }

  /** Each product's own deviation between runs, pulled towards the field, beside the pooled one. */
  public QuestionAnswer spread() {
    ScoringRules rules = scoringCase.rules();
    ScoringResult pooled =
        Scoring.score(scoringCase.withRules(rules.withSpread(ScoringRules.Spread.POOLED)), threads);
    ScoringResult own =
        Scoring.score(
            scoringCase.withRules(rules.withSpread(ScoringRules.Spread.SHRUNKEN)), threads);
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : result.products()) {
      rows.add(
          List.of(
              product.label(),
              text(product.total()),
              interval(pooled, product.id()),
              tier(pooled, product.id()),
              interval(own, product.id()),
              tier(own, product.id())));
    }
    return new QuestionAnswer(
        "spread",
        "If each product had its own scatter",
        List.of(
            "product",
            "score",
            "90 %, pooled scatter",
            "tier, pooled",
            "90 %, own scatter",
            "tier, own"),
        rows,
        List.of(
            "Pooled: one deviation between runs for the whole field. Own: each product's deviation,"
                + " pulled towards the field's as far as few runs demand (empirical Bayes). Scores do"
                + " not change. The method decides which one counts; this verdict uses the "
                + (rules.spread() == ScoringRules.Spread.POOLED ? "pooled" : "own")
                + " one."));
  }

  private static String tier(ScoringResult in, String product) {
    return in.product(product).map(ProductScore::tier).map(String::valueOf).orElse("unranked");
  }

  private static String interval(ScoringResult in, String product) {
    return in.product(product)
        .map(p -> p.total().interval())
        .map(i -> String.format(Locale.ROOT, "%.1f to %.1f", i.low(), i.high()))
        .orElse("none");
  }

  /** How often each product takes each place when weights are uncertain. */
  public QuestionAnswer acceptability(double concentration) {
    RankAcceptability ranks = RankAcceptability.of(scoringCase, concentration, SAMPLES);
    List<String> columns = new ArrayList<>(List.of("product"));
    for (int place = 1; place <= ranks.products().size(); place++) {
      columns.add(String.valueOf(place));
    }
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : result.products()) {
      int index = ranks.products().indexOf(product.id());
      if (index >= 0) {
        List<Object> row = new ArrayList<>(List.of(product.label()));
        ranks.places().get(index).forEach(share -> row.add(percent(share)));
        rows.add(row);
      }
    }
    return new QuestionAnswer(
        "acceptability",
        "Places under other weights",
        columns,
        rows,
        List.of(
            SAMPLES
                + " sets of weights, Dirichlet around the declared ones with concentration "
                + concentration
                + "; measurements as they are: this is about taste, not about error."));
  }

  /** The verdict without each test. */
  public QuestionAnswer dropTests() {
    return dropped("drop-test", "Without one test", LeaveOneOut.tests(scoringCase, threads));
  }

  /** The verdict without each run; only runs that change something are listed. */
  public QuestionAnswer dropRuns() {
    List<LeaveOneOut.Outcome> all = LeaveOneOut.runs(scoringCase, threads);
    List<LeaveOneOut.Outcome> telling = all.stream().filter(LeaveOneOut.Outcome::decides).toList();
    QuestionAnswer answer = dropped("drop-run", "Without one run", telling);
    List<String> sentences = new ArrayList<>(answer.sentences());
    sentences.add(telling.size() + " of " + all.size() + " runs decide a tier or the first place.");
    return new QuestionAnswer(
        answer.id(), answer.title(), answer.columns(), answer.rows(), sentences);
  }

  /**
   * The verdict without each assessor.
   *
   * @param measure measures a changed campaign again
   */
  public QuestionAnswer dropAssessors(Function<Campaign, Measured> measure) {
    List<LeaveOneOut.Outcome> outcomes = new ArrayList<>();
    for (String assessor :
        new TreeSet<>(campaign.ratings().stream().map(Rating::assessor).toList())) {
      Campaign without = CampaignViews.withoutAssessor(campaign, assessor);
      ScoringCase changed = new CaseBuilder(without, measure.apply(without)).build().scoringCase();
      outcomes.add(LeaveOneOut.outcome(assessor, result, changed, threads));
    }
    return dropped("drop-assessor", "Without one assessor", outcomes);
  }

  private QuestionAnswer dropped(String id, String title, List<LeaveOneOut.Outcome> outcomes) {
    List<List<Object>> rows = new ArrayList<>();
    for (LeaveOneOut.Outcome outcome : outcomes) {
      String tiers = tiers(outcome);
      rows.add(
          List.of(
              nodeLabel(outcome.without()),
              outcome.first().isEmpty() ? "nobody" : label(outcome.first()),
              outcome.winner() == LeaveOneOut.Winner.STAYS ? "stays" : "changes",
              tiers.isEmpty() ? "as they are" : tiers));
    }
    return new QuestionAnswer(
        id,
        title,
        List.of("without", "first then", "first place", "tiers"),
        rows,
        rows.isEmpty() ? List.of("Nothing to leave out, or nothing moves.") : List.of());
  }

  /** Which boundaries between neighbours go and which come; who loses or gains a rank. */
  private String tiers(LeaveOneOut.Outcome outcome) {
    List<String> words = new ArrayList<>();
    for (LeaveOneOut.Neighbours pair : outcome.joined()) {
      words.add(label(pair.above()) + " and " + label(pair.below()) + " in one tier");
    }
    for (LeaveOneOut.Neighbours pair : outcome.split()) {
      words.add(label(pair.above()) + " and " + label(pair.below()) + " in two tiers");
    }
    outcome.tiers().entrySet().stream()
        .filter(e -> e.getValue().contains("unranked"))
        .forEach(e -> words.add(label(e.getKey()) + " " + e.getValue()));
    if (words.isEmpty()) {
      outcome.tiers().forEach((id, move) -> words.add(label(id) + " " + move));
    }
    return String.join("; ", words);
  }

  /** Which test earns its cost, and which repeats another. Minutes are run time on the bench. */
  public QuestionAnswer worth() {
    List<List<Object>> rows = new ArrayList<>();
    for (TestWorth worth : TestWorth.of(scoringCase, benchMinutes(), threads)) {
      rows.add(
          List.of(
              nodeLabel(worth.test()),
              worth.separationsLost(),
              worth.winner() == LeaveOneOut.Winner.STAYS ? "stays" : "changes",
              Double.isNaN(worth.minutes())
                  ? "not recorded"
                  : String.format(Locale.ROOT, "%.0f min", worth.minutes()),
              Double.isNaN(worth.rankCorrelation())
                  ? "too few products"
                  : String.format(
                      Locale.ROOT,
                      "%s (%.2f)",
                      nodeLabel(worth.repeats()),
                      worth.rankCorrelation())));
    }
    return new QuestionAnswer(
        "worth",
        "Which test earns its cost",
        List.of("test", "separations lost", "first place", "bench time", "most alike (Spearman)"),
        rows,
        List.of(
            "Separations lost: pairs that the verdict tells apart only with this test. A test that"
                + " loses none and orders products like another may be dropped next time."));
  }

  /** Time from start to last stop of the runs of each test. */
  private Map<String, Double> benchMinutes() {
    Map<String, Double> minutes = new LinkedHashMap<>();
    for (ovenproof.campaign.Run run : campaign.runs()) {
      double seconds =
          campaign.eventsOf(run.id()).stream()
              .mapToDouble(ovenproof.campaign.Event::elapsedSeconds)
              .max()
              .orElse(Double.NaN);
      if (!Double.isNaN(seconds)) {
        minutes.merge(run.test(), seconds / 60, Double::sum);
      }
    }
    return minutes;
  }

  /** How many more runs would split two products. */
  public QuestionAnswer moreRuns(String first, String second) {
    product(first);
    product(second);
    MoreRuns more;
    try {
      more = MoreRuns.toSplit(scoringCase, first, second, threads);
    } catch (IllegalArgumentException e) {
      throw new InputException(
          Problem.error(
              Place.of("verdict"),
              String.valueOf(e.getMessage()),
              "two ranked products",
              "products with one run only, or a veto, have no interval to narrow"));
    }
    List<List<Object>> rows = new ArrayList<>();
    for (MoreRuns.Step step : more.steps()) {
      rows.add(
          List.of(
              step.runs(),
              String.format(Locale.ROOT, "%.2f", step.standardError()),
              String.format(Locale.ROOT, "%.2f", step.needed())));
    }
    String gap =
        String.format(
            Locale.ROOT,
            "%s leads %s by %.2f points.",
            label(more.better()),
            label(more.worse()),
            more.gap());
    return new QuestionAnswer(
        "more-runs",
        "How many more runs would split " + label(first) + " and " + label(second),
        List.of("more runs of each test", "standard error", "gap split with 80 % power"),
        rows,
        List.of(gap, cost(more)));
  }

  private String cost(MoreRuns more) {
    if (more.runs() < 0) {
      return "Not even "
          + MoreRuns.MOST
          + " more runs of each would split them, if the gap stays: call it a tie.";
    }
    if (more.runs() == 0) {
      return "The runs there are suffice.";
    }
    double perRun =
        benchMinutes().entrySet().stream()
            .mapToDouble(
                e ->
                    e.getValue()
                        / Math.max(
                            1,
                            campaign.runs().stream()
                                .filter(r -> r.test().equals(e.getKey()))
                                .count()))
            .sum();
    String hours =
        perRun == 0
            ? ""
            : String.format(
                Locale.ROOT,
                ", about %.1f hours on one bench without cooling down",
                2 * more.runs() * perRun / 60);
    return more.runs() + " more runs of every test for both, if the gap stays" + hours + ".";
  }

  /** Value for money at the latest dated prices. */
  public QuestionAnswer value() {
    Map<String, Campaign.Price> latest = pricesAt(LocalDate.MAX);
    List<List<Object>> rows = new ArrayList<>();
    for (PriceFront.Value value : PriceFront.of(result, amounts(latest))) {
      Campaign.Price price = latest.get(value.product());
      rows.add(
          List.of(
              label(value.product()),
              published(value.product()),
              price == null ? "no price" : money(price.amount(), price.currency()),
              price == null ? "" : price.on().toString(),
              place(value),
              Double.isNaN(value.tiesAt())
                  ? ""
                  : money(value.tiesAt(), campaign.info().currency())
                      + " ("
                      + label(value.beatenBy())
                      + ")",
              value.cheapestOfTier() == PriceFront.TierPrice.CHEAPEST ? "yes" : ""));
    }
    return new QuestionAnswer(
        "value",
        "Value for money",
        List.of("product", "score", "price", "on", "front", "would tie at", "cheapest of its tier"),
        rows,
        List.of(
            "On the front: nobody scores as much for less. Within a tier the difference in score is"
                + " not shown to be real: there the price decides."));
  }

  /**
   * What prices alone moved: value for money at the prices of a day and at the latest ones. Scores
   * do not depend on prices.
   */
  public QuestionAnswer prices(LocalDate since) {
    Map<String, Campaign.Price> before = pricesAt(since);
    Map<String, Campaign.Price> latest = pricesAt(LocalDate.MAX);
    List<PriceFront.Value> then = PriceFront.of(result, amounts(before));
    List<PriceFront.Value> now = PriceFront.of(result, amounts(latest));
    List<List<Object>> rows = new ArrayList<>();
    int moved = 0;
    for (int i = 0; i < now.size(); i++) {
      String id = now.get(i).product();
      String front = fromTo(place(then.get(i)), place(now.get(i)));
      moved += front.contains("→") ? 1 : 0;
      rows.add(
          List.of(
              label(id),
              published(id),
              dated(before.get(id)),
              dated(latest.get(id)),
              front,
              fromTo(cheapest(then.get(i)), cheapest(now.get(i)))));
    }
    return new QuestionAnswer(
        "prices",
        "What prices alone moved since " + since,
        List.of("product", "score", "price then", "price now", "front", "cheapest of its tier"),
        rows,
        List.of(
            (moved == 0 ? "No place on the front moved." : moved + " moved on or off the front.")
                + " Scores, tiers and ranks do not depend on prices: they stay as published."));
  }

  /** The latest price of each product up to a day. */
  private Map<String, Campaign.Price> pricesAt(LocalDate day) {
    Map<String, Campaign.Price> latest = new LinkedHashMap<>();
    for (Campaign.Price price : campaign.prices()) {
      if (!price.on().isAfter(day)) {
        latest.merge(price.product(), price, (a, b) -> b.on().isBefore(a.on()) ? a : b);
      }
    }
    return latest;
  }

  private Map<String, Double> amounts(Map<String, Campaign.Price> prices) {
    Map<String, Double> amounts = new LinkedHashMap<>();
    prices.values().stream()
        .filter(p -> p.currency().equals(campaign.info().currency()))
        .forEach(p -> amounts.put(p.product(), p.amount()));
    return amounts;
  }

  private static String dated(Campaign.@Nullable Price price) {
    return price == null
        ? "no price"
        : money(price.amount(), price.currency()) + " on " + price.on();
  }

  private static String cheapest(PriceFront.Value value) {
    return switch (value.cheapestOfTier()) {
      case CHEAPEST -> "yes";
      case NOT_CHEAPEST -> "no";
      case UNRANKED -> "–";
    };
  }

  private static String fromTo(String then, String now) {
    return then.equals(now) ? now : then + " → " + now;
  }

  /** A total in the words of the ranking. */
  private String published(String product) {
    return scored.verdict().products().stream()
        .filter(p -> p.id().equals(product))
        .map(p -> VerdictText.value(p.score()))
        .findFirst()
        .orElse("no score");
  }

  /**
   * The field without a product that was withdrawn: tiers and ranks of the others anew, by the same
   * runs. Its own score is no longer compared with anyone; what was frozen keeps it.
   *
   * @throws InputException if there is no such product or it is the only one
   */
  public QuestionAnswer withdrawn(String gone) {
    ProductScore withdrawn = product(gone);
    List<Candidate> left =
        scoringCase.products().stream().filter(p -> !p.id().equals(gone)).toList();
    if (left.isEmpty()) {
      throw new InputException(
          Problem.error(
              Place.of("products.csv"), "only " + withdrawn.label(), "a product that stays", ""));
    }
    ScoringResult without = Scoring.score(scoringCase.withProducts(left), threads);
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore now : without.products()) {
      ProductScore then = product(now.id());
      rows.add(
          List.of(
              now.label(),
              text(then.total()).equals(text(now.total()))
                  ? published(now.id())
                  : fromTo(text(then.total()), text(now.total())),
              fromTo(tier(then), tier(now)),
              fromTo(rank(then), rank(now))));
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        withdrawn.label()
            + " scored "
            + published(gone)
            + " and leaves the comparison; its runs, evidence and frozen verdicts stay as they are.");
    sentences.add(
        "Scores stand on fixed anchors, so they stay; tiers and ranks may move, because the margin is"
            + " that of a smaller field and the deviation between runs is pooled over those left.");
    return new QuestionAnswer(
        "withdrawn",
        "Without " + withdrawn.label() + ", which was withdrawn",
        List.of("product", "score", "tier", "rank"),
        rows,
        sentences);
  }

  private static String tier(ProductScore product) {
    Integer tier = product.tier();
    return tier == null ? "unranked" : tier.toString();
  }

  private static String rank(ProductScore product) {
    RankSet rank = product.rank();
    if (rank == null) {
      return "unranked";
    }
    return rank.low() == rank.high() ? "" + rank.low() : rank.low() + "–" + rank.high();
  }

  private static String place(PriceFront.Value value) {
    return switch (value.place()) {
      case ON_THE_FRONT -> "on the front";
      case DEARER_THAN_AS_GOOD -> "dearer than one as good";
      case NOT_COMPARED -> "not compared";
    };
  }

  private static String money(double amount, String currency) {
    return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP) + " " + currency;
  }

  /**
   * Why totals moved between an earlier state of the campaign and now.
   *
   * @param earlier the case then
   * @param since what "then" is, in words
   */
  public QuestionAnswer moved(ScoringCase earlier, String since) {
    List<List<Object>> rows = new ArrayList<>();
    List<String> sentences = new ArrayList<>();
    for (ProductScore product : result.products()) {
      try {
        Attribution attribution = Attribution.of(earlier, scoringCase, product.id());
        String causes =
            attribution.causes().stream()
                .filter(c -> Math.abs(c.points()) >= 0.005)
                .map(c -> nodeLabel(c.what()) + " " + signed(c.points()))
                .collect(Collectors.joining(", "));
        BigDecimal move = attribution.after().subtract(attribution.before());
        rows.add(
            List.of(
                product.label(),
                attribution.before().toString(),
                attribution.after().toString(),
                signed(move.doubleValue()),
                causes.isEmpty() ? "nothing" : causes));
      } catch (IllegalArgumentException e) {
        sentences.add(product.label() + ": " + e.getMessage());
      }
    }
    sentences.add(
        "Each cause has its Shapley value: its effect averaged over every order in which the causes"
            + " could have happened. They add up to the displayed difference, rounding included.");
    return new QuestionAnswer(
        "moved",
        "What moved since " + since,
        List.of("product", "then", "now", "difference", "because of"),
        rows,
        sentences);
  }

  /** The case of the campaign as it was known at the end of a day in its own time zone. */
  public static ScoringCase asOf(
      Campaign campaign, LocalDate day, Function<Campaign, Measured> measure) {
    Campaign then =
        CampaignViews.asOf(
            campaign, day.plusDays(1).atStartOfDay(campaign.info().zone()).toInstant());
    return new CaseBuilder(then, measure.apply(then)).build().scoringCase();
  }

  /**
   * A "suited to" list.
   *
   * @param rules such as {@code toast:first-tier}, {@code cakes>=7}, {@code no-gate}
   */
  public QuestionAnswer suited(List<String> rules) {
    List<SuitedTo.Condition> conditions = rules.stream().map(this::condition).toList();
    SuitedTo.Result list = SuitedTo.of(scoringCase, conditions, threads);
    List<List<Object>> rows = new ArrayList<>();
    list.suited().forEach(id -> rows.add(List.of(label(id), "yes", "")));
    list.refused().forEach((id, why) -> rows.add(List.of(label(id), "no", why)));
    return new QuestionAnswer(
        "suited",
        "Suited to: " + String.join(" and ", rules),
        List.of("product", "on the list", "because"),
        rows,
        List.of("A list refuses what the tiers and intervals do not support."));
  }

  private SuitedTo.Condition condition(String rule) {
    if (rule.equals("no-gate")) {
      return new SuitedTo.NoGate(CaseKeys.TOTAL);
    }
    if (rule.endsWith(":first-tier")) {
      return new SuitedTo.FirstTier(node(rule.substring(0, rule.indexOf(':')), rule));
    }
    int at = rule.indexOf(">=");
    try {
      if (at > 0) {
        double points = Double.parseDouble(rule.substring(at + 2).strip());
        return new SuitedTo.AtLeast(node(rule.substring(0, at).strip(), rule), points);
      }
    } catch (NumberFormatException e) {
      // Said below, with an example.
    }
    throw new InputException(
        Problem.error(
            Place.of("--suited"),
            "\"" + rule + "\"",
            "TEST:first-tier, TEST>=POINTS or no-gate",
            "for example toast:first-tier or total>=7"));
  }

  private String node(String word, String rule) {
    if (word.equals("total")) {
      return CaseKeys.TOTAL;
    }
    if (scoringCase.node(word).isPresent()) {
      return word;
    }
    List<String> known = campaign.method().tests().stream().map(t -> t.id()).toList();
    throw new InputException(
        Problem.error(
            Place.of("--suited"),
            "\"" + word + "\" in " + rule,
            "total or one of " + String.join(", ", known),
            NearestWord.remedy(word, known)));
  }

  private ProductScore winner() {
    return result.products().stream()
        .filter(p -> p.total().scored())
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of("verdict"), "no product with a score", "at least one", "")));
  }

  private ProductScore product(String id) {
    List<String> known = result.products().stream().map(ProductScore::id).toList();
    return result
        .product(id)
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of("products.csv"),
                        "no product \"" + id + "\"",
                        "one of " + String.join(", ", known),
                        NearestWord.remedy(id, known))));
  }

  private String label(String product) {
    return result.product(product).map(ProductScore::label).orElse(product);
  }

  /** "Test, criterion" for a node of the tree; anything else as it is. */
  private String nodeLabel(String node) {
    Optional<ValueNode> found = scoringCase.node(node);
    int slash = node.indexOf('/');
    if (found.isEmpty()) {
      return node;
    }
    String own = found.get().label();
    return slash < 0 ? own : nodeLabel(node.substring(0, slash)) + ", " + own;
  }

  private static BigDecimal difference(NodeScore a, NodeScore b) {
    BigDecimal first = a.displayedLow();
    BigDecimal second = b.displayedLow();
    return first == null || second == null ? BigDecimal.ZERO : first.subtract(second);
  }

  private static double shown(NodeScore node) {
    BigDecimal shown = node.displayedLow();
    if (shown == null) {
      return node.share() == 0 ? 0 : Double.NaN;
    }
    return shown.doubleValue();
  }

  private static String text(NodeScore node) {
    if (node.displayedLow() == null) {
      return node.state() == NodeScore.State.NOT_ASKED ? "not asked" : "no score";
    }
    return node.bounded()
        ? node.displayedLow() + " to " + node.displayedHigh() + ", open"
        : node.displayedLow().toString();
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  private static String signed(double points) {
    String text = String.format(Locale.ROOT, "%+.2f", points);
    return text.equals("-0.00") ? "+0.00" : text.replace('-', '−');
  }
}
