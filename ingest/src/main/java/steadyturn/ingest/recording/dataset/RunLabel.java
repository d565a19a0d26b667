package steadyturn.ingest.recording.dataset;

import java.util.Locale;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * The name of a run in an archive: whose, in which lesson, doing what, and its number when a lesson
 * has several. Labels are letters and digits only.
 *
 * @param player label after {@code sub-}
 * @param lesson label after {@code ses-}
 * @param task label after {@code task-}: {@code swing} for a lesson
 * @param run number after {@code run-}; empty when the lesson is one run
 */
public record RunLabel(String player, String lesson, String task, OptionalInt run) {

  /** The task of a lesson. */
  public static final String SWING = "swing";

  private static final Pattern LABEL = Pattern.compile("[0-9A-Za-z]+");

  public RunLabel {
    requireLabel("player", player);
    requireLabel("lesson", lesson);
    requireLabel("task", task);
  }

  /** The only run of a lesson. */
  public static RunLabel lesson(String player, String lesson) {
    return new RunLabel(player, lesson, SWING, OptionalInt.empty());
  }

  /** A numbered run of a lesson. */
  public static RunLabel run(String player, String lesson, int run) {
    return new RunLabel(player, lesson, SWING, OptionalInt.of(run));
  }

  private static void requireLabel(String what, String label) {
    if (!isLabel(label)) {
      throw new IllegalArgumentException(
          what + " label must be letters and digits only, was \"" + label + "\"");
    }
  }

  /** Whether a word can stand in a file name: letters and digits only. */
  public static boolean isLabel(String word) {
    return LABEL.matcher(word).matches();
  }

  /** {@code sub-mika_ses-01_task-swing_run-02}. */
  public String id() {
    return "sub-" + player + "_ses-" + lesson + "_task-" + task + runPart();
  }

  /** {@code sub-mika_ses-01_task-swing_tracksys-pelvis_run-02_motion.tsv} and the like. */
  public String fileName(String tracksys, String suffixAndEnding) {
    String start = "sub-" + player + "_ses-" + lesson + "_task-" + task;
    return start + "_tracksys-" + tracksys + runPart() + "_" + suffixAndEnding;
  }

  private String runPart() {
    return run.isPresent() ? String.format(Locale.ROOT, "_run-%02d", run.getAsInt()) : "";
  }

  /** The lesson's folder below the dataset root: {@code sub-mika/ses-01}. */
  public String folder() {
    return "sub-" + player + "/ses-" + lesson;
  }
}
