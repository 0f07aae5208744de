package ovenproof.publish.footage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ovenproof.input.Place;
import ovenproof.input.Problems;

/** Chapters of a film, from the editor's cue list: one {@code 0:00 title} per line. */
public record Chapters(List<Cue> cues) {

  /** A chapter's beginning. */
  public record Cue(double seconds, String title) {}

  public Chapters {
    cues = List.copyOf(cues);
  }

  /**
   * Reads a cue list; empty lines and lines that begin with {@code #} are left out.
   *
   * @param file its name, for messages
   * @throws ovenproof.input.InputException with every line that is no cue, comes before its
   *     predecessor, or if the first is not at 0:00
   */
  public static Chapters parse(String file, String text) {
    Problems problems = new Problems();
    List<Cue> cues = new ArrayList<>();
    String[] lines = text.replace("\ufeff", "").split("\\R");
    for (int i = 0; i < lines.length; i++) {
      String line = lines[i].strip();
      if (!line.isEmpty() && !line.startsWith("#")) {
        cue(new Place(file, i + 1, 0), line, cues, problems);
      }
    }
    if (!cues.isEmpty() && cues.get(0).seconds() != 0) {
      problems.error(
          Place.of(file), Timecode.plain(cues.get(0).seconds()), "a first cue at 0:00", "");
    }
    problems.throwIfErrors();
    return new Chapters(cues);
  }

  private static void cue(Place place, String line, List<Cue> cues, Problems problems) {
    String[] parts = line.split("\\s+", 2);
    Optional<Double> at = Timecode.parse(parts[0]);
    if (at.isEmpty() || parts.length < 2) {
      problems.error(place, '"' + line + '"', "a time and a title: 1:05 Toast", "");
    } else if (!cues.isEmpty() && at.get() <= cues.get(cues.size() - 1).seconds()) {
      problems.error(place, parts[0], "a time after the cue before", "");
    } else {
      cues.add(new Cue(at.get(), parts[1].strip()));
    }
  }

  /** {@code 0:00 title}, one per line. */
  public String plain() {
    StringBuilder text = new StringBuilder();
    cues.forEach(
        c -> text.append(Timecode.plain(c.seconds())).append(' ').append(c.title()).append('\n'));
    return text.toString();
  }

  /**
   * WebVTT chapters (W3C); each ends where the next begins.
   *
   * @param lengthSeconds of the film; the last chapter ends there
   */
  public String webVtt(double lengthSeconds) {
    StringBuilder text = new StringBuilder("WEBVTT\n");
    for (int i = 0; i < cues.size(); i++) {
      double begin = cues.get(i).seconds();
      double end =
          i + 1 < cues.size() ? cues.get(i + 1).seconds() : Math.max(lengthSeconds, begin + 1);
      text.append('\n').append(Timecode.webVtt(begin)).append(" --> ").append(Timecode.webVtt(end));
      text.append('\n').append(cueText(cues.get(i).title())).append('\n');
    }
    return text.toString();
  }

  /** Cue text: no markup, no arrow that ends a header. */
  static String cueText(String title) {
    return title
        .replaceAll("\\s+", " ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
  }
}
