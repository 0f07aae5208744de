package ovenproof.record;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Problems;

/**
 * A bag as one ZIP file. Names are looked at before anything is unpacked; bytes are counted while
 * unpacking, whatever the archive claims.
 */
final class BagZip {
  private static final long MOST_BYTES = 64L << 30;
  private static final long MOST_RATIO = 200;
  private static final long RATIO_FROM = 64L << 20;

  private BagZip() {}

  /** Packs a bag's folder under the folder's own name. */
  static void pack(Path bag, String name, Path zip) {
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(zip));
        ZipOutputStream packed = new ZipOutputStream(out);
        Stream<Path> walk = Files.walk(bag)) {
      List<Path> files = walk.filter(Files::isRegularFile).sorted().toList();
      for (Path file : files) {
        ZipEntry entry =
            new ZipEntry(name + "/" + bag.relativize(file).toString().replace('\\', '/'));
        entry.setTime(0);
        packed.putNextEntry(entry);
        Files.copy(file, packed);
        packed.closeEntry();
      }
    } catch (IOException e) {
      throw new OutsideException("could not write " + zip + ": " + e, e);
    }
  }

  /**
   * Unpacks a ZIP file into an empty folder and returns the bag's folder in it.
   *
   * @throws InputException if it is no ZIP, is cut off, has unsafe or double names, or grows beyond
   *     what is sensible
   */
  static Path unpack(Path zip, Path into) {
    try (ZipFile file = new ZipFile(zip.toFile())) {
      names(file);
      long limit = limit(Files.size(zip));
      long written = 0;
      for (ZipEntry entry : file.stream().toList()) {
        if (!entry.isDirectory()) {
          written = unpack(file, entry, into, written, limit);
        }
      }
      return root(into);
    } catch (ZipException | EOFException e) {
      throw refused(zip, "a ZIP that is damaged or cut off (" + e.getMessage() + ")");
    } catch (IOException e) {
      throw new OutsideException("could not unpack " + zip + ": " + e, e);
    }
  }

  private static void names(ZipFile file) {
    Problems problems = new Problems();
    Set<String> seen = new HashSet<>();
    int number = 0;
    for (ZipEntry entry : file.stream().toList()) {
      String name = entry.isDirectory() ? entry.getName().replaceAll("/$", "") : entry.getName();
      if (!BagPaths.isSafe(name)) {
        problems.error(Place.of(shown(name)), "an unsafe name", "a path inside the bag", "refused");
      } else if (!entry.isDirectory() && !seen.add(name.toLowerCase(Locale.ROOT))) {
        problems.error(Place.of(name), "a second file of that name", "each name once", "refused");
      }
      if (++number > Bag.MOST_FILES) {
        problems.error(
            Place.of(file.getName()), "more than " + Bag.MOST_FILES + " files", "fewer", "");
        break;
      }
    }
    problems.throwIfErrors();
  }

  private static String shown(String name) {
    String plain = name.replaceAll("\\p{Cntrl}", "?");
    return plain.length() > 120 ? plain.substring(0, 120) + "…" : plain;
  }

  private static long limit(long packed) {
    return Math.min(MOST_BYTES, Math.max(RATIO_FROM, packed * MOST_RATIO));
  }

  private static long unpack(ZipFile zip, ZipEntry entry, Path into, long before, long limit)
      throws IOException {
    Path target = into.resolve(entry.getName()).normalize();
    if (!target.startsWith(into)) {
      throw refused(Path.of(zip.getName()), "a name that leaves the folder");
    }
    Files.createDirectories(target.getParent());
    long written = before;
    try (InputStream in = new BufferedInputStream(zip.getInputStream(entry));
        OutputStream out = Files.newOutputStream(target)) {
      byte[] block = new byte[1 << 16];
      for (int n = in.read(block); n >= 0; n = in.read(block)) {
        written += n;
        if (written > limit) {
          throw refused(Path.of(zip.getName()), "contents of more than " + limit + " bytes");
        }
        out.write(block, 0, n);
      }
    }
    return written;
  }

  /** The folder with bagit.txt: the top, or the one folder in it. */
  private static Path root(Path into) throws IOException {
    if (Files.exists(into.resolve("bagit.txt"))) {
      return into;
    }
    try (Stream<Path> inside = Files.list(into)) {
      List<Path> folders = inside.toList();
      return folders.size() == 1 && Files.isDirectory(folders.get(0)) ? folders.get(0) : into;
    }
  }

  private static InputException refused(Path zip, String found) {
    return new InputException(
        Problem.error(
            Place.of(zip.toString()), found, "a bag as ovenproof export makes it", "refused"));
  }
}
