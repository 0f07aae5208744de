package ovenproof.evidence.photo;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a printed label in the frame says: the run, and perhaps batch and face. Written as {@code
 * run:toast-alder-1/batch:2/face:underside}; a bare key of a run does as well.
 */
public record RunLabel(String run, @Nullable Integer batch, @Nullable String face) {
  private static final Pattern TEXT =
      Pattern.compile(
          "(?:run:)?([\\p{L}\\p{N}_.-]{1,100})(?:/batch:(\\d{1,2}))?(?:/face:([\\p{L}\\p{N}_.-]{1,60}))?");

  /** Reads what a code holds; empty when it is no label of a run. */
  public static Optional<RunLabel> read(String text) {
    Matcher label = TEXT.matcher(text.strip());
    if (!label.matches()) {
      return Optional.empty();
    }
    String batch = label.group(2);
    return Optional.of(
        new RunLabel(
            label.group(1), batch == null ? null : Integer.valueOf(batch), label.group(3)));
  }

  /** What the code holds. */
  public String text() {
    return "run:"
        + run
        + (batch == null ? "" : "/batch:" + batch)
        + (face == null ? "" : "/face:" + face);
  }
}
