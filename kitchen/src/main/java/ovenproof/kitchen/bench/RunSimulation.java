package ovenproof.kitchen.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ovenproof.kitchen.bench.FoodPiece.Form;
import ovenproof.kitchen.bench.RunPlan.Mishap;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.Happening;
import ovenproof.kitchen.bench.RunResult.Stop;
import ovenproof.kitchen.physics.Cavity;
import ovenproof.kitchen.physics.Cavity.Demand;
import ovenproof.kitchen.physics.Cavity.Door;
import ovenproof.kitchen.physics.CrustColour;
import ovenproof.kitchen.physics.Oven;

/**
 * Plays one run second by second: heats the oven, opens the door, loads, shakes, stops by its rule.
 *
 * <p>Depends only on the plan and the luck, so runs may be played in any order and at once.
 */
public final class RunSimulation {

  private static final double DT = 0.5;
  private static final double DOOR_SECONDS = 9;
  private static final double LOOK_EVERY = 10;

  /** How well a dial turned to the same mark is the same again, K (common practice). */
  private static final double DIAL_REPEATS = 2;

  /** How much a compensated program shortens at 200 K of residual heat. */
  private static final double COMPENSATION = 0.5;

  private final RunPlan plan;
  private final Luck luck;
  private final Oven oven;
  private final Cavity cavity;
  private final OvenPlane plane;
  private final RunLog log = new RunLog();
  private final HeatAccount heat = new HeatAccount();
  private final List<Happening> events = new ArrayList<>();
  private final List<Stop> stops = new ArrayList<>();
  private final List<BatchResult> batches = new ArrayList<>();
  private final double room;
  private double time;
  private double doorOpenUntil = -1;
  private Load load = Load.EMPTY;

  private RunSimulation(RunPlan plan, Luck luck) {
    this.plan = plan;
    this.luck = luck;
    this.oven = plan.oven();
    this.room = plan.day().roomCelsius();
    Oven.Thermostat dial = oven.thermostat();
    double asTurned = dial.biasKelvin() + luck.normal(DIAL_REPEATS);
    Oven today = oven.with(dial.withBias(asTurned));
    this.cavity = new Cavity(today, room + plan.day().startKelvin());
    this.plane = new OvenPlane(oven);
  }

  /** The run as it happens with this luck. */
  public static RunResult play(RunPlan plan, Luck luck) {
    RunSimulation run = new RunSimulation(plan, luck);
    double skin = run.playTest();
    return new RunResult(plan, run.events, run.log, run.batches, skin, run.stops);
  }

  private double playTest() {
    happened("start", 0, "", "");
    switch (plan.test()) {
      case HEAT_UP -> heatUp();
      case TOAST -> toast();
      case CAKES -> cakes();
      case FLATBREAD -> flatbread();
      case TURKEY -> turkey();
      case CROQUETTES -> croquettes();
    }
    return cavity.skin(room);
  }

  private void heatUp() {
    boolean ready = false;
    while (time < TestKind.HEAT_UP_SECONDS) {
      tick(Demand.HOLD);
      if (!ready && cavity.saysReady(plan.test().setCelsius())) {
        ready = true;
        signal();
      }
    }
    stop(0, 0, "time");
  }

  private void signal() {
    String shown = String.format(Locale.ROOT, "%.0f °C", plan.test().setCelsius());
    happened("signal", 0, shown, "");
  }

  private void preheat() {
    while (time < TestKind.PREHEAT_CAP && !cavity.saysReady(plan.test().setCelsius())) {
      tick(Demand.HOLD);
    }
    if (cavity.saysReady(plan.test().setCelsius())) {
      signal();
    }
    run(luck.seconds(30, 6, 12), Demand.HOLD);
  }

  private void toast() {
    int loads = plan.kind() == RunPlan.Kind.TRIAL ? 1 : 2;
    for (int batch = 1; batch <= loads; batch++) {
      if (batch == 2) {
        openDoor(0, batch);
        run(luck.seconds(62, 6, 40), Demand.OFF);
      }
      load = Load.of(oven, plan, luck, plane, room);
      happened("load", batch, "", "");
      double began = time;
      double seconds = program(batch);
      run(seconds, Demand.HOLD);
      stop(batch, began, "ends-by-itself");
      run(finish(batch), Demand.OFF);
    }
  }

  private double program(int batch) {
    Oven.ToastProgram toast = oven.toast();
    double seconds = toast.seconds() + (plan.preset() - 4) * toast.secondsPerPreset();
    boolean compensated =
        toast.residualHeat() == Oven.ToastProgram.ResidualHeat.COMPENSATED && batch > 1;
    double hot = Math.max(0, cavity.sensor() - 21) / 200;
    return compensated ? seconds * (1 - COMPENSATION * hot) : seconds;
  }

  /** Takes the food out; returns how long the hands need. */
  private double finish(int batch) {
    batches.add(load.result(batch));
    load = Load.EMPTY;
    doorOpenUntil = time + DOOR_SECONDS + luck.normal(1.2);
    happened("door-open", batch, "", "");
    double hands = luck.seconds(14, 3, 8);
    events.add(new Happening("remove", time + hands - 3, batch, "", ""));
    return hands;
  }

  private void openDoor(double wait, int batch) {
    doorOpenUntil = time + wait + luck.seconds(DOOR_SECONDS, 1.5, 5);
    happened("door-open", batch, "", "");
  }

  private double loadPreheated() {
    preheat();
    openDoor(0, 1);
    load = Load.of(oven, plan, luck, plane, room);
    run(luck.seconds(5, 1, 3), Demand.HOLD);
    happened("load", 1, "", "");
    double began = time;
    run(Math.max(1, doorOpenUntil - time), Demand.HOLD);
    happened("door-close", 1, "", "");
    return began;
  }

  private void cakes() {
    double began = loadPreheated();
    if (plan.mishap() == Mishap.BREAKER) {
      run(began + 372 - time, Demand.HOLD);
      happened("power-off", 1, "", "the breaker of the bench fell");
      stop(1, began, "abort");
      finish(1);
      batches.clear();
      return;
    }
    run(began + TestKind.CAKE_SECONDS - time, Demand.HOLD);
    stop(1, began, "time");
    run(finish(1), Demand.OFF);
  }

  private void flatbread() {
    double began = loadPreheated();
    double target = TestKind.FLATBREAD_LIGHTNESS + luck.normal(1.0);
    CrustColour colour = plan.test().colour();
    while (time - began < TestKind.FLATBREAD_CAP) {
      run(Math.min(LOOK_EVERY, began + TestKind.FLATBREAD_CAP - time), Demand.HOLD);
      if (colour.at(load.topBrowning()).lightness() <= target) {
        stop(1, began, "shade");
        run(finish(1), Demand.OFF);
        return;
      }
    }
    stop(1, began, "cap");
    run(finish(1), Demand.OFF);
  }

  private void turkey() {
    double began = loadPreheated();
    events.add(new Happening("probe-in", began - 2, 1, "", "three probes, thickest place marked"));
    String why = "cap";
    while (time - began < TestKind.TURKEY_CAP) {
      run(1, Demand.HOLD);
      if (load.coldestProbe() >= TestKind.TURKEY_STOP_CELSIUS) {
        why = "core";
        break;
      }
    }
    stop(1, began, why);
    batches.add(load.result(1));
    happened("door-open", 1, "", "");
    doorOpenUntil = time + DOOR_SECONDS;
    events.add(new Happening("remove", time + 12, 1, "", ""));
    load.rest();
    run(TestKind.REST_SECONDS, Demand.OFF);
    happened("probe-out", 1, "", "");
  }

  private void croquettes() {
    double began = loadPreheated();
    double late = plan.mishap() == Mishap.LATE_SHAKE ? 21 : Math.max(-6, luck.normal(3));
    run(began + TestKind.SHAKE_SECONDS + late - time, Demand.HOLD);
    openDoor(0, 1);
    run(4, Demand.HOLD);
    happened("shake", 1, "", "");
    load.shake();
    run(Math.max(1, doorOpenUntil - time), Demand.HOLD);
    happened("door-close", 1, "", "");
    run(began + TestKind.CROQUETTE_SECONDS - time, Demand.HOLD);
    stop(1, began, "time");
    run(finish(1), Demand.OFF);
  }

  private void happened(String type, int batch, String value, String note) {
    events.add(new Happening(type, time, batch, value, note));
  }

  private void stop(int batch, double began, String why) {
    stops.add(new Stop(batch, time - began, time, why));
    happened("stop", batch, why, why.equals("abort") ? "the breaker of the bench fell" : "");
  }

  private void run(double seconds, Demand demand) {
    double end = time + seconds;
    while (time < end - DT / 2) {
      tick(demand);
    }
  }

  private void tick(Demand demand) {
    if (Math.abs(time - Math.rint(time)) < 1e-6) {
      record();
    }
    plane.now(cavity, room);
    heat.clear();
    load.step(DT, plane, room, heat);
    cavity.step(
        DT,
        demand,
        plan.test().setCelsius(),
        plan.day().volts(time),
        room,
        time < doorOpenUntil ? Door.OPEN : Door.SHUT,
        heat.watts(DT));
    time += DT;
  }

  private void record() {
    plane.now(cavity, room);
    double centre = plane.airAt(0, 0);
    log.add(
        new double[] {
          centre,
          plane.airAt(-0.5, -0.5),
          plane.airAt(0.5, -0.5),
          plane.airAt(-0.5, 0.5),
          plane.airAt(0.5, 0.5),
          cavity.wall(),
          load.probe(0, centre),
          load.probe(1, centre),
          load.probe(2, centre),
          cavity.drawnWatts(),
          plan.day().volts(time),
          room
        });
  }

  static Form form(String id, String position, double[] place, double[] size, boolean round) {
    return new Form(
        id,
        position,
        place[0],
        place[1],
        size[0],
        size[1],
        size[2],
        round ? FoodPiece.Outline.ROUND : FoodPiece.Outline.SLAB);
  }
}
