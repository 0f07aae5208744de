package ovenproof.kitchen.bench;

import java.util.List;
import ovenproof.kitchen.physics.Surface;

/**
 * What a run left behind, all true values.
 *
 * @param events in order of time
 * @param skinCelsius hottest outer side at the end
 * @param stops seconds from load to stop of each batch
 */
public record RunResult(
    RunPlan plan,
    List<Happening> events,
    RunLog log,
    List<BatchResult> batches,
    double skinCelsius,
    List<Stop> stops) {

  public RunResult {
    events = List.copyOf(events);
    batches = List.copyOf(batches);
    stops = List.copyOf(stops);
  }

  /**
   * An event.
   *
   * @param type as in {@code events.csv}
   * @param batch 0 when it belongs to none
   * @param value empty when there is none
   */
  public record Happening(String type, double seconds, int batch, String value, String note) {}

  /** What ended a batch. */
  public record Stop(int batch, double secondsFromLoad, double atSecond, String why) {}

  /** One load. */
  public record BatchResult(int batch, List<PieceResult> pieces) {
    public BatchResult {
      pieces = List.copyOf(pieces);
    }

    public double meanBrowning() {
      return pieces.stream().mapToDouble(p -> p.top().mean()).average().orElse(0);
    }

    /** Water that left, share of the raw mass. */
    public double lossShare() {
      double before = pieces.stream().mapToDouble(PieceResult::gramBefore).sum();
      double after = pieces.stream().mapToDouble(PieceResult::gramAfter).sum();
      return (before - after) / before;
    }
  }

  /**
   * One piece.
   *
   * @param crustMillimetre dry crust of both faces together
   * @param coreCelsius at the stop
   */
  public record PieceResult(
      String id,
      String position,
      double gramBefore,
      double gramAfter,
      Surface top,
      Surface underside,
      double crustMillimetre,
      double coreCelsius) {}

  public boolean aborted() {
    return stops.stream().anyMatch(s -> s.why().equals("abort"));
  }

  public boolean stoppedByCap() {
    return stops.stream().anyMatch(s -> s.why().equals("cap"));
  }
}
