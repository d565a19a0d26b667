package steadyturn.cli.command.table;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.analysis.rows.OrientationRows;
import steadyturn.analysis.rows.PelvisPoints;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.output.tsv.OrientationText;
import steadyturn.cli.words.Words;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.marker.MarkerTracks;
import steadyturn.ingest.marker.TrcFile;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;
import steadyturn.ingest.recording.disk.WholeFile;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * Motion as the text forms that programs for musculoskeletal models read: points of the pelvis, a
 * TRC file a swing; orientations of the units, an STO file a recording.
 */
record MotionExport(Lessons lessons, Path folder, PrintWriter out) {

  /** Writes one of the two for all lessons. */
  void write(boolean orientations) {
    lessons.each(
        lesson -> {
          if (orientations) {
            for (SessionRun run : lesson.runs()) {
              lessons.tried(() -> sto(run));
            }
          } else {
            points(lesson);
          }
        });
  }

  private void sto(SessionRun run) {
    Map<BodyPoint, OrientationTrack> tracks = new EnumMap<>(BodyPoint.class);
    for (UnitStream unit : OrientationRows.units(run)) {
      tracks.put(unit.point(), OrientationRows.track(unit));
    }
    Path file = folder.resolve(run.id() + ".sto");
    WholeFile.writeText(file, to -> OrientationText.writeSto(tracks, to));
    out.println(file);
  }

  private void points(Session lesson) {
    AnalysisSettings settings = AnalysisSettings.defaults();
    for (LessonResult result : LessonReading.results(lesson, settings, lessons)) {
      if (!result.isSound()) {
        lessons.notWell();
      }
      for (SwingResult swing : result.swings()) {
        MarkerTracks points = PelvisPoints.of(result, swing);
        String name =
            String.format(Locale.ROOT, "%s_swing-%02d.trc", result.recording(), swing.number());
        if (points.timeS().length == 0) {
          lessons.warn(Words.say("tables.no-points", name));
        } else {
          TrcFile.write(folder.resolve(name), points);
          out.println(folder.resolve(name));
        }
      }
    }
  }
}
