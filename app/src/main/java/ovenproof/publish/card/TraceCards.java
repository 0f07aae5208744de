package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.EDGE;
import static ovenproof.publish.card.CardDrawing.HEAT;
import static ovenproof.publish.card.CardDrawing.HOLD;
import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.chart.Scale;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Trace;
import ovenproof.measure.RunTraces;
import ovenproof.measure.RunTraces.Placed;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.SliceMeans;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * Temperature of one run with what happened in it. The first counted run of each product that was
 * logged; all products of a test on the same axes.
 */
final class TraceCards {
  private static final double FROM = 340;
  private static final double TO = 1720;
  private static final double TOP = 440;
  private static final double FLOOR = 850;
  private static final int POINTS = 200;
  private static final int MOST_MARKS = 4;

  private final CardBook book;
  private final Edition edition;

  TraceCards(CardBook book) {
    this.book = book;
    this.edition = book.edition();
  }

  /** A run, its place among the counted ones, and its lines. */
  private record Logged(ProductVerdict product, Run run, int number, int of, List<Placed> lines) {}

  void draw(List<ProductVerdict> products) {
    if (edition.campaign().traces().isEmpty()) {
      return;
    }
    RunTraces library = new RunTraces(edition.campaign(), edition.evidence());
    for (TestPlan test : edition.campaign().method().tests()) {
      Map<String, Logged> found = new ConcurrentHashMap<>();
      products.parallelStream()
          .forEach(p -> logged(library, test, p).ifPresent(l -> found.put(p.id(), l)));
      List<Logged> all =
          products.stream()
              .flatMap(p -> java.util.Optional.ofNullable(found.get(p.id())).stream())
              .toList();
      all.forEach(l -> draw(test, l, Axes.around(test, all)));
    }
  }

  private Optional<Logged> logged(RunTraces library, TestPlan test, ProductVerdict product) {
    List<Run> runs = edition.countedRuns(product.id(), test.id());
    for (int i = 0; i < runs.size(); i++) {
      List<Placed> lines = lines(library.of(runs.get(i)), loaded(runs.get(i)));
      if (!lines.isEmpty()) {
        return Optional.of(new Logged(product, runs.get(i), i + 1, runs.size(), lines));
      }
    }
    return Optional.empty();
  }

  /** When the food went in; a needle shows no food before. */
  private double loaded(Run run) {
    return edition.campaign().eventsOf(run.id()).stream()
        .filter(e -> e.type() == Event.Type.LOAD)
        .mapToDouble(Event::elapsedSeconds)
        .min()
        .orElse(0);
  }

  /** The middle of the cavity, or the first place that was logged; and the coldest core. */
  private static List<Placed> lines(List<Placed> all, double loaded) {
    List<Placed> air =
        all.stream()
            .filter(p -> p.trace().unit() == Unit.CELSIUS)
            .filter(p -> !p.binding().place().equals("ambient") && !isCore(p))
            .sorted(
                Comparator.comparing((Placed p) -> p.binding().place().equals("centre") ? 0 : 1))
            .limit(1)
            .toList();
    List<Placed> lines = new ArrayList<>(air);
    all.stream()
        .filter(p -> p.trace().unit() == Unit.CELSIUS && isCore(p))
        .map(p -> new Placed(p.binding(), p.trace().part(loaded, Double.POSITIVE_INFINITY)))
        .filter(p -> p.trace().size() > 1)
        .min(Comparator.comparingDouble(p -> highest(p.trace())))
        .ifPresent(lines::add);
    return lines;
  }

  private static boolean isCore(Placed placed) {
    return placed.binding().place().startsWith("core");
  }

  private static double highest(Trace trace) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double value : trace.values()) {
      highest = Double.isFinite(value) ? Math.max(highest, value) : highest;
    }
    return highest;
  }

  private record Axes(Scale minutes, Scale celsius) {
    static Axes around(TestPlan test, List<Logged> all) {
      double last = 1;
      Double dial = dial(test);
      double top = dial == null ? 50 : Math.max(50, dial);
      for (Logged logged : all) {
        for (Placed line : logged.lines()) {
          last = Math.max(last, line.trace().lastSecond() / 60);
          top = Math.max(top, highest(line.trace()));
        }
      }
      return new Axes(upTo(last, 5), upTo(top * 1.04, 3));
    }

    /** From nought to just there, with round ticks. */
    private static Scale upTo(double end, int ticks) {
      return new Scale(0, end, Scale.around(new double[] {0, end}, ticks).step());
    }

    double x(double second) {
      return FROM + (TO - FROM) * minutes.fraction(second / 60);
    }

    double y(double degrees) {
      return FLOOR - (FLOOR - TOP) * celsius.fraction(degrees);
    }
  }

  private static @Nullable Double dial(TestPlan test) {
    Quantity dial = test.setting() == null ? null : test.setting().dial();
    return dial == null || dial.unit().dimension() != Dimension.TEMPERATURE
        ? null
        : Double.valueOf(dial.contract());
  }

  private void draw(TestPlan test, Logged logged, Axes axes) {
    String title = logged.product().name() + ", " + test.name();
    CardDrawing drawing =
        new CardDrawing()
            .plate(220)
            .text(Lettering.BOLD, title, LEFT, 320, 84, RIGHT - LEFT, INK, Anchor.START);
    grid(drawing, axes);
    Double dial = dial(test);
    if (dial != null) {
      drawing.dashed(FROM, axes.y(dial), TO, axes.y(dial), 4, INK);
    }
    List<Event> marks = marks(logged.run());
    marks.forEach(m -> drawing.dashed(x(axes, m), TOP - 30, x(axes, m), FLOOR, 3, SECOND));
    for (Placed line : logged.lines()) {
      curve(drawing, axes, line);
    }
    named(drawing, axes, marks);
    StringBuilder said = new StringBuilder(title).append(", ").append(run(logged)).append(": ");
    for (Placed line : logged.lines()) {
      String place = line.binding().place().replace('-', ' ');
      said.append(place).append(" at most ").append(degrees(highest(line.trace()))).append("; ");
    }
    marks.forEach(m -> said.append(words(m)).append("; "));
    String sentence = said.substring(0, said.length() - 2);
    String foot =
        run(logged) + " · " + lines(logged) + (dial == null ? "" : " · dial " + degrees(dial));
    String id = "trace-" + test.id() + "-" + logged.product().id();
    book.add(id, Card.Kind.TRACE, sentence, book.footed(drawing, foot));
  }

  private static String run(Logged logged) {
    return logged.of() == 1 ? "one run" : "run " + logged.number() + " of " + logged.of();
  }

  private static String lines(Logged logged) {
    return logged.lines().stream()
        .map(l -> isCore(l) ? "core" : l.binding().place().replace('-', ' '))
        .collect(java.util.stream.Collectors.joining(" and "));
  }

  private static String degrees(double celsius) {
    return Figures.text(celsius, Unit.CELSIUS);
  }

  private static void grid(CardDrawing drawing, Axes axes) {
    drawing.line(FROM, FLOOR, TO, FLOOR, 3, EDGE);
    List<Double> degrees = axes.celsius().ticks();
    for (int i = 0; i < degrees.size(); i++) {
      double y = axes.y(degrees.get(i));
      boolean last = i == degrees.size() - 1;
      String label = axes.celsius().label(degrees.get(i)) + (last ? " °C" : "");
      drawing
          .line(FROM - 14, y, FROM, y, 3, EDGE)
          .text(Lettering.MEDIUM, label, FROM - 24, y + 18, 54, 210, SECOND, Anchor.END);
    }
    List<Double> minutes = axes.minutes().ticks();
    for (int i = 0; i < minutes.size(); i++) {
      double x = axes.x(minutes.get(i) * 60);
      boolean last = i == minutes.size() - 1;
      String label = axes.minutes().label(minutes.get(i)) + (last ? " min" : "");
      drawing
          .line(x, FLOOR, x, FLOOR + 14, 3, EDGE)
          .text(
              Lettering.MEDIUM,
              label,
              last ? TO + 24 : x,
              FLOOR + 66,
              54,
              300,
              SECOND,
              last ? Anchor.END : Anchor.MIDDLE);
    }
  }

  /** At most {@value #POINTS} points, each the mean of its slice. */
  private static void curve(CardDrawing drawing, Axes axes, Placed line) {
    SliceMeans means = SliceMeans.of(line.trace().seconds(), line.trace().values(), POINTS);
    double[] xs = Arrays.stream(means.middles()).map(axes::x).toArray();
    double[] ys = Arrays.stream(means.means()).map(axes::y).toArray();
    drawing.curve(xs, ys, 8, isCore(line) ? HOLD : HEAT);
  }

  /** What a viewer has to see: ready, in, out or over. */
  private List<Event> marks(Run run) {
    List<Event> marks = new ArrayList<>();
    for (Event event : edition.campaign().eventsOf(run.id())) {
      boolean shown =
          event.type() == Event.Type.SIGNAL
              || event.type() == Event.Type.LOAD
              || event.type() == Event.Type.STOP;
      if (shown && event.elapsedSeconds() > 0 && marks.size() < MOST_MARKS) {
        marks.add(event);
      }
    }
    return marks;
  }

  private static double x(Axes axes, Event event) {
    return axes.x(event.elapsedSeconds());
  }

  private static String words(Event event) {
    long seconds = Rounding.HALF_UP.apply(event.elapsedSeconds(), 0).longValueExact();
    return event.type().word() + " " + RunningClock.text(seconds);
  }

  /** Names over the marks; one that would lie on the name before it stays away. */
  private static void named(CardDrawing drawing, Axes axes, List<Event> marks) {
    double taken = FROM - 20;
    for (Event mark : marks) {
      String words = words(mark);
      double width = Lettering.BOLD.width(words, 54);
      double left = Math.max(FROM, Math.min(x(axes, mark) - width / 2, TO - width));
      if (left > taken) {
        drawing.text(Lettering.BOLD, words, left, TOP - 46, 54, width + 2, INK, Anchor.START);
        taken = left + width + 30;
      }
    }
  }
}
