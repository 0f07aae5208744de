package ovenproof.core.panel;

import java.util.List;

/**
 * What one person's marks of one attribute are like. For training and for the lead; never a reason
 * to drop somebody, and never published with a name.
 *
 * @param assessor who
 * @param attribute which attribute; {@code null}-free: "all" for the halo check
 * @param marks how many marks
 * @param mean mean mark; NaN without marks
 * @param level mean difference from the panel over the products both rated
 * @param spread standard deviation of this person's product means over that of the panel; 1 uses
 *     the scale like the panel, 0.5 half of it; NaN when the panel does not spread
 * @param repeatability standard deviation of the same sample again; NaN without a repetition
 * @param discrimination F of products against the person's own repetition; NaN without repetition
 * @param discriminationP its p value
 * @param agreement correlation of product means with the mean of the other people; NaN for fewer
 *     than three products
 * @param drift slope of the marks, products taken out, per place in the serving order; NaN when the
 *     order is not recorded
 * @param driftP its p value
 * @param weight by the declared rule; 1 when no weighting was declared
 * @param remarks in plain words
 */
public record AssessorCheck(
    String assessor,
    String attribute,
    int marks,
    double mean,
    double level,
    double spread,
    double repeatability,
    double discrimination,
    double discriminationP,
    double agreement,
    double drift,
    double driftP,
    double weight,
    List<String> remarks) {

  public AssessorCheck {
    remarks = List.copyOf(remarks);
  }
}
