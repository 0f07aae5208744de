package ovenproof.core.photo;

import static ovenproof.core.photo.BatchMeasureCatalogue.*;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.photo.PieceClasses.ShadeClass;
import ovenproof.core.statistics.Interval;
import ovenproof.core.statistics.WilsonInterval;

/** Computes the measures of {@link BatchMeasureCatalogue} from those of single pieces. */
public final class BatchMeasures {

  private static final double ONE_SIGMA = 0.6826894921370859;
  private static final double CONFIDENCE = 0.95;
  private static final String LIGHTNESS_AXIS = "/L";

  private BatchMeasures() {}

  /** Median and darkest fifth of one piece; as sure as its mean. */
  public static List<Measurement> ofPiece(PieceShade shade, Subject subject) {
    Measurement mean = shade.measurement(PhotoMeasureCatalogue.LIGHTNESS_MEAN, subject);
    List<Measurement> out = new ArrayList<>();
    out.add(
        like(mean, LIGHTNESS_MEDIAN, PieceClasses.lightness(shade, PieceClasses.Judged.MEDIAN)));
    double dark = PieceClasses.lightness(shade, PieceClasses.Judged.DARKEST_FIFTH);
    out.add(like(mean, LIGHTNESS_DARKEST_FIFTH, dark));
    return out;
  }

  private static Measurement like(Measurement mean, MeasureDescription measure, double value) {
    if (mean.isMissing() || !Double.isFinite(value)) {
      return Measurement.missing(measure, mean.subject(), "the outline is too small to measure");
    }
    return Measurement.of(measure, mean.subject(), value).withComponents(mean.components());
  }

  /**
   * A piece with what decides its class and how much of the food it is.
   *
   * @param lightness median or darkest fifth
   * @param area in any unit, the same for all pieces of a batch
   */
  public record Judged(Measurement lightness, double area) {}

  /**
   * Share of one class, by count or by area.
   *
   * @param measure {@code CLASS_SHARE} or {@code CLASS_AREA}
   * @param pieces of one batch; those without a value are left out and counted in the note
   * @return missing when no piece can be judged or the class is none of {@code classes}
   */
  public static Measurement classShare(
      MeasureDescription measure,
      Subject subject,
      PieceClasses classes,
      String wanted,
      List<Judged> pieces) {
    List<Judged> present = pieces.stream().filter(p -> p.lightness().value() != null).toList();
    if (present.isEmpty()) {
      return Measurement.missing(measure, subject, "no piece could be judged");
    }
    boolean byArea = measure.id().equals(CLASS_AREA.id());
    int count = (int) present.stream().filter(p -> isOf(classes, wanted, p, 0)).count();
    int n = present.size();
    double share = share(classes, wanted, present, byArea, 0);
    Interval sigma = WilsonInterval.of(count, n, ONE_SIGMA);
    double few =
        (sigma.high() - sigma.low()) / 2 * (byArea ? Math.sqrt(n / effective(present)) : 1);
    List<Component> parts = new ArrayList<>(moved(classes, wanted, present, byArea));
    parts.add(Component.run(100 * few));
    return Measurement.of(measure, subject, 100 * share)
        .withComponents(parts)
        .withNote(classNote(count, n, pieces.size() - n));
  }

  private static String classNote(int count, int n, int left) {
    Interval wide = WilsonInterval.of(count, n, CONFIDENCE);
    return String.format(
        Locale.ROOT,
        "%d of %d pieces; 95 %% Wilson interval of the count %.0f to %.0f %%%s",
        count,
        n,
        100 * wide.low(),
        100 * wide.high(),
        left == 0 ? "" : "; " + left + " could not be judged");
  }

  private static boolean isOf(PieceClasses classes, String wanted, Judged piece, double shift) {
    Double lightness = piece.lightness().value();
    return lightness != null && classes.classOf(lightness + shift).name().equals(wanted);
  }

  private static double share(
      PieceClasses classes, String wanted, List<Judged> pieces, boolean byArea, double shift) {
    double all = 0;
    double of = 0;
    for (Judged piece : pieces) {
      double weight = byArea ? piece.area() : 1;
      all += weight;
      of += isOf(classes, wanted, piece, shift) ? weight : 0;
    }
    return all == 0 ? 0 : of / all;
  }

  /** (Σa)²/Σa²: as many equal pieces would be as sure. */
  private static double effective(List<Judged> pieces) {
    double sum = pieces.stream().mapToDouble(Judged::area).sum();
    double squares = pieces.stream().mapToDouble(p -> p.area() * p.area()).sum();
    return squares == 0 ? pieces.size() : sum * sum / squares;
  }

  /** The camera moves every piece alike: the share is counted again with all moved by ±u. */
  private static List<Component> moved(
      PieceClasses classes, String wanted, List<Judged> pieces, boolean byArea) {
    Map<String, Double> sources = new TreeMap<>();
    for (Judged piece : pieces) {
      for (Component c : piece.lightness().components()) {
        if (c.isShared() && c.source().endsWith(LIGHTNESS_AXIS)) {
          sources.merge(c.source(), Math.abs(c.u()), Math::max);
        }
      }
    }
    List<Component> out = new ArrayList<>();
    sources.forEach(
        (source, u) -> {
          double up = share(classes, wanted, pieces, byArea, u);
          double down = share(classes, wanted, pieces, byArea, -u);
          if (up != down) {
            out.add(Component.shared(source, 100 * (up - down) / 2));
          }
        });
    return out;
  }

  /**
   * The piece that lies farthest from what is wanted.
   *
   * @param lightness {@code lightness-mean} of the pieces of one batch
   * @param wanted L* wanted; null: the mean of the batch
   * @return missing when no piece has a value; the note names the piece and says which way
   */
  public static Measurement worstPiece(
      Subject subject, List<Measurement> lightness, @Nullable Double wanted) {
    List<Measurement> present = lightness.stream().filter(m -> m.value() != null).toList();
    if (present.isEmpty()) {
      return Measurement.missing(WORST_PIECE, subject, reason(lightness));
    }
    double middle =
        wanted != null
            ? wanted
            : present.stream().mapToDouble(BatchMeasures::value).average().orElseThrow();
    Measurement worst = present.get(0);
    for (Measurement m : present) {
      if (Math.abs(value(m) - middle) > Math.abs(value(worst) - middle)) {
        worst = m;
      }
    }
    double off = value(worst) - middle;
    List<Component> parts =
        worst.components().stream()
            .filter(c -> wanted != null || !c.isShared())
            .map(c -> new Component(c.source(), off < 0 ? -c.u() : c.u()))
            .toList();
    String name = worst.subject().piece() == null ? "" : "piece " + worst.subject().piece() + ", ";
    return Measurement.of(WORST_PIECE, subject, Math.abs(off))
        .withComponents(parts)
        .withNote(name + (off < 0 ? "darker" : "paler"));
  }

  /**
   * One part of a tray against the other.
   *
   * @param measure one of the {@code CAVITY_} measures of one tray
   * @param lightness {@code lightness-mean} of pieces by place; several of one place are averaged
   * @return missing when one of the two parts is empty
   */
  public static Measurement side(
      MeasureDescription measure, Subject subject, Map<Position, List<Measurement>> lightness) {
    List<Position> places = List.copyOf(lightness.keySet());
    ToIntFunction<Position> side = sides(measure, places);
    List<Measurement> first = new ArrayList<>();
    List<Measurement> second = new ArrayList<>();
    lightness.forEach(
        (place, values) -> {
          int s = side.applyAsInt(place);
          if (s != 0) {
            (s > 0 ? first : second).addAll(values);
          }
        });
    if (values(first).length == 0 || values(second).length == 0) {
      return Measurement.missing(
          measure, subject, "pieces with a place are needed on both sides of the tray");
    }
    Measurement difference = Averaging.difference(first, second, subject);
    if (difference.value() == null) {
      return Measurement.missing(measure, subject, "a piece has no value");
    }
    List<Component> parts = new ArrayList<>(difference.components());
    parts.add(Component.run(scatter(values(first), values(second))));
    return Measurement.of(measure, subject, difference.value())
        .withComponents(parts)
        .withNote("one tray cannot separate the piece from the oven");
  }

  private static ToIntFunction<Position> sides(MeasureDescription measure, List<Position> places) {
    if (measure.id().equals(CAVITY_FRONT_BACK.id())) {
      return CavitySides.frontAgainstBack(places);
    }
    return measure.id().equals(CAVITY_LEFT_RIGHT.id())
        ? CavitySides.leftAgainstRight(places)
        : CavitySides.cornersAgainstRest(places);
  }

  /** What the pieces differ by inside the two parts, as a standard error of the difference. */
  private static double scatter(double[] first, double[] second) {
    double squares = squares(first) + squares(second);
    int degrees = first.length + second.length - 2;
    return degrees < 1
        ? 0
        : Math.sqrt(squares / degrees * (1.0 / first.length + 1.0 / second.length));
  }

  private static double squares(double[] values) {
    double mean = java.util.Arrays.stream(values).average().orElse(0);
    return java.util.Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
  }

  /**
   * The last batch against the first, place by place.
   *
   * @return missing when no place was baked in both
   */
  public static Measurement secondBatch(
      Subject subject,
      Map<Position, List<Measurement>> last,
      Map<Position, List<Measurement>> first) {
    Map<Position, Measurement> differences = new LinkedHashMap<>();
    last.forEach(
        (place, later) -> {
          List<Measurement> earlier = first.getOrDefault(place, List.of());
          if (!earlier.isEmpty()) {
            differences.put(place, Averaging.difference(later, earlier, subject));
          }
        });
    if (differences.isEmpty()) {
      return Measurement.missing(
          CAVITY_SECOND_BATCH, subject, "no place was photographed in both batches");
    }
    Measurement mean = Averaging.mean(List.copyOf(differences.values()), subject);
    if (mean.value() == null) {
      return Measurement.missing(CAVITY_SECOND_BATCH, subject, "a piece has no value");
    }
    double[] values = values(List.copyOf(differences.values()));
    int n = values.length;
    List<Component> parts = new ArrayList<>(mean.components());
    if (n > 1) {
      parts.add(Component.run(Math.sqrt(squares(values) / (n - 1) / n)));
    }
    return Measurement.of(CAVITY_SECOND_BATCH, subject, mean.value()).withComponents(parts);
  }

  private static double[] values(List<Measurement> measurements) {
    return measurements.stream()
        .filter(m -> m.value() != null)
        .mapToDouble(BatchMeasures::value)
        .toArray();
  }

  private static double value(Measurement measurement) {
    Double value = measurement.value();
    return value == null ? Double.NaN : value;
  }

  private static String reason(List<Measurement> missing) {
    return missing.stream()
        .map(Measurement::note)
        .filter(java.util.Objects::nonNull)
        .findFirst()
        .orElse("no piece has a value");
  }

  /** The classes that a method names, for messages. */
  public static String names(List<ShadeClass> classes) {
    return classes.stream()
        .map(ShadeClass::name)
        .collect(java.util.stream.Collectors.joining(", "));
  }
}
