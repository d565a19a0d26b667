/**
 * One short class a command, in rooms by what they are about. In: its options and the two writers
 * of the command line. Out: an exit code. Start at {@link Commands}, the table of all commands; a
 * new one is a class and a line there. Commands read, call {@code analysis} and hand the result to
 * {@code cli.output}; they compute nothing themselves.
 */
@NullMarked
package steadyturn.cli.command;

import org.jspecify.annotations.NullMarked;
