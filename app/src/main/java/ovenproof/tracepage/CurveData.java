package ovenproof.tracepage;

import java.nio.charset.StandardCharsets;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Trace;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Lines for a picture that can be zoomed in the browser: minutes and values, as JSON. */
final class CurveData {

  /** A browser draws a few thousand points at once; peaks are kept when there are more. */
  private static final int MOST_POINTS = 3000;

  private final ObjectNode root = JsonNodeFactory.instance.objectNode();
  private final ArrayNode lines = root.putArray("lines");

  CurveData(String horizontal) {
    root.put("horizontal", horizontal);
  }

  void add(String name, Trace trace, Unit unit) {
    ObjectNode line = lines.addObject();
    line.put("name", name);
    line.put("unit", unit.symbol());
    ArrayNode x = line.putArray("x");
    ArrayNode y = line.putArray("y");
    int n = trace.size();
    int slice = Math.max(1, (int) Math.ceil(2.0 * n / MOST_POINTS));
    for (int from = 0; from < n; from += slice) {
      addSlice(trace, from, Math.min(n, from + slice), x, y);
    }
  }

  private static void addSlice(Trace trace, int from, int to, ArrayNode x, ArrayNode y) {
    double[] v = trace.values();
    int low = from;
    int high = from;
    for (int i = from; i < to; i++) {
      low = v[i] < v[low] ? i : low;
      high = v[i] > v[high] ? i : high;
    }
    put(trace, Math.min(low, high), x, y);
    if (low != high) {
      put(trace, Math.max(low, high), x, y);
    }
  }

  private static void put(Trace trace, int i, ArrayNode x, ArrayNode y) {
    double value = trace.values()[i];
    if (Double.isFinite(value)) {
      x.add(Math.rint(trace.seconds()[i] / 60 * 1e4) / 1e4);
      y.add(Math.rint(value * 1e3) / 1e3);
    }
  }

  byte[] json() {
    return root.toString().getBytes(StandardCharsets.UTF_8);
  }
}
