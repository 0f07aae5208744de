package ovenproof.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.core.measure.Measurement;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.kitchen.photo.Jpeg;
import ovenproof.kitchen.photo.Material;
import ovenproof.kitchen.photo.PhotoScene;
import ovenproof.kitchen.photo.PhotoScene.Camera;
import ovenproof.kitchen.photo.PhotoScene.ChartPose;
import ovenproof.kitchen.photo.PhotoScene.Ground;
import ovenproof.kitchen.photo.PhotoScene.Item;
import ovenproof.kitchen.photo.PhotoScene.Light;
import ovenproof.kitchen.photo.PhotoScene.Shape;
import ovenproof.kitchen.photo.Shot;
import ovenproof.kitchen.photo.Shot.PieceTruth;
import ovenproof.kitchen.photo.Studio;
import ovenproof.kitchen.physics.Surface;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/**
 * Two ovens whose slices lie in one frame, photographed before, from above, from below and beside a
 * shade card: from the pictures to the verdict, against what stood in front of the camera.
 */
class FacesCampaignTest {
  private static final Camera PHONE = new Camera(0, 0, 0, 0.012, 0.06);
  private static final ChartPose CHART = new ChartPose(305, 120, 26, 0);
  private static final double DOUGH = 0.05;
  private static final double WANTED = 0.35;
  private static final Map<String, Double> TOP = Map.of("alder", 0.35, "birch", 0.6);
  private static final double UNDER = 0.5;

  @TempDir static Path folder;

  private static final Map<String, Shot> SHOTS = new HashMap<>();
  private static Measured measured;
  private static Verdict verdict;

  @BeforeAll
  static void aCampaignOfOneFrameForBoth() throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    Surface left = new Surface(2, 1, new double[] {UNDER - 0.12, UNDER + 0.12});
    List<String> rows = new ArrayList<>(List.of("file,run,batch,face,taken,camera,boxes"));
    both("before", oven -> Surface.even(DOUGH), rows);
    both("top", oven -> Surface.even(TOP.get(oven)), rows);
    // As it lies after being turned over its side: what was left is right in the picture.
    both("underside", oven -> left.flipped(), rows);
    card(rows);
    put("photos.csv", String.join("\n", rows) + "\n");
    put("campaign.yaml", CAMPAIGN);
    put("method.yaml", METHOD);
    put("products.csv", "product,name\nalder,Alder\nbirch,Birch\n");
    put(
        "runs.csv",
        "run,product,test,replicate,session,started\n"
            + "alder-1,alder,toast,1,day,2026-03-02T10:00:00\n"
            + "birch-1,birch,toast,1,day,2026-03-02T10:00:00\n");
    put(
        "events.csv",
        "run,event,time,batch,value\nalder-1,load,+0:00,1,\nbirch-1,load,+0:00,1,\nalder-1,stop,+3:00,1,ends-by-itself\n"
            + "birch-1,stop,+3:00,1,ends-by-itself\n");
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    verdict = new VerdictService(1).verdict(loaded.campaign(), measured);
  }

  private interface Face {
    Surface of(String oven);
  }

  private static void both(String face, Face face1, List<String> rows) throws IOException {
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      String oven = i < 2 ? "alder" : "birch";
      items.add(
          slice(oven + "-s" + (i % 2 + 1), i < 2 ? 62 : 168, 68 + i % 2 * 112, face1.of(oven)));
    }
    Shot shot = shoot(face, items);
    for (String oven : List.of("alder", "birch")) {
      String boxes =
          shot.pieces().stream()
              .filter(p -> p.id().startsWith(oven))
              .map(p -> p.id().substring(oven.length() + 1) + ":" + box(p))
              .collect(Collectors.joining(" "));
      rows.add(row(face, oven, boxes));
    }
  }

  private static void card(List<String> rows) throws IOException {
    shoot("shade-card", List.of(slice("card", 110, 120, Surface.even(WANTED))));
    rows.add(row("shade-card", "alder", "card:" + box(SHOTS.get("shade-card").pieces().get(0))));
  }

  private static Item slice(String id, double x, double y, Surface surface) {
    return new Item(id, Material.BREAD_SLICE, Shape.SLICE, x, y, 90, 88, 0, surface);
  }

  private static Shot shoot(String face, List<Item> items) throws IOException {
    Light light = new Light(0.85, 0.04, -0.03, 1.05, 0.93);
    Shot shot =
        Studio.take(new PhotoScene(1000, 410, Ground.TABLE, items, CHART, light, PHONE, 11));
    SHOTS.put(face, shot);
    Files.write(
        folder.resolve("photos/" + face + ".jpg"),
        Jpeg.of(shot, LocalDateTime.of(2026, 3, 2, 10, 8)));
    return shot;
  }

  private static String box(PieceTruth p) {
    int room = 8;
    return (p.x() - room)
        + ","
        + (p.y() - room)
        + ","
        + (p.width() + 2 * room)
        + ","
        + (p.height() + 2 * room);
  }

  private static String row(String face, String oven, String boxes) {
    return "photos/"
        + face
        + ".jpg,"
        + oven
        + "-1,1,"
        + face
        + ",2026-03-02T10:08:00,phone,\""
        + boxes
        + "\"";
  }

  private static void put(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  // ---------- what stood in front of the camera ----------

  private static double lightness(String face, String oven) {
    return SHOTS.get(face).pieces().stream()
        .filter(p -> p.id().startsWith(oven))
        .mapToDouble(p -> p.seenLab()[0])
        .average()
        .orElseThrow();
  }

  private static Measurement value(String use, String oven) {
    return measured.ofRun("toast", use, oven + "-1").orElseThrow().value();
  }

  private static void assertHolds(String use, String oven, double truth) {
    Measurement found = value(use, oven);
    assertThat(found.value()).as("%s of %s", use, oven).isNotNull();
    assertThat(found.value())
        .as("%s of %s", use, oven)
        .isCloseTo(truth, within(Math.max(1, 2 * found.uncertainty())));
  }

  @Test
  void eachOvenHasItsOwnSlicesOfTheSharedFrame() {
    for (String oven : TOP.keySet()) {
      assertHolds("top", oven, lightness("top", oven));
    }
    assertThat(value("top", "alder").value() - value("top", "birch").value())
        .isCloseTo(lightness("top", "alder") - lightness("top", "birch"), within(1.0));
  }

  @Test
  void theTargetIsTheShadeOfTheDaysCard() {
    double wanted = lightness("shade-card", "card");
    for (String oven : TOP.keySet()) {
      assertHolds("off", oven, lightness("top", oven) - wanted);
    }
    assertThat(value("distance", "alder").value()).isLessThan(2.5);
    assertThat(value("distance", "birch").value()).isGreaterThan(8);
  }

  @Test
  void whatBakingTookIsBeforeLessAfter() {
    for (String oven : TOP.keySet()) {
      assertHolds("lost", oven, lightness("before", oven) - lightness("top", oven));
    }
  }

  @Test
  void topAgainstUndersideHasItsSign() {
    for (String oven : TOP.keySet()) {
      assertHolds("faces", oven, lightness("top", oven) - lightness("underside", oven));
    }
    assertThat(value("faces", "alder").value()).isPositive();
    assertThat(value("faces", "birch").value()).isNegative();
  }

  /** Left is paler on the piece; in the turned picture it lies right. */
  @Test
  void aTurnedPieceIsReportedAsSeenFromAbove() {
    assertThat(value("tilt", "alder").value()).isLessThan(-4);
    assertThat(value("tilt", "birch").value()).isLessThan(-4);
  }

  @Test
  void theVerdictPutsTheOvenNearTheCardFirst() {
    List<Verdict.ProductVerdict> products = verdict.products();
    assertThat(products).extracting(Verdict.ProductVerdict::id).containsExactly("alder", "birch");
    assertThat(products.get(0).test("toast")).isPresent();
    assertThat(measured.warnings()).noneMatch(w -> w.contains("pieces found"));
  }

  private static final String CAMPAIGN =
      """
      format: 1
      campaign: faces
      title: Two ovens in one frame
      kitchen: Quarry Street test kitchen
      zone: UTC
      currency: EUR
      invented: yes
      """;

  private static final String METHOD =
      """
      format: 1
      method: faces
      title: Faces
      version: "1.0"
      population: Countertop ovens
      why: One frame, four faces.
      scoring: {combine: arithmetic, seed: 1, draws: 1000, decimals: 1}
      tests:
        - id: toast
          name: Toast
          why: The daily job.
          parts: 1
          sample: {food: White bread, pieces: 2, mass: 38 g ± 2 g, start: 21 °C ± 2 K}
          setting: {rule: as-user-would, mode: toast, dial: 230 °C}
          start: cold
          rack: middle
          batches: 1
          replicates: 1
          stops:
            - {when: ends-by-itself}
            - {when: cap, at: 12 min}
          photos: {faces: [before, top, underside], pieces: 2, target: {from: shade-card}, chart_pitch: 26 mm, turned: sideways}
          measures:
            - {id: top, take: lightness-mean, face: top}
            - {id: off, take: lightness-difference, face: top}
            - {id: distance, take: shade-difference, face: top}
            - {id: lost, take: lightness-lost}
            - {id: faces, take: top-minus-underside}
            - {id: tilt, take: tilt-left-right, face: underside}
          criteria:
            - {id: shade, name: Close to the card, parts: 1, measure: distance, curve: {points: [[2, 10], [15, 0]]}}
      """;
}
