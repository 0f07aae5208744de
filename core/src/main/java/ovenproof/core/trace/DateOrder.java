package ovenproof.core.trace;

/** How a date of three numbers is to be read when its form does not tell. */
public enum DateOrder {
  /** 03/11/2026 is 3 November. */
  DAY_FIRST,
  /** 03/11/2026 is 11 March. */
  MONTH_FIRST,
  /** 26-11-03 is 3 November 2026; only for years of two digits. */
  YEAR_FIRST;

  /** In words. */
  String words() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
  }
}
