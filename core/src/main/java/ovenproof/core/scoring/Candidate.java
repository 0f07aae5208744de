package ovenproof.core.scoring;

import java.util.Map;

/**
 * A product with what was measured of it.
 *
 * @param answers by id of the variable; a variable without answer counts as missing
 * @param plannedRuns runs of every variable that are not done yet but counted for the width of
 *     intervals, for "how many more runs"; 0 for a verdict
 */
public record Candidate(String id, String label, Map<String, Answer> answers, int plannedRuns) {

  private static final Answer NOTHING = new Answer.Missing("nothing was recorded");

  public Candidate {
    answers = Map.copyOf(answers);
    if (plannedRuns < 0) {
      throw new IllegalArgumentException("plannedRuns must be 0 or more, found " + plannedRuns);
    }
  }

  public static Candidate of(String id, Map<String, Answer> answers) {
    return new Candidate(id, id, answers, 0);
  }

  public Answer answer(String variable) {
    return answers.getOrDefault(variable, NOTHING);
  }

  public Candidate withAnswers(Map<String, Answer> newAnswers) {
    return new Candidate(id, label, newAnswers, plannedRuns);
  }

  public Candidate withPlannedRuns(int runs) {
    return new Candidate(id, label, answers, runs);
  }
}
