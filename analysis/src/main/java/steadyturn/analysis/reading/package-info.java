/**
 * From the files of an archive to the results of a lesson. In: a lesson that an archive lists. Out:
 * its recordings one after the other, calibrated, long ones in pieces; its results. Start at {@link
 * LessonReading}. Computes nothing, keeps nothing.
 */
@NullMarked
package steadyturn.analysis.reading;

import org.jspecify.annotations.NullMarked;
