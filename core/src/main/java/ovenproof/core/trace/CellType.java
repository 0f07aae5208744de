package ovenproof.core.trace;

/** What one cell of a table may be. */
enum CellType {
  NUMBER,
  /** A number with its unit behind it. */
  SUFFIXED,
  TIME,
  /** A word that loggers write when they have nothing to write. */
  MISSING,
  EMPTY,
  WORD;

  boolean isNumeric() {
    return this == NUMBER || this == SUFFIXED;
  }

  boolean isBlank() {
    return this == MISSING || this == EMPTY;
  }
}
