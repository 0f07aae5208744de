package ovenproof.files;

/** A record and the row it was read from, so that a later check can name its place. */
record Rowed<T>(T value, Row row) {}
