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
  private final Map<String, double[]> shared = new HashMap<>();
  private final Map<String, double[]> factors = new HashMap<>();

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

  private double[] draw(ErrorSource source) {
    double[] all = new double[blocks * BLOCK];
    double[] one = new double[BLOCK];
    for (int b = 0; b < blocks; b++) {
      source.normal(b, one);
      System.arraycopy(one, 0, all, b * BLOCK, BLOCK);
    }
    return all;
  }

  private double[] factor(String variable, double degreesOfFreedom) {
    if (!(degreesOfFreedom > 0) || Double.isInfinite(degreesOfFreedom)) {
      return new double[0];
    }
    ErrorSource source = streams.source("spread:" + variable);
    double[] all = new double[blocks * BLOCK];
    double[] one = new double[BLOCK];
    for (int b = 0; b < blocks; b++) {
      source.studentFactor(b, degreesOfFreedom, one);
      System.arraycopy(one, 0, all, b * BLOCK, BLOCK);
    }
    return all;
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
    private final double[] factor;
    private final List<SharedError> parts = new ArrayList<>();
    private final double[] buffer = new double[BLOCK];

    private Drawn(String product, String variable, MeanError error) {
      this.error = error;
      run = streams.source("run:" + variable + ":" + product);
      unit = streams.source("unit:" + variable + ":" + product);
      ownFactor = streams.source("spread:" + variable + ":" + product);
      factor = factors.getOrDefault(variable, new double[0]);
      error
          .shared()
          .forEach(
              (source, u) -> {
                double[] drawn = shared.getOrDefault(source, new double[0]);
                parts.add(new SharedError(sharedSource(source), u, drawn));
              });
    }

    void fill(int block, double[] target) {
      if (error.known() && error.run() > 0) {
        run.normal(block, target);
        scale(block, target);
      } else {
        java.util.Arrays.fill(target, 0);
      }
      for (SharedError part : parts) {
        addShared(part, block, target);
      }
      if (error.unitToUnit() > 0) {
        unit.normal(block, buffer);
        add(target, buffer, 0, error.unitToUnit());
      }
    }

    private void scale(int block, double[] target) {
      if (factor.length > 0) {
        multiply(target, factor, block * BLOCK, error.run());
        return;
      }
      if (factors.isEmpty() && !Double.isInfinite(error.degreesOfFreedom())) {
        ownFactor.studentFactor(block, error.degreesOfFreedom(), buffer);
        multiply(target, buffer, 0, error.run());
        return;
      }
      for (int d = 0; d < target.length; d++) {
        target[d] *= error.run();
      }
    }

    private void addShared(SharedError part, int block, double[] target) {
      if (part.drawn().length > 0) {
        add(target, part.drawn(), block * BLOCK, part.u());
      } else {
        part.source().normal(block, buffer);
        add(target, buffer, 0, part.u());
      }
    }
  }

  /**
   * What one source adds to one mean.
   *
   * @param drawn its draws, once for all products it touches; empty when it touches this one only
   */
  private record SharedError(ErrorSource source, double u, double[] drawn) {}

  private static void multiply(double[] target, double[] factor, int offset, double scale) {
    for (int d = 0; d < target.length; d++) {
      target[d] *= factor[offset + d] * scale;
    }
  }

  private static void add(double[] target, double[] values, int offset, double scale) {
    for (int d = 0; d < target.length; d++) {
      target[d] += scale * values[offset + d];
    }
  }
}
