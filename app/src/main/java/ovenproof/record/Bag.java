package ovenproof.record;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problems;

/**
 * A bag whose every file is there, listed once and unchanged.
 *
 * @param root the bag's folder
 * @param fingerprints SHA-256 by path, of the payload ({@code data/…})
 */
public record Bag(Path root, Map<String, String> fingerprints) {
  static final int MOST_FILES = 200_000;
  private static final long LONGEST_MANIFEST = 64L << 20;
  private static final Pattern LINE = Pattern.compile("([0-9A-Fa-f]{64})[ \\t]+\\*?(\\S.*)");
  private static final Pattern DECLARATION =
      Pattern.compile("BagIt-Version: (\\d+)\\.(\\d+)\\R+Tag-File-Character-Encoding: (\\S+)\\R*");

  public Bag {
    fingerprints = Map.copyOf(fingerprints);
  }

  /** The campaign folder inside. */
  public Path data() {
    return root.resolve("data");
  }

  /**
   * Opens a bag's folder and checks all of it: names, links, lists, sizes, fingerprints.
   *
   * @throws InputException with every problem
   */
  public static Bag open(Path folder) {
    Problems problems = new Problems();
    if (!Files.isRegularFile(folder.resolve("bagit.txt"), LinkOption.NOFOLLOW_LINKS)) {
      problems.error(
          Place.of(folder.toString()),
          "no bagit.txt in it",
          "a bag",
          "\"ovenproof export DIR --out BAG\" makes one");
    }
    problems.throwIfErrors();
    Map<String, Long> files = files(folder, problems);
    problems.throwIfErrors();
    declaration(folder, files, problems);
    Map<String, String> payload = manifest(folder, "manifest-sha256.txt", files, problems);
    problems.throwIfErrors();
    complete(files, payload, problems);
    compare(folder, files, payload, problems);
    if (files.containsKey("tagmanifest-sha256.txt")) {
      Map<String, String> tags = manifest(folder, "tagmanifest-sha256.txt", files, problems);
      compare(folder, files, tags, problems);
    }
    oxum(folder, files, payload, problems);
    problems.throwIfErrors();
    return new Bag(folder, payload);
  }

  /** Every regular file with its size; anything else is a problem. */
  private static Map<String, Long> files(Path folder, Problems problems) {
    Map<String, Long> files = new TreeMap<>();
    Set<String> folded = new HashSet<>();
    try {
      Files.walkFileTree(
          folder,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              String name = folder.relativize(file).toString().replace('\\', '/');
              if (!attributes.isRegularFile()) {
                problems.error(
                    Place.of(name), "a link or device", "files only", "the bag is refused");
              } else if (!folded.add(name.toLowerCase(Locale.ROOT))) {
                problems.error(
                    Place.of(name),
                    "a second file of that name",
                    "each name once",
                    "names that differ in case only meet on some disks");
              }
              files.put(name, attributes.size());
              return files.size() > MOST_FILES
                  ? FileVisitResult.TERMINATE
                  : FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new OutsideException("could not read the bag " + folder + ": " + e, e);
    }
    if (files.size() > MOST_FILES) {
      problems.error(
          Place.of(folder.toString()), "more than " + MOST_FILES + " files", "fewer", "");
    }
    return files;
  }

  private static void declaration(Path folder, Map<String, Long> files, Problems problems) {
    Matcher declaration = DECLARATION.matcher(read(folder, "bagit.txt", files, problems));
    if (!declaration.matches()) {
      problems.error(
          Place.of("bagit.txt"),
          "another text",
          "\"BagIt-Version: 1.0\" and \"Tag-File-Character-Encoding: UTF-8\"",
          "");
    } else if (!declaration.group(3).equals("UTF-8")
        || Integer.parseInt(declaration.group(1)) > 1) {
      problems.error(
          Place.of("bagit.txt"),
          "version "
              + declaration.group(1)
              + "."
              + declaration.group(2)
              + ", "
              + declaration.group(3),
          "version 1.0 or 0.97 in UTF-8",
          "");
    }
  }

  /** A small text file of the bag; empty, with a problem, when it cannot be read as UTF-8. */
  private static String read(Path folder, String name, Map<String, Long> files, Problems problems) {
    if (files.getOrDefault(name, 0L) > LONGEST_MANIFEST) {
      problems.error(Place.of(name), files.get(name) + " bytes", "a list of files", "");
      return "";
    }
    try {
      return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      problems.error(Place.of(name), "bytes that are no UTF-8", "UTF-8 text", "");
      return "";
    } catch (IOException e) {
      throw new OutsideException("could not read " + name + " of the bag: " + e, e);
    }
  }

  private static Map<String, String> manifest(
      Path folder, String name, Map<String, Long> files, Problems problems) {
    if (!files.containsKey(name)) {
      problems.error(
          Place.of(name),
          "nothing",
          "the list of SHA-256 fingerprints",
          "other digests are not read");
      return Map.of();
    }
    Map<String, String> listed = new LinkedHashMap<>();
    String[] lines = read(folder, name, files, problems).split("\\R");
    for (int i = 0; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        line(new Place(name, i + 1, 0), lines[i], listed, problems);
      }
    }
    return listed;
  }

  private static void line(
      Place place, String text, Map<String, String> listed, Problems problems) {
    Matcher line = LINE.matcher(text);
    if (!line.matches()) {
      problems.error(place, shortened(text), "64 hex digits, spaces and a path", "");
      return;
    }
    String path = decoded(line.group(2));
    if (!BagPaths.isSafe(path)) {
      problems.error(place, shortened(path), "a path inside the bag", "the bag is refused");
    } else if (listed.put(path, line.group(1).toLowerCase(Locale.ROOT)) != null) {
      problems.error(place, "a second line for " + path, "one line for each file", "");
    }
  }

  private static String shortened(String text) {
    return '"' + (text.length() > 120 ? text.substring(0, 120) + "…" : text) + '"';
  }

  /** RFC 8493, 2.1.3: line ends and per cent signs in names are encoded. */
  private static String decoded(String path) {
    return path.replaceAll("(?i)%0a", "\n").replaceAll("(?i)%0d", "\r").replaceAll("%25", "%");
  }

  private static void complete(
      Map<String, Long> files, Map<String, String> payload, Problems problems) {
    files.keySet().stream()
        .filter(f -> f.startsWith("data/") && !payload.containsKey(f))
        .forEach(
            f ->
                problems.error(
                    Place.of(f), "a file that no list names", "only listed files in data/", ""));
    payload.keySet().stream()
        .filter(f -> !f.startsWith("data/"))
        .forEach(f -> problems.error(Place.of(f), "a payload outside data/", "data/…", ""));
  }

  private static void compare(
      Path folder, Map<String, Long> files, Map<String, String> listed, Problems problems) {
    List<Map.Entry<String, String>> all = new ArrayList<>(listed.entrySet());
    all.parallelStream()
        .forEach(
            entry -> {
              String path = entry.getKey();
              if (!files.containsKey(path)) {
                synchronized (problems) {
                  problems.error(
                      Place.of(path), "nothing", "the file that the list names", "it was lost");
                }
              } else if (!Fingerprints.of(folder.resolve(path)).equals(entry.getValue())) {
                synchronized (problems) {
                  problems.error(
                      Place.of(path),
                      "other bytes than were packed",
                      "SHA-256 " + entry.getValue(),
                      "it was changed, damaged or cut off");
                }
              }
            });
  }

  /** Payload-Oxum of bag-info.txt, when it is there: bytes and number of payload files. */
  private static void oxum(
      Path folder, Map<String, Long> files, Map<String, String> payload, Problems problems) {
    if (!files.containsKey("bag-info.txt")) {
      return;
    }
    Matcher oxum =
        Pattern.compile("(?m)^Payload-Oxum: *(\\d+)\\.(\\d+) *$")
            .matcher(read(folder, "bag-info.txt", files, problems));
    if (oxum.find()) {
      long bytes = payload.keySet().stream().mapToLong(f -> files.getOrDefault(f, 0L)).sum();
      String found = bytes + "." + payload.size();
      if (!found.equals(oxum.group(1) + "." + oxum.group(2))) {
        problems.error(
            Place.of("bag-info.txt"),
            "Payload-Oxum " + oxum.group(1) + "." + oxum.group(2),
            found,
            "");
      }
    }
  }
}
