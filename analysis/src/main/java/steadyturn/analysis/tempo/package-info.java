/**
 * How long the parts of a swing last and in which order the body's parts are fastest. In: a {@link
 * steadyturn.analysis.swing.Swing} and the streams. Out: measures with intervals. Start at {@link
 * TempoMeasures}. Judges nothing: the order is shown, never passed or failed.
 */
@NullMarked
package steadyturn.analysis.tempo;

import org.jspecify.annotations.NullMarked;
