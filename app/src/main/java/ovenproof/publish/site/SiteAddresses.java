package ovenproof.publish.site;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Where each page of a site lies: paths relative to its root, with {@code /}.
 *
 * <p>Keys become file names only if they are plain lower-case words; anything else is made plain
 * and told apart by a fingerprint, so that no key leaves the folder and two keys that differ in
 * case only do not meet in one file.
 */
final class SiteAddresses {
  static final String INDEX = "index.html";
  static final String METHOD = "method.html";
  static final String EVIDENCE = "evidence/index.html";
  static final String STYLE = "look/look.css";
  static final String MARK = "look/mark.svg";

  private final Map<String, String> names = new HashMap<>();
  private final Set<String> taken = new HashSet<>();

  String product(String id) {
    return "products/" + name("product", id) + ".html";
  }

  String test(String id) {
    return "tests/" + name("test", id) + ".html";
  }

  String run(String id) {
    return "evidence/runs/" + name("run", id) + ".html";
  }

  /** The chain of a product's score in a test. */
  String score(String product, String test) {
    return "evidence/scores/" + name("product", product) + "/" + name("test", test) + ".html";
  }

  /** The chain of one criterion. */
  String criterion(String product, String test, String criterion) {
    return score(product, test) + "#" + name("criterion", criterion);
  }

  /** A name for an anchor or a picture's file. */
  synchronized String name(String kind, String key) {
    return names.computeIfAbsent(kind + '\n' + key, k -> free(kind, key));
  }

  private String free(String kind, String key) {
    String plain = plain(key);
    String candidate = plain.equals(key) ? plain : plain + "-" + fingerprint(key);
    while (!taken.add(kind + '\n' + candidate)) {
      candidate = candidate + "-" + fingerprint(key + candidate);
    }
    return candidate;
  }

  private static String plain(String key) {
    String folded = key.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9_-]+", "-");
    String trimmed = folded.replaceAll("^-+|-+$", "");
    String bounded = trimmed.length() > 60 ? trimmed.substring(0, 60) : trimmed;
    boolean awkward = bounded.isEmpty() || bounded.matches("index|con|prn|aux|nul|(com|lpt)\\d");
    return awkward ? "x" + bounded : bounded;
  }

  private static String fingerprint(String key) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest, 0, 4);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The link from one page to another path (which may end in {@code #anchor}). */
  static String link(String from, String to) {
    if (to.startsWith(from + "#")) {
      return to.substring(from.length());
    }
    String[] at = from.split("/", -1);
    String[] target = to.split("/", -1);
    int common = 0;
    while (common < at.length - 1
        && common < target.length - 1
        && at[common].equals(target[common])) {
      common++;
    }
    StringBuilder link = new StringBuilder();
    for (int i = common; i < at.length - 1; i++) {
      link.append("../");
    }
    for (int i = common; i < target.length; i++) {
      link.append(target[i]).append(i < target.length - 1 ? "/" : "");
    }
    return link.toString();
  }
}
