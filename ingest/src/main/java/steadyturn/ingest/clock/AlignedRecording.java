package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;

/**
 * A recording on one clock.
 *
 * @param recording the samples on the reference clock (the first unit's, which is the pelvis unit's
 *     where there is one)
 * @param fits how each unit's clock was brought there
 * @param links the single steps of the fits: which unit was tied to which
 * @param reasons what must be said of units whose clocks were mended or cannot be believed
 */
public record AlignedRecording(
    Recording recording,
    Map<BodyPoint, ClockFit> fits,
    List<ClockLink> links,
    Map<BodyPoint, List<Reason>> reasons) {

  public AlignedRecording {
    Map<BodyPoint, List<Reason>> said = new EnumMap<>(BodyPoint.class);
    said.putAll(reasons);
    reasons = Collections.unmodifiableMap(said);
    Map<BodyPoint, ClockFit> copy = new EnumMap<>(BodyPoint.class);
    copy.putAll(fits);
    fits = Collections.unmodifiableMap(copy);
    links = List.copyOf(links);
  }

  /** How the clock of a unit of this recording was brought to the reference. */
  public ClockFit fit(BodyPoint point) {
    ClockFit fit = fits.get(point);
    if (fit == null) {
      throw new IllegalArgumentException(recording.id() + " has no unit at " + point);
    }
    return fit;
  }

  /** Standard deviation of a time difference between two units around this time, s. */
  public double sdBetweenS(BodyPoint a, BodyPoint b, double timeS) {
    List<ClockLink> ofA = pathToReference(a, timeS);
    List<ClockLink> ofB = pathToReference(b, timeS);
    List<ClockLink> shared = new ArrayList<>(ofA);
    shared.retainAll(ofB);
    ofA.addAll(ofB);
    ofA.removeAll(shared);
    return Math.sqrt(
        ofA.stream().mapToDouble(l -> l.fit().sdAtS(timeS) * l.fit().sdAtS(timeS)).sum());
  }

  /**
   * The same with a doubt of how a unit of the trunk lies to those of the arms.
   *
   * @param sdS what it adds to the spread of their ties
   * @param why said of the trunk's unit, or none
   */
  public AlignedRecording doubted(BodyPoint trunk, double sdS, Reason why) {
    List<ClockLink> doubtful =
        links.stream()
            .map(l -> l.unit().isTrunk() == l.tiedTo().isTrunk() ? l : l.doubted(sdS))
            .toList();
    Map<BodyPoint, List<Reason>> said = new EnumMap<>(BodyPoint.class);
    said.putAll(reasons);
    if (!why.isNone()) {
      List<Reason> more = new ArrayList<>(said.getOrDefault(trunk, List.of()));
      more.add(why);
      said.put(trunk, more);
    }
    return new AlignedRecording(recording, fits, doubtful, said);
  }

  private List<ClockLink> pathToReference(BodyPoint from, double timeS) {
    List<ClockLink> path = new ArrayList<>();
    BodyPoint at = from;
    for (int k = links.size() - 1; k >= 0; k--) {
      if (links.get(k).unit() == at && links.get(k).fromS() <= timeS) {
        path.add(links.get(k));
        at = links.get(k).tiedTo();
      }
    }
    return path;
  }
}
