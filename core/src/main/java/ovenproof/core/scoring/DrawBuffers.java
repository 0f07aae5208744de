package ovenproof.core.scoring;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Arrays that products use one after the other, so that memory does not grow with the field and
 * nothing is collected in between. Confined to one thread at a time.
 */
final class DrawBuffers {
  private final Map<String, ErrorBlock> errors = new HashMap<>();
  private final Deque<double[]> free = new ArrayDeque<>();
  private final List<double[]> lent = new ArrayList<>();
  private final int draws;

  /**
   * @param draws length of a node's draws
   */
  DrawBuffers(int draws) {
    this.draws = draws;
  }

  ErrorBlock errors(String variable) {
    return errors.computeIfAbsent(variable, any -> new ErrorBlock());
  }

  /** An array for a node's draws, holding anything, until {@link #release()}. */
  double[] draws() {
    double[] next = free.isEmpty() ? new double[draws] : free.pop();
    lent.add(next);
    return next;
  }

  /** Takes every lent array back. */
  void release() {
    free.addAll(lent);
    lent.clear();
  }
}
