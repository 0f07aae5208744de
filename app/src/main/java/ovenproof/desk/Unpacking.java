package ovenproof.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Unpacks a zip file that came from outside: nothing leaves the folder, nothing grows for ever. */
final class Unpacking {
  static final int MOST_FILES = 50_000;
  static final long MOST_BYTES = 8_000_000_000L;

  private Unpacking() {}

  /**
   * Unpacks and finds the campaign in it: the folder that holds {@code campaign.yaml}, at the top
   * or one level down.
   */
  static Path campaignFolder(Path zip, Path target) {
    try (InputStream in = Files.newInputStream(zip)) {
      unpack(zip.getFileName().toString(), in, target);
    } catch (java.util.zip.ZipException broken) {
      throw refused(
          zip.getFileName().toString(), "a damaged zip file", "a zip file", "send it again");
    } catch (IOException failure) {
      throw new OutsideException("cannot unpack " + zip.getFileName(), failure);
    }
    return foundIn(zip, target);
  }

  private static Path foundIn(Path zip, Path target) {
    if (Files.exists(target.resolve("campaign.yaml"))) {
      return target;
    }
    try (Stream<Path> inside = Files.isDirectory(target) ? Files.list(target) : Stream.empty()) {
      List<Path> found =
          inside.filter(folder -> Files.exists(folder.resolve("campaign.yaml"))).toList();
      if (found.size() == 1) {
        return found.get(0);
      }
      throw refused(
          zip.getFileName().toString(),
          found.isEmpty() ? "no campaign.yaml" : found.size() + " campaigns",
          "one campaign folder in the zip file",
          "pack the folder that holds campaign.yaml");
    } catch (IOException failure) {
      throw new OutsideException("cannot read what was unpacked", failure);
    }
  }

  private static void unpack(String name, InputStream in, Path target) throws IOException {
    Files.createDirectories(target);
    long left = MOST_BYTES;
    int files = 0;
    try (ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        Path place = inside(name, entry.getName(), target);
        if (++files > MOST_FILES) {
          throw refused(name, "more than " + MOST_FILES + " files", "fewer", "split the campaign");
        }
        if (entry.isDirectory()) {
          Files.createDirectories(place);
        } else {
          Files.createDirectories(java.util.Objects.requireNonNull(place.getParent()));
          left = copy(name, zip, place, left);
        }
      }
    }
  }

  private static Path inside(String zip, String name, Path target) {
    try {
      Path place = target.resolve(name).normalize();
      if (place.startsWith(target) && !name.startsWith("/") && !name.contains("\\")) {
        return place;
      }
    } catch (InvalidPathException invalid) {
      // Falls through to the refusal.
    }
    throw refused(
        zip,
        "\"" + name + "\", which leaves the folder",
        "files inside the folder only",
        "pack the folder again with another program");
  }

  private static long copy(String name, ZipInputStream zip, Path place, long left)
      throws IOException {
    long remaining = left;
    try (OutputStream out = Files.newOutputStream(place)) {
      byte[] buffer = new byte[1 << 16];
      for (int n = zip.read(buffer); n >= 0; n = zip.read(buffer)) {
        remaining -= n;
        if (remaining < 0) {
          throw refused(
              name,
              "more than " + MOST_BYTES / 1_000_000_000 + " GB when unpacked",
              "less",
              "split the campaign");
        }
        out.write(buffer, 0, n);
      }
    }
    return remaining;
  }

  private static InputException refused(String zip, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(zip), found, expected, remedy));
  }

  /** Removes a file or a folder with everything in it; quietly does nothing if it is gone. */
  static void remove(Path path) {
    if (!Files.exists(path)) {
      return;
    }
    try (Stream<Path> all = Files.walk(path)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    } catch (IOException failure) {
      throw new OutsideException("cannot remove " + path, failure);
    }
  }
}
