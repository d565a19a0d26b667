package steadyturn.analysis.compare;

import java.util.List;

/** Swings that belong together under a name a person gave: a club, a lesson, before or after. */
public record SwingGroup(String name, List<LessonSwing> swings) {

  public SwingGroup {
    swings = List.copyOf(swings);
    if (name.isBlank() || swings.isEmpty()) {
      throw new IllegalArgumentException(
          "a group needs a name and swings, got \"" + name + "\" with " + swings.size());
    }
  }
}
