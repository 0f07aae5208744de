package ovenproof.tracepage;

import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.tracepage.Incoming.Dropped;

/**
 * What dropped photographs show of themselves: when they were taken, and labels in the frame.
 * Looked at in the background on two cores, because three hundred of them take minutes; each is
 * looked at once. Safe for threads.
 */
final class PhotoLooks {
  private static final int KEPT = 1200;
  private static final int CORES = 2;

  private final ExecutorService workers =
      Executors.newFixedThreadPool(
          CORES,
          task -> {
            Thread thread = new Thread(task, "photo-looks");
            thread.setDaemon(true);
            return thread;
          });
  private final Map<String, PhotoLook> seen =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, PhotoLook> eldest) {
          return size() > KEPT;
        }
      };
  private final Map<String, Future<?>> waiting = new HashMap<>();

  /** What was seen of a photograph; {@code trouble} says why it cannot be read, else empty. */
  record PhotoLook(String sha256, @Nullable Instant taken, List<String> labels, String trouble) {}

  /** Begins looking at those that nobody looked at yet. */
  synchronized void begin(List<Dropped> photos, Function<Dropped, PhotoLook> look) {
    for (Dropped photo : photos) {
      String key = key(photo);
      if (!seen.containsKey(key) && !waiting.containsKey(key)) {
        waiting.put(key, workers.submit(() -> put(key, photo, look)));
      }
    }
  }

  private void put(String key, Dropped photo, Function<Dropped, PhotoLook> look) {
    PhotoLook found;
    try {
      found = look.apply(photo);
    } catch (InputException | OutsideException unreadable) {
      // Forgotten meanwhile, or a disk that fails: the row says it if it is still asked for.
      found = new PhotoLook(photo.name(), null, List.of(), String.valueOf(unreadable.getMessage()));
    }
    synchronized (this) {
      seen.put(key, found);
      waiting.remove(key);
    }
  }

  /** How many of these were looked at. */
  synchronized int done(List<Dropped> photos) {
    return (int) photos.stream().filter(p -> seen.containsKey(key(p))).count();
  }

  /** What was seen, when it was looked at. */
  synchronized Optional<PhotoLook> find(Dropped photo) {
    return Optional.ofNullable(seen.get(key(photo)));
  }

  /** Looks at once, unless it was looked at. */
  PhotoLook now(Dropped photo, Function<Dropped, PhotoLook> look) {
    Optional<PhotoLook> known = find(photo);
    if (known.isEmpty()) {
      put(key(photo), photo, look);
    }
    return find(photo).orElseGet(() -> look.apply(photo));
  }

  /** Stops what was not begun yet. */
  synchronized void cancel(List<Dropped> photos) {
    for (Dropped photo : photos) {
      Future<?> task = waiting.remove(key(photo));
      if (task != null) {
        task.cancel(false);
      }
    }
  }

  private static String key(Dropped photo) {
    return photo.place() + ":" + photo.bytes();
  }
}
