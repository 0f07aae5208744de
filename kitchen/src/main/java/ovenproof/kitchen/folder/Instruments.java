package ovenproof.kitchen.folder;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import ovenproof.kitchen.bench.Calendar;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Probe;

/** Everything that measures, with the errors that nobody in the kitchen knows. */
final class Instruments {

  private static final double AIR_ERROR = 0.7;
  private static final double AIR_CHECK = 0.25;
  private static final double CORE_ERROR = 0.35;
  private static final double CORE_CHECK = 0.12;
  private static final LocalDate BEFORE = LocalDate.of(2026, 2, 26);
  private static final LocalDate AFTER = LocalDate.of(2026, 3, 13);

  private final Map<String, Probe> probes = new LinkedHashMap<>();
  private final Chance chance;

  Instruments(Chance chance) {
    this.chance = chance;
    for (String bench : Calendar.BENCHES) {
      for (int i = 1; i <= 5; i++) {
        add("air-" + bench + i, 6.0, AIR_ERROR, 0.12, 0.06);
      }
      for (int i = 1; i <= 3; i++) {
        add("core-" + bench + i, 4.0, CORE_ERROR, 0.06, 0);
      }
    }
    add("room-1", 20, 0.3, 0.05, 0);
    add("skin-1", 8, 0.8, 0.2, 0);
  }

  private void add(String id, double lag, double error, double noise, double wallShare) {
    double wrong = chance.named("wrong " + id).gaussian(0, error);
    probes.put(id, new Probe(id, lag, wrong, noise, wallShare));
  }

  Probe probe(String id) {
    Probe probe = probes.get(id);
    if (probe == null) {
      throw new IllegalArgumentException("no probe named " + id);
    }
    return probe;
  }

  Map<String, Probe> probes() {
    return probes;
  }

  Csv table() {
    Csv csv =
        new Csv(
            "instrument",
            "name",
            "kind",
            "quantity",
            "resolution",
            "uncertainty",
            "response_time",
            "note");
    for (Probe probe : probes.values()) {
      boolean core = probe.id().startsWith("core");
      csv.row(
          probe.id(),
          name(probe.id()),
          "probe",
          "temperature",
          "0.1 K",
          core ? "0.4 K" : "0.8 K",
          Figures.of(probe.timeConstantSeconds(), 0) + " s",
          core ? "needle, in the food" : "");
    }
    for (String bench : Calendar.BENCHES) {
      csv.row(
          "meter-" + bench,
          "Power meter of bench " + bench,
          "power meter",
          "power",
          "1 W",
          "4 W",
          "",
          "power and mains, mean of each 5 s");
    }
    csv.row("scale-1", "Bench scale", "scale", "mass", "0.1 g", "0.1 g", "", "");
    csv.row("scale-2", "Floor scale", "scale", "mass", "10 g", "20 g", "", "");
    csv.row("tape-1", "Steel tape", "tape", "length", "1 mm", "1 mm", "", "");
    csv.row("jug-1", "Measuring jug", "jug", "volume", "0.1 L", "0.2 L", "", "");
    csv.row("ear-1", "Sound level meter", "sound meter", "sound-level", "0.1 dB", "1 dB", "", "");
    return csv;
  }

  private static String name(String id) {
    if (id.startsWith("air")) {
      return "Thermocouple " + id.substring(4) + " on the wire frame";
    }
    if (id.startsWith("core")) {
      return "Core needle " + id.substring(5);
    }
    return id.startsWith("room") ? "Room probe" : "Contact probe for outer sides";
  }

  /** Correction = what the check found the probe to be wrong by, itself a little wrong. */
  Csv calibrations() {
    Csv csv = new Csv("instrument", "on", "correction", "uncertainty", "reference", "note");
    for (Probe probe : probes.values()) {
      boolean core = probe.id().startsWith("core");
      double u = core ? CORE_CHECK : AIR_CHECK;
      String reference = core ? "slush ice and boiling water" : "block at 180 °C";
      check(csv, probe, BEFORE, u, reference, "");
      if (core) {
        check(csv, probe, AFTER, u, reference, "after the campaign");
      }
    }
    return csv;
  }

  private void check(Csv csv, Probe probe, LocalDate on, double u, String reference, String note) {
    double found = -probe.errorKelvin() + chance.named("check " + probe.id() + on).gaussian(0, u);
    csv.row(probe.id(), on, Figures.of(found, 2) + " K", Figures.of(u, 2) + " K", reference, note);
  }
}
