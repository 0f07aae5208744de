package ovenproof.desk;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import ovenproof.input.InputException;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;

/**
 * Methods by their text, the latest asked for. A page asks for the same starters and revisions
 * again and again, and reading one takes longer than the page may; a method never changes.
 */
final class KnownMethods {
  private static final int KEPT = 32;

  private final MethodReader reader = new MethodReader(MeasureRegistry.all().measures());
  private final Map<String, Method> byText =
      Collections.synchronizedMap(
          new LinkedHashMap<>(KEPT, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Method> eldest) {
              return size() > KEPT;
            }
          });

  /**
   * @throws InputException with every problem of the text; such a text is not kept
   */
  Method of(String text) {
    Method known = byText.get(text);
    if (known != null) {
      return known;
    }
    Problems problems = new Problems();
    Optional<Method> method = reader.read("method.yaml", text, problems);
    problems.throwIfErrors();
    Method read = method.orElseThrow(() -> new InputException(problems.all()));
    byText.put(text, read);
    return read;
  }
}
