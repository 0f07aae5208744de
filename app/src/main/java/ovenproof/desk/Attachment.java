package ovenproof.desk;

import java.time.Instant;

/** A file of a campaign: its name there, and the evidence behind it. */
public record Attachment(
    String path, long seq, String sha256, long bytes, String who, Instant at) {}
