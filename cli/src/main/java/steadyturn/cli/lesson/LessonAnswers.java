package steadyturn.cli.lesson;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.kept.KeptLesson;
import steadyturn.analysis.lesson.AnalysisSettings;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.reading.LessonReading;
import steadyturn.analysis.reading.ReadingWatch;
import steadyturn.analysis.swing.FaultReason;
import steadyturn.ingest.kept.Basis;
import steadyturn.ingest.kept.KeptAnswer;
import steadyturn.ingest.kept.KeptPlace;
import steadyturn.ingest.kept.LessonFiles;
import steadyturn.ingest.recording.RecordingReader;
import steadyturn.ingest.recording.dataset.Session;
import steadyturn.ingest.sample.Mark;

/**
 * What lessons show: read and analysed once, kept among the archive's derivatives, and taken from
 * there for as long as nothing it rests on has changed. An archive that cannot be written gives the
 * same answers, only later.
 */
public final class LessonAnswers {

  private final Lessons lessons;
  private final AnalysisSettings settings;
  private final LessonFiles files = new LessonFiles();
  private final LessonClaims claims;

  public LessonAnswers(Lessons lessons, AnalysisSettings settings) {
    this.lessons = lessons;
    this.settings = settings;
    claims = new LessonClaims(settings);
  }

  /** What a lesson shows; one that was asked for in part is read anew. */
  public KeptLesson of(Session lesson) {
    KeptLesson answer =
        isWhole(lesson)
            ? kept(lesson).orElseGet(() -> freshAndKept(lesson))
            : Fresh.of(lesson, settings, lessons).answer();
    if (!answer.results().stream().allMatch(LessonResult::isSound)) {
      lessons.notWell();
    }
    return answer;
  }

  /** What is kept of a lesson and holds; what was said while it was read is said again. */
  public Optional<KeptLesson> kept(Session lesson) {
    if (!isWhole(lesson)) {
      return Optional.empty();
    }
    claims.look(lesson);
    Optional<KeptLesson> kept =
        KeptAnswer.find(
                place(lesson),
                LessonFiles.root(lesson),
                files.of(lesson),
                all -> claims.hold(lesson, all))
            .flatMap(LessonAnswers::read);
    kept.ifPresent(answer -> answer.notices().forEach(lessons::warn));
    return kept;
  }

  private static boolean isWhole(Session lesson) {
    return !lesson.runs().isEmpty() && lesson.runs().equals(lesson.allRuns());
  }

  private Path place(Session lesson) {
    return KeptPlace.of(lesson, settings.curves() ? "curves" : "");
  }

  private static Optional<KeptLesson> read(ByteBuffer bytes) {
    try {
      return Optional.of(KeptLesson.of(bytes));
    } catch (RuntimeException broken) { // whatever it is, the recordings are there
      return Optional.empty();
    }
  }

  private KeptLesson freshAndKept(Session lesson) {
    Optional<Basis> basis = KeptAnswer.look(LessonFiles.root(lesson), files.of(lesson));
    Fresh fresh = Fresh.of(lesson, settings, lessons);
    if (fresh.isWhole()) {
      basis.ifPresent(
          seen ->
              KeptAnswer.keep(
                  place(lesson),
                  seen,
                  new LessonFiles().of(lesson),
                  claims.of(lesson, fresh.serials()),
                  fresh.answer().bytes()));
    }
    return fresh.answer();
  }

  /**
   * A lesson that was just read.
   *
   * @param serials units whose calibrations were asked for
   * @param isWhole whether nothing failed, which might go well the next time
   */
  private record Fresh(KeptLesson answer, Set<String> serials, boolean isWhole) {

    static Fresh of(Session lesson, AnalysisSettings settings, ReadingWatch watch) {
      ReadingNotes notes = new ReadingNotes(watch, true);
      LessonReading reading = new LessonReading(lesson, notes);
      List<LessonResult> results = reading.results(settings);
      Map<String, List<Mark>> marks = new LinkedHashMap<>();
      lesson.runs().forEach(run -> marks.putIfAbsent(run.id(), RecordingReader.readMarks(run)));
      Map<String, List<Rehearsal>> rehearsals = Rehearsals.of(lesson, notes, marks);
      return new Fresh(
          new KeptLesson(results, marks, rehearsals, notes.said()),
          reading.serials(),
          notes.allWell() && results.stream().noneMatch(Fresh::isFaulty));
    }

    private static boolean isFaulty(LessonResult result) {
      return result.notices().stream().anyMatch(n -> n.reason().code() instanceof FaultReason);
    }
  }
}
