package steadyturn.analysis.kept;

import java.nio.ByteBuffer;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import steadyturn.analysis.coach.drill.Rehearsal;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.ingest.sample.Mark;

/**
 * All that was found in a lesson's recordings.
 *
 * @param results one a recording
 * @param marks what was noted while they ran, by recording
 * @param rehearsals slow turns and half swings within marked drills, by recording
 * @param notices what was said while they were read, one sentence each
 */
public record KeptLesson(
    List<LessonResult> results,
    Map<String, List<Mark>> marks,
    Map<String, List<Rehearsal>> rehearsals,
    List<String> notices) {

  public KeptLesson {
    results = List.copyOf(results);
    marks = Collections.unmodifiableMap(new LinkedHashMap<>(marks));
    rehearsals = Collections.unmodifiableMap(new LinkedHashMap<>(rehearsals));
    notices = List.copyOf(notices);
  }

  /** Every number with all its bits. Only the program that wrote them can read them. */
  public byte[] bytes() {
    return new KeptWriter().bytes(this);
  }

  /**
   * The lesson that was made into bytes.
   *
   * @throws IllegalArgumentException where they are none of this program's
   */
  public static KeptLesson of(ByteBuffer bytes) {
    return new KeptReader(bytes).lesson();
  }
}
