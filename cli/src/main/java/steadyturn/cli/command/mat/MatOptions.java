package steadyturn.cli.command.mat;

import java.nio.file.Path;
import java.util.List;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.cli.command.live.PortOptions;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.terminal.Console;

/**
 * What a lesson is given with the command.
 *
 * @param root the archive that it is recorded into
 * @param player whose lesson it is, or empty
 * @param units named with the command; none to look at every port
 */
record MatOptions(
    Path root,
    String player,
    List<UnitChoice> units,
    PortOptions ports,
    Teaching teaching,
    Console console) {}
