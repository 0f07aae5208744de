package ovenproof.campaign;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.DateOrder;

/**
 * Whose heat a channel of a logger file shows, and from when to when.
 *
 * <p>One file may serve many runs (several products, one logger) and one run several files. The
 * window of a run comes from its events; {@code from} and {@code to} only limit the binding.
 *
 * @param file path in the campaign folder
 * @param channel name of the channel in the file
 * @param place {@code centre}, {@code front-left}, {@code core-1}, {@code ambient}, {@code power},
 *     {@code mains} …
 * @param product whose appliance it is; null when {@code run} is given, or for the room
 * @param run one run only
 * @param instrument key of the probe or meter
 * @param starts wall clock of the file's time zero, for files without one; null: the clock in the
 *     file, or the start of {@code run}
 * @param clockOffsetSeconds to be added to the file's clock
 * @param readAs what a person said where the file leaves its reading open; null: nothing
 */
public record TraceBinding(
    String file,
    String channel,
    String place,
    @Nullable String product,
    @Nullable String run,
    @Nullable String instrument,
    @Nullable Instant from,
    @Nullable Instant to,
    @Nullable Instant starts,
    double clockOffsetSeconds,
    @Nullable ReadAs readAs,
    @Nullable String note) {

  /** A binding to a file that tells everything itself. */
  public TraceBinding(
      String file,
      String channel,
      String place,
      @Nullable String product,
      @Nullable String run,
      @Nullable String instrument,
      @Nullable Instant from,
      @Nullable Instant to,
      @Nullable Instant starts,
      double clockOffsetSeconds,
      @Nullable String note) {
    this(
        file,
        channel,
        place,
        product,
        run,
        instrument,
        from,
        to,
        starts,
        clockOffsetSeconds,
        null,
        note);
  }

  /** The same under another reading of the file. */
  public TraceBinding withReading(@Nullable ReadAs as, @Nullable String why) {
    return new TraceBinding(
        file,
        channel,
        place,
        product,
        run,
        instrument,
        from,
        to,
        starts,
        clockOffsetSeconds,
        as,
        why);
  }

  /**
   * A person's answers to what a file leaves open; each null when nothing was said.
   *
   * @param intervalSeconds distance of rows of a file without times
   * @param temperatures unit of temperatures whose unit is not written
   * @param dates order of dates whose form leaves it open
   * @param counts unit of a time column whose unit is not written
   */
  public record ReadAs(
      @Nullable Double intervalSeconds,
      @Nullable Unit temperatures,
      @Nullable DateOrder dates,
      @Nullable Unit counts) {

    /** Nothing said of what a time column counts. */
    public ReadAs(
        @Nullable Double intervalSeconds, @Nullable Unit temperatures, @Nullable DateOrder dates) {
      this(intervalSeconds, temperatures, dates, null);
    }

    public boolean saysNothing() {
      return intervalSeconds == null && temperatures == null && dates == null && counts == null;
    }
  }
}
