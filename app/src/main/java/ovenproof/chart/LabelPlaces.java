package ovenproof.chart;

/** Moves words apart that would lie on each other: down from the first, up again from the floor. */
final class LabelPlaces {
  private LabelPlaces() {}

  /**
   * Places in the order of the wishes, at least {@code gap} from each other and from what is taken
   * already, as near to the wishes as that allows. More words than there is room for run over the
   * top.
   *
   * @param wanted where each would like to stand, ascending; may be empty
   * @param taken where other words stand already, in any order
   * @param gap height of one word
   * @param top where the first may stand
   * @param bottom where the last may stand
   */
  static double[] apart(double[] wanted, double[] taken, double gap, double top, double bottom) {
    double[] places = wanted.clone();
    for (int i = 0; i < places.length; i++) {
      double above = i == 0 ? top : places[i - 1] + gap;
      places[i] = free(Math.max(places[i], above), taken, gap, 1);
    }
    double below = bottom;
    for (int i = places.length - 1; i >= 0; i--) {
      places[i] = places[i] > below ? free(below, taken, gap, -1) : places[i];
      below = places[i] - gap;
    }
    return places;
  }

  private static double free(double at, double[] taken, double gap, int direction) {
    double place = at;
    for (int tries = 0; tries <= taken.length; tries++) {
      for (double other : taken) {
        place = Math.abs(place - other) < gap - 1e-9 ? other + direction * gap : place;
      }
    }
    return place;
  }
}
