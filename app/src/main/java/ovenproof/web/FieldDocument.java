package ovenproof.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.springframework.ui.Model;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.Field;
import ovenproof.desk.StaleRevisionException;

/**
 * Changes the document of what is compared. Two people may change different parts of it at once;
 * whoever changes a part that somebody else changed since the form was filled is shown both
 * versions and nothing is saved.
 */
public final class FieldDocument {
  private static final int ATTEMPTS = 8;
  private final Desk desk;

  public FieldDocument(Desk desk) {
    this.desk = desk;
  }

  /**
   * Somebody saved the same part meanwhile.
   *
   * @param revision the newest; a form sent with it puts yours on top
   * @param theirs what they changed, in words
   */
  public record Conflict(String who, long revision, List<String> theirs) {
    /** For the page: the sentence, their version, and the revision to send next time. */
    public void show(Model model) {
      model.addAttribute("conflict", this);
      model.addAttribute("revision", revision);
    }
  }

  /** What the form shows of the document: labels and values. Empty for a form that only adds. */
  public interface Part extends Function<Field, Map<String, String>> {}

  /** A part that only adds: it cannot undo what somebody else did. */
  public static final Part ADDS = field -> Map.of();

  /**
   * Saves a change.
   *
   * @param typedRevision the revision that the form was filled from, as the form sends it
   */
  public Optional<Conflict> change(
      String cid,
      Map<String, String> typedRevision,
      Part part,
      UnaryOperator<Field> change,
      String who,
      String why) {
    String typed = typedRevision.getOrDefault("revision", "0");
    long base = typed.matches("\\d{1,9}") ? Long.parseLong(typed) : 0;
    for (int attempt = 1; ; attempt++) {
      Document newest = desk.document(cid, Document.FIELD);
      Field now = desk.field(newest);
      Optional<Conflict> conflict = conflict(cid, base, newest, now, part);
      if (conflict.isPresent()) {
        return conflict;
      }
      try {
        desk.saveField(cid, newest.revision(), change.apply(now), who, why);
        return Optional.empty();
      } catch (StaleRevisionException raced) {
        if (attempt == ATTEMPTS) {
          throw raced;
        }
      }
    }
  }

  private Optional<Conflict> conflict(
      String cid, long base, Document newest, Field now, Part part) {
    if (base == newest.revision()) {
      return Optional.empty();
    }
    Map<String, String> before =
        desk.document(cid, Document.FIELD, base).map(desk::field).map(part).orElseGet(Map::of);
    Map<String, String> after = part.apply(now);
    if (before.equals(after)) {
      return Optional.empty();
    }
    return Optional.of(new Conflict(newest.who(), newest.revision(), words(before, after)));
  }

  private static List<String> words(Map<String, String> before, Map<String, String> after) {
    Map<String, String> labels = new LinkedHashMap<>(after);
    before.forEach(labels::putIfAbsent);
    List<String> words = new ArrayList<>();
    for (String label : labels.keySet()) {
      String was = before.getOrDefault(label, "");
      String is = after.getOrDefault(label, "");
      if (!was.equals(is)) {
        words.add(label + ": " + quoted(was) + " became " + quoted(is));
      }
    }
    return words;
  }

  private static String quoted(String value) {
    return value.isEmpty() ? "nothing" : "“" + value + "”";
  }
}
