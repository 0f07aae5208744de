package ovenproof.evidence.photo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import ovenproof.input.OutsideException;

/**
 * HEIC by way of the program {@code heif-convert}, when the machine has it. There is no decoder for
 * it that may be shipped here.
 */
final class HeifConvert {

  private static final long SECONDS = 60;

  private HeifConvert() {}

  /**
   * The same picture as JPEG of high quality.
   *
   * @throws ovenproof.input.InputException if the program is missing or refuses the file
   * @throws OutsideException if it cannot be run
   */
  static byte[] toJpeg(byte[] heic, String file) {
    if (!isPresent()) {
      throw PhotoFile.problem(
          file,
          "a HEIC picture, and this machine has no heif-convert to read it",
          "JPEG, PNG or WebP",
          "export it as JPEG, set the phone to its most compatible format, or install"
              + " heif-convert");
    }
    Path folder = null;
    try {
      folder = Files.createTempDirectory("ovenproof-heic");
      Path in = folder.resolve("in.heic");
      Path out = folder.resolve("out.jpg");
      Files.write(in, heic);
      Process process =
          new ProcessBuilder("heif-convert", "-q", "97", in.toString(), out.toString())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw PhotoFile.problem(
            file, "a HEIC picture that takes too long to read", "JPEG", "export it as JPEG");
      }
      if (process.exitValue() != 0 || !Files.exists(out)) {
        throw PhotoFile.problem(
            file, "a HEIC picture that heif-convert refuses", "JPEG", "export it as JPEG");
      }
      return Files.readAllBytes(out);
    } catch (IOException e) {
      throw new OutsideException("Reading " + file + " through heif-convert failed.", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new OutsideException("Reading " + file + " was interrupted.", e);
    } finally {
      delete(folder);
    }
  }

  private static boolean isPresent() {
    String path = System.getenv("PATH");
    return path != null
        && Stream.of(path.split(java.io.File.pathSeparator))
            .filter(p -> !p.isBlank())
            .anyMatch(p -> Files.isExecutable(Path.of(p, "heif-convert")));
  }

  private static void delete(@org.jspecify.annotations.Nullable Path folder) {
    if (folder == null) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      all.sorted(Comparator.reverseOrder()).forEach(p -> p.toFile().delete());
    } catch (IOException ignored) {
      // A leftover in the temporary folder harms nobody.
    }
  }
}
