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
    ColdestCore cores = ColdestCore.of(input, curve);
    HeatCurve coldest = cores.coldest().orElse(null);
    if (coldest == null) {
      return input.missing(DESCRIPTION, NO_PROBE);
    }
    return TraceMeasures.value(
            DESCRIPTION,
            input,
            Highest.of(coldest.smooth()),
            input.probe().components(1, coldest.readingU()),
            "highest of the coldest of " + cores.count() + " probe(s) in the food")
        .withNote(fewProbes(cores));
  }

  static final String NO_PROBE = "no probe in the food";

  static @Nullable String fewProbes(ColdestCore cores) {
    return cores.count() < ColdestCore.ENOUGH
        ? "fewer than three probes: the coldest place may have been missed"
        : null;
  }
}
