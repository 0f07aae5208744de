import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Makes the pictures of the README's tour from the demo: {@code java scripts/Tour.java}, from the
 * top of the checkout. Needs Chromium. Everything shown is invented.
 */
public class Tour {
  private static final Path OUT = Path.of("docs/tour");
  private static final int COLOURS = 64;

  public static void main(String[] none) throws Exception {
    Path work = Files.createTempDirectory("tour");
    Files.createDirectories(OUT);
    Process demo =
        new ProcessBuilder(
                "./ovenproof", "demo", "--dir", work + "/demo", "--port", "8931", "--desk-port", "8932")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try {
      waitFor(demo, "Work on it at");
      pages(work);
      evidence(work);
    } finally {
      demo.descendants().forEach(ProcessHandle::destroy);
      demo.destroy();
      demo.waitFor();
      delete(work);
    }
  }

  private static void pages(Path work) throws Exception {
    String site = "http://localhost:8931/";
    String desk = "http://localhost:8932/";
    String campaign = desk + "c/quarry-street-ovens";
    shot(work, site, "ranking", 1100, 1060);
    shot(work, site + "evidence/scores/hornbeam/heat-up.html", "score", 1100, 820);
    shot(work, site + "tests/flatbread.html", "test", 1100, 900);
    shot(work, desk + "start", "start", 500, 1000);
    shot(work, campaign, "home", 1100, 960);
    shot(work, campaign + "/method", "method", 1100, 900);
  }

  private static void evidence(Path work) throws Exception {
    Path campaign = work.resolve("demo/campaign");
    Path overlay = work.resolve("overlay.png");
    run("./ovenproof", "photo", campaign + "/photos/cakes-rowan-1-top.jpg", "--overlay", overlay.toString());
    keep(ImageIO.read(overlay.toFile()), "photo", 460);
  }

  private static void shot(Path work, String address, String name, int width, int height)
      throws Exception {
    Path png = work.resolve(name + ".png");
    Path profile = Files.createTempDirectory(work, "chromium");
    run(
        "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--hide-scrollbars", "--user-data-dir=" + profile, "--window-size=" + width + "," + height,
        "--virtual-time-budget=8000", "--screenshot=" + png, address);
    keep(ImageIO.read(png.toFile()), name, Math.min(width, 820));
  }

  /** Scaled and with few colours: a tour should load at once. */
  private static void keep(BufferedImage picture, String name, int width) throws IOException {
    int height = Math.round(picture.getHeight() * (float) width / picture.getWidth());
    BufferedImage scaled = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = scaled.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
    g.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
    g.drawImage(picture, 0, 0, width, height, null);
    g.dispose();
    BufferedImage few = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_INDEXED, palette(scaled));
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        few.setRGB(x, y, scaled.getRGB(x, y));
      }
    }
    File file = OUT.resolve(name + ".png").toFile();
    ImageIO.write(few, "png", file);
    System.out.println(file + "  " + file.length() / 1000 + " kB");
  }

  /** Median cut: boxes of colours are halved at the median of their longest side. */
  private static IndexColorModel palette(BufferedImage picture) {
    Map<Integer, Integer> counts = new HashMap<>();
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        counts.merge(picture.getRGB(x, y) & 0xFCFCFC, 1, Integer::sum);
      }
    }
    List<List<Integer>> boxes = new ArrayList<>();
    boxes.add(new ArrayList<>(counts.keySet()));
    while (boxes.size() < COLOURS) {
      boxes.sort(Comparator.comparingInt(box -> -length(box)));
      List<Integer> widest = boxes.get(0);
      if (widest.size() < 2) {
        break;
      }
      int shift = longest(widest);
      widest.sort(Comparator.comparingInt(c -> c >> shift & 255));
      boxes.set(0, new ArrayList<>(widest.subList(0, widest.size() / 2)));
      boxes.add(new ArrayList<>(widest.subList(widest.size() / 2, widest.size())));
    }
    byte[][] rgb = new byte[3][boxes.size()];
    for (int i = 0; i < boxes.size(); i++) {
      for (int channel = 0; channel < 3; channel++) {
        int shift = 16 - 8 * channel;
        long sum = 0;
        long n = 0;
        for (int colour : boxes.get(i)) {
          sum += (long) (colour >> shift & 255) * counts.get(colour);
          n += counts.get(colour);
        }
        rgb[channel][i] = (byte) (sum / n + 1);
      }
    }
    return new IndexColorModel(8, boxes.size(), rgb[0], rgb[1], rgb[2]);
  }

  private static int length(List<Integer> box) {
    return box.size() < 2 ? 0 : extent(box, longest(box));
  }

  private static int longest(List<Integer> box) {
    int best = 16;
    for (int shift = 8; shift >= 0; shift -= 8) {
      if (extent(box, shift) > extent(box, best)) {
        best = shift;
      }
    }
    return best;
  }

  private static int extent(List<Integer> box, int shift) {
    int low = 255;
    int high = 0;
    for (int colour : box) {
      low = Math.min(low, colour >> shift & 255);
      high = Math.max(high, colour >> shift & 255);
    }
    return high - low;
  }

  private static void waitFor(Process process, String words) throws IOException {
    BufferedReader reader =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = reader.readLine();
    while (line != null && !line.startsWith(words)) {
      line = reader.readLine();
    }
    if (line == null) {
      throw new IOException("the demo ended before it said: " + words);
    }
  }

  private static void run(String... command) throws Exception {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (process.waitFor() != 0) {
      throw new IOException("failed: " + String.join(" ", command));
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }
}
