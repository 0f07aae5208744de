package ovenproof.kitchen.bench;

import ovenproof.kitchen.physics.Cavity;
import ovenproof.kitchen.physics.FoodColumn;

/** What food and tray take from the oven during a step, J. */
final class HeatAccount {
  double fromAir;
  double fromWall;
  double direct;
  double byContact;

  void clear() {
    fromAir = 0;
    fromWall = 0;
    direct = 0;
    byContact = 0;
  }

  /** Heat that a column took, over its area. */
  void add(FoodColumn.Taken taken, double squareMetre) {
    fromAir += taken.fromAir * squareMetre;
    fromWall += taken.fromWall * squareMetre;
    direct += taken.direct * squareMetre;
    byContact += taken.byContact * squareMetre;
  }

  Cavity.FoodHeat watts(double dt) {
    return new Cavity.FoodHeat(fromAir / dt, fromWall / dt, direct / dt);
  }
}
