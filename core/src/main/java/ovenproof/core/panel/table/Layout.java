package ovenproof.core.panel.table;

/** Where products and people stand. */
public enum Layout {
  /** One row per person and product, one or several attributes in columns. */
  LONG("long: one row per person and product"),
  /** One row per person and product and attribute. */
  LONG_ATTRIBUTES("long: one row per person, product and attribute"),
  PRODUCTS_IN_COLUMNS("wide: products in columns, people in rows"),
  PRODUCTS_IN_ROWS("wide: products in rows, people in columns"),
  /** Rows of products, nobody named. */
  UNNAMED("one row per mark, people not named"),
  /** One row per product, how many people gave each mark in columns. */
  TALLY("counts of each mark: products in rows, steps of the scale in columns"),
  /** One row per person, products in the order of preference in columns. */
  PLACINGS("placings: people in rows, places in columns, products in the cells"),
  UNREADABLE("not understood");

  private final String words;

  Layout(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
