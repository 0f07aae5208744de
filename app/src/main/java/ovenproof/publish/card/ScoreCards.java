package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.HOLD;
import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ovenproof.campaign.Campaign.Price;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.Words;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/** Title, score, test result, comparison and ranking. */
final class ScoreCards {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final double AXIS_FROM = 180;
  private static final double AXIS_TO = 1200;
  private static final double ROW_FROM = 790;
  private static final double ROW_TO = 1440;
  private static final int MOST_ROWS = 10;
  private static final double BEAD = 23;
  private static final double SMALLEST_BEAD = 13;
  private static final double LIP = 36;
  private static final double ROW_LIP = 24;

  private final CardBook book;
  private final Edition edition;
  private final Findings findings;

  ScoreCards(CardBook book) {
    this.book = book;
    this.edition = book.edition();
    this.findings = new Findings(edition);
  }

  void title(ProductVerdict product) {
    Optional<Price> price = edition.price(product.id());
    String line = price.map(p -> Prices.text(p) + " on " + day(p.on())).orElse("price not noted");
    CardDrawing drawing =
        new CardDrawing()
            .plate(660)
            .text(Lettering.BOLD, product.name(), LEFT, 815, 170, RIGHT - LEFT, INK, Anchor.START)
            .text(Lettering.MEDIUM, line, LEFT, 910, 76, RIGHT - LEFT, INK, Anchor.START);
    String sentence = product.name() + ", " + line;
    book.add("title-" + product.id(), Card.Kind.TITLE, sentence, book.footed(drawing, ""));
  }

  private static String day(LocalDate date) {
    return DAY.format(date);
  }

  void score(ProductVerdict product) {
    if (product.score().value() != null) {
      String id = "score-" + product.id();
      String place = place(product);
      scored(id, Card.Kind.SCORE, product.name(), place, product.score(), book.runs());
    }
  }

  private String place(ProductVerdict product) {
    if (product.rank() == null) {
      return "not ranked";
    }
    List<String> level = findings.level(product);
    if (level.isEmpty()) {
      return "rank " + Scores.rank(product.rank());
    }
    return level.size() > 2
        ? "level with " + Words.number(level.size()) + " others"
        : "level with " + Words.list(level);
  }

  void test(ProductVerdict product, Node test) {
    if (test.score().value() != null) {
      String id = "test-" + test.id() + "-" + product.id();
      String n = test.runs() == 0 ? "no runs" : "n = " + test.runs();
      scored(id, Card.Kind.TEST_RESULT, product.name(), test.name(), test.score(), n);
    }
  }

  private void scored(
      String id, Card.Kind kind, String name, String second, Score score, String n) {
    String qualifier = Scores.qualifier(score);
    CardDrawing drawing =
        new CardDrawing()
            .plate(530)
            .text(Lettering.BOLD, name, LEFT, 665, 150, 1060, INK, Anchor.START)
            .text(Lettering.MEDIUM, second, LEFT, 752, 76, 1060, SECOND, Anchor.START)
            .text(Lettering.NARROW, Scores.digits(score), RIGHT, 900, 370, 460, INK, Anchor.END);
    if (!qualifier.isEmpty()) {
      drawing.text(Lettering.MEDIUM, qualifier, RIGHT, 612, 64, 460, SECOND, Anchor.END);
    }
    tray(drawing, score, 890);
    String level = score.known() == Score.Known.INTERVAL ? " · 90 % interval" : "";
    String foot = "of 10" + level + " · " + n;
    String said = name + (second.isEmpty() ? "" : ", " + second) + ": ";
    book.add(id, kind, said + Scores.sentence(score) + ", " + n, book.footed(drawing, foot));
  }

  /** The score's tray on the axis, with the ends of its interval in figures. */
  private static void tray(CardDrawing drawing, Score score, double y) {
    drawing.axis(AXIS_FROM, AXIS_TO, y);
    bead(drawing, score, AXIS_FROM, AXIS_TO, y, LIP);
    double first = AXIS_TO;
    double last = AXIS_FROM;
    if (score.low() != null && score.high() != null && score.known() == Score.Known.INTERVAL) {
      first = x(score.low(), AXIS_FROM, AXIS_TO) - 24;
      last = x(score.high(), AXIS_FROM, AXIS_TO) + 24;
      String low = Scores.digits(score.low());
      String high = Scores.digits(score.high());
      drawing
          .text(Lettering.BOLD, low, first, y - 16, 64, 200, HOLD, Anchor.END)
          .text(Lettering.BOLD, high, last, y - 16, 64, 200, HOLD, Anchor.START);
    }
    if (first > AXIS_FROM + 190) {
      drawing.text(Lettering.MEDIUM, "0", AXIS_FROM, y - 16, 54, 60, SECOND, Anchor.START);
    }
    if (last < AXIS_TO - 230) {
      drawing.text(Lettering.MEDIUM, "10", AXIS_TO, y - 16, 54, 80, SECOND, Anchor.END);
    }
  }

  /** A bead as small as its tray asks for; above a tray that is too narrow even so. */
  private static void bead(
      CardDrawing drawing, Score score, double from, double to, double y, double lip) {
    boolean most = score.known() == Score.Known.AT_MOST;
    boolean least = score.known() == Score.Known.AT_LEAST;
    double room = BEAD;
    if (score.low() != null && score.high() != null) {
      double low = x(score.low(), from, to);
      double high = x(score.high(), from, to);
      room = (high - low) / 2 - 10;
      drawing.tray(low, high, y, lip, !most, !least);
    } else if ((most || least) && score.value() != null) {
      double x = x(score.value(), from, to);
      drawing.tray(most ? from : x, most ? x : to, y, lip, !most, most);
    }
    if (score.value() != null && score.known() != Score.Known.CANNOT_DO) {
      double radius = Math.max(SMALLEST_BEAD, Math.min(BEAD * lip / LIP, room));
      double above = room < SMALLEST_BEAD ? lip + 2 : 6;
      drawing.bead(x(score.value(), from, to), y - above - radius, radius, HOLD);
    }
  }

  private static double x(BigDecimal points, double from, double to) {
    return from + (to - from) * Math.max(0, Math.min(10, points.doubleValue())) / 10;
  }

  void ranking() {
    List<ProductVerdict> scored =
        edition.verdict().products().stream().filter(p -> p.score().value() != null).toList();
    List<ProductVerdict> shown = scored.stream().limit(MOST_ROWS).toList();
    if (shown.isEmpty()) {
      return;
    }
    int step = Math.min(110, 790 / shown.size());
    int top = (int) CardBook.FOOT - 70 - step * shown.size();
    CardDrawing drawing = new CardDrawing().plate(Math.max(54, top - 30));
    for (int i = 0; i < shown.size(); i++) {
      row(drawing, shown.get(i), top + step * (i + 0.68), step);
    }
    int all = edition.verdict().products().size();
    String of = shown.size() < all ? " · " + shown.size() + " of " + all + " shown" : "";
    String foot = "of 10 · 90 % interval · " + book.runs() + of;
    book.add("ranking", Card.Kind.RANKING, findings.headline(), book.footed(drawing, foot));
  }

  private static void row(CardDrawing drawing, ProductVerdict product, double y, int step) {
    double size = Math.max(54, Math.min(72, step * 0.7));
    String rank = Scores.rank(product.rank());
    drawing
        .text(Lettering.MEDIUM, rank, LEFT, y, size, 130, SECOND, Anchor.START)
        .text(Lettering.BOLD, product.name(), LEFT + 150, y, size, 470, INK, Anchor.START);
    drawing.axis(ROW_FROM, ROW_TO, y + 4);
    bead(drawing, product.score(), ROW_FROM, ROW_TO, y + 4, ROW_LIP);
    String words = Scores.words(product.score());
    drawing.text(Lettering.BOLD, words, RIGHT, y, size, RIGHT - ROW_TO - 24, INK, Anchor.END);
  }

  void comparison(ProductVerdict first, ProductVerdict second) {
    if (first.score().value() == null || second.score().value() == null) {
      return;
    }
    String words = together(first, second);
    CardDrawing drawing = new CardDrawing().plate(560);
    row(drawing, first, 680, 120);
    row(drawing, second, 820, 120);
    drawing.text(Lettering.MEDIUM, words, LEFT, 916, 72, RIGHT - LEFT, INK, Anchor.START);
    String sentence = said(first) + ", " + said(second) + ": " + words;
    book.add(
        "comparison-" + first.id() + "-" + second.id(),
        Card.Kind.COMPARISON,
        sentence,
        book.footed(drawing, "of 10 · 90 % interval · " + book.runs()));
  }

  private static String together(ProductVerdict first, ProductVerdict second) {
    if (first.tier() == null || second.tier() == null) {
      return "not ranked";
    }
    return first.tier().equals(second.tier())
        ? "level: these runs cannot tell them apart"
        : "tier " + first.tier() + " and tier " + second.tier();
  }

  private static String said(ProductVerdict product) {
    return product.name() + " " + Scores.words(product.score());
  }
}
