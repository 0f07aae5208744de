package ovenproof.tracepage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import ovenproof.desk.Keys;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * Files that were dropped and are looked at before anyone decides to keep them. They lie beside the
 * evidence, not in it; what nobody keeps is gone a day later.
 */
public final class Incoming {
  private static final Set<String> LOGS =
      Set.of(
          "csv", "tsv", "tab", "lvm", "ndjson", "xml", "yaml", "yml", "txt", "log", "dat", "xlsx",
          "xls", "json", "jsonl", "asc", "prn");
  private static final Duration KEPT = Duration.ofDays(1);
  private static final String PREFIX = "drop-";

  private final Path root;

  public Incoming(Path deskFolder) {
    this.root = deskFolder.resolve("incoming");
  }

  /** A dropped file. */
  public record Dropped(Path place, String name, long bytes) {
    public boolean picture() {
      return ovenproof.evidence.photo.PhotoFile.isNamedLikeOne(name);
    }
  }

  public static boolean isLog(String path) {
    return LOGS.contains(ending(path));
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  /** Takes one more file into a drop. */
  public void take(String drop, String name, InputStream in) {
    Path folder = folder(drop);
    try {
      Files.createDirectories(folder);
      String number = String.format(Locale.ROOT, "%04d-", files(drop).size());
      Files.copy(in, folder.resolve(number + name));
    } catch (IOException failure) {
      throw new OutsideException(
          "\"" + name + "\" could not be looked at: " + failure.getMessage(), failure);
    }
  }

  /** In the order in which they came. */
  public List<Dropped> files(String drop) {
    Path folder = folder(drop);
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.sorted(Comparator.comparing(p -> String.valueOf(p.getFileName())))
          .map(Incoming::dropped)
          .toList();
    } catch (IOException failure) {
      throw new OutsideException("cannot list " + folder, failure);
    }
  }

  private static Dropped dropped(Path place) {
    String name = String.valueOf(place.getFileName()).substring(5);
    return new Dropped(place, name, place.toFile().length());
  }

  byte[] bytes(Dropped file) {
    try {
      return Files.readAllBytes(file.place());
    } catch (IOException failure) {
      throw new OutsideException("cannot read " + file.name(), failure);
    }
  }

  /** Forgets a drop. */
  public void forget(String drop) {
    for (Dropped file : files(drop)) {
      delete(file.place());
    }
    delete(folder(drop));
  }

  /** Removes drops that nobody came back to. */
  public void sweep(Instant now) {
    if (!Files.isDirectory(root)) {
      return;
    }
    try (Stream<Path> all = Files.list(root)) {
      all.filter(p -> String.valueOf(p.getFileName()).startsWith(PREFIX))
          .filter(p -> p.toFile().lastModified() < now.minus(KEPT).toEpochMilli())
          .map(p -> String.valueOf(p.getFileName()).substring(PREFIX.length()))
          .forEach(this::forget);
    } catch (IOException nextTime) {
      // What cannot be listed now is swept with the next drop.
    }
  }

  private Path folder(String drop) {
    if (!Keys.isKey(drop)) {
      throw new InputException(
          Problem.error(Place.of("drop"), "no such drop", "one of today", "drop the files again"));
    }
    return root.resolve(PREFIX + drop);
  }

  private static void delete(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (IOException leftBehind) {
      // The sweep of a later day takes it.
    }
  }
}
