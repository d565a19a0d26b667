package steadyturn.ingest.kept;

import java.nio.file.Path;
import java.util.regex.Pattern;
import steadyturn.ingest.recording.dataset.Session;

/** Where answers about lessons lie, among the derivatives of this program. */
public final class KeptPlace {

  private static final Pattern NAME = Pattern.compile("sub-.*_desc-kept[a-z]*_lesson\\.bin");

  private KeptPlace() {}

  /**
   * The file of an answer about a lesson.
   *
   * @param kind which of the answers, small letters; may be empty
   */
  public static Path of(Session lesson, String kind) {
    Path player = LessonFiles.root(lesson).resolve("derivatives/steadyturn/sub-" + lesson.player());
    Path folder = lesson.lesson().isEmpty() ? player : player.resolve("ses-" + lesson.lesson());
    return folder.resolve(lesson.id() + "_desc-kept" + kind + "_lesson.bin");
  }

  /** Whether a file is such an answer: it can be made again, and is worth nothing elsewhere. */
  public static boolean isKept(Path file) {
    return NAME.matcher(String.valueOf(file.getFileName())).matches();
  }
}
