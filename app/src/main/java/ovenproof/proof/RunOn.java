package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Cuts speech that was written down without full stops into sentences: where the speaker turns to
 * something else ("okay", "now", "what about"), and where the next product is named.
 */
final class RunOn {
  /** People who write rarely go on for so many characters without a comma or a full stop. */
  private static final int LONG = 160;

  private static final int CHARACTERS_PER_MARK = 110;

  /** A piece shorter than this says nothing of its own. */
  private static final int SHORTEST = 18;

  private static final String TURN =
      "okay|ok|now|anyway|alright|right so|so now|so the|so here|but then|and then|then there|next up|next|first up|"
          + "first of all|let['’]s|speaking of|what about|as for|moving on|on to|over to|how about|in the end|and finally|finally|"
          + "and in the end|compared with|meanwhile|by the way|and honestly|honestly";

  /** A name after one of these belongs to what was said before it. */
  private static final String BOUND =
      "than|as|like|in|of|with|from|to|by|unlike|behind|beats?|beat|against|or|for|at|on|inside|into|versus|vs|between|only|not|is|was|are|"
          + "called|that['’]s|this is|say|says|about|except|after|before|over|under|one|oven|model|\\p{L}{2,}est|best|worst|most \\p{L}+|least \\p{L}+|while in|whereas in|and in|but in";

  private final Pattern cut;
  private final Pattern name;

  /**
   * @param names any product's name
   * @param foods what the tests cook
   */
  RunOn(Pattern names, Pattern foods) {
    this.name = names;
    this.cut =
        Pattern.compile(
            "(?<=\\s)(?:(?<turn>"
                + TURN
                + "|(?:and |but )?the (?:"
                + foods.pattern()
                + ") (?:took|takes|was|were|is|are|came|needs?|needed|lost|had|got))\\b|(?<named>(?:(?:and|but|so|then|while|whereas|because) )?(?:the )?(?:"
                + names.pattern()
                + ")))",
            Pattern.CASE_INSENSITIVE);
  }

  /** Offsets at which a stretch is to be cut; none for a text with marks. */
  List<Integer> cuts(String text) {
    long marks = text.chars().filter(c -> ",;:.–—()!?".indexOf(c) >= 0).count();
    if (text.length() < LONG || text.length() < CHARACTERS_PER_MARK * marks) {
      return List.of();
    }
    List<Integer> cuts = new ArrayList<>();
    Matcher matcher = cut.matcher(text);
    int last = 0;
    while (matcher.find()) {
      boolean opens =
          matcher.group("turn") != null || isSubject(text, last, matcher.start("named"));
      if (matcher.start() - last >= SHORTEST && opens) {
        cuts.add(matcher.start());
        last = matcher.start();
      }
    }
    return cuts;
  }

  /** Words that may end what was said before: "thirty seconds behind the Siskin takes …". */
  private static final String LOOSE =
      "behind|ahead|over|under|before|after|one|oven|model|about|up|on|off|out|best|worst";

  private boolean isFollowedByVerb(String text, int at) {
    Matcher named = name.matcher(text);
    return named.find(at)
        && Wording.is(
            Wording.after(text, named.end()),
            "(?is)^\\s+(?:takes?|took|needs?|needed|gets?|got|is|was|has|had|runs?|ran|costs?|uses?|used|lost|loses|wins?|won|comes?|came|scores?|scored|never|also|only|reaches|reached|makes?|made|does|did|keeps?|kept|leaves?|left|weighs|holds)\\b.*");
  }

  /** Not "in the Alder", not "the Alder and the Hornbeam". */
  private boolean isSubject(String text, int from, int at) {
    String before = text.substring(Math.max(from, at - 40), at);
    if (Wording.is(before, "(?is).*\\b(?:" + BOUND + ")\\s+$")
        && !(Wording.is(before, "(?is).*\\b(?:" + LOOSE + ")\\s+$")
            && isFollowedByVerb(text, at))) {
      return false;
    }
    Matcher named = name.matcher(before);
    int end = -1;
    while (named.find()) {
      end = named.end();
    }
    return end < 0 || before.substring(end).strip().split("\\s+").length >= 3;
  }
}
