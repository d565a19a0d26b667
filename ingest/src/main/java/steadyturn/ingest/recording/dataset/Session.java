package steadyturn.ingest.recording.dataset;

import java.util.List;

/**
 * A lesson of one player: its runs in the order in which they were recorded. A wear step holds for
 * the runs that follow, so whoever reads one run looks at the earlier ones too.
 *
 * @param player label of the player
 * @param lesson label of the lesson; empty where the archive has no sessions
 * @param allRuns every run of the lesson
 * @param runs those that were asked for
 */
public record Session(
    String player, String lesson, List<SessionRun> allRuns, List<SessionRun> runs) {

  public Session {
    allRuns = List.copyOf(allRuns);
    runs = List.copyOf(runs);
    if (!allRuns.containsAll(runs)) {
      throw new IllegalArgumentException("a run asked for is none of lesson " + lesson);
    }
  }

  /** {@code sub-mika_ses-01}. */
  public String id() {
    return "sub-" + player + (lesson.isEmpty() ? "" : "_ses-" + lesson);
  }

  /** The runs of the lesson that were recorded before this one, the oldest first. */
  public List<SessionRun> before(SessionRun run) {
    return allRuns.subList(0, Math.max(0, allRuns.indexOf(run)));
  }
}
