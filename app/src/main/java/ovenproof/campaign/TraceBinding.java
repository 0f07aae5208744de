package ovenproof.campaign;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

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
    @Nullable String note) {}
