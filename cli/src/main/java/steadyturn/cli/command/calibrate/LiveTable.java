package steadyturn.cli.command.calibrate;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import steadyturn.cli.command.live.PortOptions;
import steadyturn.cli.command.live.UnitChoice;
import steadyturn.cli.words.Words;
import steadyturn.fusion.calibrate.CalibrationException;
import steadyturn.ingest.live.LiveMark;
import steadyturn.ingest.live.LiveRecorder;
import steadyturn.ingest.live.LiveState;
import steadyturn.ingest.live.LiveUnit;
import steadyturn.ingest.live.NewestSamples;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.serial.HostTime;
import steadyturn.ingest.serial.SerialPortSource;

/** One live unit that is handled on a table: recorded into a dataset, and looked at meanwhile. */
final class LiveTable implements AutoCloseable {

  /** Who the recordings belong to: no player. */
  private static final String NOBODY = "units";

  /** A unit says hello once a second and is given this long to begin, s. */
  private static final double BEGIN_S = 5;

  /** A port that is not there is waited for no longer than this, s. */
  private static final double APPEAR_S = 1.5;

  private static final int LOOK_EVERY_MS = 100;

  private final Path root;
  private final String path;
  private final LiveRecorder recorder;
  private final LiveUnit unit;
  private final SerialPortSource source;
  private final NewestSamples samples = new NewestSamples();
  private boolean isClosed;

  private LiveTable(Path root, UnitChoice choice, PortOptions options) throws IOException {
    this.root = root;
    path = choice.path();
    String today = LocalDate.now(ZoneId.systemDefault()).toString().replace("-", "");
    recorder = LiveRecorder.start(root, Player.unmeasured(NOBODY, Handedness.RIGHT), today);
    SensorAdapter adapter = choice.newAdapter();
    unit = new LiveUnit(recorder, adapter, choice.point(), options.place(choice), this::heard);
    source = SerialPortSource.open(path, options.bauds(adapter), unit);
  }

  /** Opens the port and waits for the unit's first samples and its hello. */
  static LiveTable open(Path root, UnitChoice choice, PortOptions options) throws IOException {
    LiveTable table = new LiveTable(root, choice, options);
    double fromS = HostTime.steadyS();
    LiveState state = table.unit.state();
    while (HostTime.steadyS() - fromS < (state.isThere() ? BEGIN_S : APPEAR_S)
        && !(state.samples() > 0 && state.isKnown())) {
      pause();
      state = table.unit.state();
    }
    if (state.samples() == 0) {
      String why = state.trouble().isEmpty() ? Words.say("calibrate.silent") : state.trouble();
      table.close();
      throw new CalibrationException(
          choice.path() + " " + why + "; plug the unit in, switch it on and begin again");
    }
    return table;
  }

  private void heard(BodyPoint point, double timeS, double[] accelMps2, double[] gyroRadPerS) {
    samples.add(unit.latencyS(), accelMps2, gyroRadPerS);
  }

  static void pause() {
    try {
      Thread.sleep(LOOK_EVERY_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CalibrationException("interrupted");
    }
  }

  String serialNumber() {
    return unit.state().serialNumber();
  }

  /** Seconds since the unit's first sample. */
  double nowS() {
    return unit.latencyS();
  }

  UnitStream since(double fromS) {
    BodyPoint at = unit.state().point().orElse(BodyPoint.PELVIS);
    UnitFacts facts = UnitFacts.plain(at, Math.max(1, unit.state().rateHz()));
    samples.dropBefore(fromS);
    return samples.between(facts, fromS, Double.POSITIVE_INFINITY);
  }

  /** Why no samples come now; empty while all is well. */
  Optional<String> trouble() {
    LiveState state = unit.state();
    String why = state.trouble().isEmpty() ? Words.say("calibrate.silent") : state.trouble();
    boolean isWell = state.isThere() && state.trouble().isEmpty() && recorder.stopped().isEmpty();
    return isWell ? Optional.empty() : Optional.of(path + " " + recorder.stopped().orElse(why));
  }

  /** Notes what was taken beside the recording. */
  void note(List<Mark> taken) {
    for (Mark mark : taken) {
      recorder.mark(
          new LiveMark(
              unit.timeOfDay(mark.onsetS()),
              mark.durationS(),
              mark.trialType(),
              mark.club(),
              mark.note()));
    }
  }

  /** What was recorded; the table is closed before. */
  SessionRun recorded() {
    close();
    if (recorder.stopped().isPresent() || recorder.missing() > 0) {
      throw new CalibrationException(
          recorder.stopped().orElse("not everything taken is on the disk") + "; begin again");
    }
    String id = recorder.label().id();
    return Archive.open(root).sessions().stream()
        .flatMap(session -> session.runs().stream())
        .filter(run -> run.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new CalibrationException(root + " lacks the recording " + id));
  }

  /** Stops listening; the clock is then known as well as it ever will be. */
  void endListening() {
    source.close();
    unit.betterStart();
  }

  @Override
  public void close() {
    if (!isClosed) {
      isClosed = true;
      endListening();
      recorder.close();
    }
  }
}
