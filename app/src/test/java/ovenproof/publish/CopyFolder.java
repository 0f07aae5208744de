package ovenproof.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;

/** Keeps a folder that a test made, so that a person can look at it. */
final class CopyFolder {
  private CopyFolder() {}

  static void copy(Path from, Path to) throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(from)) {
      all = walk.toList();
    }
    for (Path path : all) {
      Path target = to.resolve(from.relativize(path).toString());
      if (Files.isDirectory(path)) {
        Files.createDirectories(target);
      } else {
        Files.copy(path, target, StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }
}
