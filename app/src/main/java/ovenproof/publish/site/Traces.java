package ovenproof.publish.site;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.chart.LineChart;
import ovenproof.chart.LineChart.Axis;
import ovenproof.chart.LineChart.Level;
import ovenproof.chart.LineChart.Series;
import ovenproof.chart.LineChart.Style;
import ovenproof.chart.Scale;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.RunTraces;
import ovenproof.measure.RunTraces.Placed;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.SliceMeans;

/** Draws the temperatures of each run, with the same axes for all runs of a test. */
final class Traces {
  private static final int HEIGHT = 260;
  private static final int MOST_LINES = 5;
  private static final int POINTS = 160;

  private final Edition edition;

  Traces(Edition edition) {
    this.edition = edition;
  }

  /** Drawings by run; runs without a temperature have none. */
  Map<String, List<View.Drawing>> draw() {
    if (edition.campaign().traces().isEmpty()) {
      return Map.of();
    }
    RunTraces library = new RunTraces(edition.campaign(), edition.evidence());
    Map<String, List<Placed>> placed = new ConcurrentHashMap<>();
    edition.campaign().runs().parallelStream()
        .forEach(
            run -> {
              List<Placed> temperatures =
                  library.of(run).stream()
                      .filter(p -> p.trace().unit() == Unit.CELSIUS)
                      .filter(p -> !p.binding().place().equals("ambient"))
                      .sorted(
                          Comparator.comparing((Placed p) -> rank(p))
                              .thenComparing(p -> p.binding().place()))
                      .limit(MOST_LINES)
                      .toList();
              if (!temperatures.isEmpty()) {
                placed.put(run.id(), temperatures);
              }
            });
    Map<String, List<View.Drawing>> drawings = new HashMap<>();
    for (TestPlan test : edition.campaign().method().tests()) {
      List<Run> runs =
          edition.campaign().runs().stream()
              .filter(r -> r.test().equals(test.id()) && placed.containsKey(r.id()))
              .toList();
      Axes axes =
          Axes.around(
              runs.stream().flatMap(r -> placed.getOrDefault(r.id(), List.of()).stream()).toList());
      runs.forEach(
          r ->
              drawings.put(
                  r.id(), List.of(draw(test, r, placed.getOrDefault(r.id(), List.of()), axes))));
    }
    return drawings;
  }

  /** The cavity's middle first, then cores, then the rest. */
  private static int rank(Placed placed) {
    String place = placed.binding().place();
    return place.equals("centre") ? 0 : place.startsWith("core") ? 1 : 2;
  }

  private record Axes(Scale minutes, Scale celsius) {
    static Axes around(List<Placed> all) {
      double last = 1;
      double highest = 50;
      for (Placed placed : all) {
        last = Math.max(last, placed.trace().lastSecond() / 60);
        for (double value : placed.trace().values()) {
          highest = Double.isFinite(value) ? Math.max(highest, value) : highest;
        }
      }
      return new Axes(
          Scale.around(new double[] {0, last}, 6), Scale.around(new double[] {0, highest}, 5));
    }
  }

  private View.Drawing draw(TestPlan test, Run run, List<Placed> placed, Axes axes) {
    List<Series> series = new ArrayList<>();
    for (Placed line : placed) {
      series.add(series(line));
    }
    List<Level> levels = new ArrayList<>();
    if (test.setting() != null && test.setting().dial() != null) {
      Quantity dial = test.setting().dial();
      if (dial.unit().dimension() == ovenproof.core.quantity.Dimension.TEMPERATURE) {
        String label = "dial " + Figures.dual(dial, ovenproof.core.quantity.Rounding.HALF_UP);
        levels.add(new Level(label, dial.contract(), LineChart.LevelStyle.DIAL));
      }
    }
    String places =
        placed.stream()
            .map(p -> p.binding().place().replace('-', ' '))
            .collect(Collectors.joining(", "));
    String sentence =
        "Temperatures of "
            + edition.name(run.product())
            + ", "
            + test.name()
            + ", "
            + run.id()
            + ": "
            + places
            + highest(placed);
    LineChart chart =
        new LineChart(
            sentence,
            HEIGHT,
            new Axis(axes.minutes(), "min"),
            new Axis(axes.celsius(), "°C"),
            series,
            levels,
            List.of());
    return new View.Drawing(chart.svg(), places + highest(placed) + "; " + events(run));
  }

  private static String highest(List<Placed> placed) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double value : placed.get(0).trace().values()) {
      highest = Double.isFinite(value) ? Math.max(highest, value) : highest;
    }
    return Double.isFinite(highest)
        ? "; highest " + placed.get(0).binding().place() + " " + Figures.dual(highest, Unit.CELSIUS)
        : "";
  }

  private String events(Run run) {
    return edition.campaign().eventsOf(run.id()).stream()
        .filter(
            e ->
                e.type() == Event.Type.SIGNAL
                    || e.type() == Event.Type.LOAD
                    || e.type() == Event.Type.STOP)
        .limit(4)
        .map(e -> e.type().word() + " " + Figures.text(e.elapsedSeconds(), Unit.SECOND))
        .collect(Collectors.joining(", "));
  }

  /** At most {@value #POINTS} points, each the mean of its slice, so that pages stay small. */
  private static Series series(Placed line) {
    SliceMeans means = SliceMeans.of(line.trace().seconds(), line.trace().values(), POINTS);
    double[] minutes = Arrays.stream(means.starts()).map(t -> t / 60).toArray();
    String place = line.binding().place();
    Style style =
        place.startsWith("core") ? Style.CORE : place.equals("centre") ? Style.HEAT : Style.OTHER;
    // Five names would lie on each other; the caption lists them.
    return new Series("", style, minutes, means.means());
  }
}
