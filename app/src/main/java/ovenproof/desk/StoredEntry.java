package ovenproof.desk;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * An entry as the desk keeps it.
 *
 * @param seq order of receipt in its campaign, from 1
 * @param body the campaign's record of this kind
 */
public record StoredEntry(
    String key,
    long seq,
    EntryKind kind,
    String who,
    Instant deviceTime,
    long clockOffsetMillis,
    @Nullable Long clockUncertaintyMillis,
    Instant receivedAt,
    @Nullable String corrects,
    Object body) {}
