package ovenproof.files;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.EntryMeasures;
import ovenproof.measure.MeasureRegistry;

/** A registry with the ids that folders of these tests use. */
public final class TestRegistry {

  private TestRegistry() {}

  public static MeasureRegistry registry() {
    List<MeasureDescription> all = new ArrayList<>(EntryMeasures.ALL);
    Parameter set = new Parameter("set", "the set temperature", Dimension.TEMPERATURE, "");
    all.add(trace("preheat-first", Unit.SECOND, List.of(set)));
    all.add(trace("steady-mean", Unit.CELSIUS, List.of()));
    all.add(trace("offset", Unit.KELVIN, List.of(set)));
    all.add(trace("spread", Unit.KELVIN, List.of()));
    all.add(trace("overshoot", Unit.KELVIN, List.of()));
    all.add(trace("highest", Unit.CELSIUS, List.of()));
    all.add(trace("energy", Unit.KILOWATT_HOUR, List.of()));
    all.add(trace("core-highest", Unit.CELSIUS, List.of()));
    for (String id :
        List.of("lightness-mean", "lightness-difference", "evenness-sd", "rim-difference")) {
      all.add(describe(id, Unit.LIGHTNESS, EvidenceKind.PHOTO, List.of()));
    }
    all.add(describe("shade-difference", Unit.DELTA_E00, EvidenceKind.PHOTO, List.of()));
    all.add(describe("share-dark", Unit.PERCENT, EvidenceKind.PHOTO, List.of()));
    return new MeasureRegistry(all);
  }

  private static MeasureDescription trace(String id, Unit unit, List<Parameter> parameters) {
    return describe(id, unit, EvidenceKind.TRACE, parameters);
  }

  private static MeasureDescription describe(
      String id, Unit unit, EvidenceKind evidence, List<Parameter> parameters) {
    return new MeasureDescription(id, id, unit, "", "", "own definition", evidence, parameters, 1);
  }
}
