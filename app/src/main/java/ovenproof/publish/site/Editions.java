package ovenproof.publish.site;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionChange;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.edition.EditionJson;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.publish.edition.FrozenEdition.KeptFile;
import ovenproof.verdict.VerdictJson;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The editions of a site. Each lies frozen below {@code editions/}: a page, its verdict as JSON and
 * its text. A later edition carries those files over byte for byte and states what it changed.
 */
final class Editions {
  static final String PAGE = "corrections.html";
  static final String FILE = "data/editions.json";
  private static final String TEXT = "data/corrections.txt";
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private final EditionHistory before;
  private final EditionHistory history;

  private Editions(EditionHistory before, EditionHistory history) {
    this.before = before;
    this.history = history;
  }

  /**
   * The editions of the site that stands at a place, and a new one after them if it prints anything
   * different.
   *
   * @param why the reason to be printed beside the new one, or null
   * @throws InputException if the list of editions is damaged
   */
  static Editions after(Path earlier, Edition edition, @Nullable String why) {
    EditionHistory before = read(earlier.resolve(FILE));
    return new Editions(before, before.then(edition, why));
  }

  static EditionHistory read(Path file) {
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return EditionHistory.none();
    }
    try {
      return EditionJson.read(FILE, Files.readString(file));
    } catch (java.nio.charset.CharacterCodingException e) {
      return EditionJson.read(FILE, "");
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
  }

  EditionHistory history() {
    return history;
  }

  /** Where an edition's frozen page lies, or null when an older site kept none. */
  static @Nullable String page(FrozenEdition edition) {
    return edition.files().stream()
        .map(KeptFile::path)
        .filter(p -> p.endsWith(".html"))
        .findFirst()
        .orElse(null);
  }

  /** Where the frozen page of the newest edition lies. */
  String newestPage() {
    return folder(history.editions().size()) + "index.html";
  }

  private static String folder(int number) {
    return "editions/" + number + "/";
  }

  /**
   * Writes the frozen files of all editions and the list of them.
   *
   * @param frozenPage the newest edition's page, used only when it is new
   */
  void write(SiteFolder folder, Path earlier, Edition edition, String frozenPage) {
    carryOver(folder, earlier);
    EditionHistory kept = history;
    if (history.editions().size() > before.editions().size()) {
      kept = freeze(folder, edition, frozenPage);
    }
    ReviewSite.json(folder, FILE, EditionJson.of(kept));
    folder.write(TEXT, text(kept));
  }

  private EditionHistory freeze(SiteFolder folder, Edition edition, String page) {
    FrozenEdition newest = java.util.Objects.requireNonNull(history.newest());
    String place = folder(newest.number());
    List<KeptFile> files = new ArrayList<>();
    files.add(keep(folder, place + "index.html", page));
    String verdict = MAPPER.writeValueAsString(VerdictJson.of(edition.verdict())) + "\n";
    files.add(keep(folder, place + "verdict.json", verdict));
    files.add(keep(folder, place + "edition.txt", text(newest)));
    return history.newestAs(newest.keptIn(files));
  }

  private static KeptFile keep(SiteFolder folder, String path, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    folder.write(path, bytes);
    return new KeptFile(path, sha256(bytes));
  }

  private void carryOver(SiteFolder folder, Path earlier) {
    List<Problem> problems = new ArrayList<>();
    for (FrozenEdition edition : before.editions()) {
      for (KeptFile file : edition.files()) {
        byte[] bytes = kept(earlier, file, problems);
        if (bytes != null) {
          folder.write(file.path(), bytes);
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new InputException(problems);
    }
  }

  private static byte @Nullable [] kept(Path earlier, KeptFile file, List<Problem> problems) {
    if (!file.path().matches("editions/\\d{1,6}/[a-z]+\\.[a-z]+")) {
      problems.add(damaged(file, "a path that leaves the editions"));
      return null;
    }
    Path place = earlier.resolve(file.path());
    if (!Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS)) {
      problems.add(damaged(file, "nothing"));
      return null;
    }
    try {
      byte[] bytes = Files.readAllBytes(place);
      if (!sha256(bytes).equals(file.sha256())) {
        problems.add(damaged(file, "other bytes than were published"));
        return null;
      }
      return bytes;
    } catch (IOException e) {
      throw new OutsideException("could not read " + place + ": " + e, e);
    }
  }

  private static Problem damaged(KeptFile file, String found) {
    return Problem.error(
        Place.of(file.path()),
        found,
        "the frozen edition, SHA-256 " + file.sha256(),
        "restore the site from a backup, or publish to a new place; nothing was written");
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** An edition in plain text. */
  static String text(FrozenEdition edition) {
    StringBuilder text = new StringBuilder();
    text.append("Edition ").append(edition.number()).append(", published ");
    text.append(edition.published()).append(", verdict ").append(edition.verdict());
    text.append(", method ").append(edition.method()).append('\n');
    text.append(edition.headline()).append("\n\n");
    for (FrozenEdition.Standing product : edition.products()) {
      text.append("Rank ").append(product.rank()).append("  ").append(product.name());
      text.append(": ").append(product.score());
      if (!product.interval().equals("–")) {
        text.append(" (90 % interval ").append(product.interval()).append(')');
      }
      text.append(product.tier() == null ? "" : ", tier " + product.tier());
      text.append(product.price() == null ? "" : ", " + product.price()).append('\n');
      product
          .tests()
          .forEach(
              t ->
                  text.append("    ").append(t.name()).append(": ").append(t.score()).append('\n'));
    }
    return text.toString();
  }

  /** Corrections and changes in plain text, the newest first. */
  static String text(EditionHistory history) {
    StringBuilder text = new StringBuilder("Corrections and changes\n");
    for (EditionChange change : history.changes()) {
      text.append('\n').append(change.after().published()).append(": edition ");
      text.append(change.after().number()).append('\n');
      text.append("Why: ").append(why(change)).append('\n');
      text.append(change.effectOnRanks()).append('\n');
      change
          .moves()
          .forEach(
              m -> text.append("- ").append(m.name()).append(": ").append(m.words()).append('\n'));
    }
    FrozenEdition first = history.editions().isEmpty() ? null : history.editions().get(0);
    if (first != null) {
      text.append('\n').append(first.published()).append(": edition 1, first published\n");
    }
    return text.toString();
  }

  static String why(EditionChange change) {
    String why = change.after().why();
    return why == null ? "no reason was given." : why;
  }
}
