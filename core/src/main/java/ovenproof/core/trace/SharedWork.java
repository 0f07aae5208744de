package ovenproof.core.trace;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/** Results that several measures of one curve need, each computed at the first asking. */
public final class SharedWork {
  private final Map<Object, Object> results = new ConcurrentHashMap<>();

  /**
   * The result for a key, computed once.
   *
   * @param key everything the result depends on besides the curve, and its type; compared by equals
   * @param work must not ask for the same key again
   */
  public <K extends SharedWork.Key<T>, T> T once(K key, Function<K, T> work) {
    @SuppressWarnings("unchecked") // a key gives its own type only
    T result = (T) results.computeIfAbsent(key, k -> work.apply(key));
    return result;
  }

  /** Names a result of a type. */
  public interface Key<T> {}
}
