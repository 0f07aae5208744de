package ovenproof.campaign;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.method.Method;

/**
 * One field put through one method version: the snapshot that measure, verdict and publish read.
 *
 * <p>Lists keep the order of the files or of entry. Keys are the keys people wrote.
 */
public record Campaign(
    Info info,
    Method method,
    List<Product> products,
    List<LeftOut> leftOut,
    List<Specimen> specimens,
    List<Price> prices,
    List<FactValue> facts,
    List<RatedStep> ratedSteps,
    List<FeatureState> features,
    List<SettingCard> settingCards,
    List<PlannedRun> plan,
    List<Run> runs,
    List<NotRun> notRun,
    List<Event> events,
    List<Deviation> deviations,
    List<Reading> readings,
    List<Lot> lots,
    List<Piece> pieces,
    List<Rating> ratings,
    List<Instrument> instruments,
    List<Calibration> calibrations,
    List<TraceBinding> traces,
    List<Photo> photos,
    List<Evidence> evidence) {

  public Campaign {
    products = List.copyOf(products);
    leftOut = List.copyOf(leftOut);
    specimens = List.copyOf(specimens);
    prices = List.copyOf(prices);
    facts = List.copyOf(facts);
    ratedSteps = List.copyOf(ratedSteps);
    features = List.copyOf(features);
    settingCards = List.copyOf(settingCards);
    plan = List.copyOf(plan);
    runs = List.copyOf(runs);
    notRun = List.copyOf(notRun);
    events = List.copyOf(events);
    deviations = List.copyOf(deviations);
    readings = List.copyOf(readings);
    lots = List.copyOf(lots);
    pieces = List.copyOf(pieces);
    ratings = List.copyOf(ratings);
    instruments = List.copyOf(instruments);
    calibrations = List.copyOf(calibrations);
    traces = List.copyOf(traces);
    photos = List.copyOf(photos);
    evidence = List.copyOf(evidence);
  }

  public Optional<Product> product(String id) {
    return products.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  public Optional<Run> run(String id) {
    return runs.stream().filter(r -> r.id().equals(id)).findFirst();
  }

  /** Effective events of a run, in order of time. */
  public List<Event> eventsOf(String runId) {
    return Entry.effective(events).stream()
        .filter(e -> e.run().equals(runId))
        .sorted(java.util.Comparator.comparingDouble(Event::elapsedSeconds))
        .toList();
  }

  /** Effective deviations of a run. */
  public List<Deviation> deviationsOf(String runId) {
    return Entry.effective(deviations).stream().filter(d -> d.run().equals(runId)).toList();
  }

  /** Why a run does not count, in words; empty when it counts. */
  public Optional<String> whyNotCounted(Run run) {
    if (run.kind() == Run.Kind.TRIAL) {
      return Optional.of("a trial, declared beforehand");
    }
    if (deviationsOf(run.id()).stream().anyMatch(d -> d.deviationClass() == 3)) {
      return Optional.of("void by a class 3 deviation");
    }
    Optional<Run> redo = runs.stream().filter(r -> run.id().equals(r.redoOf())).findFirst();
    return redo.map(r -> "redone as " + r.id() + (r.cause() == null ? "" : ": " + r.cause()));
  }

  /** Runs that count for the verdict: not trials, not void, not superseded by a redo. */
  public List<Run> countedRuns() {
    Set<String> voided = new HashSet<>();
    Entry.effective(deviations).stream()
        .filter(d -> d.deviationClass() == 3)
        .forEach(d -> voided.add(d.run()));
    Set<String> redone = new HashSet<>();
    runs.stream().map(Run::redoOf).filter(Objects::nonNull).forEach(redone::add);
    return runs.stream()
        .filter(r -> r.kind() != Run.Kind.TRIAL)
        .filter(r -> !voided.contains(r.id()) && !redone.contains(r.id()))
        .toList();
  }

  /**
   * Facts of the campaign as a whole.
   *
   * @param provenance whether anything in it is real
   * @param currency ISO 4217 code
   * @param disclosure how specimens were acquired and paid for, in a sentence; null when not said
   */
  public record Info(
      String id,
      String title,
      String kitchen,
      ZoneId zone,
      String currency,
      Provenance provenance,
      @Nullable LocalDate published,
      @Nullable String disclosure,
      @Nullable String note) {}

  /** Whether the campaign happened. */
  public enum Provenance {
    REAL,
    /** Made up for demonstration or tests; everything made from it says so. */
    INVENTED
  }

  /** The model reviewed. {@code id} is the key; {@code name} is what is printed. */
  public record Product(
      String id,
      String name,
      @Nullable String maker,
      @Nullable String kind,
      @Nullable String note) {}

  /** A candidate that was not compared, and why. */
  public record LeftOut(String name, String why) {}

  /** One physical appliance. */
  public record Specimen(
      String id,
      String product,
      @Nullable String serial,
      Acquired acquired,
      @Nullable String from,
      @Nullable LocalDate on,
      Became became,
      @Nullable LocalDate becameOn,
      @Nullable String note) {}

  /** How a specimen came to the desk. */
  public enum Acquired {
    BOUGHT,
    LENT,
    GIVEN,
    OWNED,
    UNKNOWN
  }

  /** What became of a specimen. */
  public enum Became {
    KEPT,
    RETURNED,
    GIVEN_AWAY,
    BROKEN,
    UNKNOWN
  }

  /** A dated price; the latest one is printed with its date. */
  public record Price(
      String product, double amount, String currency, LocalDate on, @Nullable String where) {}

  /** A candidate setting, and the rule by which it was chosen. */
  public record SettingCard(
      String product,
      String test,
      String variant,
      @Nullable String mode,
      @Nullable String preset,
      @Nullable String dial,
      @Nullable String rack,
      @Nullable String accessory,
      @Nullable String chosenBy,
      @Nullable String note) {}

  /** A run to be done: product × test × variant × replicate, with its place in the plan. */
  public record PlannedRun(
      String product,
      String test,
      String variant,
      int replicate,
      @Nullable String session,
      @Nullable String bench,
      @Nullable Integer order) {}

  /** A test that a product has no run of, and why. */
  public record NotRun(
      String product, String test, @Nullable String variant, State state, String reason) {
    /** Three different things; none of them is a zero that was measured. */
    public enum State {
      /** The tray does not fit, the temperature is out of reach. */
      CANNOT_DO,
      /** The method does not ask it of this product. */
      NOT_ASKED,
      /** Attempts failed for causes outside the product. */
      MISSING
    }
  }

  /** A delivery of an ingredient. */
  public record Lot(String id, String food, @Nullable LocalDate bought, @Nullable String note) {}

  /** A measuring instrument. {@code responseTime} in seconds for probes (time constant). */
  public record Instrument(
      String id,
      String name,
      @Nullable String kind,
      @Nullable String quantity,
      @Nullable Double resolution,
      @Nullable Double standardUncertainty,
      @Nullable Double responseTimeSeconds,
      @Nullable String note) {}

  /**
   * A check of an instrument against something known, in the contract unit of its quantity.
   *
   * @param correction to be added to readings
   * @param uncertainty standard uncertainty of the correction: shared by everything measured with
   *     the instrument until the next calibration
   */
  public record Calibration(
      String instrument,
      LocalDate on,
      double correction,
      double uncertainty,
      @Nullable String reference,
      @Nullable String note) {
    /** The shared source's name: {@code probe:P3@2026-03-02}. */
    public String source() {
      return "probe:" + instrument + "@" + on;
    }
  }

  /** A file as it came in. */
  public record Evidence(String path, String sha256, long bytes) {}
}
