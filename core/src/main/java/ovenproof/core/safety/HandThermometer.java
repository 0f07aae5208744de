package ovenproof.core.safety;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ovenproof.core.safety.CoreSafety.State;

/**
 * Judging with a hand thermometer only: three named places, the lowest less its uncertainty at the
 * floor, and a rest that was timed. Lethality is not claimed.
 *
 * @param places with their readings
 * @param expandedKelvin U (k = 2) of a reading
 * @param restSeconds timed after the readings; NaN when it was not
 */
public record HandThermometer(List<Place> places, double expandedKelvin, double restSeconds) {

  public static final int PLACES = 3;

  /** A place in the food and what the thermometer showed there. */
  public record Place(String name, double celsius) {}

  public HandThermometer {
    places = List.copyOf(places);
  }

  /** Lowest reading; NaN without any. */
  public double lowest() {
    return places.stream().mapToDouble(Place::celsius).min().orElse(Double.NaN);
  }

  /** Why these readings show nothing for a rest, whatever they read; empty when they may. */
  public Optional<String> whyNothing(double askedRestSeconds) {
    long named = places.stream().map(Place::name).filter(n -> !n.isBlank()).distinct().count();
    if (named < PLACES) {
      return Optional.of("three named places are needed, " + named + " were read");
    }
    if (!(expandedKelvin > 0)) {
      return Optional.of("the thermometer's uncertainty is not known: state it");
    }
    if (askedRestSeconds > 0 && !(restSeconds >= 0)) {
      return Optional.of("the rest was not timed");
    }
    return Optional.empty();
  }

  /** Reached, or why not; a rest that was cut short is not yet over. */
  public CoreSafety judge(Criterion.FloorWithRest wanted) {
    double lowest = lowest();
    if (lowest < wanted.floorCelsius()) {
      return new CoreSafety(State.NOT_REACHED, why(wanted), 0);
    }
    Optional<String> nothing = whyNothing(wanted.restSeconds());
    if (nothing.isPresent()) {
      return new CoreSafety(State.NOT_SHOWN, nothing.get(), 0);
    }
    if (lowest - expandedKelvin < wanted.floorCelsius()) {
      return new CoreSafety(State.NOT_SHOWN, why(wanted), 0);
    }
    boolean rested = wanted.restSeconds() == 0 || restSeconds >= wanted.restSeconds();
    return new CoreSafety(rested ? State.REACHED : State.NOT_YET, why(wanted), 0);
  }

  private String why(Criterion.FloorWithRest wanted) {
    return String.format(
        Locale.ROOT,
        "the lowest of %d places less %.1f K is %.1f °C; the floor is %.1f °C with %.0f s of rest",
        places.size(),
        expandedKelvin,
        lowest() - expandedKelvin,
        wanted.floorCelsius(),
        wanted.restSeconds());
  }
}
