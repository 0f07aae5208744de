package ovenproof.publish.site;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * A folder that appears whole: written beside its place, then renamed. An earlier one made by this
 * program is replaced; any other folder is left alone and refused.
 *
 * <p>Close without {@link #publish} and nothing remains.
 */
public final class SiteFolder implements AutoCloseable {
  private final Path target;
  private final Path draft;
  private final String marker;
  private boolean done;

  private SiteFolder(Path target, Path draft, String marker) {
    this.target = target;
    this.draft = draft;
    this.marker = marker;
  }

  /**
   * Begins a folder.
   *
   * @param marker name of the file that tells the program's own folders from others
   * @throws InputException if something stands there that this program did not make
   * @throws OutsideException if the disk refuses
   */
  public static SiteFolder begin(Path place, String marker) {
    Path target = place.toAbsolutePath().normalize();
    refuseForeign(target, marker);
    Path parent = target.getParent();
    if (parent == null) {
      throw foreign(target, "the root of a disk");
    }
    try {
      Files.createDirectories(parent);
      Path draft = Files.createTempDirectory(parent, "." + target.getFileName() + "-");
      Files.writeString(draft.resolve(marker), "Made by ovenproof; replaced as a whole.\n");
      return new SiteFolder(target, draft, marker);
    } catch (IOException e) {
      throw new OutsideException("could not begin writing beside " + target + ": " + e, e);
    }
  }

  private static void refuseForeign(Path target, String marker) {
    if (Files.isSymbolicLink(target)) {
      throw foreign(target, "a link");
    }
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!Files.isDirectory(target)) {
      throw foreign(target, "a file");
    }
    if (!Files.isRegularFile(target.resolve(marker)) && !isEmpty(target)) {
      throw foreign(target, "a folder that ovenproof did not make");
    }
  }

  private static boolean isEmpty(Path folder) {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.findAny().isEmpty();
    } catch (IOException e) {
      throw new OutsideException("could not look into " + folder + ": " + e, e);
    }
  }

  private static InputException foreign(Path target, String found) {
    return new InputException(
        Problem.error(
            Place.of(target.toString()),
            found,
            "no folder, an empty one, or one published before",
            "choose another place; nothing was written"));
  }

  /** Writes a text file; the path uses {@code /} and stays inside. */
  public void write(String path, String text) {
    write(path, text.getBytes(StandardCharsets.UTF_8));
  }

  /** Writes a file; the path uses {@code /} and stays inside. */
  public void write(String path, byte[] bytes) {
    Path file = inside(path);
    try {
      Files.createDirectories(file.getParent());
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new OutsideException("could not write " + path + ": " + e, e);
    }
  }

  /** Opens a file for writing. */
  public OutputStream open(String path) {
    Path file = inside(path);
    try {
      Files.createDirectories(file.getParent());
      return Files.newOutputStream(file);
    } catch (IOException e) {
      throw new OutsideException("could not write " + path + ": " + e, e);
    }
  }

  private Path inside(String path) {
    Path file = draft.resolve(path).normalize();
    if (!file.startsWith(draft) || file.equals(draft)) {
      throw new IllegalArgumentException("path must stay inside the folder, found " + path);
    }
    return file;
  }

  /** The folder that is being written. */
  public Path draft() {
    return draft;
  }

  /** Puts the folder into its place; what stood there goes only once the new one is there. */
  public Path publish() {
    refuseForeign(target, marker);
    try {
      Files.setPosixFilePermissions(
          draft, java.nio.file.attribute.PosixFilePermissions.fromString("rwxr-xr-x"));
    } catch (IOException | UnsupportedOperationException e) {
      // A file system without such permissions: readers can open the folder as it is.
    }
    try {
      if (!Files.exists(target)) {
        Files.move(draft, target);
      } else {
        replace();
      }
      done = true;
      return target;
    } catch (IOException e) {
      throw new OutsideException("could not move the new folder to " + target + ": " + e, e);
    }
  }

  private void replace() throws IOException {
    Path old = Files.createTempDirectory(target.getParent(), "." + target.getFileName() + "-old-");
    Path aside = old.resolve("site");
    Files.move(target, aside);
    try {
      Files.move(draft, target);
    } catch (IOException e) {
      Files.move(aside, target);
      Files.deleteIfExists(old);
      throw e;
    }
    delete(old);
  }

  @Override
  public void close() {
    if (!done) {
      try {
        delete(draft);
      } catch (IOException e) {
        throw new OutsideException("could not clear " + draft + ": " + e, e);
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(
              Path directory, @org.jspecify.annotations.Nullable IOException failure)
              throws IOException {
            if (failure != null) {
              throw failure;
            }
            Files.delete(directory);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
