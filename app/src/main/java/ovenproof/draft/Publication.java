package ovenproof.draft;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import ovenproof.desk.Desk;
import ovenproof.desk.Job;
import ovenproof.desk.Jobs;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.EditorKit;
import ovenproof.publish.Publisher;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.site.PictureCache;
import ovenproof.publish.site.ReviewSite;
import ovenproof.web.Workbench;

/** The review site and the editor's kit of a campaign, as the desk keeps them. */
final class Publication {
  static final String KIND = "publish";

  private static final int STEPS = 3;
  private static final long MOMENT_MILLIS = 200;

  private final Desk desk;
  private final Workbench workbench;
  private final PictureCache pictures;

  Publication(Desk desk, Workbench workbench) {
    Path derived = desk.location().folder().resolve("derived");
    this.pictures = PictureCache.inFolder(derived.resolve("reader-pictures"));
    this.desk = desk;
    this.workbench = workbench;
  }

  /** What readers get, and what an editor takes along. */
  enum Part {
    SITE,
    KIT;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  Path folder(String cid, Part part) {
    Path all = desk.location().folder().resolve("published").normalize();
    Path folder = all.resolve(cid).resolve(part.word()).normalize();
    if (!folder.startsWith(all)) {
      throw new IllegalArgumentException("cid must be the key of a campaign, found " + cid);
    }
    return folder;
  }

  EditionHistory editions(String cid) {
    return ReviewSite.editions(folder(cid, Part.SITE));
  }

  boolean exists(String cid, Part part) {
    return Files.isDirectory(folder(cid, part));
  }

  /** Measures, scores and publishes; begun twice, it prints the same again. */
  String run(Job job, Jobs.Running running) {
    String cid = Objects.requireNonNull(job.campaign());
    Workbench.Sheet sheet = workbench.sheet(cid);
    while (!sheet.ready()) {
      running.at(sheet.stepsDone(), Math.max(1, sheet.stepsInAll()), "measuring");
      pause();
    }
    running.at(0, STEPS, "scoring");
    Optional<Edition> edition = SheetEdition.of(desk, sheet);
    if (edition.isEmpty()) {
      throw new InputException(
          Problem.error(Place.of(cid), "nothing scored", "a run of each product that counts", ""));
    }
    running.at(1, STEPS, "writing pages and pictures");
    String why = job.input().isBlank() ? null : job.input();
    Path site = folder(cid, Part.SITE);
    new Publisher(pictures).publish(edition.get(), site, site, why);
    running.at(2, STEPS, "drawing cards and writing fragments");
    EditorKit.write(edition.get(), folder(cid, Part.KIT), List.of(), null, List.of());
    return "/c/" + cid + "/publish";
  }

  private static void pause() {
    try {
      Thread.sleep(MOMENT_MILLIS);
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      throw new Jobs.CancelledException();
    }
  }

  /** A file of what was published; never one outside of it, never through a link. */
  Optional<Path> file(String cid, Part part, String path) {
    Path root = folder(cid, part);
    Path file;
    try {
      file = root.resolve(path.isEmpty() || path.endsWith("/") ? path + "index.html" : path);
    } catch (java.nio.file.InvalidPathException e) {
      return Optional.empty();
    }
    boolean inside = file.normalize().equals(file) && file.startsWith(root);
    if (!inside || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    try {
      return file.toRealPath().startsWith(root.toRealPath()) ? Optional.of(file) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Everything of a part as one file. */
  void zip(String cid, Part part, OutputStream out) throws IOException {
    Path root = folder(cid, part);
    try (ZipOutputStream packed = new ZipOutputStream(out);
        Stream<Path> all = Files.walk(root)) {
      for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
        String name = root.relativize(file).toString().replace('\\', '/');
        packed.putNextEntry(new ZipEntry(cid + "-" + part.word() + "/" + name));
        Files.copy(file, packed);
        packed.closeEntry();
      }
    }
  }

  /** The fragments of the kit, by name. */
  List<String> fragments(String cid) {
    Path fragments = folder(cid, Part.KIT).resolve("fragments");
    try (Stream<Path> files = Files.list(fragments)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> !f.startsWith("."))
          .sorted()
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }
}
