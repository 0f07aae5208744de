package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.input.OutsideException;

/** A folder that is gone after use. */
final class TemporaryFolder implements AutoCloseable {
  private final Path folder;

  private TemporaryFolder(Path folder) {
    this.folder = folder;
  }

  TemporaryFolder() {
    this(make(null));
  }

  /** On the same disk as a target, so that it can be renamed there; hidden until then. */
  static TemporaryFolder in(Path parent) {
    return new TemporaryFolder(make(parent));
  }

  private static Path make(@Nullable Path parent) {
    try {
      if (parent == null) {
        return Files.createTempDirectory("ovenproof-bag-").toRealPath();
      }
      Files.createDirectories(parent);
      return Files.createTempDirectory(parent, ".ovenproof-bag-");
    } catch (IOException e) {
      throw new OutsideException("could not make a temporary folder: " + e, e);
    }
  }

  Path path() {
    return folder;
  }

  @Override
  public void close() {
    try (Stream<Path> walk = Files.walk(folder)) {
      List<Path> deepestFirst = walk.sorted(Comparator.reverseOrder()).toList();
      for (Path path : deepestFirst) {
        Files.deleteIfExists(path);
      }
    } catch (IOException e) {
      throw new OutsideException("could not clear " + folder + ": " + e, e);
    }
  }
}
