package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.TestMention;

/** The words around a stretch of a sentence: which tests and measures they point at. */
final class Surroundings {
  private final Sentence sentence;
  private final Clauses clauses;
  private final List<TestMention> tests;
  private final Set<String> cues;
  private final Set<String> testsAbove;
  private final Set<String> testsBefore;
  private final Map<String, Double> stemsBefore;
  private final List<Word> words = new ArrayList<>();

  private record Word(String stem, int start) {}

  Surroundings(
      Sentence sentence, Clauses clauses, List<TestMention> tests, Set<String> cues, Said said) {
    this.sentence = sentence;
    this.clauses = clauses;
    this.tests = tests;
    this.cues = cues;
    this.testsAbove = said.testsAbove();
    this.testsBefore = said.testsBefore();
    this.stemsBefore = said.stems();
    for (TokenCursor.Token token : TokenCursor.tokens(sentence.text())) {
      boolean word = Character.isLetter(token.text().charAt(0)) && token.text().length() > 1;
      if (word && !NumberWords.isNumberWord(token.lower())) {
        words.addAll(words(token));
      }
    }
  }

  private static List<Word> words(TokenCursor.Token token) {
    return Stems.ofAll(token.lower()).stream().map(s -> new Word(s, token.start())).toList();
  }

  /** How strongly the sentences before spoke of a word. */
  double saidBefore(String stem) {
    return stemsBefore.getOrDefault(stem, 0.0);
  }

  /** What the words around a stretch point at. */
  Focus at(int start, int end) {
    int clause = clauses.at(start);
    int last = Math.max(clause, clauses.at(Math.max(start, end - 1)));
    Map<String, Double> weights = new HashMap<>();
    weights.putAll(stemsBefore);
    Stems.ofAll(sentence.heading()).forEach(s -> weights.merge(s, 1.0, Math::max));
    for (Word word : words) {
      boolean inside = word.start() >= start && word.start() < end;
      if (!inside) {
        weights.merge(word.stem(), closeness(clauses.at(word.start()), clause, last), Math::max);
      }
    }
    Set<String> own = testsIn(clause, last);
    return new Focus(
        own.isEmpty() ? nearestTests(start) : own,
        !own.isEmpty(),
        testsAbove,
        testsBefore,
        cues,
        Mentions.batchAt(sentence.text(), start),
        weights);
  }

  /** What leads up to a number says more of it than what follows in another clause. */
  private double closeness(int clause, int first, int last) {
    if (clause >= first && clause <= last) {
      return 3;
    }
    for (int between = clause; between < first; between++) {
      if (clauses.introduces(between)) {
        return 2;
      }
    }
    return clause == first - 1 ? 1.7 : clause == last + 1 ? 1.2 : 0.9;
  }

  private Set<String> testsIn(int first, int last) {
    Set<String> found = new LinkedHashSet<>();
    for (TestMention test : tests) {
      int clause = clauses.at(test.start());
      if (clause >= first && clause <= last) {
        found.add(test.test());
      }
    }
    return found;
  }

  private Set<String> nearestTests(int start) {
    TestMention nearest = null;
    for (TestMention test : tests) {
      boolean near =
          sentence.text().length() < 200
              && Math.abs(clauses.at(test.start()) - clauses.at(start)) <= 2;
      if (test.start() < start || nearest == null && near && cues.isEmpty()) {
        nearest = test;
      }
    }
    if (nearest == null) {
      return Set.of();
    }
    Set<String> same = new LinkedHashSet<>();
    for (TestMention test : tests) {
      if (test.start() == nearest.start()) {
        same.add(test.test());
      }
    }
    return same;
  }
}
