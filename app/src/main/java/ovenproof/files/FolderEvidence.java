package ovenproof.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.LineLengths;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.TextFile;

/**
 * The files of a campaign folder. A path that leaves the folder, by {@code ..}, from the root, or
 * through a symbolic link, is refused before anything is read.
 */
public final class FolderEvidence implements EvidenceSource {
  private final Path root;
  private final Map<String, Fingerprint> fingerprints = new ConcurrentHashMap<>();

  /** What one reading of a file tells. */
  record Fingerprint(String sha256, long bytes, long longestLine, int longestLineNumber) {}

  /**
   * @param root an existing folder
   * @throws OutsideException if it cannot be read
   */
  public FolderEvidence(Path root) {
    try {
      this.root = root.toRealPath();
    } catch (IOException failure) {
      throw new OutsideException("could not open the folder " + root, failure);
    }
  }

  /** The folder itself, links resolved. */
  public Path root() {
    return root;
  }

  /** Why a path may not be used, or empty when it may; says nothing about whether it exists. */
  Optional<Refusal> refusal(String path) {
    if (path.contains("\\")) {
      return Optional.of(
          new Refusal("a path with forward slashes", "write " + path.replace('\\', '/')));
    }
    if (path.startsWith("/") || path.matches("[A-Za-z]:.*") || path.startsWith("~")) {
      return Optional.of(
          new Refusal("a path inside the campaign folder", "copy the file into the folder"));
    }
    if (java.util.List.of(path.split("/", -1)).contains("..")) {
      return Optional.of(
          new Refusal("a path that does not leave the folder", "copy the file into the folder"));
    }
    try {
      return linkLeaves(root.resolve(path))
          ? Optional.of(
              new Refusal(
                  "a file of the folder, not a link that leads out of it",
                  "copy the file itself into the folder"))
          : Optional.empty();
    } catch (InvalidPathException invalid) {
      return Optional.of(new Refusal("the name of a file", ""));
    }
  }

  /** What should stand there instead, and what to do. */
  record Refusal(String expected, String remedy) {}

  private boolean linkLeaves(Path file) {
    try {
      return !file.toRealPath().startsWith(root);
    } catch (NoSuchFileException missing) {
      return false;
    } catch (IOException failure) {
      return true;
    }
  }

  private Path resolve(String path) {
    Optional<Refusal> refusal = refusal(path);
    if (refusal.isPresent()) {
      throw new InputException(
          Problem.error(
              Place.of(path),
              "\"" + path + "\"",
              refusal.get().expected(),
              refusal.get().remedy()));
    }
    return root.resolve(path);
  }

  private Optional<Path> existing(String path) {
    if (refusal(path).isPresent()) {
      return Optional.empty();
    }
    Path file = root.resolve(path);
    return Files.isRegularFile(file) ? Optional.of(file) : Optional.empty();
  }

  @Override
  public InputStream open(String path) {
    Path file = resolve(path);
    if (!Files.isRegularFile(file)) {
      throw new InputException(missing(path));
    }
    try {
      return Files.newInputStream(file);
    } catch (NoSuchFileException gone) {
      throw new InputException(missing(path));
    } catch (IOException failure) {
      throw new OutsideException(
          "could not open " + path + " (" + failure.getMessage() + ")", failure);
    }
  }

  private static Problem missing(String path) {
    return Problem.error(
        Place.of(path), "no such file", "a file of the campaign folder", "copy it into the folder");
  }

  @Override
  public Optional<String> fingerprint(String path) {
    return scan(path).map(Fingerprint::sha256);
  }

  /** Reads the file once, in constant memory, and remembers what was seen. */
  Optional<Fingerprint> scan(String path) {
    return existing(path).map(file -> fingerprints.computeIfAbsent(path, p -> read(p, file)));
  }

  private static Fingerprint read(String path, Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      Sha256 digest = new Sha256();
      LineLengths lines = new LineLengths();
      byte[] block = new byte[1 << 16];
      long bytes = 0;
      for (int read = in.read(block); read >= 0; read = in.read(block)) {
        digest.add(block, read);
        lines.add(block, read);
        bytes += read;
      }
      return new Fingerprint(digest.hex(), bytes, lines.longest(), lines.longestLine());
    } catch (IOException failure) {
      throw new OutsideException(
          "could not read " + path + " (" + failure.getMessage() + ")", failure);
    }
  }

  @Override
  public Optional<Long> size(String path) {
    return existing(path).map(file -> sizeOf(path, file));
  }

  private static long sizeOf(String path, Path file) {
    try {
      return Files.size(file);
    } catch (IOException failure) {
      throw new OutsideException(
          "could not read " + path + " (" + failure.getMessage() + ")", failure);
    }
  }

  @Override
  public byte[] bytes(String path, long limit) {
    try (InputStream in = open(path)) {
      byte[] bytes = in.readNBytes((int) Math.min(limit + 1, Integer.MAX_VALUE - 8));
      if (bytes.length > limit) {
        throw new InputException(
            Problem.error(
                Place.of(path),
                "more than " + limit + " bytes",
                "a file of at most " + limit + " bytes",
                "is this the file you meant?"));
      }
      return bytes;
    } catch (IOException failure) {
      throw new OutsideException(
          "could not read " + path + " (" + failure.getMessage() + ")", failure);
    }
  }

  /** Whether a line of the file is longer than any program that reads it can want. */
  static boolean hasEndlessLine(Fingerprint fingerprint) {
    return fingerprint.longestLine() > TextFile.LONGEST_LINE;
  }
}
