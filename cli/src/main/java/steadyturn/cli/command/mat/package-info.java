/**
 * The lesson at the mat as its page shows it: who, which units, wear steps, balls, drill, closing.
 * It computes nothing of its own: what it tells comes from the live room and, at the end, from the
 * same analysis as {@code analyze}. In: what the page asks for. Out: what every page is told. Start
 * at {@link steadyturn.cli.command.mat.LessonRoom}.
 */
@NullMarked
package steadyturn.cli.command.mat;

import org.jspecify.annotations.NullMarked;
