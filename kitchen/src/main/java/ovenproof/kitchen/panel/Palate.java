package ovenproof.kitchen.panel;

import java.util.List;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.bench.TestKind;

/** What an ideal taster would say: marks as functions of crust, water and shade. */
public final class Palate {

  private Palate() {}

  /** Keys of the marks of a test, as in the method. */
  public static List<String> marks(TestKind test) {
    return switch (test) {
      case HEAT_UP -> List.of();
      case TOAST -> List.of("crispness", "toast-flavour");
      case CAKES -> List.of("moistness", "cake-liking");
      case FLATBREAD -> List.of("crispness", "flatbread-liking");
      case TURKEY -> List.of("juiciness", "turkey-liking");
      case CROQUETTES -> List.of("crispness", "croquette-liking");
    };
  }

  /** True marks of a run's first batch, 0 to 10. */
  public static double[] trueMarks(RunResult run) {
    BatchResult batch = run.batches().get(0);
    TestKind test = run.plan().test();
    double crust = crust(batch);
    double loss = 100 * batch.lossShare();
    double shade = test.colour().at(batch.meanBrowning()).lightness();
    return switch (test) {
      case HEAT_UP -> new double[0];
      case TOAST -> pair(1.3 * (crust - 1.6), 8.6 - 0.22 * off(shade, 64));
      case CAKES -> pair(9 - 0.75 * (loss - 9), 8.6 - 0.2 * off(shade, 65) - uneven(run));
      case FLATBREAD -> pair(0.24 * loss - 0.2, 8.4 - 0.2 * off(shade, 62));
      case TURKEY -> pair(10 - 0.6 * (loss - 8), 8.3 - 0.14 * off(shade, 55));
      case CROQUETTES -> pair(1.65 * crust - 0.6, 8.5 - 0.2 * off(shade, 64) - 1.2 * uneven(run));
    };
  }

  private static double[] pair(double first, double second) {
    return new double[] {clamp(first), clamp(second)};
  }

  private static double clamp(double mark) {
    return Math.min(9.5, Math.max(0.5, mark));
  }

  /** Lightness off the best; people mind darker more than paler. */
  private static double off(double shade, double best) {
    return shade < best ? 1.3 * (best - shade) : shade - best;
  }

  /** Points that unlike pieces on one plate cost. */
  private static double uneven(RunResult run) {
    BatchResult batch = run.batches().get(0);
    double mean = batch.meanBrowning();
    double squares = 0;
    for (PieceResult piece : batch.pieces()) {
      double d = piece.top().mean() - mean;
      squares += d * d / batch.pieces().size();
    }
    return Math.min(2.5, 9 * Math.sqrt(squares));
  }

  private static double crust(BatchResult batch) {
    return batch.pieces().stream().mapToDouble(PieceResult::crustMillimetre).average().orElse(0);
  }
}
