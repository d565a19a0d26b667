/**
 * Commands that hand results to other programs. In: words of the command line. Out: tables. Start
 * at {@link ExportCommand}. Computes nothing.
 */
@NullMarked
package steadyturn.cli.command.table;

import org.jspecify.annotations.NullMarked;
