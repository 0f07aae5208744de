package ovenproof.core.panel.table;

/** What a column says. */
public enum Role {
  ASSESSOR("who rated"),
  PRODUCT("what was rated"),
  SESSION("which sitting"),
  BATCH("which batch"),
  REPLICATE("which repetition"),
  ORDER("place in the serving order"),
  ATTRIBUTE("what was judged"),
  CONDITION("another crossed circumstance"),
  MARK("marks"),
  IGNORED("not a rating");

  private final String words;

  Role(String words) {
    this.words = words;
  }

  /** The role in words. */
  public String words() {
    return words;
  }
}
