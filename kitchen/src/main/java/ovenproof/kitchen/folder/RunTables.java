package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import ovenproof.kitchen.bench.Calendar;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunPlan.Mishap;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.Happening;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Probe;

/** Plan, runs, events, deviations, readings, lots and pieces. */
final class RunTables {
  private static final String SCALE = "scale-1";

  /** One stop was first tapped a minute late and corrected. */
  private static final String MISTAPPED = "flatbread-siskin-1";

  private final Path folder;
  private final Chance chance;
  private final Season season;
  private final Instruments instruments;

  RunTables(Path folder, Chance chance, Season season, Instruments instruments) {
    this.folder = folder;
    this.chance = chance;
    this.season = season;
    this.instruments = instruments;
  }

  void write() throws IOException {
    plan();
    runs();
    events();
    deviations();
    readings();
    lots();
    pieces();
  }

  private void plan() throws IOException {
    Csv csv = new Csv("product", "test", "replicate", "session", "bench", "order");
    for (RunResult run : season.runs()) {
      RunPlan p = run.plan();
      if (p.kind() == RunPlan.Kind.COUNTED && p.redoOf().isEmpty()) {
        csv.row(p.oven().id(), p.test().id(), p.replicate(), p.session(), p.bench(), p.order());
      }
    }
    csv.write(folder.resolve("plan.csv"));
  }

  private void runs() throws IOException {
    Csv csv =
        new Csv(
            "run",
            "product",
            "test",
            "replicate",
            "specimen",
            "kind",
            "session",
            "bench",
            "started",
            "redo_of",
            "cause",
            "cause_at",
            "by",
            "note");
    for (RunResult run : season.runs()) {
      RunPlan p = run.plan();
      boolean redo = !p.redoOf().isEmpty();
      csv.row(
          p.id(),
          p.oven().id(),
          p.test().id(),
          p.replicate(),
          p.oven().id() + "-1",
          p.kind().name().toLowerCase(Locale.ROOT),
          p.session(),
          p.bench(),
          TraceWriter.stamp(p.started()),
          p.redoOf(),
          redo ? "the breaker of the bench fell while the cakes were in" : "",
          redo ? TraceWriter.stamp(p.started().minusMinutes(25)) : "",
          operator(p),
          note(p));
    }
    csv.write(folder.resolve("runs.csv"));
  }

  private static String operator(RunPlan plan) {
    return plan.bench().compareTo("C") < 0 ? "bench-1" : "bench-2";
  }

  private static String note(RunPlan plan) {
    double volts = plan.day().mains().volts(plan.day().sessionSeconds() + 600);
    if (volts < 222) {
      return "mains low, about " + Figures.of(volts, 0) + " V";
    }
    return plan.kind() == RunPlan.Kind.TRIAL ? "to find the preset, declared beforehand" : "";
  }

  private void events() throws IOException {
    Csv csv = new Csv("run", "event", "time", "batch", "value", "note", "entry", "by", "corrects");
    for (RunResult run : season.runs()) {
      Chance hand = chance.named("tap " + run.plan().id());
      List<Happening> inOrder =
          run.events().stream().sorted(Comparator.comparingDouble(Happening::seconds)).toList();
      int n = 0;
      for (Happening event : inOrder) {
        n++;
        event(csv, run.plan(), event, tapped(event, hand), run.plan().id() + "-e" + n);
      }
    }
    csv.write(folder.resolve("events.csv"));
  }

  /** A tap comes a little early or late; heat on is the clock's own zero. */
  private static double tapped(Happening event, Chance hand) {
    boolean zero = event.seconds() <= 0;
    return zero ? 0 : Math.max(0, event.seconds() + hand.gaussian(0.2, 0.5));
  }

  private static void event(Csv csv, RunPlan plan, Happening event, double time, String entry) {
    String batch = event.batch() == 0 ? "" : String.valueOf(event.batch());
    String by = operator(plan);
    boolean mistapped = plan.id().equals(MISTAPPED) && event.type().equals("stop");
    if (mistapped) {
      csv.row(
          plan.id(), "stop", Figures.elapsed(time + 60), batch, event.value(), "", entry, by, "");
      csv.row(
          plan.id(),
          "stop",
          Figures.elapsed(time),
          batch,
          event.value(),
          "tapped a minute late, the second clock shows it",
          entry + "b",
          by,
          entry);
      return;
    }
    csv.row(
        plan.id(),
        event.type(),
        Figures.elapsed(time),
        batch,
        event.value(),
        event.note(),
        entry,
        by,
        "");
  }

  private void deviations() throws IOException {
    Csv csv = new Csv("run", "class", "what", "note", "by", "at");
    for (RunResult run : season.runs()) {
      RunPlan p = run.plan();
      String at = TraceWriter.stamp(p.started().plusMinutes(32));
      if (p.mishap() == Mishap.LATE_SHAKE) {
        csv.row(
            p.id(),
            1,
            "shaken 21 s late",
            "the timer of bench " + p.bench() + " was muted",
            operator(p),
            at);
      }
      if (p.mishap() == Mishap.THICK_SLICES) {
        csv.row(
            p.id(),
            2,
            "slices 8 % over the wanted mass",
            "cut from the end of the loaf before anybody weighed them",
            operator(p),
            at);
      }
    }
    csv.write(folder.resolve("deviations.csv"));
  }

  private void readings() throws IOException {
    Csv csv = new Csv("run", "reading", "value", "instrument", "time", "note", "entry", "by");
    Probe skin = instruments.probe("skin-1");
    for (RunResult run : season.runs()) {
      if (run.plan().test() == TestKind.HEAT_UP) {
        Chance luck = chance.named("skin " + run.plan().id());
        double shown = skin.reading(run.skinCelsius() + luck.gaussian(0, 0.9), luck);
        csv.row(
            run.plan().id(),
            "skin",
            Figures.of(shown, 1) + " °C",
            "skin-1",
            "+59:30",
            "hottest of five places",
            run.plan().id() + "-r1",
            operator(run.plan()));
      }
    }
    csv.write(folder.resolve("readings.csv"));
  }

  private void lots() throws IOException {
    Csv csv = new Csv("lot", "food", "bought", "note");
    for (Map.Entry<String, String> lot : Calendar.lots().entrySet()) {
      String id = lot.getKey();
      csv.row(
          id,
          lot.getValue(),
          id.endsWith("2") ? "2026-03-06" : id.endsWith("3") ? "2026-03-11" : "2026-02-27",
          id.equals("bread-2") ? "the baker had changed the recipe: more sugar" : "");
    }
    csv.write(folder.resolve("lots.csv"));
  }

  private void pieces() throws IOException {
    Csv csv =
        new Csv(
            "run", "batch", "piece", "position", "lot", "before", "after", "instrument", "note");
    for (RunResult run : season.runs()) {
      Chance scale = chance.named("scale " + run.plan().id());
      for (BatchResult batch : run.batches()) {
        boolean weighedAsOne = run.plan().test() == TestKind.CROQUETTES;
        for (PieceResult piece : batch.pieces()) {
          String before = weighedAsOne ? "" : grams(piece.gramBefore(), scale);
          String after = weighedAsOne ? "" : grams(piece.gramAfter(), scale);
          csv.row(
              run.plan().id(),
              batch.batch(),
              piece.id(),
              piece.position(),
              run.plan().lot().id(),
              before,
              after,
              weighedAsOne ? "" : SCALE,
              "");
        }
        if (weighedAsOne) {
          all(csv, run, batch, scale);
        }
      }
    }
    csv.write(folder.resolve("pieces.csv"));
  }

  private static void all(Csv csv, RunResult run, BatchResult batch, Chance scale) {
    double before = batch.pieces().stream().mapToDouble(PieceResult::gramBefore).sum();
    double after = batch.pieces().stream().mapToDouble(PieceResult::gramAfter).sum();
    csv.row(
        run.plan().id(),
        batch.batch(),
        "all",
        "",
        run.plan().lot().id(),
        grams(before, scale),
        grams(after, scale),
        SCALE,
        "weighed together");
  }

  private static String grams(double truth, Chance scale) {
    return Figures.of(Figures.shown(truth + scale.gaussian(0, 0.06), 0.1), 1) + " g";
  }
}
