/**
 * Commands of the lab: simulate lessons, study accuracy. In: arguments. Out: an exit code. Start at
 * {@link SimulateCommand}. The only room here that sees {@code analysis.lab}.
 */
@NullMarked
package steadyturn.cli.command.lab;

import org.jspecify.annotations.NullMarked;
