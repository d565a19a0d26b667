package steadyturn.fusion.attitude;

import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * The stretches in which a unit showed no whole rate for so long that something may have happened
 * unseen.
 *
 * @param gaps by time, from good sample to good sample
 */
public record Unseen(List<Gaps.Gap> gaps) {

  /** In less, an arm or a wrist does nothing that a straight line does not show (our choice), s. */
  public static final double SHORT_S = 0.02;

  /** A slow unit leaves as long between its samples anyway. */
  private static final double STEPS = 2.5;

  public Unseen {
    gaps = List.copyOf(gaps);
  }

  /** Of the rates of a stretch. */
  public static Unseen of(UnitStream stretch) {
    return of(Gaps.of(stretch, Gaps.Need.RATE));
  }

  /** Of rates and forces. */
  public static Unseen ofBoth(UnitStream stretch) {
    return of(Gaps.of(stretch, Gaps.Need.BOTH));
  }

  private static Unseen of(Gaps all) {
    double longest = Math.max(SHORT_S, STEPS * all.stepS());
    return new Unseen(all.inner().stream().filter(g -> g.lengthS() > longest).toList());
  }

  /** Whether an instant lies in one of them. */
  public boolean holds(double instantS) {
    return gaps.stream().anyMatch(g -> g.holds(instantS));
  }

  /** Whether one of them reaches into a span. */
  public boolean touches(double fromS, double toS) {
    return first(fromS, toS).isPresent();
  }

  /** The first that reaches into a span. */
  public Optional<Gaps.Gap> first(double fromS, double toS) {
    return gaps.stream().filter(g -> g.beforeS() < toS && g.afterS() > fromS).findFirst();
  }
}
