/**
 * A lesson without hardware: virtual units at serial ports, worn by a virtual player who does what
 * the page asks for. The one room beside the laboratory's own commands that makes movements up;
 * what measures them sees ports and nothing else. Start at {@link
 * steadyturn.cli.command.rehearsal.RehearsedPlayer}.
 */
@NullMarked
package steadyturn.cli.command.rehearsal;

import org.jspecify.annotations.NullMarked;
