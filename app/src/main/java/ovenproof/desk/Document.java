package ovenproof.desk;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One revision of a document.
 *
 * @param name {@link #METHOD}, {@link #FIELD}, {@link #VERDICT} or {@link #DRAFT}
 * @param revision from 1
 * @param why the reason given for the change, or null
 */
public record Document(
    String name, long revision, String who, Instant at, @Nullable String why, String body) {

  /** The method's text as written. */
  public static final String METHOD = "method";

  /** The text to be published, with what it rested on when it was last looked at. */
  public static final String DRAFT = "draft";

  /** Products and everything else that is known of the field before anything is cooked. */
  public static final String FIELD = "field";

  /** A verdict as it stood when somebody froze it; each revision is one of them. */
  public static final String VERDICT = "verdict";
}
