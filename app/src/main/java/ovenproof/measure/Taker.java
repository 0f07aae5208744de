package ovenproof.measure;

import java.util.List;
import ovenproof.core.measure.Measurement;
import ovenproof.method.MeasureUse;

/** Takes one measure of one run: the arm that reaches from the registry to a kind of evidence. */
interface Taker {

  /**
   * The measurements inside the run: one per batch, piece, face or channel, or a single one. Never
   * empty: what could not be measured is a missing measurement with its reason.
   */
  List<Measurement> take(RunEvidence run, MeasureUse use);
}
