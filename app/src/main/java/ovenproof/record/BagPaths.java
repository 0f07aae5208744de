package ovenproof.record;

import java.util.List;
import java.util.regex.Pattern;

/** Which paths a bag may hold. */
final class BagPaths {
  private static final Pattern RESERVED =
      Pattern.compile("(?i)(con|prn|aux|nul|com\\d|lpt\\d)(\\..*)?");

  private BagPaths() {}

  /** Relative, with {@code /}, no step up, no drive, no device, no control character. */
  static boolean isSafe(String path) {
    if (path.isEmpty()
        || path.startsWith("/")
        || path.startsWith("~")
        || path.indexOf('\\') >= 0
        || path.matches("(?s)^[A-Za-z]:.*")
        || path.chars().anyMatch(c -> c < 32 || c == 127)
        || path.length() > 1000) {
      return false;
    }
    return List.of(path.split("/", -1)).stream().allMatch(BagPaths::isSafeStep);
  }

  private static boolean isSafeStep(String step) {
    return !step.isEmpty()
        && !step.equals(".")
        && !step.equals("..")
        && !RESERVED.matcher(step).matches();
  }
}
