package ovenproof.files;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Rating;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;

/** A campaign made up from a seed: every table filled, every optional value sometimes missing. */
final class RandomCampaign {
  private static final List<String> TEXTS =
      List.of(
          "plain",
          "a, b; c",
          "\"quoted\"",
          "two\nlines",
          "# no comment",
          "Ünïcode · 38 g",
          "yes",
          "1.10",
          "- dash",
          "{brace}",
          "=1+1");

  private final SplittableRandom random;
  private final Method method;
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final List<Run> runs = new ArrayList<>();
  private int entries;

  RandomCampaign(long seed) {
    this.random = new SplittableRandom(seed);
    String starter = Starters.names().get((int) (seed % Starters.names().size()));
    this.method =
        new MethodReader(MeasureRegistry.all().measures())
            .read("method.yaml", Starters.text(starter), new Problems())
            .orElseThrow();
  }

  Campaign campaign() {
    files.clear();
    runs.clear();
    entries = 0;
    List<Campaign.Product> products = new ArrayList<>();
    List<Campaign.Specimen> specimens = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(3); i++) {
      products.add(new Campaign.Product("p" + i, text(), maybe(), maybe(), maybe()));
      specimens.add(
          new Campaign.Specimen(
              "s" + i,
              "p" + i,
              maybe(),
              pick(Campaign.Acquired.values()),
              maybe(),
              date(),
              Campaign.Became.KEPT,
              date(),
              maybe()));
    }
    products.forEach(this::runsOf);
    return new Campaign(
        info(),
        method,
        products,
        List.of(new Campaign.LeftOut(text(), text())),
        specimens,
        List.of(new Campaign.Price("p0", 129.95, "USD", LocalDate.of(2026, 2, 3), maybe())),
        List.of(fact("p0"), fact("p1")),
        List.of(rated("p0", "ann"), rated("p0", "ben")),
        List.of(feature("p0"), feature("p1")),
        settingCards(products),
        plan(),
        runs,
        List.of(notRun()),
        events(),
        List.of(new Deviation(runs.get(0).id(), 2, text(), maybe(), origin())),
        readings(),
        List.of(new Campaign.Lot("L1", text(), date(), maybe())),
        pieces(),
        ratings(),
        List.of(instrument()),
        List.of(
            new Campaign.Calibration(
                "P1", LocalDate.of(2026, 3, 1), -0.35, 0.25, maybe(), maybe())),
        List.of(trace()),
        photos(),
        recorded());
  }

  private Campaign.Info info() {
    return new Campaign.Info(
        "random",
        text(),
        text(),
        ZoneId.of(random.nextBoolean() ? "Europe/Dublin" : "America/New_York"),
        "EUR",
        Campaign.Provenance.INVENTED,
        date(),
        maybe(),
        maybe());
  }

  private void runsOf(Campaign.Product product) {
    for (TestPlan test : method.tests()) {
      for (int replicate = 1; replicate <= test.replicates(); replicate++) {
        runs.add(run(product.id(), test, replicate));
      }
    }
  }

  private Run run(String product, TestPlan test, int replicate) {
    Instant started =
        Instant.parse("2026-03-04T09:00:00Z")
            .plusSeconds(runs.size() * 40_000L + random.nextInt(60));
    return new Run(
        product + "-" + test.id() + "-" + replicate,
        product,
        random.nextBoolean() ? "s" + product.substring(1) : null,
        test.id(),
        test.scoredVariant().id(),
        replicate,
        Run.Kind.COUNTED,
        random.nextBoolean() ? "day-1" : null,
        random.nextBoolean() ? "bench-2" : null,
        random.nextInt(5) == 0 ? null : started,
        null,
        null,
        null,
        maybe(),
        maybe());
  }

  private List<Campaign.SettingCard> settingCards(List<Campaign.Product> products) {
    TestPlan test = method.tests().get(0);
    return products.stream()
        .map(
            p ->
                new Campaign.SettingCard(
                    p.id(),
                    test.id(),
                    test.scoredVariant().id(),
                    maybe(),
                    maybe(),
                    maybe(),
                    maybe(),
                    maybe(),
                    maybe(),
                    maybe()))
        .toList();
  }

  private List<Campaign.PlannedRun> plan() {
    return runs.stream()
        .map(
            r ->
                new Campaign.PlannedRun(
                    r.product(), r.test(), r.variant(), r.replicate(), "day-1", null, 3))
        .toList();
  }

  private Campaign.NotRun notRun() {
    TestPlan test = method.tests().get(1);
    return new Campaign.NotRun("p0", test.id(), null, Campaign.NotRun.State.MISSING, text());
  }

  private List<Event> events() {
    List<Event> events = new ArrayList<>();
    for (Run run : runs) {
      double elapsed = 0;
      for (Event.Type type : List.of(Event.Type.START, Event.Type.LOAD, Event.Type.NOTE)) {
        events.add(event(run, type, elapsed));
        elapsed += random.nextBoolean() ? random.nextInt(30) : random.nextInt(30_000) / 1000.0;
      }
    }
    return events;
  }

  private Event event(Run run, Event.Type type, double elapsed) {
    Instant at = run.started() == null ? null : run.started().plusNanos(Math.round(elapsed * 1e9));
    return new Event(run.id(), type, elapsed, at, 1, maybe(), maybe(), origin());
  }

  private List<Reading> readings() {
    List<Reading> readings = new ArrayList<>();
    for (Run run : runs) {
      boolean hasSkin =
          method.test(run.test()).orElseThrow().measures().stream()
              .anyMatch(m -> m.id().equals("skin"));
      if (hasSkin) {
        readings.add(
            new Reading(
                run.id(),
                "skin",
                1,
                random.nextBoolean() ? "left" : null,
                null,
                Quantity.of(random.nextInt(1000) / 10.0, pick(Unit.CELSIUS, Unit.FAHRENHEIT)),
                random.nextBoolean() ? Quantity.of(1.5, Unit.KELVIN) : null,
                "P1",
                random.nextBoolean() ? -12.25 : null,
                maybe(),
                origin()));
      }
    }
    return readings;
  }

  private List<Piece> pieces() {
    return runs.stream()
        .map(
            r ->
                new Piece(
                    r.id(),
                    1,
                    "all",
                    null,
                    "L1",
                    Quantity.of(random.nextInt(3000) / 10.0 + 200, Unit.GRAM),
                    random.nextBoolean() ? Quantity.of(0.15, Unit.KILOGRAM) : null,
                    random.nextBoolean() ? "P1" : null,
                    maybe()))
        .toList();
  }

  private List<Rating> ratings() {
    List<Rating> ratings = new ArrayList<>();
    for (Run run : runs) {
      for (TestPlan.PanelMark mark : method.test(run.test()).orElseThrow().marks()) {
        double value = mark.lowest() + (mark.highest() - mark.lowest()) * random.nextInt(5) / 4;
        ratings.add(
            new Rating(
                "panel-1",
                text().replace("\n", " "),
                run.id(),
                1,
                mark.id(),
                value,
                random.nextBoolean() ? 3 : null,
                null,
                random.nextBoolean() ? 2.5 : null,
                maybe(),
                origin()));
      }
    }
    return ratings;
  }

  private FactValue fact(String product) {
    Method.Fact fact = method.facts().get(0);
    return new FactValue(
        product,
        fact.id(),
        random.nextBoolean() ? Quantity.of(20.5, fact.unit()) : null,
        Quantity.of(20.125, fact.unit()),
        Quantity.of(0.2, fact.unit()),
        random.nextBoolean() ? "P1" : null,
        random.nextBoolean() ? picture("facts/" + product + ".jpg") : null,
        maybe(),
        origin());
  }

  private RatedStep rated(String product, String rater) {
    return new RatedStep(
        product,
        method.ratedFacts().get(0).id(),
        rater,
        random.nextInt(5),
        maybe(),
        null,
        maybe(),
        origin());
  }

  private FeatureState feature(String product) {
    return new FeatureState(
        product, "Door light", pick(FeatureState.State.values()), date(), maybe(), origin());
  }

  private Campaign.Instrument instrument() {
    return new Campaign.Instrument(
        "P1", text(), maybe(), "temperature", 0.1, random.nextBoolean() ? 0.5 : null, 5.0, maybe());
  }

  private TraceBinding trace() {
    files.put("traces/log.csv", "t,a\n0,20\n".getBytes(StandardCharsets.UTF_8));
    return new TraceBinding(
        "traces/log.csv",
        "a",
        "centre",
        "p0",
        null,
        "P1",
        Instant.parse("2026-03-04T09:00:00Z"),
        // Dublin and New York both show this hour twice, in the autumn.
        Instant.parse(random.nextBoolean() ? "2026-10-25T01:15:00Z" : "2026-11-01T06:15:30.5Z"),
        null,
        random.nextBoolean() ? 0 : -3600.5,
        random.nextBoolean()
            ? null
            : new TraceBinding.ReadAs(
                random.nextBoolean() ? 2.5 : null,
                ovenproof.core.quantity.Unit.FAHRENHEIT,
                ovenproof.core.trace.DateOrder.MONTH_FIRST,
                random.nextBoolean() ? ovenproof.core.quantity.Unit.MINUTE : null),
        maybe());
  }

  private List<Photo> photos() {
    List<Photo> photos = new ArrayList<>();
    for (Run run : runs) {
      TestPlan.PhotoPlan plan = method.test(run.test()).orElseThrow().photos();
      if (plan != null && random.nextInt(3) == 0) {
        photos.add(
            new Photo(
                picture("photos/" + run.id() + ".jpg"),
                run.id(),
                1,
                plan.faces().get(0),
                run.started(),
                random.nextBoolean() ? "camera-1" : null,
                List.of(new Photo.Box("1", 0, 1, 7, 6)),
                random.nextBoolean() ? List.of() : List.of(outline()),
                random.nextBoolean() ? Photo.Frame.UNSAID : frame(),
                maybe()));
      }
    }
    return photos;
  }

  private static Photo.Frame frame() {
    return new Photo.Frame(
        new ovenproof.core.quantity.Quantity(41, ovenproof.core.quantity.Unit.MILLIMETRE),
        List.of(
            new Photo.Corner(40, 40),
            new Photo.Corner(100, 41),
            new Photo.Corner(99, 80),
            new Photo.Corner(41, 79)),
        ovenproof.core.photo.ShadeSettings.Front.TOP);
  }

  private static Photo.Drawn outline() {
    return new Photo.Drawn(
        "left", List.of(new Photo.Corner(0, 1), new Photo.Corner(6, 1), new Photo.Corner(3, 7)));
  }

  private String picture(String path) {
    files.put(path, Pictures.jpeg(8 + files.size(), 8));
    return path;
  }

  /** In the order in which a folder is read: traces, photos, facts. */
  private List<Campaign.Evidence> recorded() {
    List<String> order = new ArrayList<>();
    for (String start : List.of("traces/", "photos/", "facts/")) {
      files.keySet().stream().filter(f -> f.startsWith(start)).forEach(order::add);
    }
    return order.stream()
        .map(f -> new Campaign.Evidence(f, sha256(f), files.get(f).length))
        .toList();
  }

  private String sha256(String path) {
    Sha256 digest = new Sha256();
    digest.add(files.get(path), files.get(path).length);
    return digest.hex();
  }

  private Entry.Provenance origin() {
    boolean said = random.nextBoolean();
    return new Entry.Provenance(
        said ? "e" + entries++ : null,
        maybe(),
        said ? Instant.parse("2026-07-04T09:00:00.25Z") : null,
        null);
  }

  private @Nullable LocalDate date() {
    return random.nextBoolean() ? LocalDate.of(2026, 1 + random.nextInt(12), 28) : null;
  }

  private String text() {
    return TEXTS.get(random.nextInt(TEXTS.size()));
  }

  private @Nullable String maybe() {
    return random.nextBoolean() ? text() : null;
  }

  @SafeVarargs
  private <T> T pick(T... choices) {
    return choices[random.nextInt(choices.length)];
  }

  EvidenceSource evidence() {
    return new EvidenceSource() {
      @Override
      public InputStream open(String path) {
        return new ByteArrayInputStream(files.get(path));
      }

      @Override
      public Optional<String> fingerprint(String path) {
        return Optional.of(sha256(path));
      }

      @Override
      public Optional<Long> size(String path) {
        return Optional.of((long) files.get(path).length);
      }

      @Override
      public byte[] bytes(String path, long limit) {
        return files.get(path);
      }
    };
  }
}
