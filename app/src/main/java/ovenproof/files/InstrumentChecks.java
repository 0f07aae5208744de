package ovenproof.files;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Dimension;
import ovenproof.input.Words;

/** Whether it is known how well each instrument reads, and whether it stayed the same. */
final class InstrumentChecks {
  /** A probe that moved this far between checks puts what lies between them in doubt. */
  private static final double SHIFT_KELVIN = 1;

  private final Sections sections;

  InstrumentChecks(Sections sections) {
    this.sections = sections;
  }

  void run() {
    sections.instruments().forEach(this::uncertainty);
    sections.instruments().forEach(this::shift);
    sections.calibrations().forEach(c -> notNegative(c.row(), c.value().uncertainty()));
    sections.readings().stream()
        .filter(r -> r.value().uncertainty() != null)
        .forEach(r -> notNegative(r.row(), r.value().uncertainty().value()));
    sections.facts().stream()
        .filter(f -> f.value().uncertainty() != null)
        .forEach(f -> notNegative(f.row(), f.value().uncertainty().value()));
  }

  private static void notNegative(Row row, double uncertainty) {
    if (uncertainty < 0) {
      row.error("uncertainty", row.raw("uncertainty").strip(), "an uncertainty of at least 0", "");
    }
  }

  private void uncertainty(Rowed<Campaign.Instrument> rowed) {
    Campaign.Instrument instrument = rowed.value();
    if (instrument.standardUncertainty() != null) {
      notNegative(rowed.row(), instrument.standardUncertainty());
      return;
    }
    boolean calibrated =
        Sections.values(sections.calibrations()).stream()
            .anyMatch(c -> c.instrument().equals(instrument.id()));
    if (!calibrated && isUsed(instrument.id())) {
      rowed
          .row()
          .warning(
              "instrument",
              instrument.id() + " without uncertainty or calibration",
              "one of them",
              "fill in \"uncertainty\", or check it against something known");
    }
  }

  private boolean isUsed(String id) {
    return Sections.values(sections.readings()).stream().anyMatch(r -> id.equals(r.instrument()))
        || Sections.values(sections.pieces()).stream().anyMatch(p -> id.equals(p.instrument()))
        || Sections.values(sections.traces()).stream().anyMatch(t -> id.equals(t.instrument()))
        || Sections.values(sections.facts()).stream().anyMatch(f -> id.equals(f.instrument()));
  }

  private void shift(Rowed<Campaign.Instrument> instrument) {
    if (!Words.of(Dimension.TEMPERATURE).equals(instrument.value().quantity())) {
      return;
    }
    Map<String, Rowed<Campaign.Calibration>> last = new LinkedHashMap<>();
    List<Rowed<Campaign.Calibration>> inOrder =
        sections.calibrations().stream()
            .filter(c -> c.value().instrument().equals(instrument.value().id()))
            .sorted(Comparator.comparing(c -> c.value().on()))
            .toList();
    for (Rowed<Campaign.Calibration> check : inOrder) {
      Rowed<Campaign.Calibration> before = last.put(check.value().instrument(), check);
      if (before != null) {
        shift(before.value(), check);
      }
    }
  }

  private static void shift(Campaign.Calibration before, Rowed<Campaign.Calibration> check) {
    double shift = Math.abs(check.value().correction() - before.correction());
    if (shift > SHIFT_KELVIN) {
      check
          .row()
          .warning(
              "correction",
              String.format(
                  java.util.Locale.ROOT, "a shift of %.1f K since %s", shift, before.on()),
              "at most 1 K",
              "what it read since then is in doubt");
    }
  }
}
