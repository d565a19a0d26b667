package steadyturn.cli.command.lesson;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import picocli.CommandLine.Option;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.cli.terminal.Console;
import steadyturn.cli.words.Words;

/**
 * Which groups are compared. Every pair is a table of its own and asks for stronger evidence in all
 * of them, so beyond a few lessons it is the latest with the one before and the first, unless told.
 */
final class GroupChoice {

  /** Ten tables, and what a person reads (our choice). */
  private static final int MOST_LESSONS = 5;

  /** More clubs than a bag holds (14 by the rules of the game), with a few marked twice. */
  private static final int MOST_CLUBS = 20;

  @Option(names = "--only", paramLabel = "GROUP")
  private List<String> only = List.of();

  /** Of groups by club. */
  List<SwingGroup> ofClubs(List<SwingGroup> groups, Console console) {
    List<SwingGroup> chosen = chosen(groups, console);
    if (chosen.size() > MOST_CLUBS) {
      throw console.wrongUsage(Words.say("compare.too-many", chosen.size(), tables(chosen)));
    }
    return chosen;
  }

  /** Of groups by lesson. */
  List<SwingGroup> ofLessons(List<SwingGroup> groups, Gathered gathered, Console console) {
    List<SwingGroup> chosen = new ArrayList<>(chosen(groups, console));
    if (chosen.stream().noneMatch(g -> gathered.day(g.name()).isEmpty())) {
      chosen.sort(Comparator.comparing(g -> gathered.day(g.name())));
    }
    int n = chosen.size();
    if (n <= MOST_LESSONS) {
      return chosen;
    }
    if (!only.isEmpty() || gathered.players().size() > 1) {
      throw console.wrongUsage(Words.say("compare.too-many", n, tables(chosen)));
    }
    List<SwingGroup> three = List.of(chosen.get(0), chosen.get(n - 2), chosen.get(n - 1));
    console.warn(
        Words.say(
            "compare.three",
            n,
            tables(chosen),
            three.get(0).name(),
            three.get(1).name(),
            three.get(2).name()));
    return three;
  }

  private static int tables(List<SwingGroup> groups) {
    return groups.size() * (groups.size() - 1) / 2;
  }

  private List<SwingGroup> chosen(List<SwingGroup> groups, Console console) {
    for (String name : only) {
      if (groups.stream().noneMatch(group -> is(group, name))) {
        throw console.wrongUsage(Words.say("compare.no-group", name));
      }
    }
    return only.isEmpty()
        ? groups
        : groups.stream().filter(g -> only.stream().anyMatch(name -> is(g, name))).toList();
  }

  /** A lesson by its label alone, too. */
  private static boolean is(SwingGroup group, String name) {
    return group.name().equals(name) || group.name().endsWith("_ses-" + name);
  }
}
