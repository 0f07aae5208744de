package ovenproof.kitchen.folder;

import java.util.ArrayList;
import java.util.List;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.bench.TestKind;
import ovenproof.kitchen.photo.Material;
import ovenproof.kitchen.photo.PhotoScene;
import ovenproof.kitchen.photo.PhotoScene.Camera;
import ovenproof.kitchen.photo.PhotoScene.ChartPose;
import ovenproof.kitchen.photo.PhotoScene.Ground;
import ovenproof.kitchen.photo.PhotoScene.Item;
import ovenproof.kitchen.photo.PhotoScene.Light;
import ovenproof.kitchen.photo.PhotoScene.Shape;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Surface;

/**
 * Lays a batch out on the photo table, as the bench does it: every piece in its place of the oven.
 */
final class SceneBuilder {

  private static final int WIDTH_PIXELS = 1200;
  private static final double CHART_PITCH = 24;

  private SceneBuilder() {}

  static PhotoScene scene(RunPlan plan, BatchResult batch, String face, Chance room, Chance own) {
    TestKind test = plan.test();
    double width = widthMillimetre(test);
    return new PhotoScene(
        WIDTH_PIXELS,
        width,
        ground(plan),
        items(test, batch, face, own),
        chart(test, width, own),
        light(room, own),
        camera(own),
        own.named("seed").below(Integer.MAX_VALUE));
  }

  private static double widthMillimetre(TestKind test) {
    return switch (test) {
      case FLATBREAD -> 456;
      case TURKEY -> 366;
      default -> 420;
    };
  }

  private static Ground ground(RunPlan plan) {
    if (plan.kind() == RunPlan.Kind.TRIAL) {
      return Ground.WIRE_RACK;
    }
    return plan.test() == TestKind.CROQUETTES && plan.replicate() == 2 ? Ground.TRAY : Ground.TABLE;
  }

  private static Light light(Chance room, Chance own) {
    double red = room.named("red").gaussian(1.02, 0.05);
    double blue = room.named("blue").gaussian(0.95, 0.07);
    return new Light(
        room.named("level").uniform(0.78, 0.95) * own.factor(0.03),
        room.named("right").gaussian(-0.05, 0.02) + own.gaussian(0, 0.01),
        room.named("down").gaussian(0.03, 0.02) + own.gaussian(0, 0.01),
        red * own.factor(0.01),
        blue * own.factor(0.012));
  }

  private static Camera camera(Chance own) {
    return new Camera(
        own.gaussian(0, 0.012), own.gaussian(0, 0.012), own.gaussian(0.015, 0.012), 0.012, 0.06);
  }

  private static ChartPose chart(TestKind test, double width, Chance own) {
    double x = own.gaussian(0, 2);
    double y = own.gaussian(0, 2);
    double turn = own.gaussian(0, 0.02);
    double upright = Math.PI / 2;
    return switch (test) {
      case FLATBREAD -> new ChartPose(width - 74 + x, 152 + y, CHART_PITCH, upright + turn);
      case CROQUETTES -> new ChartPose(width - 98 + x, 64 + y, CHART_PITCH, turn);
      case TURKEY -> new ChartPose(width - 95 + x, 62 + y, CHART_PITCH, turn);
      default -> new ChartPose(width - 88 + x, 140 + y, CHART_PITCH, turn);
    };
  }

  private static List<Item> items(TestKind test, BatchResult batch, String face, Chance own) {
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < batch.pieces().size(); i++) {
      PieceResult piece = batch.pieces().get(i);
      boolean top = face.equals("top");
      Surface surface = top ? piece.top() : piece.underside();
      items.add(item(test, piece.id(), i, surface, top, own));
    }
    return items;
  }

  private static Item item(
      TestKind test, String id, int i, Surface surface, boolean top, Chance own) {
    double dx = own.gaussian(0, 1);
    double dy = own.gaussian(0, 1);
    double turn = own.gaussian(0, 0.025);
    return switch (test) {
      case TOAST ->
          new Item(
              id,
              Material.BREAD_SLICE,
              Shape.SLICE,
              66 + 111 * (i % 2) + dx,
              84 + 109 * (i / 2) + dy,
              100,
              96,
              turn,
              surface);
      case CAKES ->
          new Item(
              id,
              top ? Material.CAKE_TOP : Material.CAKE_BASE,
              Shape.ROUND,
              46 + 76 * (i % 3) + dx,
              60 + 78 * (i / 3) + dy,
              top ? 63 : 52,
              top ? 63 : 52,
              turn,
              surface);
      case FLATBREAD ->
          new Item(
              id, Material.FLATBREAD, Shape.ROUND, 152 + dx, 152 + dy, 270, 270, turn, surface);
      case TURKEY ->
          new Item(id, Material.ROAST, Shape.LOAF, 120 + dx, 166 + dy, 172, 74, turn, surface);
      case CROQUETTES ->
          new Item(
              id,
              Material.CROQUETTE,
              Shape.CAPSULE,
              54 + 76 * (i % 5) + 1.6 * dx,
              146 + 34 * (i / 5) + 1.2 * dy,
              57,
              24,
              4 * turn,
              surface);
      case HEAT_UP -> throw new IllegalStateException("nothing to photograph in " + test.id());
    };
  }
}
