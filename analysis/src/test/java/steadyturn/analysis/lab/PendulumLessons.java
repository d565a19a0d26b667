package steadyturn.analysis.lab;

import java.util.List;
import steadyturn.analysis.lab.pendulum.PendulumSwing;

/**
 * Lessons in which the lead arm and wrist follow given pendulums, one hit each, in their order;
 * what the spec says of hits and practice swings is passed over. Arm and club turn in one plane
 * (the forearm rolled by 90 deg) from the top to the pendulum's impact.
 */
public final class PendulumLessons {

  private PendulumLessons() {}

  private record Course(PendulumSwing pendulum) implements ArmCourse {
    @Override
    public double downS() {
      return pendulum.impactS();
    }

    @Override
    public void lay(Stage stage, SwingPlan plan, double startS, double topS) {
      new PendulumMoves(stage, plan, startS, topS, pendulum).lay();
    }
  }

  public static SyntheticLesson simulate(
      LessonSpec spec, List<PendulumSwing> pendulums, long seed) {
    List<ArmCourse> courses = pendulums.stream().<ArmCourse>map(Course::new).toList();
    return LessonSimulator.simulate(spec, courses, seed);
  }
}
