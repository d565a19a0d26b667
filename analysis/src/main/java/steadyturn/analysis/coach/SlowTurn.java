package steadyturn.analysis.coach;

import steadyturn.analysis.measure.MeasureValue;

/**
 * One turn of the pelvis away from its rest and back, without a full swing: a rehearsal.
 *
 * @param timeS when it had turned furthest, s on the recording's axis
 * @param turn how far it turned by then, deg, negative away from the target
 */
public record SlowTurn(double timeS, MeasureValue turn) {

  /** The same turn on a time axis that starts earlier by {@code byS}. */
  public SlowTurn later(double byS) {
    return new SlowTurn(timeS + byS, turn);
  }
}
