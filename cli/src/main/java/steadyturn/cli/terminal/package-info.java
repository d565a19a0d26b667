/**
 * What each command says and shows while it runs: the console, its progress, its failures. In:
 * messages. Out: lines and an exit code. Start at {@link Console}.
 */
@NullMarked
package steadyturn.cli.terminal;

import org.jspecify.annotations.NullMarked;
