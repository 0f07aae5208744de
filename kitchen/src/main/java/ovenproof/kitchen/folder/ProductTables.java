package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import ovenproof.kitchen.bench.Checklist;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.bench.Showroom;
import ovenproof.kitchen.bench.Showroom.Card;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Oven;

/** The field: products, specimens, prices, facts, rated facts and setting cards. */
final class ProductTables {

  private static final String[] RATERS = {"bench-1", "cook"};
  private static final double OTHER_STEP = 0.35;

  private final Path folder;
  private final Chance chance;
  private final Season season;

  ProductTables(Path folder, Chance chance, Season season) {
    this.folder = folder;
    this.chance = chance;
    this.season = season;
  }

  void write() throws IOException {
    products();
    specimens();
    prices();
    facts();
    rated();
    features();
    settings();
  }

  private void products() throws IOException {
    Csv csv = new Csv("product", "name", "maker", "kind", "note");
    for (Oven oven : season.ovens()) {
      Card card = Showroom.card(oven.id());
      csv.row(oven.id(), oven.name(), card.maker(), "countertop oven " + card.kind(), card.note());
    }
    csv.write(folder.resolve("products.csv"));
  }

  private void specimens() throws IOException {
    Csv csv =
        new Csv(
            "specimen",
            "product",
            "serial",
            "acquired",
            "from",
            "on",
            "became",
            "became_on",
            "note");
    int n = 0;
    for (Oven oven : season.ovens()) {
      Card card = Showroom.card(oven.id());
      n++;
      csv.row(
          oven.id() + "-1",
          oven.id(),
          String.format(
              Locale.ROOT,
              "%s%06d",
              oven.name().substring(0, 2).toUpperCase(Locale.ROOT),
              chance.named("serial " + oven.id()).below(1_000_000)),
          card.acquired(),
          card.acquired().equals("bought") ? "a shop in town" : "the maker",
          "2026-02-" + (9 + n),
          card.became(),
          card.became().equals("kept") ? "" : "2026-03-2" + n,
          "run in twice for 20 min at the highest setting");
    }
    csv.write(folder.resolve("specimens.csv"));
  }

  private void prices() throws IOException {
    Csv csv = new Csv("product", "price", "on", "currency", "where");
    for (Oven oven : season.ovens()) {
      Card card = Showroom.card(oven.id());
      csv.row(oven.id(), card.price(), "2026-02-10", "EUR", "a shop in town");
      csv.row(oven.id(), card.priceLater(), "2026-03-16", "EUR", "a shop on the net");
    }
    csv.write(folder.resolve("prices.csv"));
  }

  private void facts() throws IOException {
    Csv csv =
        new Csv(
            "product",
            "fact",
            "nameplate",
            "measured",
            "uncertainty",
            "instrument",
            "by",
            "at",
            "note");
    for (Oven oven : season.ovens()) {
      Card card = Showroom.card(oven.id());
      fact(
          csv,
          oven,
          "usable-volume",
          card.plateLitres(),
          oven.cabinet().litres(),
          0.2,
          "L",
          "jug-1",
          1);
      fact(csv, oven, "mass", Double.NaN, card.kilogram(), 0.02, "kg", "scale-2", 2);
      fact(
          csv,
          oven,
          "footprint",
          Double.NaN,
          card.footprintSquareCentimetre(),
          12,
          "cm²",
          "tape-1",
          0);
      fact(csv, oven, "noise", Double.NaN, card.decibel(), 1, "dB", "ear-1", 1);
      fact(csv, oven, "cord", Double.NaN, card.cordCentimetre(), 0.5, "cm", "tape-1", 0);
      fact(
          csv,
          oven,
          "power",
          oven.heater().nameplateWatts(),
          oven.heater().ratedWatts(),
          6,
          "W",
          "meter-A",
          0);
    }
    csv.write(folder.resolve("facts.csv"));
  }

  private void fact(
      Csv csv,
      Oven oven,
      String fact,
      double plate,
      double truth,
      double u,
      String unit,
      String instrument,
      int decimals) {
    double measured = chance.named(oven.id() + " " + fact).gaussian(truth, u);
    csv.row(
        oven.id(),
        fact,
        Double.isNaN(plate) ? "" : Figures.of(plate, 0) + " " + unit,
        Figures.of(measured, decimals) + " " + unit,
        Figures.of(u, u < 0.1 ? 2 : 1) + " " + unit,
        instrument,
        "bench-2",
        "2026-02-25T1" + (season.ovens().indexOf(oven)) + ":20:00",
        fact.equals("power") ? "elements full on, taken to 230 V" : "");
  }

  private void rated() throws IOException {
    Csv csv = new Csv("product", "fact", "rater", "step", "reason", "at");
    for (Oven oven : season.ovens()) {
      int[] steps = Showroom.card(oven.id()).steps();
      for (int f = 0; f < steps.length; f++) {
        for (String rater : RATERS) {
          Chance eye = chance.named(oven.id() + rater + f);
          boolean differs = rater.equals(RATERS[1]) && eye.uniform(0, 1) < OTHER_STEP;
          int off = differs ? 2 * eye.below(2) - 1 : 0;
          int step = Math.min(4, Math.max(0, steps[f] + off));
          csv.row(
              oven.id(),
              Showroom.RATED.get(f),
              rater,
              step,
              Reasons.of(Showroom.RATED.get(f), step),
              "2026-02-26T1" + season.ovens().indexOf(oven) + ":00:00");
        }
      }
    }
    csv.write(folder.resolve("rated.csv"));
  }

  private void features() throws IOException {
    Csv csv = new Csv("product", "feature", "state", "on", "note", "by");
    for (Oven oven : season.ovens()) {
      for (String feature : Checklist.FEATURES) {
        Checklist.Seen seen = Checklist.seen(oven.id(), feature);
        if (seen != Checklist.Seen.NOT_LOOKED_AT) {
          csv.row(
              oven.id(),
              feature,
              seen.name().toLowerCase(Locale.ROOT).replace('_', '-'),
              "2026-02-24",
              Checklist.note(oven.id(), feature),
              "bench-1");
        }
      }
    }
    csv.write(folder.resolve("features.csv"));
  }

  private void settings() throws IOException {
    Csv csv =
        new Csv(
            "product", "test", "mode", "preset", "dial", "rack", "accessory", "chosen_by", "note");
    for (Oven oven : season.ovens()) {
      for (TestKind test : TestKind.values()) {
        boolean toast = test == TestKind.TOAST;
        csv.row(
            oven.id(),
            test.id(),
            toast ? "toast" : "bake, fan on where there is one",
            toast ? String.valueOf(season.presets().getOrDefault(oven.id(), 4)) : "",
            toast ? "" : Figures.of(test.setCelsius(), 0) + " °C",
            test == TestKind.HEAT_UP ? "wire frame at mid-height" : "middle",
            accessory(test),
            toast ? "one trial at preset 4, then by the cook's eye" : "nominal, as a user would",
            "");
      }
    }
    csv.write(folder.resolve("settings.csv"));
  }

  private static String accessory(TestKind test) {
    return switch (test) {
      case HEAT_UP -> "five thermocouples";
      case TOAST -> "wire rack";
      case TURKEY -> "wire rack over the drip tray";
      case CAKES, FLATBREAD, CROQUETTES -> "the desk's own aluminium sheet";
    };
  }
}
