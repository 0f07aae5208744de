package ovenproof.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;

/**
 * Small files by key, derived from evidence and never evidence themselves: the folder may be
 * deleted at any time. What cannot be read is as if it were not there, and what cannot be written
 * only costs time.
 */
public final class CacheFolder {
  private final Path folder;
  private final String ending;

  /**
   * @param folder made when something is first written
   * @param ending of the files' names, such as {@code .json}
   */
  public CacheFolder(Path folder, String ending) {
    this.folder = folder;
    this.ending = ending;
  }

  /** A folder among a person's caches, where the habit of the system puts them. */
  public static Path ofUser(String name) {
    String cacheHome = System.getenv("XDG_CACHE_HOME");
    Path base =
        cacheHome != null && !cacheHome.isBlank()
            ? Path.of(cacheHome)
            : Path.of(System.getProperty("user.home", "."), ".cache");
    return base.resolve("ovenproof").resolve(name);
  }

  private Path file(MeasurementKey key) {
    return folder.resolve(key.hex().substring(0, 2)).resolve(key.hex() + ending);
  }

  /** What lies under the key, or empty. */
  public Optional<byte[]> read(MeasurementKey key) {
    Path file = file(key);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    try {
      return Optional.of(Files.readAllBytes(file));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  /** Puts it there whole, or not at all. */
  public void write(MeasurementKey key, byte[] bytes) {
    Path file = file(key);
    try {
      Files.createDirectories(file.getParent());
      Path part = Files.createTempFile(file.getParent(), "part", ending);
      Files.write(part, bytes);
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException full) {
      // Full or not writable: the result stands without it.
      return;
    }
  }
}
