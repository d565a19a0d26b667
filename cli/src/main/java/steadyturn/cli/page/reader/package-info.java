/**
 * For whom a page is and how: teacher or player, millimetres or inches, name, sender and a sentence
 * of the teacher's own. Knows nothing of what the page says. Start at {@link Audience}.
 */
@NullMarked
package steadyturn.cli.page.reader;

import org.jspecify.annotations.NullMarked;
