package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds the full swings of a recording and their key positions. The lead forearm shows them best,
 * the hand nearly as well; the pelvis alone gives what it can, with wider spreads. Putts, waggles,
 * walking and everyday movement are left out: they turn too slowly, too little, or not back and
 * forth in one plane. One pass over the columns, then a few seconds around each fast moment.
 */
public final class SwingFinder {

  private SwingFinder() {}

  /** The finder of docs/measures.md. */
  public static SwingFinder withDefaults() {
    return new SwingFinder();
  }

  /** Swings of a recording whose wrist units sit as drawn on the strapping page. */
  public List<Swing> find(Recording recording) {
    return find(recording, WristAlignment.nominal());
  }

  /** Swings of a recording, by onset, numbered from 1. */
  public List<Swing> find(Recording recording, WristAlignment alignment) {
    return find(recording, alignment, RestBiases.of(recording), Faults.usual());
  }

  /** The same, where a swing that meets a mistake of the program is left out and noted. */
  public List<Swing> find(
      Recording recording, WristAlignment alignment, RestBiases biases, Faults faults) {
    List<FoundSwing> found = strokes(recording, alignment, biases, faults);
    NotedSwings noted = new NotedSwings(found, recording.marks());
    List<Mark> laid = noted.laid();
    if (!laid.equals(recording.marks()) && !found.stream().allMatch(FoundSwing::shock)) {
      found = strokes(recording.with(laid), alignment, biases, faults);
      noted = new NotedSwings(found, laid);
    }
    List<Swing> swings = new ArrayList<>();
    for (int i = 0; i < found.size(); i++) {
      double notBeforeS = i == 0 ? Double.NEGATIVE_INFINITY : found.get(i - 1).motionEndS();
      double notAfterS =
          i + 1 == found.size() ? Double.POSITIVE_INFINITY : found.get(i + 1).takeawayS();
      List<Mark> its = asNoted(noted.marks(i), laid, recording.marks());
      swings.add(
          found
              .get(i)
              .numbered(i + 1, notBeforeS, notAfterS, its, noted.club(i), noted.isDrill(i)));
    }
    return List.copyOf(swings);
  }

  /**
   * Key positions of one swing as the pelvis unit alone tells them, each with its spread among
   * bodies; none where it shows no swing.
   *
   * @param aroundS near the impact, as another unit tells it
   * @param reachS how far the two clocks may lie apart
   */
  public List<EventTime> byPelvis(
      Recording recording, double aroundS, double reachS, RestBiases biases, Faults faults) {
    return recording
        .unit(BodyPoint.PELVIS)
        .flatMap(p -> new PelvisSwings(recording, p, biases, faults).near(aroundS, reachS))
        .map(FoundSwing::events)
        .orElse(List.of());
  }

  /** Marks as they were noted, not as they were laid on their swings. */
  private static List<Mark> asNoted(List<Mark> some, List<Mark> laid, List<Mark> noted) {
    return some.stream().map(m -> laid.contains(m) ? noted.get(laid.indexOf(m)) : m).toList();
  }

  private List<FoundSwing> strokes(
      Recording recording, WristAlignment alignment, RestBiases biases, Faults faults) {
    Optional<UnitStream> forearm = recording.unit(BodyPoint.LEAD_FOREARM);
    Optional<UnitStream> hand = recording.unit(BodyPoint.LEAD_HAND);
    if (forearm.isPresent() || hand.isPresent()) {
      return new ArmSwings(recording, alignment, biases, faults).all();
    }
    return recording
        .unit(BodyPoint.PELVIS)
        .map(pelvis -> new PelvisSwings(recording, pelvis, biases, faults).all())
        .orElse(List.of());
  }
}
