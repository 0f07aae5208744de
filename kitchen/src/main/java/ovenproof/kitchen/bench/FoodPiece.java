package ovenproof.kitchen.bench;

import org.jspecify.annotations.Nullable;
import ovenproof.kitchen.physics.Dough;
import ovenproof.kitchen.physics.FoodColumn;
import ovenproof.kitchen.physics.FoodColumn.Heating;
import ovenproof.kitchen.physics.Surface;

/**
 * A flat piece of food as a grid of columns, each with its own place in the oven. Columns at the
 * rim get more heat: air and light reach their side as well.
 */
final class FoodPiece {

  /** Outline of a piece. */
  enum Outline {
    SLAB,
    ROUND
  }

  /** Where and how large. Place in −1…1 of the rack, sizes in metres. */
  record Form(
      String id,
      String position,
      double x,
      double y,
      double width,
      double depth,
      double thickness,
      Outline outline) {}

  private static final double RIM_REACH_METRE = 0.006;
  private static final double RIM_FILM = 0.55;
  private static final double RIM_BEAM = 0.22;

  /** A tray evens out part of the unevenness of the air. */
  private static final double TRAY_FOLLOWS = 0.6;

  private final Form form;
  private final int across;
  private final int deep;
  private final FoodColumn[] columns;
  private final double[] u;
  private final double[] v;
  private final double[] rim;
  private final double cellArea;
  private double @Nullable [] uneven;
  private double[] beamHere = new double[0];
  private final FoodColumn.Taken taken = new FoodColumn.Taken();

  FoodPiece(Form form, Dough dough, int across, int deep, int layers, double startCelsius) {
    this.form = form;
    this.across = across;
    this.deep = deep;
    this.columns = new FoodColumn[across * deep];
    this.u = new double[across * deep];
    this.v = new double[across * deep];
    this.rim = new double[across * deep];
    double full = form.width() * form.depth();
    this.cellArea = (form.outline() == Outline.ROUND ? Math.PI / 4 : 1) * full / (across * deep);
    for (int j = 0; j < deep; j++) {
      for (int i = 0; i < across; i++) {
        int n = j * across + i;
        u[n] = (2 * i + 1.0) / across - 1;
        v[n] = (2 * j + 1.0) / deep - 1;
        rim[n] = Math.exp(-rimDistance(u[n], v[n]) / RIM_REACH_METRE);
        columns[n] = new FoodColumn(dough, form.thickness(), layers, startCelsius);
      }
    }
  }

  private double rimDistance(double cu, double cv) {
    if (form.outline() == Outline.ROUND) {
      return Math.max(0, 1 - Math.hypot(cu, cv)) * form.width() / 2;
    }
    return Math.min((1 - Math.abs(cu)) * form.width() / 2, (1 - Math.abs(cv)) * form.depth() / 2);
  }

  Form form() {
    return form;
  }

  /** Moves on; the heat taken is added to {@code heat}. */
  void step(double dt, OvenPlane plane, double trayCelsius, HeatAccount heat) {
    double[] off = placed(plane);
    for (int n = 0; n < columns.length; n++) {
      double beam = plane.beam() * beamHere[n];
      double film = plane.film() * (1 + RIM_FILM * rim[n]);
      double here = off[n] * plane.rise();
      double air = plane.air() + here;
      Heating top = new Heating(air, film, plane.wall(), beam * plane.topShare());
      Heating bottom =
          Double.isNaN(trayCelsius)
              ? new Heating(air, film * 0.85, plane.wall(), beam * (1 - plane.topShare()))
              : Heating.contact(trayCelsius + here * TRAY_FOLLOWS, plane.contact());
      columns[n].step(dt, top, bottom, taken);
      heat.add(taken, cellArea);
    }
  }

  /** What the place of each column means, worked out once: K per K of rise. */
  private double[] placed(OvenPlane plane) {
    if (uneven == null) {
      double[] off = new double[columns.length];
      beamHere = new double[columns.length];
      for (int n = 0; n < off.length; n++) {
        double x = form.x() + u[n] * form.width() / plane.width();
        double y = form.y() - v[n] * form.depth() / plane.depth();
        off[n] = plane.unevenPerKelvin(x, y);
        beamHere[n] = plane.beamFactor(x, y) * (1 + RIM_BEAM * rim[n]);
      }
      uneven = off;
    }
    return uneven;
  }

  void turnOver() {
    for (FoodColumn column : columns) {
      column.turnOver();
    }
  }

  Surface top() {
    double[] map = new double[columns.length];
    for (int n = 0; n < map.length; n++) {
      map[n] = columns[n].topBrown();
    }
    return new Surface(across, deep, map);
  }

  Surface bottom() {
    double[] map = new double[columns.length];
    for (int n = 0; n < map.length; n++) {
      map[n] = columns[n].bottomBrown();
    }
    return new Surface(across, deep, map).flipped();
  }

  double gramAtStart() {
    return 1000 * columns[0].massPerSquareMetre() * cellArea * columns.length;
  }

  double lostGram() {
    double sum = 0;
    for (FoodColumn column : columns) {
      sum += column.lostKilogramPerSquareMetre();
    }
    return 1000 * sum * cellArea;
  }

  double crustMillimetre() {
    double sum = 0;
    for (FoodColumn column : columns) {
      sum += column.crustMetre();
    }
    return 1000 * sum / columns.length;
  }

  double coreCelsius() {
    return columns[columns.length / 2].coreCelsius();
  }
}
