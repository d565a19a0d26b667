/**
 * What the teacher says next: findings with their chain of cause and effect, what is already good,
 * drills with a number to reach, and a swing held against a model. In: {@link
 * steadyturn.analysis.lesson.LessonResult} and the rules of {@link
 * steadyturn.analysis.coach.teaching.Teaching}, which a teacher can edit. Out: {@link Advice},
 * {@link steadyturn.analysis.coach.drill.DrillScore}, {@link ModelComparison}. Start at {@link
 * Coach}. Words, pages and tables are left to others.
 */
@NullMarked
package steadyturn.analysis.coach;

import org.jspecify.annotations.NullMarked;
