/**
 * Commands about recorded lessons: analyze, check, compare, demo, import, orient, progress, report.
 * In: arguments. Out: an exit code. Start at {@link AnalyzeCommand}.
 */
@NullMarked
package steadyturn.cli.command.lesson;

import org.jspecify.annotations.NullMarked;
