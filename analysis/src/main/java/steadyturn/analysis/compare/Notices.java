package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import steadyturn.ingest.reason.Reason;

/** What keeps a reader from believing more than the design of the comparison allows. */
final class Notices {

  private Notices() {}

  static List<Reason> of(List<SwingGroup> groups) {
    List<Reason> notices = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      for (int j = i + 1; j < groups.size(); j++) {
        pair(groups.get(i), groups.get(j), notices);
      }
    }
    return List.copyOf(notices);
  }

  private static void pair(SwingGroup a, SwingGroup b, List<Reason> notices) {
    Set<String> lessonsA = lessons(a);
    Set<String> lessonsB = lessons(b);
    if (!lessonsA.equals(lessonsB)) {
      notices.add(Reason.of(CompareReason.OTHER_LESSONS, a.name(), b.name()));
    } else if (lessonsA.stream().allMatch(lesson -> inBlocks(a, b, lesson))) {
      notices.add(Reason.of(CompareReason.IN_BLOCKS, a.name(), b.name()));
    }
  }

  private static Set<String> lessons(SwingGroup group) {
    return group.swings().stream()
        .map(LessonSwing::lesson)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean inBlocks(SwingGroup a, SwingGroup b, String lesson) {
    List<Integer> first = numbers(a, lesson);
    List<Integer> second = numbers(b, lesson);
    return Collections.max(first) < Collections.min(second)
        || Collections.max(second) < Collections.min(first);
  }

  private static List<Integer> numbers(SwingGroup group, String lesson) {
    return group.swings().stream()
        .filter(s -> s.lesson().equals(lesson))
        .map(LessonSwing::ball)
        .toList();
  }
}
