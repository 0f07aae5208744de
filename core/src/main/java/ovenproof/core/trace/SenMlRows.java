package ovenproof.core.trace;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Rows from Sensor Measurement Lists (RFC 8428): records with short names, whose base name, time,
 * unit and value hold until the next base.
 */
final class SenMlRows {

  /** Labels of RFC 8428, section 4. */
  private static final Set<String> LABELS =
      Set.of("bn", "bt", "bu", "bv", "bs", "bver", "n", "u", "v", "vs", "vb", "vd", "s", "t", "ut");

  /** Times below 2^28 count from now (section 4.5.3): from the start of the record, here. */
  private String baseName = "";

  private String baseUnit = "";
  private double baseTime;
  private double baseValue;

  private final Map<String, Map<String, String>> rows = new LinkedHashMap<>();

  private SenMlRows() {}

  /** Whether every record has labels of this kind and nothing else. */
  static boolean is(List<?> list) {
    return list.size() >= 2
        && list.stream()
            .allMatch(
                x ->
                    x instanceof Map<?, ?> map
                        && map.keySet().stream().allMatch(k -> isLabel(String.valueOf(k)))
                        && (map.containsKey("v")
                            || map.containsKey("vb")
                            || map.containsKey("bn")
                            || map.containsKey("vs")
                            || map.containsKey("s")))
        && list.stream().anyMatch(x -> x instanceof Map<?, ?> map && map.containsKey("v"))
        && list.stream()
            .anyMatch(
                x -> x instanceof Map<?, ?> map && (map.containsKey("bn") || map.containsKey("n")));
  }

  private static boolean isLabel(String key) {
    return LABELS.contains(key) || key.endsWith("_");
  }

  /** One row per moment, one value per name. */
  static List<Map<String, String>> of(List<?> list) {
    SenMlRows reader = new SenMlRows();
    list.forEach(record -> reader.add((Map<?, ?>) record));
    return reader.rows.values().stream()
        .sorted(
            java.util.Comparator.comparingDouble(
                row -> Double.parseDouble(row.getOrDefault("time", "0"))))
        .toList();
  }

  private void add(Map<?, ?> record) {
    baseName = text(record, "bn", baseName);
    baseUnit = text(record, "bu", baseUnit);
    baseTime = number(record, "bt", baseTime);
    baseValue = number(record, "bv", baseValue);
    String name = baseName + text(record, "n", "");
    String unit = text(record, "u", baseUnit);
    String value = text(record, "v", text(record, "vb", text(record, "vs", "")));
    if (value.isEmpty()) {
      return;
    }
    if (record.get("v") != null && baseValue != 0) {
      value = String.valueOf(number(record, "v", 0) + baseValue);
    }
    String time = java.math.BigDecimal.valueOf(baseTime + number(record, "t", 0)).toPlainString();
    rows.computeIfAbsent(time, t -> new LinkedHashMap<>(Map.of("time", t)))
        .put(unit.isEmpty() ? name : name + " (" + unit + ")", value);
  }

  private static String text(Map<?, ?> record, String label, String otherwise) {
    Object value = record.get(label);
    return value == null ? otherwise : String.valueOf(value);
  }

  private static double number(Map<?, ?> record, String label, double otherwise) {
    Object value = record.get(label);
    try {
      return value == null ? otherwise : Double.parseDouble(String.valueOf(value));
    } catch (NumberFormatException noNumber) {
      return otherwise;
    }
  }
}
