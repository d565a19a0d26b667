package steadyturn.analysis.rows;

import java.io.IOException;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Decimals;
import steadyturn.analysis.swing.EventTime;
import steadyturn.fusion.calibrate.CalibrationStore;
import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * How each unit was turned while a swing went on: unit coordinates into earth coordinates (z up,
 * heading free), by the whole recording, at the unit's own samples on the recording's common axis.
 */
public final class OrientationRows {

  private static final int DECIMALS = 9;
  private static final int SIGMA_DECIMALS = 4;

  private OrientationRows() {}

  /** The units of a run, calibrated, on one clock. */
  public static Iterable<UnitStream> units(SessionRun run) {
    return CommonClock.align(
            CalibrationStore.of(run.root()).applyTo(RecordingReader.read(run).recording()))
        .recording()
        .units();
  }

  /** The orientation of a worn unit at each of its samples. */
  public static OrientationTrack track(UnitStream unit) {
    return new OrientationRun(KalmanSettings.with(RestDetectorSettings.worn()))
        .run(unit, OrientationMethod.OFFLINE);
  }

  /** Hands out the rows of a run. */
  public static void write(String archive, SessionRun run, LessonResult result, RowSink sink)
      throws IOException {
    for (UnitStream unit : units(run)) {
      OrientationTrack track = track(unit);
      for (SwingResult swing : result.swings()) {
        rows(archive, run.id(), swing, unit.point(), track, sink);
      }
    }
  }

  private static void rows(
      String archive,
      String run,
      SwingResult swing,
      BodyPoint point,
      OrientationTrack track,
      RowSink sink)
      throws IOException {
    double[] spanS = swing.events().stream().mapToDouble(EventTime::timeS).sorted().toArray();
    for (int i = 0; i < track.size(); i++) {
      double timeS = track.timeS()[i];
      if (spanS.length == 0 || timeS < spanS[0] || timeS > spanS[spanS.length - 1]) {
        continue;
      }
      sink.row(
          RowTable.ORIENTATIONS,
          archive,
          run,
          swing.number(),
          point.trackedPoint(),
          LessonRows.number(timeS, Decimals.OF_TIME_S),
          LessonRows.number(track.qw()[i], DECIMALS),
          LessonRows.number(track.qx()[i], DECIMALS),
          LessonRows.number(track.qy()[i], DECIMALS),
          LessonRows.number(track.qz()[i], DECIMALS),
          LessonRows.number(Math.toDegrees(track.inclinationSigmaRad()[i]), SIGMA_DECIMALS),
          LessonRows.number(Math.toDegrees(track.headingSigmaRad()[i]), SIGMA_DECIMALS));
    }
  }
}
