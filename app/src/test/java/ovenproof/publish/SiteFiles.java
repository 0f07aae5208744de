package ovenproof.publish;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads a published folder for tests. */
final class SiteFiles {
  private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"]*)\"");
  private static final Pattern ID = Pattern.compile("\\bid=\"([^\"]*)\"");

  private final Path root;

  SiteFiles(Path root) {
    this.root = root;
  }

  List<Path> all() throws IOException {
    try (Stream<Path> walk = Files.walk(root)) {
      return walk.filter(Files::isRegularFile).sorted().toList();
    }
  }

  List<Path> pages() throws IOException {
    return all().stream().filter(p -> p.toString().endsWith(".html")).toList();
  }

  String text(String path) throws IOException {
    return Files.readString(root.resolve(path));
  }

  /** Links that lead nowhere, out of the folder, or to a server; empty when all are sound. */
  List<String> deadLinks() throws IOException {
    List<String> dead = new ArrayList<>();
    for (Path page : pages()) {
      Matcher links = LINK.matcher(Files.readString(page));
      while (links.find()) {
        if (!leadsSomewhere(page, links.group(1).replace("&amp;", "&"))) {
          dead.add(root.relativize(page) + " → " + links.group(1));
        }
      }
    }
    return dead;
  }

  private boolean leadsSomewhere(Path page, String link) throws IOException {
    if (link.contains(":") || link.startsWith("/")) {
      return false;
    }
    String[] parts = link.split("#", 2);
    Path target = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
    boolean there = target.startsWith(root) && Files.isRegularFile(target);
    return there && (parts.length == 1 || hasAnchor(target, parts[1]));
  }

  private static boolean hasAnchor(Path page, String anchor) throws IOException {
    Matcher ids = ID.matcher(Files.readString(page));
    while (ids.find()) {
      if (ids.group(1).equals(anchor)) {
        return true;
      }
    }
    return false;
  }
}
