package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Headers of mark columns, split in the two things they name ("Alder_crisp", "Crispness [Alder]",
 * "How crisp is sample 471?"), where all combinations occur; else as they are.
 */
final class HeaderParts {

  private static final List<String> SEPARATORS =
      List.of("_", " - ", " – ", "/", ":", "|", ".", "-", " ");

  private static final Pattern BRACKETED =
      Pattern.compile("(.*\\S)?\\s*[\\[(]([^\\])]+)[\\])]\\s*");

  /** A sample that a question speaks of. */
  private static final Pattern SAMPLE =
      Pattern.compile(
          "(?iu)\\b(?:(?:sample|product|oven|probe|muster|produkt|code|nr\\.?|no\\.?)\\s*"
              + "[#\"']?([A-Z]|\\d{1,4})[\"']?|#?(\\d{3}))(?![\\p{L}\\d])");

  private HeaderParts() {}

  /** One or two parts per header, the same number for all. */
  static List<String[]> of(List<String> headers) {
    List<String[]> bracketed = bracketed(headers);
    if (!bracketed.isEmpty()) {
      return bracketed;
    }
    for (String separator : SEPARATORS) {
      for (boolean last : new boolean[] {true, false}) {
        List<String[]> split = split(headers, separator, last);
        if (!split.isEmpty()) {
          return deeper(split, separator, last);
        }
      }
    }
    for (List<String[]> pairs : List.of(lettered(headers), sampled(headers), framed(headers))) {
      if (!pairs.isEmpty()) {
        return pairs;
      }
    }
    return headers.stream().map(h -> new String[] {h}).toList();
  }

  /** Crispness [Alder]: the question and the row of a form's grid. */
  private static List<String[]> bracketed(List<String> headers) {
    List<String[]> result = new ArrayList<>();
    for (String header : headers) {
      Matcher parts = BRACKETED.matcher(header);
      if (!parts.matches()) {
        return List.of();
      }
      String outside = parts.group(1) == null ? "" : parts.group(1);
      result.add(new String[] {parts.group(2).strip(), outside.strip()});
    }
    return isCrossed(result) || isOneQuestion(result) ? result : List.of();
  }

  /** Alder_crisp_1: three things, where the longer part splits the same way. */
  private static List<String[]> deeper(List<String[]> pairs, String separator, boolean last) {
    int place = last ? 0 : 1;
    List<String> coarse = pairs.stream().map(p -> p[place]).distinct().toList();
    List<String[]> finer = split(coarse, separator, last);
    if (finer.isEmpty() || separator.equals(" ")) {
      return pairs;
    }
    List<String[]> result = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      String[] two = finer.get(coarse.indexOf(pairs.get(i)[place]));
      result.add(
          last
              ? new String[] {two[0], two[1], pairs.get(i)[1]}
              : new String[] {pairs.get(i)[0], two[0], two[1]});
    }
    return isFull(result) ? result : pairs;
  }

  private static boolean isFull(List<String[]> triples) {
    int cells = 1;
    for (int i = 0; i < 3; i++) {
      int part = i;
      cells *= (int) triples.stream().map(t -> t[part]).distinct().count();
    }
    return triples.size() >= 0.8 * cells;
  }

  private static List<String[]> split(List<String> headers, String separator, boolean last) {
    List<String[]> result = new ArrayList<>();
    for (String header : headers) {
      int at = last ? header.lastIndexOf(separator) : header.indexOf(separator);
      if (at <= 0 || at + separator.length() >= header.length()) {
        return List.of();
      }
      result.add(
          new String[] {
            header.substring(0, at).strip(), header.substring(at + separator.length()).strip()
          });
    }
    return isCrossed(result) ? result : List.of();
  }

  /** A1 A2 B1 B2. */
  private static List<String[]> lettered(List<String> headers) {
    List<String[]> result = new ArrayList<>();
    for (String header : headers) {
      if (!header.matches("\\p{L}+\\d{1,2}")) {
        return List.of();
      }
      String letters = header.replaceAll("\\d+$", "");
      result.add(new String[] {letters, header.substring(letters.length())});
    }
    return isCrossed(result) ? result : List.of();
  }

  /** Questions that name a sample somewhere in the sentence. */
  private static List<String[]> sampled(List<String> headers) {
    List<String[]> result = new ArrayList<>();
    for (String header : headers) {
      Matcher sample = SAMPLE.matcher(header);
      if (!sample.find() || sample.group().length() == header.length()) {
        return List.of();
      }
      String code = sample.group(1) != null ? sample.group(1) : sample.group(2);
      String rest = header.substring(0, sample.start()) + "…" + header.substring(sample.end());
      result.add(new String[] {code, rest.replaceAll("\\s+", " ").strip()});
    }
    return isCrossed(result) || isOneQuestion(result) ? result : List.of();
  }

  /** The same words before and after what differs: a question with names in it. */
  private static List<String[]> framed(List<String> headers) {
    if (headers.size() < 2) {
      return List.of();
    }
    List<String[]> words = headers.stream().map(h -> h.split("\\s+")).toList();
    int front = shared(words, false);
    int back = shared(words, true);
    List<String[]> result = new ArrayList<>();
    for (String[] each : words) {
      if (each.length <= front + back) {
        return List.of();
      }
      List<String> list = List.of(each);
      String name = String.join(" ", list.subList(front, each.length - back));
      String before = String.join(" ", list.subList(0, front));
      String after = String.join(" ", list.subList(each.length - back, each.length));
      result.add(new String[] {name, back == 0 ? before : (before + " … " + after).strip()});
    }
    return isFrame(result.get(0)[1], front + back) && isOneQuestion(result) ? result : List.of();
  }

  /** "Oven 1" is a name, "Score of Alder" is a question about Alder. */
  private static boolean isFrame(String words, int count) {
    return count >= 3
        || count >= 1 && (Vocabulary.isAttributeWord(words) || Vocabulary.role(words) == Role.MARK);
  }

  private static int shared(List<String[]> words, boolean fromEnd) {
    int count = 0;
    while (true) {
      int at = count;
      String[] first = words.get(0);
      if (at >= first.length) {
        return count;
      }
      String word = first[fromEnd ? first.length - 1 - at : at];
      boolean all =
          words.stream()
              .allMatch(w -> at < w.length && w[fromEnd ? w.length - 1 - at : at].equals(word));
      if (!all) {
        return count;
      }
      count++;
    }
  }

  private static boolean isOneQuestion(List<String[]> pairs) {
    Set<String> names = new HashSet<>();
    Set<String> questions = new HashSet<>();
    for (String[] pair : pairs) {
      names.add(pair[0]);
      questions.add(pair[1]);
    }
    return questions.size() == 1
        && !questions.contains("")
        && names.size() == pairs.size()
        && names.size() > 1;
  }

  private static boolean isCrossed(List<String[]> pairs) {
    Set<String> first = new HashSet<>();
    Set<String> second = new HashSet<>();
    Set<String> both = new HashSet<>();
    for (String[] pair : pairs) {
      first.add(pair[0]);
      second.add(pair[1]);
      both.add(pair[0] + "\u0000" + pair[1]);
    }
    return first.size() > 1
        && second.size() > 1
        && both.size() == pairs.size()
        && pairs.size() >= 0.8 * first.size() * second.size();
  }
}
