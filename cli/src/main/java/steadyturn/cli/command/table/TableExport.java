package steadyturn.cli.command.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.rows.LessonRows;
import steadyturn.analysis.rows.OrientationRows;
import steadyturn.analysis.rows.RowSink;
import steadyturn.analysis.rows.RowTable;
import steadyturn.analysis.swing.EventTime;
import steadyturn.cli.lesson.LessonAnswers;
import steadyturn.cli.lesson.Lessons;
import steadyturn.cli.output.rows.TableDictionary;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.recording.dataset.SessionRun;

/** Hands the rows of lessons to whatever writes them, and what explains them beside. */
final class TableExport {

  private final Lessons lessons;
  private final List<RowTable> tables;
  private final AnalysisSettings settings;
  private final LessonAnswers answers;
  private final Map<String, Path> archives = new HashMap<>();
  private final Set<Reason> reasons = new HashSet<>();

  /** Of these tables only; the others cost nothing. */
  TableExport(Lessons lessons, List<RowTable> tables) {
    this.lessons = lessons;
    this.tables = tables;
    AnalysisSettings all = AnalysisSettings.defaults();
    settings = tables.contains(RowTable.CURVES) ? all : all.withoutCurves();
    answers = new LessonAnswers(lessons, settings);
  }

  /** All rows, lesson after lesson. */
  void writeTo(RowSink sink) {
    lessons.each(lesson -> write(lesson, sink));
  }

  /** The dictionary, and the sentences of the reasons that occurred. */
  void explain(Path folder) {
    TableDictionary.write(folder);
    TableDictionary.writeReasons(folder, reasons);
  }

  private void write(Session lesson, RowSink sink) throws IOException {
    String archive = archive(lesson.runs().get(0).root());
    LessonRows rows = new LessonRows(archive, settings, sink);
    Optional<KeptLesson> kept = answers.kept(lesson);
    List<LessonResult> results;
    if (kept.isPresent()) {
      results = kept.get().results();
      rows.write(lesson, results, lessons);
    } else {
      results = rows.write(lesson, lessons);
    }
    for (LessonResult result : results) {
      if (!result.isSound()) {
        lessons.notWell();
      }
      noteReasons(result);
      if (tables.contains(RowTable.ORIENTATIONS)) {
        SessionRun run = run(lesson, result);
        lessons.tried(() -> OrientationRows.write(archive, run, result, sink));
      }
    }
  }

  /** The run that a result is of. */
  static SessionRun run(Session lesson, LessonResult result) {
    return lesson.runs().stream()
        .filter(run -> run.id().equals(result.recording()))
        .findFirst()
        .orElseThrow();
  }

  private void noteReasons(LessonResult result) {
    result.swings().stream()
        .flatMap(
            swing ->
                Stream.concat(
                    swing.measures().stream().map(MeasureValue::why),
                    swing.events().stream().map(EventTime::why)))
        .filter(why -> !why.isNone())
        .forEach(reasons::add);
  }

  /** An archive's folder name; its whole path where another one has that name. */
  private String archive(Path root) {
    String name = String.valueOf(root.getFileName());
    return archives.computeIfAbsent(name, first -> root).equals(root) ? name : root.toString();
  }
}
