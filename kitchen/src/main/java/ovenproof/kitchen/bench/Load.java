package ovenproof.kitchen.bench;

import java.util.ArrayList;
import java.util.List;
import ovenproof.kitchen.bench.FoodPiece.Form;
import ovenproof.kitchen.bench.FoodPiece.Outline;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.physics.Dough;
import ovenproof.kitchen.physics.FoodColumn;
import ovenproof.kitchen.physics.FoodColumn.Heating;
import ovenproof.kitchen.physics.Joint;
import ovenproof.kitchen.physics.Oven;
import ovenproof.kitchen.physics.Surface;

/** The food of one batch in the oven. */
abstract class Load {

  static final Load EMPTY = new Empty();

  /** Food for this run, its pieces a little different from each other. */
  static Load of(Oven oven, RunPlan plan, Luck luck, OvenPlane plane, double room) {
    return switch (plan.test()) {
      case HEAT_UP -> EMPTY;
      case TOAST -> Pieces.toast(plan, luck, plane, room);
      case CAKES -> Pieces.cakes(plan, luck, plane, room);
      case FLATBREAD -> Pieces.flatbread(plan, luck, plane, room);
      case CROQUETTES -> Pieces.croquettes(plan, luck, plane);
      case TURKEY -> new Roast(plan, luck);
    };
  }

  abstract void step(double dt, OvenPlane plane, double room, HeatAccount heat);

  abstract BatchResult result(int batch);

  /** Mean browning of the tops. */
  abstract double topBrowning();

  void shake() {}

  void rest() {}

  double coldestProbe() {
    return Double.NaN;
  }

  /** What surrounds a core probe: the oven's air as long as it is in no food. */
  double probe(int which, double air) {
    return air;
  }

  private static final class Empty extends Load {
    @Override
    void step(double dt, OvenPlane plane, double room, HeatAccount heat) {}

    @Override
    BatchResult result(int batch) {
      return new BatchResult(batch, List.of());
    }

    @Override
    double topBrowning() {
      return 0;
    }
  }

  /** Flat pieces on the rack or on a tray. */
  private static final class Pieces extends Load {
    private final List<FoodPiece> pieces = new ArrayList<>();
    private final boolean onTray;
    private final double trayStart;
    private final double contact;
    private Tray tray;
    private double loadedSquareMetre;

    private Pieces(boolean onTray, double trayStart, double contact) {
      this.onTray = onTray;
      this.trayStart = trayStart;
      this.contact = contact;
      this.tray = new Tray(trayStart, 0);
    }

    private void add(FoodPiece piece) {
      pieces.add(piece);
      Form f = piece.form();
      loadedSquareMetre += f.width() * f.depth() * (f.outline() == Outline.ROUND ? Math.PI / 4 : 1);
      tray = new Tray(trayStart, loadedSquareMetre);
    }

    static Load toast(RunPlan plan, Luck luck, OvenPlane plane, double room) {
      Pieces load = new Pieces(false, room, 0);
      double thick = plan.mishap() == RunPlan.Mishap.THICK_SLICES ? 1.08 : 1;
      double age = luck.factor(0.09);
      String[] names = {"back-left", "back-right", "front-left", "front-right"};
      for (int i = 0; i < 4; i++) {
        double x = (i % 2 == 0 ? -1 : 1) * 0.108 / plane.width();
        double y = (i < 2 ? 1 : -1) * 0.104 / plane.depth();
        double t = 0.012 * thick * luck.factor(0.012);
        Form form = new Form("s" + (i + 1), names[i], x, y, 0.1, 0.096, t, Outline.SLAB);
        Dough bread =
            Dough.SANDWICH_BREAD.withBrowning(plan.lot().browning() * age * luck.factor(0.045));
        load.add(new FoodPiece(form, bread, 7, 7, 12, 21 + luck.normal(0.5)));
      }
      return load;
    }

    static Load cakes(RunPlan plan, Luck luck, OvenPlane plane, double room) {
      Pieces load = new Pieces(true, room, 85);
      double batter = luck.factor(0.08);
      for (int i = 0; i < 9; i++) {
        double x = (i % 3 - 1) * 0.165 / plane.width();
        double y = (1 - i / 3) * 0.15 / plane.depth();
        double t = 0.024 * luck.factor(0.015);
        String place = "r" + (i / 3 + 1) + "c" + (i % 3 + 1);
        Form form = new Form("c" + (i + 1), place, x, y, 0.062, 0.062, t, Outline.ROUND);
        Dough cake = Dough.CAKE.withBrowning(plan.lot().browning() * batter * luck.factor(0.05));
        load.add(new FoodPiece(form, cake, 5, 5, 12, 20 + luck.normal(0.4)));
      }
      return load;
    }

    static Load flatbread(RunPlan plan, Luck luck, OvenPlane plane, double room) {
      Pieces load = new Pieces(true, plane.wall(), 240);
      double t = 0.007 * luck.factor(0.02);
      Form form = new Form("f1", "centre", 0, 0, 0.27, 0.27, t, Outline.ROUND);
      Dough dough = Dough.FLATBREAD.withBrowning(plan.lot().browning() * luck.factor(0.10));
      load.add(new FoodPiece(form, dough, 13, 13, 8, 22 + luck.normal(0.6)));
      return load;
    }

    static Load croquettes(RunPlan plan, Luck luck, OvenPlane plane) {
      Pieces load = new Pieces(true, 21, 60);
      double crumb = luck.factor(0.09);
      for (int i = 0; i < 20; i++) {
        double x = (i % 5 - 2) * 0.09 / plane.width() + luck.normal(0.008);
        double y = (1.5 - i / 5) * 0.095 / plane.depth() + luck.normal(0.008);
        double t = 0.0125 * luck.factor(0.02);
        String place = "r" + (i / 5 + 1) + "c" + (i % 5 + 1);
        Form form = new Form("k" + (i + 1), place, x, y, 0.058, 0.024, t, Outline.SLAB);
        Dough dough =
            Dough.CROQUETTE.withBrowning(plan.lot().browning() * crumb * luck.factor(0.07));
        load.add(new FoodPiece(form, dough, 5, 3, 10, -18 + luck.normal(0.7)));
      }
      return load;
    }

    @Override
    void step(double dt, OvenPlane plane, double room, HeatAccount heat) {
      plane.contact(contact);
      double trayCelsius = onTray ? tray.celsius() : Double.NaN;
      for (FoodPiece piece : pieces) {
        piece.step(dt, plane, trayCelsius, heat);
      }
      if (onTray) {
        tray.step(dt, plane, heat.byContact, heat);
      }
    }

    /** A shake rolls every piece over. */
    @Override
    void shake() {
      pieces.forEach(FoodPiece::turnOver);
    }

    @Override
    double topBrowning() {
      return pieces.stream().mapToDouble(p -> p.top().mean()).average().orElse(0);
    }

    @Override
    BatchResult result(int batch) {
      List<PieceResult> results = new ArrayList<>();
      for (FoodPiece p : pieces) {
        results.add(
            new PieceResult(
                p.form().id(),
                p.form().position(),
                p.gramAtStart(),
                p.gramAtStart() - p.lostGram(),
                p.top(),
                p.bottom(),
                p.crustMillimetre(),
                p.coreCelsius()));
      }
      return new BatchResult(batch, results);
    }
  }

  /** A joint with three probes in it and a skin that browns. */
  private static final class Roast extends Load {
    private static final int ALONG = 11;
    private static final int AROUND = 7;
    private static final double SKIN_METRE = 0.006;
    private static final double REST_FILM = 9;

    private final double radius;
    private final double length = 0.17;
    private final Joint joint;
    private final FoodColumn[] skin = new FoodColumn[ALONG * AROUND];
    private final FoodColumn.Taken taken = new FoodColumn.Taken();
    private final double[] probeDepth = new double[3];
    private boolean resting;

    Roast(RunPlan plan, Luck luck) {
      radius = 0.0335 * luck.factor(0.02);
      double start = 4 + luck.normal(0.6);
      Dough meat = Dough.TURKEY.withBrowning(plan.lot().browning() * luck.factor(0.10));
      joint = new Joint(meat, radius, length, start);
      for (int i = 0; i < skin.length; i++) {
        skin[i] = new FoodColumn(meat, SKIN_METRE, 6, start);
      }
      double[] depth = {0.001, 0.004, 0.006};
      for (int i = 0; i < 3; i++) {
        probeDepth[i] = Math.abs(depth[i] + luck.normal(0.0012));
      }
    }

    @Override
    void step(double dt, OvenPlane plane, double room, HeatAccount heat) {
      if (resting) {
        double flux = (REST_FILM + 5) * (room - joint.surfaceCelsius());
        joint.step(dt, flux * joint.surface(), REST_FILM);
        return;
      }
      joint.step(dt, into(dt, plane, heat), plane.film());
      Heating inside = Heating.contact(joint.at(radius - SKIN_METRE), 120);
      for (int j = 0; j < AROUND; j++) {
        for (int i = 0; i < ALONG; i++) {
          brown(dt, i, j, plane, inside);
        }
      }
    }

    /** Heat into the whole joint: all round from the air, from above and below by radiation. */
    private double into(double dt, OvenPlane plane, HeatAccount heat) {
      double surface = joint.surfaceCelsius();
      double w = plane.wall() + 273.15;
      double s = surface + 273.15;
      double byAir = plane.film() * (plane.airAt(0, 0) - surface) * joint.surface();
      double byWall = 0.9 * 5.670374e-8 * (w * w * w * w - s * s * s * s) * joint.surface();
      double direct = 0.9 * plane.beam() * 2 * radius * length;
      heat.fromAir += byAir * dt;
      heat.fromWall += byWall * dt;
      heat.direct += direct * dt;
      return byAir + byWall + direct;
    }

    private void brown(double dt, int i, int j, OvenPlane plane, Heating inside) {
      double along = (2 * i + 1.0) / ALONG - 1;
      double across = (2 * j + 1.0) / AROUND - 1;
      double x = along * length / plane.width();
      double y = -across * 2 * radius / plane.depth();
      double steep = Math.sqrt(Math.max(0.05, 1 - across * across * 0.95));
      Heating top =
          new Heating(
              plane.airAt(x, y),
              plane.film(),
              plane.wall(),
              plane.beam() * plane.beamFactor(x, y) * plane.topShare() * 1.35 * steep);
      skin[j * ALONG + i].step(dt, top, inside, taken);
    }

    @Override
    BatchResult result(int batch) {
      double before = joint.gramAtStart();
      double crust = 0;
      for (FoodColumn column : skin) {
        crust += 1000 * column.crustMetre() / skin.length;
      }
      PieceResult piece =
          new PieceResult(
              "t1",
              "centre",
              before,
              before - joint.lostGram(),
              surface(),
              Surface.even(0),
              crust,
              joint.at(0));
      return new BatchResult(batch, List.of(piece));
    }

    private Surface surface() {
      double[] map = new double[skin.length];
      for (int n = 0; n < map.length; n++) {
        map[n] = skin[n].topBrown();
      }
      return new Surface(ALONG, AROUND, map);
    }

    @Override
    double topBrowning() {
      return surface().mean();
    }

    @Override
    void rest() {
      resting = true;
    }

    @Override
    double coldestProbe() {
      return Math.min(probe(0, 0), Math.min(probe(1, 0), probe(2, 0)));
    }

    @Override
    double probe(int which, double air) {
      return joint.at(probeDepth[which]);
    }
  }
}
