package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Rounding;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * Shade of the products side by side, and top against underside.
 *
 * <p>The lightness is that of the pieces themselves, not what the method makes of it (their spread,
 * the change from batch to batch): each piece of the first batch counts alike, then each run.
 */
final class ShadeCards {
  private static final String MEAN = "lightness-mean";
  private static final String DIFFERENCE = "lightness-difference";
  private static final int MOST = 8;

  private final CardBook book;

  ShadeCards(CardBook book) {
    this.book = book;
  }

  /** Mean lightness and the runs it is of. */
  private record Shade(String product, double lightness, int runs) {
    String words() {
      return Rounding.HALF_UP.text(lightness, 0);
    }
  }

  void of(TestPlan test, List<ProductVerdict> products) {
    TestPlan.PhotoPlan photos = test.photos();
    if (photos == null) {
      return;
    }
    String first = photos.faces().isEmpty() ? null : photos.faces().get(0);
    List<Shade> shades = products.stream().flatMap(p -> shade(test, first, p).stream()).toList();
    if (!shades.isEmpty()) {
      strip(test, photos, first, shades);
    }
    if (photos.faces().size() > 1) {
      String last = photos.faces().get(photos.faces().size() - 1);
      for (ProductVerdict product : products) {
        Optional<Shade> above = shade(test, first, product);
        Optional<Shade> below = shade(test, last, product);
        if (above.isPresent() && below.isPresent()) {
          split(product, test, photos.faces(), List.of(above.get(), below.get()));
        }
      }
    }
  }

  private Optional<Shade> shade(TestPlan test, @Nullable String face, ProductVerdict product) {
    Map<String, Map<String, Double>> runs = new TreeMap<>();
    for (MeasureUse use : test.measures()) {
      Double add = added(test, use);
      if (add != null) {
        for (Value v : book.edition().measured().counted(test.id(), use.id(), product.id())) {
          v.parts()
              .forEach(m -> collect(runs, Objects.requireNonNullElse(v.run(), ""), m, face, add));
        }
      }
    }
    return runs.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Shade(
                product.name(),
                runs.values().stream().mapToDouble(ShadeCards::mean).average().orElseThrow(),
                runs.size()));
  }

  /** What makes a value a lightness: nothing, or the wanted shade; null when it is none. */
  private static @Nullable Double added(TestPlan test, MeasureUse use) {
    if (use.take().equals(MEAN)) {
      return 0.0;
    }
    TestPlan.PhotoPlan photos = test.photos();
    TestPlan.Shade target = photos == null ? null : photos.target();
    return use.take().equals(DIFFERENCE) && target != null ? target.lightness() : null;
  }

  private static void collect(
      Map<String, Map<String, Double>> runs,
      String run,
      Measurement piece,
      @Nullable String face,
      double added) {
    Integer batch = piece.subject().batch();
    Double value = piece.value();
    boolean wanted =
        (piece.id().equals(MEAN) || piece.id().equals(DIFFERENCE))
            && (batch == null || batch == 1)
            && (face == null || face.equals(piece.subject().face()));
    if (wanted && value != null) {
      runs.computeIfAbsent(run, r -> new TreeMap<>())
          .put(String.valueOf(piece.subject().piece()), value + added);
    }
  }

  private static double mean(Map<String, Double> pieces) {
    return pieces.values().stream().mapToDouble(Double::doubleValue).average().orElseThrow();
  }

  private static String runs(List<Shade> shades) {
    int least = shades.stream().mapToInt(Shade::runs).min().orElse(0);
    int most = shades.stream().mapToInt(Shade::runs).max().orElse(0);
    return "n = " + (least == most ? "" + least : least + " to " + most);
  }

  private void split(
      ProductVerdict product, TestPlan test, List<String> faces, List<Shade> shades) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(560)
            .text(Lettering.BOLD, product.name(), LEFT, 720, 130, 700, INK, Anchor.START)
            .text(Lettering.MEDIUM, test.name(), LEFT, 815, 72, 700, SECOND, Anchor.START)
            .table(900, 560, 924, 276);
    List<String> words =
        List.of(
            faces.get(0) + " " + shades.get(0).words(),
            faces.get(faces.size() - 1) + " " + shades.get(1).words());
    for (int i = 0; i < 2; i++) {
      double x = 940 + 432 * i;
      drawing
          .block(x, 600, 412, 196, ShadeScale.colour(shades.get(i).lightness()))
          .text(Lettering.BOLD, words.get(i), x, 906, 60, 412, INK, Anchor.START);
    }
    String foot = "lightness L* · " + runs(shades);
    String sentence =
        product.name() + ", " + test.name() + ", L*: " + words.get(0) + ", " + words.get(1);
    book.add(
        "split-" + test.id() + "-" + product.id(),
        Card.Kind.SPLIT,
        sentence + ", " + runs(shades),
        book.footed(drawing, foot));
  }

  private void strip(
      TestPlan test, TestPlan.PhotoPlan photos, @Nullable String face, List<Shade> shades) {
    List<Shade> shown = new ArrayList<>(shades.subList(0, Math.min(shades.size(), MOST)));
    TestPlan.Shade target = photos.target();
    String title = test.name() + (face == null ? "" : ", " + face);
    CardDrawing drawing =
        new CardDrawing()
            .plate(480)
            .text(Lettering.BOLD, title, LEFT, 590, 84, RIGHT - LEFT, INK, Anchor.START)
            .table(96, 630, 1728, 170);
    double width = (RIGHT - LEFT) / (shown.size() + (target == null ? 0 : 1));
    double chip = Math.min(width - 16, 260);
    for (int i = 0; i < shown.size(); i++) {
      chip(drawing, shown.get(i), LEFT + width * i, chip, INK);
    }
    if (target != null) {
      Shade wanted = new Shade("wanted", target.lightness(), 0);
      chip(drawing, wanted, LEFT + width * shown.size(), chip, CardDrawing.HOLD);
    }
    String of = shown.size() < shades.size() ? shown.size() + " of " + shades.size() + " · " : "";
    String said =
        shown.stream()
            .map(s -> s.product() + " " + s.words())
            .collect(java.util.stream.Collectors.joining(", "));
    book.add(
        "shade-" + test.id(),
        Card.Kind.SHADE_STRIP,
        title + ", lightness L*: " + said + ", " + runs(shades),
        book.footed(drawing, of + "lightness L* · " + runs(shades)));
  }

  private static void chip(
      CardDrawing drawing, Shade shade, double x, double width, String colour) {
    drawing
        .block(x, 655, width, 120, ShadeScale.colour(shade.lightness()))
        .text(Lettering.NARROW, shade.product(), x, 860, 54, width + 12, colour, Anchor.START)
        .text(Lettering.BOLD, shade.words(), x, 924, 54, width, colour, Anchor.START);
  }
}
