package ovenproof.desk;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Something to append.
 *
 * @param key made by the sender, so that sending it twice changes nothing
 * @param body the campaign's record of this kind
 * @param stamp who, and when by which clock
 * @param corrects key of the entry that this one replaces, or null
 */
public record NewEntry(
    String key, EntryKind kind, Object body, Stamp stamp, @Nullable String corrects) {

  public NewEntry {
    if (!kind.body().isInstance(body)) {
      throw new IllegalArgumentException(
          "body of " + kind + " must be a " + kind.body().getSimpleName() + ", found " + body);
    }
    if (!Keys.isKey(key)) {
      throw new IllegalArgumentException("key must be 8 to 80 letters, digits or hyphens: " + key);
    }
  }

  /**
   * Who and when.
   *
   * @param deviceTime what the sender's clock said
   * @param clockOffsetMillis the desk's clock minus the sender's, as the sender estimated it
   * @param clockUncertaintyMillis standard uncertainty of the offset; null when it was not
   *     estimated
   */
  public record Stamp(
      String who,
      Instant deviceTime,
      long clockOffsetMillis,
      @Nullable Long clockUncertaintyMillis) {

    public static Stamp of(String who, Instant now) {
      return new Stamp(who, now, 0, null);
    }

    /** The time on the desk's clock. */
    public Instant at() {
      return deviceTime.plusMillis(clockOffsetMillis);
    }
  }
}
