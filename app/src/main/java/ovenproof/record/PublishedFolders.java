package ovenproof.record;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import ovenproof.desk.DeskLocation;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * What a desk has published, as it lies in its folder: sites with their frozen editions, and kits
 * with the register of cards that were handed out. Frozen means that it cannot be made again from
 * the rows, so it is backed up as it is.
 */
final class PublishedFolders {
  static final String PUBLISHED = "data/published/";

  /** How often a folder is copied anew when it was replaced meanwhile. */
  private static final int TRIES = 8;

  private static final long MOMENT_MILLIS = 25;

  private PublishedFolders() {}

  private static Path all(DeskLocation location) {
    return location.folder().toAbsolutePath().normalize().resolve("published");
  }

  /**
   * Copies all of it into a bag. A publication replaces a folder by renaming: one that went away
   * while it was copied is copied again.
   *
   * @return number of files
   */
  static int copy(DeskLocation location, Path bag) throws IOException {
    int files = 0;
    for (Path campaign : inside(all(location))) {
      for (Path folder : seenTwice(campaign)) {
        Path target = bag.resolve(PUBLISHED + campaign.getFileName() + "/" + folder.getFileName());
        files += copyWhole(folder, target);
      }
    }
    return files;
  }

  /** While a folder is replaced it is not there for a moment: whoever looks twice sees it. */
  private static Set<Path> seenTwice(Path campaign) throws IOException {
    Set<Path> folders = new TreeSet<>(inside(campaign));
    pause(1);
    folders.addAll(inside(campaign));
    return folders;
  }

  private static void pause(int moments) {
    try {
      Thread.sleep(moments * MOMENT_MILLIS);
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
    }
  }

  /** Folders in a folder; drafts, which begin with a dot, and links are left out. */
  private static List<Path> inside(Path folder) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(p -> Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS))
          .filter(p -> !Objects.requireNonNull(p.getFileName()).toString().startsWith("."))
          .sorted()
          .toList();
    }
  }

  private static int copyWhole(Path folder, Path target) throws IOException {
    for (int i = 1; i <= TRIES; i++) {
      Object before = identity(folder);
      try {
        int files = copyFiles(folder, target);
        if (Objects.equals(before, identity(folder))) {
          return files;
        }
      } catch (NoSuchFileException | UncheckedIOException replaced) {
        // It was replaced while it was copied: the new one is copied below.
        pause(i);
      }
      delete(target);
    }
    throw new OutsideException(
        "could not copy " + folder + ": it was replaced " + TRIES + " times meanwhile",
        new IOException("replaced"));
  }

  /** Changes when another folder takes the place; null where the file system knows none. */
  private static @org.jspecify.annotations.Nullable Object identity(Path folder)
      throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return "nothing";
    }
    return Files.readAttributes(folder, java.nio.file.attribute.BasicFileAttributes.class)
        .fileKey();
  }

  private static int copyFiles(Path folder, Path target) throws IOException {
    List<Path> files;
    try (Stream<Path> walk = Files.walk(folder)) {
      files = walk.filter(p -> Files.isRegularFile(p, LinkOption.NOFOLLOW_LINKS)).toList();
    }
    for (Path file : files) {
      Path to = target.resolve(folder.relativize(file).toString());
      Files.createDirectories(Objects.requireNonNull(to.getParent()));
      Files.copy(file, to, LinkOption.NOFOLLOW_LINKS);
    }
    return files.size();
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> deepestFirst;
    try (Stream<Path> walk = Files.walk(folder)) {
      deepestFirst = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : deepestFirst) {
      Files.delete(path);
    }
  }

  /**
   * Refuses a desk that has published something already.
   *
   * @throws InputException with the place
   */
  static void refuseTaken(DeskLocation location) throws IOException {
    if (!inside(all(location)).isEmpty()) {
      throw new InputException(
          Problem.error(
              Place.of(all(location).toString()),
              "published reviews",
              "a new or empty desk",
              "choose another folder; nothing was written"));
    }
  }

  /**
   * Puts what a checked bag holds into the desk's folder.
   *
   * @return number of files
   */
  static int restore(Bag bag, DeskLocation location) throws IOException {
    int files = 0;
    Path all = all(location);
    for (String path : bag.fingerprints().keySet()) {
      if (path.startsWith(PUBLISHED)) {
        Path to = all.resolve(path.substring(PUBLISHED.length())).normalize();
        if (!to.startsWith(all)) {
          throw new InputException(Problem.error(Place.of(path), "a path that leaves", "", ""));
        }
        Files.createDirectories(Objects.requireNonNull(to.getParent()));
        Files.copy(bag.root().resolve(path), to);
        files++;
      }
    }
    return files;
  }
}
