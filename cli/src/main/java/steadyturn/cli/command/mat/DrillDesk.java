package steadyturn.cli.command.mat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import steadyturn.analysis.coach.teaching.Teaching;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.ingest.sample.BodyPoint;

/** The drill that is being done, and the last one, whose difference is told afterwards. */
final class DrillDesk {

  private final Teaching teaching;
  private final Consumer<ObjectNode> cues;
  private volatile Optional<DrillRun> now = Optional.empty();
  private Optional<DrillRun> last = Optional.empty();

  /**
   * A desk without a drill.
   *
   * @param cues hears the live estimate as soon as it is had, by the thread of the pelvis unit's
   *     port, and must not wait
   */
  DrillDesk(Teaching teaching, Consumer<ObjectNode> cues) {
    this.teaching = teaching;
    this.cues = cues;
  }

  /** Begins a drill; one that has no such name ends what is done. */
  void begin(String name, Optional<MatSession> session) {
    last = now.or(() -> last);
    now =
        teaching.drills().stream()
            .filter(its -> its.name().equals(name) && session.isPresent())
            .findFirst()
            .map(its -> new DrillRun(its, teaching, session.orElseThrow().live()));
  }

  void end() {
    begin("", Optional.empty());
  }

  /** Another recording begins; its times are others. */
  void forget() {
    end();
    last = Optional.empty();
  }

  Optional<DrillRun> now() {
    return now;
  }

  void look() {
    now.ifPresent(DrillRun::look);
  }

  void sample(BodyPoint point, double timeS, double[] accel, double[] gyro) {
    now.flatMap(its -> its.sample(point, timeS, accel, gyro)).ifPresent(cues);
  }

  /** Takes a swing; the name of the drill that it is a repetition of, or nothing. */
  String take(SwingResult swing) {
    now.ifPresent(its -> its.swing(swing));
    return now.map(its -> its.drill().name()).orElse("");
  }

  /** How the last drill went and what it brought. */
  List<String> difference(List<SwingResult> full) {
    return last.map(its -> its.said(full)).orElse(List.of());
  }
}
