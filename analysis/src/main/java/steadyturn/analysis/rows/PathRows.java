package steadyturn.analysis.rows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.ingest.recording.dataset.Archive;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.sample.Offered;

/**
 * The rows of whatever lies under one path, as a function of the files there alone: no clock, no
 * state, no output but the rows. What fails is a row of {@link RowTable#RECORDINGS}, never an
 * exception.
 */
@Offered
public record PathRows(AnalysisSettings settings) {

  /** Rows with the settings of docs/accuracy.md, without curves, which take a third of the work. */
  public static PathRows withDefaults() {
    return new PathRows(AnalysisSettings.defaults().withoutCurves());
  }

  /** Hands out the rows of a motion table (which stands for its run), a lesson or an archive. */
  public void write(Path path, RowSink sink) throws IOException {
    FailureNotes watch = new FailureNotes(new Silent());
    List<Archive> opened = new ArrayList<>();
    if (!watch.tried(() -> opened.add(Archive.open(path)))) {
      new LessonRows(path.toString(), settings, sink).unopened(watch.of("", true));
    }
    for (Archive archive : opened) {
      LessonRows rows = new LessonRows(archive.root().toString(), settings, sink);
      for (Session lesson : archive.sessions()) {
        rows.write(lesson, new Silent());
      }
    }
  }

  /** Tells nobody. */
  private static final class Silent implements ReadingWatch {

    @Override
    public boolean tried(Attempt attempt) {
      try {
        attempt.run();
        return true;
      } catch (Exception e) { // it stands in a row
        return false;
      }
    }

    @Override
    public void failed(Exception failure) {}

    @Override
    public void warn(String sentence) {}
  }
}
