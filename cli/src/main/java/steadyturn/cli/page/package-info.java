/**
 * The page to send home: one file of HTML with pictures drawn as inline SVG, which needs nothing
 * from a network, prints on two A4 pages and reads on a phone; and the same content as JSON. In: a
 * lesson's {@link steadyturn.analysis.lesson.LessonResult}s and the teacher's rules. Out: text.
 * Start at {@link Sheet}, which gathers the content, and {@link Page}, which writes it. Every
 * sentence comes from {@link steadyturn.cli.words.Words}.
 */
@NullMarked
package steadyturn.cli.page;

import org.jspecify.annotations.NullMarked;
