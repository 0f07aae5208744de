package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import ovenproof.kitchen.bench.Progress;
import ovenproof.kitchen.bench.RunPlan;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.photo.Jpeg;
import ovenproof.kitchen.photo.Shot;
import ovenproof.kitchen.photo.Studio;
import ovenproof.kitchen.physics.Chance;

/** Takes every picture of the season. */
final class PhotoTable {

  private final Path folder;
  private final Chance chance;
  private final Season season;
  private final ExecutorService hands;
  private final Progress progress;

  PhotoTable(Path folder, Chance chance, Season season, ExecutorService hands, Progress progress) {
    this.folder = folder;
    this.chance = chance;
    this.season = season;
    this.hands = hands;
    this.progress = progress;
  }

  private record Wanted(String file, RunResult run, BatchResult batch, String face) {
    LocalDateTime taken() {
      double stop =
          run.stops().stream()
              .filter(s -> s.batch() == batch.batch())
              .mapToDouble(RunResult.Stop::atSecond)
              .findFirst()
              .orElse(0);
      long later = (long) stop + (face.equals("top") ? 200 : 235);
      return run.plan().started().plusSeconds(later);
    }
  }

  private record Taken(Wanted wanted, List<Shot.PieceTruth> pieces) {}

  void write(Truth truth) throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    List<Wanted> wanted = wanted();
    AtomicInteger done = new AtomicInteger();
    List<Future<Taken>> futures = new ArrayList<>();
    for (Wanted photo : wanted) {
      futures.add(
          hands.submit(
              () -> {
                Taken taken = take(photo);
                progress.reached("photos", done.incrementAndGet(), wanted.size());
                return taken;
              }));
    }
    Csv csv = new Csv("file", "run", "batch", "face", "taken", "camera", "boxes", "note");
    for (Future<Taken> future : futures) {
      row(csv, truth, finished(future));
    }
    csv.write(folder.resolve("photos.csv"));
  }

  private static Taken finished(Future<Taken> future) throws IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted while photographs were taken", e);
    } catch (ExecutionException e) {
      throw new IOException("a photograph could not be taken", e.getCause());
    }
  }

  private List<Wanted> wanted() {
    List<Wanted> all = new ArrayList<>();
    for (RunResult run : season.runs()) {
      RunPlan plan = run.plan();
      List<String> faces = plan.kind() == RunPlan.Kind.TRIAL ? List.of("top") : plan.test().faces();
      for (BatchResult batch : run.batches()) {
        for (String face : faces) {
          String several = run.batches().size() > 1 ? "-b" + batch.batch() : "";
          String file = "photos/" + plan.id() + several + "-" + face + ".jpg";
          all.add(new Wanted(file, run, batch, face));
        }
      }
    }
    return all;
  }

  private Taken take(Wanted photo) throws IOException {
    RunPlan plan = photo.run().plan();
    Chance room = chance.named("light of " + plan.session());
    Chance own = chance.named(photo.file());
    Shot shot = Studio.take(SceneBuilder.scene(plan, photo.batch(), photo.face(), room, own));
    Files.write(folder.resolve(photo.file()), Jpeg.of(shot, photo.taken()));
    return new Taken(photo, shot.pieces());
  }

  private static void row(Csv csv, Truth truth, Taken taken) {
    Wanted photo = taken.wanted();
    String boxes =
        taken.pieces().stream()
            .map(p -> p.id() + ":" + p.x() + "," + p.y() + "," + p.width() + "," + p.height())
            .collect(Collectors.joining(" "));
    csv.row(
        photo.file(),
        photo.run().plan().id(),
        photo.batch().batch(),
        photo.face(),
        TraceWriter.stamp(photo.taken()),
        "phone-1-" + photo.run().plan().session(),
        boxes,
        "");
    for (Shot.PieceTruth piece : taken.pieces()) {
      truth.shade(photo.file(), shade(piece));
    }
  }

  private static Map<String, Object> shade(Shot.PieceTruth piece) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("piece", piece.id());
    m.put("mean", listed(piece.meanLab()));
    m.put("inside", listed(piece.insideLab()));
    m.put("seen", listed(piece.seenLab()));
    m.put("insideDeviation", piece.insideDeviation());
    m.put("pixels", piece.pixels());
    return m;
  }

  private static List<Double> listed(double[] values) {
    return java.util.Arrays.stream(values).boxed().toList();
  }
}
