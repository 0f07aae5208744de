package ovenproof.core.scoring;

import java.util.List;

/** What a product has to say to a variable. */
public sealed interface Answer {

  /** Runs that count; at least one. */
  record Measured(List<Observation> observations) implements Answer {
    public Measured {
      observations = List.copyOf(observations);
      if (observations.isEmpty()) {
        throw new IllegalArgumentException("observations must hold at least one run, found none");
      }
    }

    public static Measured of(Observation... observations) {
      return new Measured(List.of(observations));
    }

    /** Uncensored values. */
    public double[] values() {
      return observations.stream()
          .filter(o -> !o.censored())
          .mapToDouble(Observation::low)
          .toArray();
    }
  }

  /** Asked, and not measured: gives bounds. */
  record Missing(String reason) implements Answer {}

  /** Not asked of this product: its weight goes where the criterion says. */
  record NotAsked(String reason) implements Answer {}

  /** The tray does not fit, the temperature is out of reach: scores what the method declares. */
  record CannotDo(String reason) implements Answer {}
}
