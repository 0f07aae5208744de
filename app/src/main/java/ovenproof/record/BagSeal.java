package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Makes a folder with a {@code data} folder a bag: declaration, bag-info and lists of fingerprints
 * (RFC 8493).
 */
final class BagSeal {
  private BagSeal() {}

  /**
   * Seals a folder.
   *
   * @param info lines of bag-info.txt by label, in order; {@code Payload-Oxum} is added
   * @param known fingerprints of payload files that were just computed, by path ({@code data/…})
   */
  static void close(Path bag, Map<String, String> info, Map<String, String> known)
      throws IOException {
    Map<String, Path> payload = below(bag, bag.resolve("data"));
    long bytes = 0;
    for (Path file : payload.values()) {
      bytes += Files.size(file);
    }
    Files.writeString(
        bag.resolve("bagit.txt"), "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    StringBuilder lines = new StringBuilder();
    info.forEach(
        (label, text) -> lines.append(label).append(": ").append(oneLine(text)).append('\n'));
    lines.append("Payload-Oxum: ").append(bytes).append('.').append(payload.size()).append('\n');
    Files.writeString(bag.resolve("bag-info.txt"), lines);
    manifest(bag.resolve("manifest-sha256.txt"), payload, known);
    Map<String, Path> tags = below(bag, bag);
    tags.keySet().removeIf(name -> name.startsWith("data/"));
    manifest(bag.resolve("tagmanifest-sha256.txt"), tags, Map.of());
  }

  private static String oneLine(String words) {
    return words.replaceAll("\\s+", " ").strip();
  }

  private static Map<String, Path> below(Path bag, Path folder) throws IOException {
    Map<String, Path> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      walk.filter(Files::isRegularFile)
          .forEach(f -> files.put(bag.relativize(f).toString().replace('\\', '/'), f));
    }
    return files;
  }

  private static void manifest(Path manifest, Map<String, Path> files, Map<String, String> known)
      throws IOException {
    String text =
        files.entrySet().stream()
            .map(e -> fingerprint(e, known) + "  " + encoded(e.getKey()))
            .collect(Collectors.joining("\n", "", "\n"));
    Files.writeString(manifest, text);
  }

  private static String fingerprint(Map.Entry<String, Path> file, Map<String, String> known) {
    String found = known.get(file.getKey());
    return found == null ? Fingerprints.of(file.getValue()) : found;
  }

  /** RFC 8493, 2.1.3: line ends and per cent signs in names are encoded. */
  private static String encoded(String path) {
    return path.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D");
  }
}
