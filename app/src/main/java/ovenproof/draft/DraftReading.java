package ovenproof.draft;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.draft.KeptDraft.Confirmation;
import ovenproof.proof.Proof;
import ovenproof.proof.Proof.Claim;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proofreader;

/**
 * A draft with its figures filled in, proofread, and compared with what it rested on when a person
 * last looked.
 *
 * @param resolved the text with every figure in its place
 * @param moved figures that print something else now
 * @param unknown names that no figure has, with their line
 * @param stale sentences whose evidence is different now
 */
public record DraftReading(
    String resolved,
    Proof proof,
    List<Found> found,
    List<Moved> moved,
    List<String> unknown,
    List<Stale> stale,
    KeptDraft now) {

  public DraftReading {
    found = List.copyOf(found);
    moved = List.copyOf(moved);
    unknown = List.copyOf(unknown);
    stale = List.copyOf(stale);
  }

  /**
   * A claim with its place and what a person confirmed.
   *
   * @param number from 1, in the order of the text
   * @param at offset in the resolved text, or −1 when its words were not found there
   * @param key by which a confirmation is kept
   * @param confirmation or null
   */
  public record Found(
      int number, Claim claim, int at, String key, @Nullable Confirmation confirmation) {
    /** Whether a person tied it to a figure, and that figure still prints the same. */
    public boolean isConfirmed() {
      return confirmation != null;
    }
  }

  /**
   * A figure that moved: what it printed, and what it prints now (null: no such figure any more).
   */
  public record Moved(String written, int line, String was, @Nullable String is) {}

  /** A sentence that rested on something else. */
  public record Stale(String sentence, int line, String was, String is) {}

  /**
   * Reads a draft.
   *
   * @param kept with the text to be read, and what was kept of earlier looks
   */
  public static DraftReading of(KeptDraft kept, FigureBook book, Proofreader proofreader) {
    String text = kept.text();
    List<FigureCall> calls = FigureCall.in(text);
    Map<String, String> figures = new TreeMap<>();
    List<Moved> moved = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    StringBuilder resolved = new StringBuilder();
    int[] origin = {0};
    for (FigureCall call : calls) {
      resolved.append(text, origin[0], call.from());
      String shown = book.text(call);
      resolved.append(shown == null ? call.written() : shown);
      origin[0] = call.to();
      compare(call, shown, kept, figures, moved, unknown);
    }
    resolved.append(text.substring(origin[0]));
    String read = resolved.toString();
    Proof proof = proofreader.read(read);
    Sentences sentences = new Sentences(read);
    List<Found> found = found(read, proof, sentences, kept, book);
    Map<String, String> rested = rested(found, sentences);
    List<Stale> stale = stale(rested, kept, sentences, book);
    return new DraftReading(
        read,
        proof,
        found,
        moved,
        unknown,
        stale,
        new KeptDraft(text, figures, rested, used(found, kept)));
  }

  private static void compare(
      FigureCall call,
      @Nullable String shown,
      KeptDraft kept,
      Map<String, String> figures,
      List<Moved> moved,
      List<String> unknown) {
    String was = kept.figures().get(call.written());
    if (shown == null && was == null) {
      unknown.add("line " + call.line() + ": " + call.written());
    }
    if (was != null && !was.equals(shown) && !figures.containsKey(call.written())) {
      moved.add(new Moved(call.written(), call.line(), was, shown));
    }
    if (shown != null) {
      figures.put(call.written(), shown);
    }
  }

  private static List<Found> found(
      String read, Proof proof, Sentences sentences, KeptDraft kept, FigureBook book) {
    int[] lines = lines(read);
    List<Found> found = new ArrayList<>();
    for (Claim claim : proof.claims()) {
      int at = place(read, lines, claim);
      String key = claimKey(sentences.at(Math.max(0, at)), claim);
      Confirmation confirmation = kept.confirmed().get(key);
      boolean holds =
          confirmation != null
              && book.find(confirmation.figure())
                  .map(f -> f.text().equals(confirmation.shown()))
                  .orElse(false);
      found.add(new Found(found.size() + 1, claim, at, key, holds ? confirmation : null));
    }
    return found;
  }

  /** A claim by its sentence and words: another number in it is another claim. */
  static String claimKey(String sentence, Claim claim) {
    return sentence.strip() + " → " + claim.text();
  }

  private static int[] lines(String text) {
    List<Integer> starts = new ArrayList<>(List.of(0));
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n') {
        starts.add(i + 1);
      }
    }
    return starts.stream().mapToInt(Integer::intValue).toArray();
  }

  private static int place(String text, int[] lines, Claim claim) {
    if (claim.line() < 1 || claim.line() > lines.length) {
      return -1;
    }
    int at = lines[claim.line() - 1] + claim.column() - 1;
    if (at >= 0 && at <= text.length() && text.startsWith(claim.text(), at)) {
      return at;
    }
    return text.indexOf(claim.text(), lines[claim.line() - 1]);
  }

  /** What the claims of each sentence rest on, in words. */
  private static Map<String, String> rested(List<Found> found, Sentences sentences) {
    Map<String, List<Found>> bySentence = new LinkedHashMap<>();
    for (Found one : found) {
      bySentence
          .computeIfAbsent(sentences.at(Math.max(0, one.at())).strip(), s -> new ArrayList<>())
          .add(one);
    }
    Map<String, String> rested = new TreeMap<>();
    bySentence.forEach(
        (sentence, claims) ->
            rested.put(
                sentence,
                claims.stream().map(DraftReading::rests).collect(Collectors.joining("; "))));
    return rested;
  }

  private static String rests(Found found) {
    Claim claim = found.claim();
    String expected = claim.expected() == null ? "no figure" : claim.expected();
    return "“" + claim.text() + "” " + claim.finding().word() + ", " + expected;
  }

  private static List<Stale> stale(
      Map<String, String> rested, KeptDraft kept, Sentences sentences, FigureBook book) {
    List<Stale> stale = new ArrayList<>();
    rested.forEach(
        (sentence, is) -> {
          String was = kept.sentences().get(sentence);
          if (was != null && !was.equals(is)) {
            stale.add(new Stale(sentence, sentences.line(sentence), was, is));
          }
        });
    kept.confirmed()
        .forEach(
            (key, confirmation) -> {
              String sentence = key.replaceAll(" → [^→]*$", "");
              String is =
                  book.find(confirmation.figure()).map(FigureBook.Shown::text).orElse("no figure");
              if (!is.equals(confirmation.shown()) && sentences.line(sentence) > 0) {
                stale.add(
                    new Stale(
                        sentence,
                        sentences.line(sentence),
                        "confirmed by " + confirmation.figure() + " = " + confirmation.shown(),
                        confirmation.figure() + " = " + is));
              }
            });
    return stale;
  }

  /** Confirmations whose claim is still in the text. */
  private static Map<String, Confirmation> used(List<Found> found, KeptDraft kept) {
    Map<String, Confirmation> used = new TreeMap<>();
    for (Found one : found) {
      Confirmation confirmation = kept.confirmed().get(one.key());
      if (confirmation != null) {
        used.put(one.key(), confirmation);
      }
    }
    return used;
  }

  /**
   * What is kept when the text is saved without a look at what moved: earlier states stay, new
   * figures and sentences are added.
   */
  public KeptDraft savedUnseen(KeptDraft before) {
    Map<String, String> figures = new TreeMap<>(now.figures());
    before.figures().forEach((name, was) -> figures.computeIfPresent(name, (n, is) -> was));
    moved.stream().filter(m -> m.is() == null).forEach(m -> figures.put(m.written(), m.was()));
    Map<String, String> sentences = new TreeMap<>(now.sentences());
    before.sentences().forEach((name, was) -> sentences.computeIfPresent(name, (n, is) -> was));
    return new KeptDraft(now.text(), figures, sentences, now.confirmed());
  }

  public long count(Finding finding) {
    return found.stream().filter(f -> !f.isConfirmed() && f.claim().finding() == finding).count();
  }

  public long confirmed() {
    return found.stream().filter(Found::isConfirmed).count();
  }

  /** Sentences of a text by their place. */
  private static final class Sentences {
    private final String text;
    private final List<Integer> starts = new ArrayList<>();

    Sentences(String text) {
      this.text = text;
      int from = 0;
      for (String paragraph : text.split("(?<=\\n)", -1)) {
        starts.add(from);
        BreakIterator breaks = BreakIterator.getSentenceInstance(Locale.ENGLISH);
        breaks.setText(paragraph);
        for (int at = breaks.next(); at != BreakIterator.DONE; at = breaks.next()) {
          if (at < paragraph.length()) {
            starts.add(from + at);
          }
        }
        from += paragraph.length();
      }
    }

    String at(int offset) {
      int i = java.util.Collections.binarySearch(starts, offset);
      int place = i >= 0 ? i : -i - 2;
      // A text that ends in a line break ends in an empty sentence of the same start.
      while (place + 1 < starts.size() && starts.get(place + 1).equals(starts.get(place))) {
        place++;
      }
      int end = place + 1 < starts.size() ? starts.get(place + 1) : text.length();
      return text.substring(starts.get(place), end);
    }

    /** Line of a sentence, from 1; 0 when it is not there. */
    int line(String sentence) {
      int at = text.indexOf(sentence);
      return at < 0 ? 0 : (int) text.substring(0, at).chars().filter(c -> c == '\n').count() + 1;
    }
  }
}
