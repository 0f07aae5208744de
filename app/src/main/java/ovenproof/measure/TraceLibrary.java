package ovenproof.measure;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.DateOrder;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TimeAxis;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceFile;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.trace.TraceOpener;
import ovenproof.input.InputException;

/** Logger files of a campaign, each read once. Safe for use by threads. */
final class TraceLibrary {

  /** Larger logs are refused here; a campaign's log of a day is a few megabytes. */
  private static final long LIMIT_BYTES = 512L << 20;

  private final EvidenceSource evidence;
  private final ZoneId zone;
  private final Map<Opened, Optional<TraceFile>> files = new ConcurrentHashMap<>();
  private final ConcurrentLinkedQueue<String> warnings = new ConcurrentLinkedQueue<>();

  /** A file under one reading of it. */
  private record Opened(String path, TraceBinding.@Nullable ReadAs as) {}

  TraceLibrary(EvidenceSource evidence, ZoneId zone) {
    this.evidence = evidence;
    this.zone = zone;
  }

  List<String> warnings() {
    return warnings.stream().distinct().sorted().toList();
  }

  void warn(String sentence) {
    warnings.add(sentence);
  }

  String fingerprint(String file) {
    return evidence.fingerprint(file).orElse("missing");
  }

  /**
   * The bound channel with times in seconds since the run's start, limited to the binding's own
   * from and to. Empty when the file, the channel or the clock is not there.
   */
  Optional<Trace> trace(TraceBinding binding, Run run) {
    return file(new Opened(binding.file(), binding.readAs()))
        .flatMap(file -> trace(file, binding, run));
  }

  private Optional<Trace> trace(TraceFile file, TraceBinding binding, Run run) {
    Optional<Channel> channel = file.channel(binding.channel());
    if (channel.isEmpty()) {
      warnings.add(binding.file() + " has no channel \"" + binding.channel() + "\"");
      return Optional.empty();
    }
    Trace whole = file.trace(channel.get());
    Instant started = run.started();
    if (started == null) {
      return Optional.of(whole);
    }
    Instant fileStart = fileStart(file.time(), binding, started);
    double runStart = seconds(fileStart, started) - binding.clockOffsetSeconds();
    return Optional.of(within(whole, binding, runStart, started));
  }

  /** Shifted so that 0 is the run's start, and cut to the binding's limits. */
  private static Trace within(Trace whole, TraceBinding binding, double runStart, Instant started) {
    Instant from = binding.from();
    Instant to = binding.to();
    double first = from == null ? Double.NEGATIVE_INFINITY : runStart + seconds(started, from);
    double last = to == null ? Double.POSITIVE_INFINITY : runStart + seconds(started, to);
    int begin = whole.firstAtOrAfter(first);
    int end = begin;
    while (end < whole.size() && whole.seconds()[end] <= last) {
      end++;
    }
    double[] shifted = new double[end - begin];
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = whole.seconds()[begin + i] - runStart;
    }
    double[] values = java.util.Arrays.copyOfRange(whole.values(), begin, end);
    return new Trace(whole.channel(), shifted, values, whole.unit());
  }

  /** The moment of the file's first row; a log without any clock begins with the run. */
  private Instant fileStart(TimeAxis time, TraceBinding binding, Instant runStarted) {
    Instant declared = binding.starts();
    if (declared != null) {
      return declared;
    }
    Long millis = time.startEpochMillis();
    if (millis != null) {
      return time.zone() == TimeAxis.Zone.ABSOLUTE
          ? Instant.ofEpochMilli(millis)
          : LocalDateTime.ofInstant(Instant.ofEpochMilli(millis), ZoneOffset.UTC)
              .atZone(zone)
              .toInstant();
    }
    if (Double.isFinite(time.startOfDaySeconds())) {
      return atTimeOfDay(time.startOfDaySeconds(), runStarted);
    }
    return runStarted;
  }

  /**
   * A clock without date is of the run's day; one that starts after the run is of the day before.
   */
  private Instant atTimeOfDay(double secondsOfDay, Instant runStarted) {
    Instant midnight = runStarted.atZone(zone).toLocalDate().atStartOfDay(zone).toInstant();
    Instant sameDay = midnight.plusMillis(Math.round(secondsOfDay * 1000));
    return sameDay.isAfter(runStarted.plusSeconds(12 * 3600))
        ? sameDay.minusSeconds(86_400)
        : sameDay;
  }

  private static double seconds(Instant from, Instant to) {
    return (to.toEpochMilli() - from.toEpochMilli()) / 1000.0;
  }

  private Optional<TraceFile> file(Opened opened) {
    return files.computeIfAbsent(opened, o -> read(o.path(), o.as()));
  }

  /** The reader's options with a person's answers in them. */
  static ReadOptions options(TraceBinding.@Nullable ReadAs as) {
    ReadOptions options = ReadOptions.withDefaults();
    if (as == null) {
      return options;
    }
    Double interval = as.intervalSeconds();
    options = interval == null ? options : options.withIntervalSeconds(interval);
    Unit unit = as.temperatures();
    options = unit == null ? options : options.withTemperatureUnit(unit);
    Unit counts = as.counts();
    options = counts == null ? options : options.withCounted(counts);
    DateOrder dates = as.dates();
    return dates == null ? options : options.withDateOrder(dates);
  }

  private Optional<TraceFile> read(String path, TraceBinding.@Nullable ReadAs as) {
    try {
      TraceFile file = TraceOpener.read(evidence.bytes(path, LIMIT_BYTES), options(as));
      file.problems().forEach(problem -> warnings.add(path + ": " + problem));
      file.questions().forEach(question -> warnings.add(path + ": " + question.text()));
      return file.isReadable() ? Optional.of(file) : Optional.empty();
    } catch (InputException unreadable) {
      warnings.add(unreadable.getMessage());
      return Optional.empty();
    }
  }

  /** What a binding says, for cache keys. */
  static String key(@Nullable TraceBinding binding) {
    return String.valueOf(binding);
  }
}
