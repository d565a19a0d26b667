package steadyturn.fusion.displace;

import java.util.List;

/** The estimates of all swings of one unit, in the order they were given. */
public record LessonFit(List<SwingFit> swings) {

  public LessonFit {
    swings = List.copyOf(swings);
  }
}
