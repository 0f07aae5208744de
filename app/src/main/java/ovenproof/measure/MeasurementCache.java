package ovenproof.measure;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
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

  /** Among a person's caches. */
  static MeasurementCache ofUser() {
    return inFolder(CacheFolder.ofUser("measured"));
  }

  /** See {@link #inFolder}. */
  final class FolderCache implements MeasurementCache {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private final CacheFolder folder;

    private FolderCache(Path folder) {
      this.folder = new CacheFolder(folder, ".json");
    }

    @Override
    public List<Measurement> get(MeasurementKey key, Supplier<List<Measurement>> compute) {
      return folder
          .read(key)
          .flatMap(FolderCache::parsed)
          .orElseGet(
              () -> {
                List<Measurement> made = List.copyOf(compute.get());
                String json = MAPPER.writeValueAsString(MeasurementJson.write(made));
                folder.write(key, json.getBytes(StandardCharsets.UTF_8));
                return made;
              });
    }

    private static Optional<List<Measurement>> parsed(byte[] json) {
      try {
        List<Measurement> found = new ArrayList<>();
        for (JsonNode node : MAPPER.readTree(json)) {
          found.add(MeasurementJson.read(node));
        }
        return Optional.of(List.copyOf(found));
      } catch (JacksonException | IllegalArgumentException unreadable) {
        return Optional.empty();
      }
    }
  }
}
