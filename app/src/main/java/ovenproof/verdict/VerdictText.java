package ovenproof.verdict;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/** A verdict as a person reads it in a terminal. */
public final class VerdictText {
  private static final int CELLS = 41;

  private VerdictText() {}

  /** Ranking, tests, gates, what is missing, warnings. */
  public static List<String> lines(Verdict verdict, String title) {
    List<String> lines = new ArrayList<>();
    lines.add(title);
    lines.add(
        "method "
            + verdict.method()
            + ", verdict "
            + verdict.version()
            + ", "
            + verdict.draws()
            + " draws with seed "
            + verdict.seed());
    lines.add("");
    lines.addAll(ranking(verdict));
    lines.add("");
    lines.addAll(tests(verdict));
    addSection(lines, "Gates", gates(verdict));
    addSection(lines, "Missing", missing(verdict));
    addSection(lines, "Worth knowing", verdict.warnings());
    return lines;
  }

  private static List<String> ranking(Verdict verdict) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("tier", "product", "score", "90 % interval", axis(), "rank", "P(best)"));
    Integer last = null;
    for (ProductVerdict product : verdict.products()) {
      if (rows.size() > 1 && !Objects.equals(last, product.tier())) {
        rows.add(List.of("", "", "", "", "", "", ""));
      }
      last = product.tier();
      Verdict.RankSet rank = product.rank();
      rows.add(
          List.of(
              product.tier() == null ? "–" : String.valueOf(product.tier()),
              product.name(),
              value(product.score()),
              interval(product.score()),
              bar(product.score()),
              rank == null
                  ? "unranked"
                  : rank.low() == rank.high() ? "" + rank.low() : rank.low() + "–" + rank.high(),
              probability(product.probabilityBest(), product.probabilityBestAtMost())));
    }
    List<String> lines = TextTable.lines(rows);
    Double margin = verdict.margin();
    lines.add("");
    lines.add(margin == null ? unsplit(verdict) : split(margin));
    for (ProductVerdict product : verdict.products()) {
      if (product.rank() == null && product.score().note() != null) {
        lines.add(product.name() + ": " + product.score().note());
      }
    }
    return lines;
  }

  /** One figure, or both ends where something is missing. */
  private static String probability(@Nullable Double atLeast, @Nullable Double atMost) {
    String low = probability(atLeast);
    String high = probability(atMost);
    return low.equals(high) ? low : low.replace(" %", "") + " to " + high;
  }

  private static String probability(@Nullable Double probability) {
    if (probability == null) {
      return "";
    }
    if (probability > 0 && probability < 0.005) {
      return "< 1 %";
    }
    return probability < 1 && probability >= 0.995
        ? "> 99 %"
        : String.format(Locale.ROOT, "%.0f %%", 100 * probability);
  }

  /** A score with its meaning: 7.4, ≤ 5.3, 4.0 to 9.0, – */
  public static String value(Score score) {
    BigDecimal value = score.value();
    return switch (score.known()) {
      case AT_MOST -> "≤ " + value;
      case AT_LEAST -> "≥ " + value;
      case BOUNDS -> score.low() + " to " + score.high() + ", open";
      case NOT_ASKED -> "not asked";
      case NONE -> "none";
      case CANNOT_DO -> value + " cannot";
      default -> String.valueOf(value);
    };
  }

  private static String interval(Score score) {
    return score.low() == null ? "no interval" : score.low() + "–" + score.high();
  }

  private static String axis() {
    StringBuilder axis = new StringBuilder(" ".repeat(CELLS));
    axis.setCharAt(0, '0');
    axis.setCharAt(CELLS / 2, '5');
    axis.replace(CELLS - 2, CELLS, "10");
    return axis.toString();
  }

  /** Interval and score on the same axis from 0 to 10 for every product. */
  private static String bar(Score score) {
    char[] cells = "·".repeat(CELLS).toCharArray();
    BigDecimal low = score.low();
    BigDecimal high = score.high();
    if (low != null && high != null) {
      for (int c = cell(low); c <= cell(high); c++) {
        cells[c] = '─';
      }
      cells[cell(low)] = '├';
      cells[cell(high)] = '┤';
    }
    BigDecimal value = score.value();
    if (value != null) {
      cells[cell(value)] = '●';
    }
    return new String(cells);
  }

  private static int cell(BigDecimal score) {
    long cell = Math.round(score.doubleValue() / 10 * (CELLS - 1));
    return (int) Math.max(0, Math.min(CELLS - 1, cell));
  }

  private static List<String> tests(Verdict verdict) {
    if (verdict.products().isEmpty()) {
      return List.of();
    }
    List<Node> heads = verdict.products().get(0).tests();
    int parts = heads.stream().mapToInt(Node::parts).sum();
    List<List<String>> rows = new ArrayList<>();
    List<String> head = new ArrayList<>(List.of("test"));
    head.add("weight");
    verdict.products().forEach(p -> head.add(p.name()));
    rows.add(head);
    for (Node test : heads) {
      List<String> row = new ArrayList<>(List.of(test.name(), test.parts() + "/" + parts));
      for (ProductVerdict product : verdict.products()) {
        row.add(product.test(test.id()).map(t -> value(t.score())).orElse(""));
      }
      rows.add(row);
    }
    return TextTable.lines(rows);
  }

  private static List<String> gates(Verdict verdict) {
    List<String> lines = new ArrayList<>();
    for (ProductVerdict product : verdict.products()) {
      for (GateOutcome gate : product.gates()) {
        if (gate.state() != GateOutcome.State.PASSED) {
          lines.add(
              product.name()
                  + ": "
                  + gate.name()
                  + " ("
                  + ovenproof.input.Words.of(gate.kind())
                  + ") "
                  + ovenproof.input.Words.of(gate.state())
                  + ": "
                  + gate.words());
        }
      }
    }
    return lines;
  }

  private static List<String> missing(Verdict verdict) {
    return verdict.products().stream()
        .flatMap(p -> p.missing().stream().map(m -> p.name() + ": " + m))
        .toList();
  }

  private static void addSection(List<String> lines, String title, List<String> items) {
    if (!items.isEmpty()) {
      lines.add("");
      lines.add(title);
      items.forEach(item -> lines.add("  " + item));
    }
  }

  private static String split(double margin) {
    return String.format(
        Locale.ROOT,
        "Products of one tier are not shown to differ. About %.1f points split two here.",
        margin);
  }

  private static String unsplit(Verdict verdict) {
    return verdict.products().stream().anyMatch(p -> p.rank() != null)
        ? "Only one product is ranked: there is nothing to split it from."
        : "Nothing is ranked: see below what is missing for it.";
  }
}
