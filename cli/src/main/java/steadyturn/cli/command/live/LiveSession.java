package steadyturn.cli.command.live;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.live.LiveEvents;
import steadyturn.analysis.live.LiveLesson;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.terminal.Console;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.ingest.live.LiveListener;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.recording.dataset.Participants;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.serial.HostTime;

/**
 * One run of a lesson that is recorded and answered at once: the recorder, the room that answers
 * every ball, and the ports between them. Whoever shows it only listens.
 */
public final class LiveSession implements AutoCloseable {

  private static final double LET_GO_S = 10;

  private final LiveRecorder recorder;
  private final LiveLesson lesson;
  private final LivePorts ports = new LivePorts();
  private final Player player;
  private final double zeroS;
  private final LocalDateTime zero;

  private LiveSession(
      Path root,
      LiveRecorder recorder,
      Player player,
      AnalysisSettings settings,
      LiveEvents hears) {
    this.recorder = recorder;
    this.player = player;
    zeroS = HostTime.steadyS();
    zero = recorder.timeOfDay(zeroS);
    lesson =
        new LiveLesson(
            recorder.label().id(), player, CalibrationStore.of(root)::applyTo, hears, settings);
    recorder.tellMarks(
        mark -> tell(mark, () -> lesson.mark(mark.since(zero))),
        mark -> tell(mark, () -> lesson.unmark(mark.since(zero))));
  }

  /**
   * Begins the next run of a lesson.
   *
   * @param given the player; what the archive knows of them already holds
   * @param label of the lesson
   * @param hears what is found, by one thread
   */
  public static LiveSession start(
      Path root,
      Player given,
      String label,
      AnalysisSettings settings,
      LiveEvents hears,
      Console console)
      throws IOException {
    List<LessonReading> earlier = earlier(root, given.id(), label, console);
    LiveRecorder recorder = LiveRecorder.start(root, given, label);
    Player known = Participants.player(root, given.id(), new ArrayList<>()); // as it is read later
    LiveSession session = new LiveSession(root, recorder, known, settings, hears);
    earlier.forEach(session.lesson::before);
    return session;
  }

  /** A ball of some time ago was answered and let go; what is said of it now is for the file. */
  private void tell(LiveMark mark, Runnable lives) {
    boolean isOfEarlier =
        MarkWord.of(mark.trialType()).filter(MarkWord::isAbout).isPresent()
            && mark.since(zero).onsetS() < nowS() - LET_GO_S;
    if (!isOfEarlier) {
      lives.run();
    }
  }

  /** What was recorded of this lesson before, where wear steps may lie. */
  private static List<LessonReading> earlier(
      Path root, String player, String label, Console console) {
    List<LessonReading> earlier = new ArrayList<>();
    if (Files.isDirectory(root.resolve("sub-" + player).resolve("ses-" + label))) {
      Lessons there = Lessons.under(List.of(root), console);
      there.eachOf(
          player,
          session -> {
            if (session.lesson().equals(label)) {
              earlier.add(LessonReading.ofSteps(session, there));
            }
          });
    }
    return earlier;
  }

  /** Begins to read the units. */
  public void open(List<UnitChoice> units, PortOptions options, LiveListener besides) {
    ports.open(recorder, units, options, () -> new LessonFeed(lesson, zero, besides));
  }

  /** Time on the lesson's axis, s. */
  public double nowS() {
    return HostTime.steadyS() - zeroS;
  }

  /** The time of day at an instant of the lesson's axis. */
  public LocalDateTime timeOfDay(double atS) {
    return zero.plusNanos(Math.round(1e9 * atS));
  }

  public LiveRecorder recorder() {
    return recorder;
  }

  public LiveLesson lesson() {
    return lesson;
  }

  public LivePorts ports() {
    return ports;
  }

  /** As the archive knows them. */
  public Player player() {
    return player;
  }

  /** Whether all that was taken is on the disk and every unit was read to the end. */
  public boolean isWell() {
    return recorder.stopped().isEmpty()
        && recorder.missing() == 0
        && recorder.kept() > 0
        && ports.nobodyGivenUp();
  }

  @Override
  public void close() {
    ports.close();
    recorder.close();
    lesson.close();
  }
}
