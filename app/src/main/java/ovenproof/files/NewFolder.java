package ovenproof.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * A folder that appears whole or not at all: written beside its place under another name, then
 * renamed. What fails half way leaves nothing behind.
 *
 * <p>Files are not forced to the disk one by one: a folder is a copy of a campaign that is kept
 * elsewhere, and a copy that a power cut spoilt is found by its fingerprints and made again.
 */
final class NewFolder {
  private final Path written;

  /** What fills the folder. */
  interface Content {
    void write(NewFolder folder) throws IOException;
  }

  private NewFolder(Path written) {
    this.written = written;
  }

  /**
   * @throws InputException if something else is there already
   * @throws OutsideException if it cannot be written
   */
  static void create(Path target, Content content) {
    Path place = target.toAbsolutePath().normalize();
    requireEmpty(place, target);
    try {
      Path parent = place.getParent();
      if (parent == null) {
        throw occupied(target, "the root of the file system");
      }
      Files.createDirectories(parent);
      Path beside = Files.createTempDirectory(parent, "." + place.getFileName() + ".writing-");
      try {
        content.write(new NewFolder(beside));
        readableByOthers(beside);
        Files.deleteIfExists(place);
        Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE);
      } finally {
        delete(beside);
      }
    } catch (DirectoryNotEmptyException meanwhile) {
      throw occupied(target, "files");
    } catch (IOException failure) {
      throw new OutsideException(
          "could not write the folder "
              + target
              + " ("
              + failure.getMessage()
              + "); nothing was left behind. Is there space, and may you write there?",
          failure);
    }
  }

  private static void requireEmpty(Path place, Path target) {
    try (Stream<Path> files = Files.list(place)) {
      if (files.findAny().isPresent()) {
        throw occupied(target, "a folder with files in it");
      }
    } catch (NotDirectoryException file) {
      throw occupied(target, "a file");
    } catch (IOException notThere) {
      // Then it is made.
    }
  }

  private static InputException occupied(Path target, String found) {
    return new InputException(
        Problem.error(
            Place.of(target.toString()),
            found,
            "a new or empty folder",
            "choose another name; nothing was written"));
  }

  /** Temporary folders are private; a campaign has the usual rights. */
  private static void readableByOthers(Path folder) throws IOException {
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(
          folder, java.nio.file.attribute.PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  void write(String path, String text) throws IOException {
    Path file = place(path);
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(CampaignWriter.bytes(text));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    }
  }

  /** Copies a file in constant memory and returns the SHA-256 of what was copied. */
  String copy(String path, InputStream in) throws IOException {
    Sha256 digest = new Sha256();
    byte[] block = new byte[1 << 16];
    try (FileChannel channel =
        FileChannel.open(place(path), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      for (int read = in.read(block); read >= 0; read = in.read(block)) {
        digest.add(block, read);
        ByteBuffer bytes = ByteBuffer.wrap(block, 0, read);
        while (bytes.hasRemaining()) {
          channel.write(bytes);
        }
      }
    }
    return digest.hex();
  }

  private Path place(String path) throws IOException {
    Path file = CampaignWriter.inside(written, path);
    Path parent = file.getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    return file;
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> deepestFirst;
    try (Stream<Path> all = Files.walk(folder)) {
      deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
    } catch (UncheckedIOException failure) {
      throw failure.getCause();
    }
    for (Path path : deepestFirst) {
      Files.delete(path);
    }
  }
}
