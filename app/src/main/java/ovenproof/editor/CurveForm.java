package ovenproof.editor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.CurveSpec;
import ovenproof.method.CurveSpec.Points.Anchor;
import ovenproof.web.FormProblems;

/** A value curve as the fields of a form, and back. */
final class CurveForm {
  /** Rows of anchors a form offers; two are empty, for more. */
  static final int MOST_ROWS = 12;

  private CurveForm() {}

  /** Shapes that can be drawn. */
  enum Shape {
    POINTS("straight lines between anchors"),
    WINDOW("full points inside a window"),
    STEPS("steps");

    private final String words;

    Shape(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    static Shape of(CurveSpec curve) {
      return curve instanceof CurveSpec.Window
          ? WINDOW
          : curve instanceof CurveSpec.Steps ? STEPS : POINTS;
    }

    static Shape named(@Nullable String word, Shape otherwise) {
      for (Shape shape : values()) {
        if (shape.name().equals(word)) {
          return shape;
        }
      }
      return otherwise;
    }
  }

  /** The dimension of what is measured, as the curve's own quantities say it. */
  static Dimension dimension(CurveSpec curve) {
    return anchors(curve).stream()
        .map(a -> a.at().unit().dimension())
        .findFirst()
        .orElse(Dimension.RATIO);
  }

  /** The unit that the curve is mostly written in. */
  static Unit unit(CurveSpec curve) {
    List<Anchor> anchors = anchors(curve);
    return anchors.isEmpty() ? Unit.ONE : anchors.get(anchors.size() - 1).at().unit();
  }

  /** The corners of any curve that can be drawn. */
  static List<Anchor> anchors(CurveSpec curve) {
    if (curve instanceof CurveSpec.Points p) {
      return p.anchors();
    } else if (curve instanceof CurveSpec.Steps s) {
      return s.from();
    } else if (curve instanceof CurveSpec.Window w) {
      List<Anchor> corners = new ArrayList<>();
      corner(corners, w.zeroBelow(), 0);
      corner(corners, w.from(), 10);
      corner(corners, w.to(), 10);
      corner(corners, w.zeroAbove(), 0);
      return corners;
    }
    return List.of();
  }

  private static void corner(List<Anchor> into, @Nullable Quantity at, double points) {
    if (at != null) {
      into.add(new Anchor(at, points));
    }
  }

  /** The fields that show a curve in a shape. */
  static Map<String, String> fields(CurveSpec curve, Shape shape) {
    Map<String, String> fields = new LinkedHashMap<>();
    List<Anchor> anchors = anchors(curve);
    if (shape == Shape.WINDOW) {
      window(curve, anchors, fields);
      return fields;
    }
    if (shape == Shape.STEPS) {
      fields.put("below", curve instanceof CurveSpec.Steps s ? CurveWords.number(s.below()) : "0");
    }
    for (int i = 0; i < anchors.size(); i++) {
      fields.put("at-" + i, anchors.get(i).at().toString());
      fields.put("points-" + i, CurveWords.number(anchors.get(i).points()));
    }
    return fields;
  }

  private static void window(CurveSpec curve, List<Anchor> anchors, Map<String, String> fields) {
    if (curve instanceof CurveSpec.Window w) {
      put(fields, "zero-below", w.zeroBelow());
      put(fields, "from", w.from());
      put(fields, "to", w.to());
      put(fields, "zero-above", w.zeroAbove());
      return;
    }
    Anchor best = anchors.stream().max(Comparator.comparingDouble(Anchor::points)).orElse(null);
    if (best != null) {
      put(fields, "from", best.at());
      put(fields, "to", best.at());
      int at = anchors.indexOf(best);
      put(fields, "zero-below", at > 0 ? anchors.get(0).at() : null);
      int last = anchors.size() - 1;
      put(fields, "zero-above", at < last ? anchors.get(last).at() : null);
    }
  }

  private static void put(Map<String, String> fields, String key, @Nullable Quantity value) {
    if (value != null) {
      fields.put(key, value.toString());
    }
  }

  /** The curve that was typed; empty, with what is wrong beside its field, if it is none. */
  static Optional<CurveSpec> read(
      Map<String, String> typed, Shape shape, Dimension dimension, FormProblems problems) {
    return shape == Shape.WINDOW
        ? window(typed, dimension, problems)
        : anchors(typed, shape, dimension, problems);
  }

  private static Optional<CurveSpec> window(
      Map<String, String> typed, Dimension dimension, FormProblems problems) {
    Optional<Quantity> below = optional(typed, "zero-below", dimension, problems);
    Optional<Quantity> from = problems.quantity("from", typed.get("from"), dimension);
    Optional<Quantity> to = problems.quantity("to", typed.get("to"), dimension);
    Optional<Quantity> above = optional(typed, "zero-above", dimension, problems);
    if (below.isEmpty() && above.isEmpty()) {
      problems.add("zero-below", "Expected at least one side on which the points fall to 0.");
    }
    if (problems.any() || from.isEmpty() || to.isEmpty()) {
      return Optional.empty();
    }
    rising(problems, "from", below.orElse(null), from.get());
    rising(problems, "zero-above", to.get(), above.orElse(null));
    if (to.get().contract() < from.get().contract()) {
      problems.add("to", "Found " + to.get() + ", expected at least " + from.get() + ".");
    }
    return problems.any()
        ? Optional.empty()
        : Optional.of(
            new CurveSpec.Window(below.orElse(null), from.get(), to.get(), above.orElse(null)));
  }

  private static void rising(
      FormProblems problems, String field, @Nullable Quantity lower, @Nullable Quantity upper) {
    if (lower != null && upper != null && upper.contract() <= lower.contract()) {
      problems.add(field, "Expected the order zero below, from, to, zero above.");
    }
  }

  private static Optional<Quantity> optional(
      Map<String, String> typed, String field, Dimension dimension, FormProblems problems) {
    return typed.getOrDefault(field, "").isBlank()
        ? Optional.empty()
        : problems.quantity(field, typed.get(field), dimension);
  }

  private static Optional<CurveSpec> anchors(
      Map<String, String> typed, Shape shape, Dimension dimension, FormProblems problems) {
    List<Anchor> anchors = new ArrayList<>();
    for (int i = 0; i < MOST_ROWS; i++) {
      boolean empty =
          typed.getOrDefault("at-" + i, "").isBlank()
              && typed.getOrDefault("points-" + i, "").isBlank();
      if (!empty) {
        Optional<Quantity> at = problems.quantity("at-" + i, typed.get("at-" + i), dimension);
        Optional<Double> points = points(problems, "points-" + i, typed.get("points-" + i));
        if (at.isPresent() && points.isPresent()) {
          anchors.add(new Anchor(at.get(), points.get()));
        }
      }
    }
    anchors.sort(Comparator.comparingDouble(a -> a.at().contract()));
    for (int i = 1; i < anchors.size(); i++) {
      if (anchors.get(i).at().contract() == anchors.get(i - 1).at().contract()) {
        problems.add("at-0", anchors.get(i).at() + " is there twice; each place once.");
      }
    }
    int fewest = shape == Shape.STEPS ? 1 : 2;
    if (anchors.size() < fewest) {
      problems.add("at-0", "Expected at least " + fewest + (fewest == 1 ? " step." : " anchors."));
    }
    Optional<Double> below =
        shape == Shape.STEPS ? points(problems, "below", typed.get("below")) : Optional.of(0.0);
    if (problems.any() || below.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        shape == Shape.STEPS
            ? new CurveSpec.Steps(below.get(), anchors)
            : new CurveSpec.Points(anchors));
  }

  private static Optional<Double> points(
      FormProblems problems, String field, @Nullable String typed) {
    String text = problems.need(field, typed, "points from 0 to 10").replace(',', '.');
    if (text.matches("\\d{1,2}(\\.\\d{1,3})?") && Double.parseDouble(text) <= 10) {
      return Optional.of(Double.valueOf(text));
    }
    problems.add(field, "Found “" + text + "”, expected points from 0 to 10.");
    return Optional.empty();
  }
}
