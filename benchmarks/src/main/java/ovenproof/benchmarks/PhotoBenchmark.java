package ovenproof.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import javax.imageio.ImageIO;
import ovenproof.core.photo.ChartCalibrator;
import ovenproof.core.photo.ChartFinder;
import ovenproof.core.photo.ChartSighting;
import ovenproof.core.photo.PhotoAnalyser;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.PieceFinder;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.kitchen.photo.Jpeg;
import ovenproof.kitchen.photo.Material;
import ovenproof.kitchen.photo.PhotoScene;
import ovenproof.kitchen.photo.Studio;
import ovenproof.kitchen.physics.Surface;

/**
 * One photograph of 12 megapixels with a chart and six slices, from JPEG bytes to all measures, and
 * its steps by themselves. Wall clock and processor time of all threads, median of seven after four
 * to warm up. The picture is written beside, for the same steps in OpenCV
 * (scripts/photo_opencv.py).
 *
 * <p>Arguments: the JPEG's path (made when absent).
 */
public final class PhotoBenchmark {

  private static final int WARM_UP = 4;
  private static final int RUNS = 7;
  private static final OperatingSystemMXBean PROCESS =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private PhotoBenchmark() {}

  public static void main(String[] args) throws IOException {
    Path path = Path.of(args.length > 0 ? args[0] : "photo-12mp.jpg");
    if (!Files.exists(path)) {
      Files.write(path, Jpeg.of(Studio.take(scene()), LocalDateTime.of(2026, 3, 1, 9, 30)));
      System.out.println("made " + path);
    }
    byte[] bytes = Files.readAllBytes(path);
    PhotoFile file = PhotoFile.open(bytes, "photo.jpg");
    PhotoAnalyser analyser = PhotoAnalyser.withDefaults().expecting(6).withChartPitch(18);
    ChartSighting chart = ChartFinder.find(file.picture());
    ChartCalibrator calibrator = ChartCalibrator.withDefaults();
    PhotoCalibration calibration = calibrator.calibrate(file.picture(), chart, "camera:1");
    PhotoAnalysis analysis = analyser.analyse(file.picture(), "camera:1");
    System.out.printf(
        Locale.ROOT,
        "%.1f MP, chart %s, mean dE00 %.2f, %d pieces, warnings %s%n",
        file.picture().megapixels(),
        chart.status(),
        analysis.calibration().deltaE00Mean(),
        analysis.pieces().size(),
        analysis.warnings());
    time("bare decode (ImageIO)", () -> decoded(path));
    time("open: decode, metadata, upright", () -> PhotoFile.open(bytes, "photo.jpg"));
    time("find the chart", () -> ChartFinder.find(file.picture()));
    time("calibrate", () -> calibrator.calibrate(file.picture(), chart, "camera:1"));
    time(
        "find the pieces",
        () -> PieceFinder.expecting(6).find(file.picture(), calibration.colours(), chart));
    time("all from pixels", () -> analyser.analyse(file.picture(), "camera:1"));
    time(
        "all from bytes",
        () -> analyser.analyse(PhotoFile.open(bytes, "photo.jpg").picture(), "camera:1"));
    System.out.printf(
        Locale.ROOT, "peak of the heap in one photograph: %d MB%n", peak(analyser, bytes));
  }

  private static Object decoded(Path path) {
    try {
      return ImageIO.read(path.toFile());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static PhotoScene scene() {
    List<PhotoScene.Item> items = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      items.add(
          new PhotoScene.Item(
              "s" + (i + 1),
              Material.BREAD_SLICE,
              PhotoScene.Shape.SLICE,
              70 + 110 * (i % 3),
              90 + 115 * (i / 3),
              92,
              90,
              0.02 * i,
              Surface.even(0.25 + 0.1 * i)));
    }
    return new PhotoScene(
        4_243,
        480,
        PhotoScene.Ground.TABLE,
        items,
        new PhotoScene.ChartPose(415, 150, 18, Math.PI / 2),
        PhotoScene.Light.NEUTRAL,
        new PhotoScene.Camera(0.01, 0, 0.02, 0.006, 0.1),
        9);
  }

  private static void time(String what, Supplier<Object> work) {
    double[] wall = new double[RUNS];
    double[] processor = new double[RUNS];
    for (int i = -WARM_UP; i < RUNS; i++) {
      long w = System.nanoTime();
      long p = PROCESS.getProcessCpuTime();
      if (work.get() == null) {
        throw new IllegalStateException(what + " gave nothing");
      }
      if (i >= 0) {
        processor[i] = (PROCESS.getProcessCpuTime() - p) / 1e6;
        wall[i] = (System.nanoTime() - w) / 1e6;
      }
    }
    Arrays.sort(wall);
    Arrays.sort(processor);
    System.out.printf(
        Locale.ROOT,
        "%-34s %6.0f ms, processor %6.0f ms%n",
        what,
        wall[RUNS / 2],
        processor[RUNS / 2]);
  }

  /** Highest use of all heap pools together, sampled by the pools' own peaks; an upper bound. */
  private static long peak(PhotoAnalyser analyser, byte[] bytes) {
    System.gc();
    List<MemoryPoolMXBean> pools =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .toList();
    pools.forEach(MemoryPoolMXBean::resetPeakUsage);
    analyser.analyse(PhotoFile.open(bytes, "photo.jpg").picture(), "camera:1");
    return pools.stream().mapToLong(p -> p.getPeakUsage().getUsed()).sum() >> 20;
  }
}
