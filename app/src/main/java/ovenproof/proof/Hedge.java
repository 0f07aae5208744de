package ovenproof.proof;

/** How firmly a number is stated. What each word claims is in docs/publish.md, under proofread. */
enum Hedge {
  /** "17 minutes". */
  PLAIN,
  /** "about", "around", "roughly". */
  ABOUT,
  /** "almost", "nearly", "just under". */
  ALMOST,
  /** "just over", "a little more than". */
  JUST_OVER,
  /** "over", "more than". */
  OVER,
  /** "at least". */
  AT_LEAST,
  /** "under", "less than", "within". */
  UNDER,
  /** "at most", "up to". */
  AT_MOST
}
