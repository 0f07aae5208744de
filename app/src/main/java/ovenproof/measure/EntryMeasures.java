package ovenproof.measure;

import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Unit;
import ovenproof.method.MeasureUse;

/**
 * Descriptions of measures that are read from what people entered: times, readings, weights, marks
 * and facts.
 */
public final class EntryMeasures {

  public static final MeasureDescription TIME_TO_STOP =
      describe(
          "time-to-stop",
          "Time to done",
          Unit.SECOND,
          "From loading (or start, if nothing is loaded) to the stop. A run stopped by its cap was not"
              + " done: its time is only known to lie above the cap.",
          "time(stop) − time(load)",
          EvidenceKind.EVENTS);

  public static final MeasureDescription SIGNAL_TIME =
      describe(
          "signal-time",
          "Time to the ready signal",
          Unit.SECOND,
          "From start to the appliance's own signal that it is ready, whatever its temperature then.",
          "time(signal) − time(start)",
          EvidenceKind.EVENTS);

  public static final MeasureDescription READING =
      describe(
          "reading",
          "Reading",
          Unit.ONE,
          "A value that a person read and typed; unit and meaning are the method's.",
          "as typed",
          EvidenceKind.READING);

  public static final MeasureDescription MASS_LOSS =
      describe(
              "mass-loss",
              "Mass loss",
              Unit.PERCENT,
              "What the food lost while it was cooked, of its raw mass.",
              "100 · (before − after) / before",
              EvidenceKind.PIECES)
          .revised(2);

  public static final MeasureDescription MARK =
      describe(
          "mark",
          "Panel mark",
          Unit.POINTS,
          "Mean of the panel for one batch. A batch is one observation of the appliance, however many"
              + " people taste it.",
          "mean over assessors",
          EvidenceKind.RATINGS);

  public static final MeasureDescription FACT =
      describe(
          MeasureUse.FACT,
          "Fact",
          Unit.ONE,
          "A fact of the product, measured; the nameplate only stands beside it.",
          "as measured",
          EvidenceKind.FACTS);

  public static final MeasureDescription RATED =
      describe(
          MeasureUse.RATED,
          "Rated fact",
          Unit.POINTS,
          "Mean of the worded steps (0–4) that raters chose independently.",
          "mean over raters",
          EvidenceKind.FACTS);

  public static final MeasureDescription FEATURE =
      describe(
          MeasureUse.FEATURE,
          "Feature",
          Unit.PERCENT,
          "Whether the product has a feature of the checklist. What nobody looked at is missing, which"
              + " is not a no; where the question makes no sense it is not asked.",
          "100 % when present, 0 % when absent",
          EvidenceKind.FACTS);

  public static final MeasureDescription FEATURES =
      describe(
          MeasureUse.FEATURES,
          "Features present",
          Unit.PERCENT,
          "Share of the checklist that the product has, each feature with its parts. Features that make"
              + " no sense for it are left out; those that nobody looked at leave a range between"
              + " none and all of them.",
          "100 · parts present / parts that apply",
          EvidenceKind.FACTS);

  public static final List<MeasureDescription> ALL =
      List.of(TIME_TO_STOP, SIGNAL_TIME, READING, MASS_LOSS, MARK, FACT, RATED, FEATURE, FEATURES);

  private EntryMeasures() {}

  private static MeasureDescription describe(
      String id, String name, Unit unit, String help, String formula, EvidenceKind evidence) {
    return new MeasureDescription(
        id, name, unit, help, formula, "own definition", evidence, List.of(), 1);
  }
}
