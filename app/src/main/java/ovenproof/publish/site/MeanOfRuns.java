package ovenproof.publish.site;

import static j2html.TagCreator.br;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.join;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
import static j2html.TagCreator.span;

import j2html.tags.DomContent;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.Sign;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.measure.Measured.Value;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;

/** What several runs say together: their mean, or the bounds of it, and over how many runs. */
final class MeanOfRuns {
  private final List<Measurement> runs;
  private final Measurement mean;

  /**
   * @param values at least one
   */
  MeanOfRuns(List<Value> values) {
    runs = values.stream().map(Value::value).toList();
    mean =
        runs.size() == 1
            ? runs.get(0)
            : Averaging.mean(runs, Subject.ofProduct(values.get(0).product()));
  }

  Measurement measurement() {
    return mean;
  }

  /** Runs in which something was measured. */
  int n() {
    return (int) runs.stream().filter(m -> !m.isMissing()).count();
  }

  private int censored() {
    return (int) runs.stream().filter(m -> m.censored() != Censoring.NONE).count();
  }

  /** Value in both systems, number of runs, and what must be said beside it. */
  DomContent cell() {
    if (mean.isMissing()) {
      return join(rawHtml(Sign.EMPTY.svg()), small(first(mean.note())).withClass("quiet why"));
    }
    Dual dual = Figures.of(mean);
    return join(
        iff(mean.censored() != Censoring.NONE, rawHtml(Sign.OVER.svg())),
        span(dual.first()).withClass("nowrap"),
        iff(
            dual.second() != null,
            join(br(), small(note(dual.second())).withClass("quiet nowrap"))),
        br(),
        small(count()).withClass("quiet"));
  }

  /** {@code n = 3}, {@code n = 3, 2 at the cap}. */
  String count() {
    String n = "n" + Figures.GAP + "=" + Figures.GAP + n();
    return censored() == 0 ? n : n + ", " + censored() + " bounded";
  }

  /** The first reason of several that say the same of each run; all stand on the runs' pages. */
  private static String first(@Nullable String note) {
    return note(note).split("; ", 2)[0];
  }

  private static String note(@Nullable String note) {
    return Objects.requireNonNullElse(note, "");
  }
}
