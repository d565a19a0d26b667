package steadyturn.analysis.coach.teaching;

import java.util.List;

/**
 * What makes a finding, or something already good: all its conditions together.
 *
 * @param covers names of findings further down that this one explains, so that they are not told a
 *     second time
 * @param tendsTo names of consequences, in the order they follow one another
 * @param confidence {@code likely} or {@code possible}; empty for something good
 */
public record Rule(
    String name,
    List<Need> when,
    List<String> covers,
    List<String> tendsTo,
    String confidence,
    String source,
    List<String> drills) {

  public Rule {
    when = List.copyOf(when);
    covers = List.copyOf(covers);
    tendsTo = List.copyOf(tendsTo);
    drills = List.copyOf(drills);
    if (when.isEmpty()) {
      throw new TeachingException(name + ": needs at least one condition under \"when\".");
    }
  }
}
