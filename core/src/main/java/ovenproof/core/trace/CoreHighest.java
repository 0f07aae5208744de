package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** The highest temperature that the coldest probe in the food reached. */
public final class CoreHighest implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "core-highest",
              "Highest core temperature",
              Unit.CELSIUS,
              "Highest temperature of the coldest probe in the food, rest included. One probe may have"
                  + " missed the coldest place. It says nothing about safety by itself.",
              "max over time of the coldest of the core probes, while they are in the food",
              "common practice")
          .revised(2);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /** The coldest is the probe whose own highest is lowest. */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    HeatCurve coldest = coldest(input);
    if (coldest == null) {
      return TraceMeasures.missing(DESCRIPTION, input, "no probe in the food");
    }
    return TraceMeasures.value(
            DESCRIPTION,
            input,
            Highest.of(coldest.smooth()),
            input.probe().components(1, coldest.readingU()),
            "highest of the coldest of " + input.cores().size() + " probe(s) in the food")
        .withNote(
            input.cores().size() < 3
                ? "fewer than three probes: the coldest place may have been missed"
                : null);
  }

  private static @Nullable HeatCurve coldest(TraceInput input) {
    HeatCurve coldest = null;
    for (Trace core : input.cores()) {
      HeatCurve candidate = HeatCurve.of(core);
      boolean colder =
          coldest == null || Highest.of(candidate.smooth()) < Highest.of(coldest.smooth());
      if (!candidate.isEmpty() && colder) {
        coldest = candidate;
      }
    }
    return coldest;
  }
}
