package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.panel.Palate;
import ovenproof.kitchen.panel.TastingPanel;
import ovenproof.kitchen.panel.TastingPanel.Given;
import ovenproof.kitchen.panel.TastingPanel.Sample;
import ovenproof.kitchen.physics.Chance;

/** What six tasters wrote down. */
final class PanelTable {

  private static final int TASTERS = 6;
  private static final int HARSH = 4;
  private static final double SAFE_CORE = 73.9;

  private final Chance chance;
  private final Season season;
  private final TastingPanel panel;

  PanelTable(Chance chance, Season season) {
    this.chance = chance;
    this.season = season;
    this.panel = TastingPanel.of(TASTERS, HARSH, TastingPanel.Effects.USUAL, chance);
  }

  TastingPanel panel() {
    return panel;
  }

  void write(Path file) throws IOException {
    Csv csv =
        new Csv(
            "session",
            "assessor",
            "run",
            "batch",
            "mark",
            "value",
            "order",
            "code",
            "minutes",
            "entry");
    Map<String, List<RunResult>> sessions = CampaignWriter.bySession(season.runs());
    for (Map.Entry<String, List<RunResult>> session : sessions.entrySet()) {
      session(csv, session.getKey(), session.getValue().stream().filter(this::isServed).toList());
    }
    csv.write(file);
  }

  /** Nobody tastes a trial, a spoilt batch, or poultry that did not get hot enough. */
  private boolean isServed(RunResult run) {
    RunPlan plan = run.plan();
    boolean food = plan.test() != TestKind.HEAT_UP && plan.kind() == RunPlan.Kind.COUNTED;
    boolean safe =
        plan.test() != TestKind.TURKEY
            || !run.stoppedByCap()
            || run.batches().get(0).pieces().get(0).coreCelsius() >= SAFE_CORE;
    return food && !run.aborted() && safe;
  }

  private void session(Csv csv, String session, List<RunResult> served) {
    if (served.isEmpty()) {
      return;
    }
    List<Sample> first = new ArrayList<>();
    List<Sample> second = new ArrayList<>();
    Map<String, RunResult> runs = new HashMap<>();
    for (RunResult run : served) {
      RunPlan plan = run.plan();
      runs.put(plan.id(), run);
      Sample sample = new Sample(plan.oven().id(), plan.id(), Palate.trueMarks(run));
      (plan.order() <= 4 ? first : second).add(sample);
    }
    Map<String, Integer> codes = codes(session, runs.keySet().stream().sorted().toList());
    List<List<Sample>> waves = second.isEmpty() ? List.of(first) : List.of(first, second);
    int n = 0;
    for (Given given : panel.taste(session, waves)) {
      n++;
      String run = given.sample().batch();
      List<String> marks = Palate.marks(served.get(0).plan().test());
      csv.row(
          session,
          given.assessor(),
          run,
          1,
          marks.get(given.mark()),
          Figures.of(given.value(), 1),
          given.order(),
          java.util.Objects.requireNonNull(codes.get(run)),
          Figures.of(2 + 0.9 * ((given.order() - 1) % 4) + chance.uniform(0, 0.4), 1),
          session + "-p" + n);
    }
  }

  /** Three digits, none twice in a session. */
  private Map<String, Integer> codes(String session, List<String> runs) {
    List<Integer> all = new ArrayList<>();
    for (int code = 101; code < 1000; code++) {
      all.add(code);
    }
    chance.named("codes " + session).shuffle(all);
    Map<String, Integer> codes = new HashMap<>();
    for (int i = 0; i < runs.size(); i++) {
      codes.put(runs.get(i), all.get(i));
    }
    return Collections.unmodifiableMap(codes);
  }
}
