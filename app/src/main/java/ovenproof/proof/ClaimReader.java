package ovenproof.proof;

/**
 * Finds one kind of claim in a sentence. Readers run in order; what one has taken, later ones leave
 * alone.
 */
interface ClaimReader {
  void read(SentenceClaims sentence);
}
