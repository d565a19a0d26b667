/**
 * Commands that look after the archive itself: its players and lessons. In: words typed by a
 * person. Out: lists and what was done. Start at {@link PlayersCommand}. Measures nothing.
 */
@NullMarked
package steadyturn.cli.command.archive;

import org.jspecify.annotations.NullMarked;
