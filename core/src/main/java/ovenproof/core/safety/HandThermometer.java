package ovenproof.core.safety;

import java.util.List;
import java.util.Locale;
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

  public CoreSafety judge(Criterion.FloorWithRest wanted) {
    long named = places.stream().map(Place::name).filter(n -> !n.isBlank()).distinct().count();
    if (named < PLACES) {
      return new CoreSafety(
          State.NOT_SHOWN, "three named places are needed, " + named + " were read", 0);
    }
    double lowest = places.stream().mapToDouble(Place::celsius).min().orElse(Double.NaN);
    String why =
        String.format(
            Locale.ROOT,
            "the lowest of %d places less %.1f K is %.1f °C; the floor is %.1f °C with %.0f s of rest",
            places.size(),
            expandedKelvin,
            lowest - expandedKelvin,
            wanted.floorCelsius(),
            wanted.restSeconds());
    if (lowest - expandedKelvin < wanted.floorCelsius()) {
      boolean uncertain = lowest >= wanted.floorCelsius();
      return new CoreSafety(uncertain ? State.NOT_SHOWN : State.NOT_REACHED, why, 0);
    }
    if (wanted.restSeconds() > 0 && !(restSeconds >= 0)) {
      return new CoreSafety(State.NOT_SHOWN, why + "; the rest was not timed", 0);
    }
    boolean rested = wanted.restSeconds() == 0 || restSeconds >= wanted.restSeconds();
    return new CoreSafety(rested ? State.REACHED : State.NOT_YET, why, 0);
  }
}
