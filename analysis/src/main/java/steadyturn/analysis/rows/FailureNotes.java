package steadyturn.analysis.rows;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import steadyturn.analysis.reading.ReadingWatch;

/** Notes what fails while a lesson is read, and passes it on to another watch. */
final class FailureNotes implements ReadingWatch {

  private final ReadingWatch behind;
  private final List<String> failures = new ArrayList<>();

  FailureNotes(ReadingWatch behind) {
    this.behind = behind;
  }

  @Override
  public boolean tried(Attempt attempt) {
    return behind.tried(
        () -> {
          try {
            attempt.run();
          } catch (Exception e) {
            note(e);
            throw e;
          }
        });
  }

  @Override
  public void failed(Exception failure) {
    note(failure);
    behind.failed(failure);
  }

  @Override
  public void warn(String sentence) {
    behind.warn(sentence);
  }

  private void note(Exception failure) {
    failures.add(text(failure));
  }

  /** What failed, in one line. */
  static String text(Throwable failure) {
    String message = failure.getMessage() == null ? "" : failure.getMessage();
    return message.isBlank() ? failure.getClass().getSimpleName() : message.replaceAll("\\s+", " ");
  }

  /**
   * What failed of one run.
   *
   * @param all whether it has no result, so that a failure that names no run may be its
   */
  String of(String runId, boolean all) {
    List<String> its = failures.stream().filter(text -> names(text, runId)).toList();
    List<String> said = its.isEmpty() && all ? failures : its;
    return said.isEmpty() && all
        ? "no result"
        : said.stream().distinct().collect(Collectors.joining(" | "));
  }

  /** A table's name has the tracking system before the run, so task and run are looked for. */
  private static boolean names(String text, String runId) {
    int run = Math.max(0, runId.indexOf("_run-"));
    Pattern its =
        Pattern.compile(
            Pattern.quote(runId.substring(0, run))
                + "(_tracksys-[A-Za-z0-9]+)?"
                + Pattern.quote(runId.substring(run))
                + "(?![A-Za-z0-9])");
    return its.matcher(text).find();
  }
}
