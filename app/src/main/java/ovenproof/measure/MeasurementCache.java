package ovenproof.measure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import ovenproof.contract.MeasurementJson;
import ovenproof.core.measure.Measurement;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Remembers measurements by key. A key names everything they depend on ({@link MeasurementKey}), so
 * nothing ever has to be thrown away for being wrong; losing the cache costs time only.
 */
public interface MeasurementCache {

  /** The remembered measurements, or those that {@code compute} makes, then remembered. */
  List<Measurement> get(MeasurementKey key, Supplier<List<Measurement>> compute);

  /** Computes every time. */
  static MeasurementCache none() {
    return (key, compute) -> compute.get();
  }

  /** Remembers as long as the program runs. */
  static MeasurementCache inMemory() {
    Map<MeasurementKey, List<Measurement>> known = new ConcurrentHashMap<>();
    return (key, compute) -> {
      List<Measurement> found = known.get(key);
      if (found == null) {
        found = List.copyOf(compute.get());
        known.put(key, found);
      }
      return found;
    };
  }

  /**
   * Remembers in a folder, one small file per key. A file that cannot be read or written is as if
   * it were not there: a cache never makes a verdict fail.
   */
  static MeasurementCache inFolder(Path folder) {
    return new FolderCache(folder);
  }

  /** Where a person's caches lie by the habit of the system. */
  static MeasurementCache ofUser() {
    String cacheHome = System.getenv("XDG_CACHE_HOME");
    Path base =
        cacheHome != null && !cacheHome.isBlank()
            ? Path.of(cacheHome)
            : Path.of(System.getProperty("user.home", "."), ".cache");
    return inFolder(base.resolve("ovenproof").resolve("measured"));
  }

  /** See {@link #inFolder}. */
  final class FolderCache implements MeasurementCache {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private final Path folder;

    private FolderCache(Path folder) {
      this.folder = folder;
    }

    @Override
    public List<Measurement> get(MeasurementKey key, Supplier<List<Measurement>> compute) {
      Path file = folder.resolve(key.hex().substring(0, 2)).resolve(key.hex() + ".json");
      return read(file)
          .orElseGet(
              () -> {
                List<Measurement> made = List.copyOf(compute.get());
                write(file, made);
                return made;
              });
    }

    private static Optional<List<Measurement>> read(Path file) {
      if (!Files.isRegularFile(file)) {
        return Optional.empty();
      }
      try {
        List<Measurement> found = new ArrayList<>();
        for (JsonNode node : MAPPER.readTree(Files.readAllBytes(file))) {
          found.add(MeasurementJson.read(node));
        }
        return Optional.of(List.copyOf(found));
      } catch (IOException | JacksonException | IllegalArgumentException unreadable) {
        return Optional.empty();
      }
    }

    private static void write(Path file, List<Measurement> measurements) {
      try {
        Files.createDirectories(file.getParent());
        Path part = Files.createTempFile(file.getParent(), "part", ".json");
        Files.write(
            part,
            MAPPER
                .writeValueAsString(MeasurementJson.write(measurements))
                .getBytes(StandardCharsets.UTF_8));
        Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
      } catch (IOException full) {
        // A cache that cannot be written only costs time; the result stands without it.
        return;
      }
    }
  }
}
