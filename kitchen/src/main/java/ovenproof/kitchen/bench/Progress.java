package ovenproof.kitchen.bench;

/** Hears how far the kitchen has come. Called from several threads. */
@FunctionalInterface
public interface Progress {

  /** Tells nobody. */
  Progress SILENT = (what, done, of) -> {};

  /**
   * @param what what is being made, in words
   * @param done how many are ready
   * @param of how many there will be
   */
  void reached(String what, int done, int of);
}
