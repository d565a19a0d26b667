/**
 * Commands for units that send now: record, mark, units. In: arguments. Out: an exit code. Start at
 * {@link RecordCommand}.
 */
@NullMarked
package steadyturn.cli.command.live;

import org.jspecify.annotations.NullMarked;
