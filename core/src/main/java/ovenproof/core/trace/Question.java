package ovenproof.core.trace;

import java.util.List;

/**
 * Something the file does not tell, with every reading it allows.
 *
 * @param id {@code date-order}, {@code temperature-unit}, {@code interval}, {@code time-unit}, …
 * @param text the question as a person would ask it
 * @param readings the possible answers, each in words; the first is the one assumed meanwhile
 * @param why what the assumption rests on
 */
public record Question(String id, String text, List<String> readings, String why) {
  public Question {
    readings = List.copyOf(readings);
  }

  public String assumed() {
    return readings.get(0);
  }
}
