package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ovenproof.core.random.ErrorSource;
import ovenproof.core.random.RandomStreams;

/**
 * Errors that products share, drawn once: the factor that a pooled deviation's own uncertainty puts
 * on every run-to-run error of its variable, and each shared source that touches more than one
 * product.
 */
final class FieldErrors {
  private static final int BLOCK = RandomStreams.BLOCK;

  private final RandomStreams streams;
  private final int blocks;
  private static final OfField NONE = new OfField(new double[0], new double[0]);

  private final Map<String, OfField> shared = new HashMap<>();
  private final Map<String, OfField> factors = new HashMap<>();

  /**
   * Draws that products share.
   *
   * @param values of all blocks; empty when there is nothing to share
   * @param reach of each block, what no absolute value in it exceeds
   */
  private record OfField(double[] values, double[] reach) {
    boolean present() {
      return values.length > 0;
    }
  }

  FieldErrors(RandomStreams streams, int blocks, List<Prepared> products, FieldSpread spread) {
    this.streams = streams;
    this.blocks = blocks;
    Set<String> once = new HashSet<>();
    for (Prepared product : products) {
      Set<String> own = new HashSet<>();
      product.errors().values().forEach(e -> own.addAll(e.shared().keySet()));
      for (String source : own) {
        if (!once.add(source) && !shared.containsKey(source)) {
          shared.put(source, draw(sharedSource(source)));
        }
      }
    }
    if (!spread.shrunken()) {
      Set<String> drawn = new HashSet<>();
      products.forEach(p -> drawn.addAll(p.errors().keySet()));
      drawn.forEach(v -> factors.put(v, factor(v, spread.field(v).degreesOfFreedom())));
    }
  }

  private ErrorSource sharedSource(String source) {
    return streams.source("shared:" + source);
  }

  private OfField draw(ErrorSource source) {
    double[] all = new double[blocks * BLOCK];
    double[] reach = new double[blocks];
    double[] one = new double[BLOCK];
    for (int b = 0; b < blocks; b++) {
      reach[b] = source.normal(b, one);
      System.arraycopy(one, 0, all, b * BLOCK, BLOCK);
    }
    return new OfField(all, reach);
  }

  private OfField factor(String variable, double degreesOfFreedom) {
    if (!(degreesOfFreedom > 0) || Double.isInfinite(degreesOfFreedom)) {
      return NONE;
    }
    ErrorSource source = streams.source("spread:" + variable);
    double[] all = new double[blocks * BLOCK];
    double[] reach = new double[blocks];
    double[] one = new double[BLOCK];
    for (int b = 0; b < blocks; b++) {
      source.studentFactor(b, degreesOfFreedom, one);
      reach[b] = largest(one);
      System.arraycopy(one, 0, all, b * BLOCK, BLOCK);
    }
    return new OfField(all, reach);
  }

  private static double largest(double[] positive) {
    double largest = 0;
    for (double value : positive) {
      largest = Math.max(largest, value);
    }
    return largest;
  }

  /** The sources of error of one product's mean of one variable. */
  Drawn drawn(String product, String variable, MeanError error) {
    return new Drawn(product, variable, error);
  }

  /** Draws the error of one mean, block by block. Confined to one thread. */
  final class Drawn {
    private final MeanError error;
    private final ErrorSource run;
    private final ErrorSource unit;
    private final ErrorSource ownFactor;
    private final OfField factor;
    private final List<SharedError> parts = new ArrayList<>();
    private final double[] buffer = new double[BLOCK];

    private Drawn(String product, String variable, MeanError error) {
      this.error = error;
      run = streams.source("run:" + variable + ":" + product);
      unit = streams.source("unit:" + variable + ":" + product);
      ownFactor = streams.source("spread:" + variable + ":" + product);
      factor = factors.getOrDefault(variable, NONE);
      error
          .shared()
          .forEach(
              (source, u) -> {
                OfField drawn = shared.getOrDefault(source, NONE);
                parts.add(new SharedError(sharedSource(source), u, drawn));
              });
    }

    void fill(int block, ErrorBlock target) {
      if (error.known() && error.run() > 0) {
        target.reach = run.normal(block, target.values);
        scale(block, target);
      } else {
        java.util.Arrays.fill(target.values, 0);
        target.reach = 0;
      }
      for (SharedError part : parts) {
        addShared(part, block, target);
      }
      if (error.unitToUnit() > 0) {
        double reach = unit.normal(block, buffer);
        add(target, buffer, 0, error.unitToUnit(), reach);
      }
    }

    private void scale(int block, ErrorBlock target) {
      if (factor.present()) {
        multiply(target.values, factor.values(), block * BLOCK, error.run());
        target.reach *= factor.reach()[block] * error.run();
      } else if (factors.isEmpty() && !Double.isInfinite(error.degreesOfFreedom())) {
        ownFactor.studentFactor(block, error.degreesOfFreedom(), buffer);
        multiply(target.values, buffer, 0, error.run());
        target.reach *= largest(buffer) * error.run();
      } else {
        multiply(target.values, error.run());
        target.reach *= error.run();
      }
    }

    private void addShared(SharedError part, int block, ErrorBlock target) {
      if (part.drawn().present()) {
        OfField drawn = part.drawn();
        add(target, drawn.values(), block * BLOCK, part.u(), drawn.reach()[block]);
      } else {
        double reach = part.source().normal(block, buffer);
        add(target, buffer, 0, part.u(), reach);
      }
    }
  }

  /**
   * What one source adds to one mean.
   *
   * @param drawn its draws, once for all products it touches; empty when it touches this one only
   */
  private record SharedError(ErrorSource source, double u, OfField drawn) {}

  private static void multiply(double[] target, double[] factor, int offset, double scale) {
    for (int d = 0; d < target.length; d++) {
      target[d] *= factor[offset + d] * scale;
    }
  }

  private static void multiply(double[] target, double scale) {
    for (int d = 0; d < target.length; d++) {
      target[d] *= scale;
    }
  }

  private static void add(
      ErrorBlock target, double[] values, int offset, double scale, double reach) {
    add(target.values, values, offset, scale);
    target.reach += Math.abs(scale) * reach;
  }

  private static void add(double[] target, double[] values, int offset, double scale) {
    for (int d = 0; d < target.length; d++) {
      target[d] += scale * values[offset + d];
    }
  }
}
