/**
 * The teaching file: rules, limits, consequences and drills as a teacher wrote them. In: TOML text.
 * Out: {@link Teaching}. Start at {@link TeachingReader}. Judges no swing.
 */
@NullMarked
package steadyturn.analysis.coach.teaching;

import org.jspecify.annotations.NullMarked;
