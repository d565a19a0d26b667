package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.limits.CredibleSizes;
import steadyturn.analysis.swing.Faults;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;

/**
 * A lesson that is still going on, by the same work as {@link LessonAnalyzer}. Its recording comes
 * in overlapping pieces, in order. What was just swung is answered from what is there; once all of
 * a stretch was seen it is settled, and the latest swings are estimated together anew. Not for
 * several threads at once.
 */
public final class GrowingLesson {

  /** So many swings are estimated together; more would bring little and take ever longer. */
  private static final int TOGETHER = 12;

  /** With so many others at once, as the answer must come soon. */
  private static final int AT_ONCE = 5;

  private final Player player;
  private final AnalysisSettings settings;
  private final Faults faults = Faults.usual();
  private final LessonGathering gathering;
  private int forgotten;
  private int faultsTold;
  private String recording = "";

  public GrowingLesson(Player player, AnalysisSettings settings) {
    this.player = CredibleSizes.of(player).player();
    this.settings = settings;
    gathering = new LessonGathering(settings.curves(), faults);
  }

  /** Takes an earlier recording of the lesson, of which only the wear steps matter. */
  public void remember(Recording earlier) {
    gathering.add(earlier);
    gathering.forgetBut(0);
    gathering.takeNotices();
  }

  /**
   * The swings of a piece that were not settled before, as far as they can be known by now; swings
   * that are settled teach what the units' errors are.
   */
  public List<SwingResult> answer(Recording piece) {
    List<GatheredSwing> all = gathering.tried(piece).swings();
    int settled = gathering.swings().size();
    return all.size() == settled ? List.of() : results(all, settled, AT_ONCE);
  }

  /**
   * Takes a piece for good.
   *
   * @return the latest swings, old and new, as they are known now
   */
  public List<SwingResult> settle(Recording piece) {
    recording = piece.id();
    int before = gathering.swings().size();
    gathering.add(piece);
    List<GatheredSwing> all = gathering.swings();
    List<SwingResult> known = all.size() == before ? List.of() : results(all, 0, TOGETHER);
    forgotten += gathering.forgetBut(TOGETHER);
    return known;
  }

  private List<SwingResult> results(List<GatheredSwing> all, int from, int most) {
    List<GatheredSwing> latest = all.subList(Math.max(0, all.size() - most), all.size());
    Map<GatheredSwing, PelvisLesson.PelvisSwing> pelvis =
        PelvisLesson.estimate(player, settings, latest, gathering.refusals().scaleDoubt(), faults);
    SwingReport report = new SwingReport(player, settings, gathering.refusals());
    List<SwingResult> results = new ArrayList<>();
    for (int i = Math.max(from, all.size() - latest.size()); i < all.size(); i++) {
      GatheredSwing swing = all.get(i);
      results.add(report.kept(swing, Optional.ofNullable(pelvis.get(swing)), number(i), faults));
    }
    return results;
  }

  private int number(int i) {
    return forgotten + i + 1;
  }

  /** Marks no swing can come near any more, once all up to an instant was settled; told once. */
  public List<Notice> unplaced(double seenToS) {
    return gathering.unplaced(recording).take(seenToS).stream()
        .map(reason -> new Notice("", reason))
        .toList();
  }

  /** What was noticed in the settled pieces, since this was last asked. */
  public List<Notice> notices() {
    List<Notice> fresh = new ArrayList<>(gathering.takeNotices());
    List<Reason> met = faults.of(recording);
    met.subList(faultsTold, met.size()).forEach(fault -> fresh.add(new Notice("", fault)));
    faultsTold = met.size();
    return fresh;
  }
}
