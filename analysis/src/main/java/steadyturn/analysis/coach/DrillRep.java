package steadyturn.analysis.coach;

import steadyturn.analysis.measure.MeasureValue;

/**
 * One repetition of a drill.
 *
 * @param swing number of the swing it is
 * @param value what judges it
 * @param inBand whether the value lies in the drill's band
 */
public record DrillRep(int swing, MeasureValue value, boolean inBand) {}
