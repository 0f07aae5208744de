package ovenproof.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.UUID;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * Files by their SHA-256, written once and never changed: {@code evidence/ab/cd…}.
 *
 * <p>A file is written beside its place, forced to the disk, moved into place in one step, and its
 * folder is forced as well; only then may a row name it. Safe for use by threads.
 */
public final class EvidenceStore {
  private final Path root;

  EvidenceStore(Path root) {
    this.root = root;
  }

  /** What was stored. */
  public record Stored(String sha256, long bytes) {}

  /**
   * Stores a stream; the same bytes are stored once.
   *
   * @param name what the person calls it, for messages
   * @param mostBytes more than this is refused and leaves nothing behind
   * @throws InputException if it is too large
   * @throws OutsideException if the disk fails
   */
  public Stored put(String name, InputStream in, long mostBytes) {
    Path part = null;
    try {
      Files.createDirectories(root.resolve("part"));
      part = root.resolve("part").resolve(UUID.randomUUID().toString());
      Stored stored = copy(name, in, part, mostBytes);
      keep(part, stored.sha256());
      return stored;
    } catch (IOException failure) {
      throw new OutsideException(
          "\""
              + name
              + "\" could not be stored ("
              + Database.rootMessage(failure)
              + "). Nothing was kept of it; check that the disk has room, then send it again.",
          failure);
    } finally {
      deleteQuietly(part);
    }
  }

  private static Stored copy(String name, InputStream in, Path part, long mostBytes)
      throws IOException {
    MessageDigest digest = sha256();
    long total = 0;
    try (FileChannel channel =
        FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      OutputStream out = Channels.newOutputStream(channel);
      byte[] buffer = new byte[1 << 16];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        total += n;
        if (total > mostBytes) {
          throw tooLarge(name, mostBytes);
        }
        digest.update(buffer, 0, n);
        out.write(buffer, 0, n);
      }
      channel.force(true);
    }
    return new Stored(HexFormat.of().formatHex(digest.digest()), total);
  }

  private void keep(Path part, String sha256) throws IOException {
    Path place = place(sha256);
    if (Files.exists(place)) {
      return;
    }
    Path shelf = root.resolve(sha256.substring(0, 2));
    Files.createDirectories(shelf);
    try {
      Files.move(part, place, StandardCopyOption.ATOMIC_MOVE);
    } catch (FileAlreadyExistsException sameBytesMeanwhile) {
      return;
    }
    force(shelf);
    force(root);
  }

  /** Forces a folder's own entries to the disk, where the system can do that. */
  private static void force(Path folder) throws IOException {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (java.nio.file.AccessDeniedException notOnThisSystem) {
      // Windows cannot open a folder; there the move itself is journalled.
    }
  }

  /**
   * Opens stored bytes.
   *
   * @throws OutsideException if they are not there, which only happens when someone removed them
   */
  public InputStream open(String sha256) {
    try {
      return Files.newInputStream(place(sha256));
    } catch (IOException failure) {
      throw new OutsideException(
          "the evidence "
              + sha256
              + " cannot be read from "
              + root
              + ". Restore the folder from a backup.",
          failure);
    }
  }

  public boolean has(String sha256) {
    return Files.exists(place(sha256));
  }

  /** Where bytes lie; for sending a file without copying it. */
  public Path place(String sha256) {
    if (!sha256.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException("sha256 is 64 hex digits, found " + sha256);
    }
    return root.resolve(sha256.substring(0, 2)).resolve(sha256.substring(2));
  }

  static String sha256(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }

  private static InputException tooLarge(String name, long mostBytes) {
    return new InputException(
        Problem.error(
            Place.of(name),
            "a file of more than " + mostBytes / 1_000_000 + " MB",
            "at most " + mostBytes / 1_000_000 + " MB",
            "split it, or export it smaller"));
  }

  private static void deleteQuietly(@org.jspecify.annotations.Nullable Path part) {
    try {
      if (part != null) {
        Files.deleteIfExists(part);
      }
    } catch (IOException leftBehind) {
      // A file in "part" is named by no row; the next start empties the folder.
    }
  }

  /** Removes what a crash left half-written. */
  void sweep() throws IOException {
    Path parts = root.resolve("part");
    if (Files.isDirectory(parts)) {
      try (var left = Files.list(parts)) {
        for (Path part : left.toList()) {
          Files.deleteIfExists(part);
        }
      }
    }
  }
}
