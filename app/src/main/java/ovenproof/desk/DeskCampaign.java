package ovenproof.desk;

import java.time.Instant;

/**
 * A campaign of the desk, in a line.
 *
 * @param version rises with every change: the key under which anything computed may be kept
 */
public record DeskCampaign(String id, Instant createdAt, String createdBy, long version) {}
