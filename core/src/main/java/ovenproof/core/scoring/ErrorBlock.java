package ovenproof.core.scoring;

import ovenproof.core.random.RandomStreams;

/** Errors of one variable in one block of draws, filled anew for each. Confined to one thread. */
final class ErrorBlock {
  final double[] values = new double[RandomStreams.BLOCK];

  /** What none of the values exceeds in absolute value. */
  double reach;
}
