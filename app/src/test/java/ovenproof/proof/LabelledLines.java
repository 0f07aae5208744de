package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import ovenproof.proof.Proof.Claim;
import ovenproof.proof.Proof.Finding;

/**
 * A draft of one sentence a line, each labelled true ({@code T }) or false ({@code F }); lines
 * without a label are not judged. Sentences of a paragraph are joined as an editor would see them.
 */
record LabelledLines(String text, List<Label> labels) {

  /** A sentence's place in the text, by offsets. */
  record Label(boolean isTrue, String sentence, int start, int end) {}

  /** How a proof judged the labelled sentences. */
  record Count(int errors, List<String> missed, int truths, List<String> falseAlarms) {}

  static LabelledLines of(String labelled) {
    StringBuilder text = new StringBuilder();
    List<Label> labels = new ArrayList<>();
    for (String line : labelled.split("\n", -1)) {
      boolean label = line.startsWith("T ") || line.startsWith("F ");
      String sentence = label ? line.substring(2) : line;
      text.append(joint(text, sentence));
      if (label) {
        int start = text.length();
        labels.add(new Label(line.charAt(0) == 'T', sentence, start, start + sentence.length()));
      }
      text.append(sentence);
    }
    return new LabelledLines(text.append('\n').toString(), List.copyOf(labels));
  }

  /** Running sentences go on with a blank; headings, bullets and tables have lines of their own. */
  private static String joint(StringBuilder before, String sentence) {
    if (before.isEmpty()) {
      return "";
    }
    String last = before.substring(before.lastIndexOf("\n") + 1);
    if (last.startsWith("#") || sentence.startsWith("#")) {
      return "\n\n";
    }
    boolean own =
        sentence.isEmpty() || last.isEmpty() || sentence.matches("(?s)(?:\\||- |[QA]: ).*");
    return own ? "\n" : " ";
  }

  /** A sentence is found, or a false alarm, where any of its claims is contradicted. */
  Count count(Proof proof) {
    List<String> missed = new ArrayList<>();
    List<String> falseAlarms = new ArrayList<>();
    for (Label label : labels) {
      boolean contradicted =
          proof.claims().stream()
              .filter(c -> c.finding() == Finding.CONTRADICTED)
              .mapToInt(this::offset)
              .anyMatch(at -> at >= label.start() && at < label.end());
      if (label.isTrue() && contradicted) {
        falseAlarms.add(label.sentence());
      } else if (!label.isTrue() && !contradicted) {
        missed.add(label.sentence());
      }
    }
    int truths = (int) labels.stream().filter(Label::isTrue).count();
    return new Count(labels.size() - truths, missed, truths, falseAlarms);
  }

  private int offset(Claim claim) {
    int at = 0;
    for (int line = 1; line < claim.line(); line++) {
      at = text.indexOf('\n', at) + 1;
    }
    return at + claim.column() - 1;
  }
}
