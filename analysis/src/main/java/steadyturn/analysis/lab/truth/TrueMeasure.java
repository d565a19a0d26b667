package steadyturn.analysis.lab.truth;

import steadyturn.analysis.measure.Measure;

/**
 * The true value of a measure, by the words of the output contract.
 *
 * @param at key position, or an empty string for the whole swing
 * @param value in the measure's unit
 */
public record TrueMeasure(Measure measure, String at, double value) {}
