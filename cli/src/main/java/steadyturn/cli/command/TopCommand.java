package steadyturn.cli.command;

import picocli.CommandLine.Command;

/** The words before any command, for the completion script. */
@Command(name = "steadyturn", mixinStandardHelpOptions = true)
final class TopCommand {}
