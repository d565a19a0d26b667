package steadyturn.fusion.attitude;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.Gaps;
import steadyturn.ingest.sample.UnitStream;

/**
 * The stretches in which a unit showed no whole rate for so long that something may have happened
 * unseen.
 *
 * @param gaps by time, from good sample to good sample; the first is all that lies before the first
 *     good sample, the last all that lies behind the last
 */
public record Unseen(List<Gaps.Gap> gaps) {

  /** In less, an arm or a wrist does nothing that a straight line does not show (our choice), s. */
  public static final double SHORT_S = 0.03;

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
    List<Gaps.Gap> out = new ArrayList<>();
    out.add(new Gaps.Gap(-1, 0, Double.NEGATIVE_INFINITY, all.firstS()));
    all.inner().stream().filter(g -> g.lengthS() > longest).forEach(out::add);
    out.add(new Gaps.Gap(0, 1, all.lastS(), Double.POSITIVE_INFINITY));
    return new Unseen(out);
  }

  /** Those with good samples on both sides. */
  public List<Gaps.Gap> inner() {
    return gaps.subList(1, gaps.size() - 1);
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
