package ovenproof.campaign;

import java.util.IntSummaryStatistics;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A worded step that one person chose for a rated fact, with the reason. */
public record RatedStep(
    String product,
    String fact,
    String rater,
    int step,
    @Nullable String reason,
    @Nullable String photo,
    @Nullable String note,
    Provenance origin)
    implements Entry {

  /** Steps this far apart are a disagreement: one step is what careful people differ by. */
  private static final int APART = 2;

  /** Whether the steps that people chose for the same thing lie too far apart to be averaged. */
  public static boolean disagree(List<RatedStep> steps) {
    IntSummaryStatistics chosen = steps.stream().mapToInt(RatedStep::step).summaryStatistics();
    return !steps.isEmpty() && chosen.getMax() - chosen.getMin() >= APART;
  }
}
