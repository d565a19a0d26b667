/**
 * The command that calibrates a unit, from tables or live. In: arguments. Out: an exit code. Start
 * at {@link CalibrateCommand}.
 */
@NullMarked
package steadyturn.cli.command.calibrate;

import org.jspecify.annotations.NullMarked;
