package ovenproof.web;

import java.time.Clock;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import ovenproof.desk.Keys;

/**
 * The key under which what a form sends is saved: the form's own key with a print of what was
 * typed. The same form sent twice changes things once; a form that is filled anew after going back
 * is another one.
 */
public final class FormKey {
  private static final Set<String> NOT_TYPED =
      Set.of("key", "_csrf", "deviceTime", "clockOffset", "clockUncertainty");
  private static final int LONGEST = 60;

  private FormKey() {}

  public static String of(Map<String, String> typed, Clock clock) {
    String key = typed.getOrDefault("key", "");
    Map<String, String> said = new TreeMap<>(typed);
    said.keySet().removeAll(NOT_TYPED);
    return Keys.isKey(key) && key.length() <= LONGEST
        ? key + "-" + Integer.toHexString(said.hashCode())
        : Keys.next(clock);
  }
}
