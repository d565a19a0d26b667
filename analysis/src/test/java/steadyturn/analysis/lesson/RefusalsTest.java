package steadyturn.analysis.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.limits.ScaleDoubt;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.quality.gravity.TurnScale;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** What was seen of rates counts once, however often a live lesson reads it again. */
class RefusalsTest {

  private static final TurnScale SEEN = new TurnScale(0, 0.02);

  private static Recording piece(double fromS, double toS) {
    double[] timesS = {fromS, toS};
    double[][] still = {{0, 0}, {0, 0}, {9.8, 9.8}};
    double[][] none = {{0, 0}, {0, 0}, {0, 0}};
    UnitFacts facts = new UnitFacts(BodyPoint.PELVIS, "p", 200, 157, 35, true);
    UnitStream unit = new UnitStream(facts, timesS, still, none);
    Player player = Player.unmeasured("anna", Handedness.RIGHT);
    return new Recording("one", player, List.of(unit), List.of());
  }

  private static ScaleDoubt after(double... fromS) {
    Refusals refusals = new Refusals();
    for (double from : fromS) {
      Recording piece = piece(from, from + 20);
      refusals.judged(piece, new RecordingReport("one", List.of(), SEEN));
    }
    return refusals.scaleDoubt();
  }

  @Test
  void whatOverlappingPiecesShareCountsOnce() {
    // Given: pieces of 20 s, each of which tells the scale to 2 %. Expect: the same piece again
    // tells no more, one half of which is new half as much as a whole one.
    // Within 1e-12: the same sums.
    assertThat(after(0, 0, 0).part()).isCloseTo(after(0).part(), within(1e-12));
    assertThat(after(0, 10).part())
        .isCloseTo(TurnScale.common(List.of(SEEN, SEEN.of(0.5))).doubt(), within(1e-12));
    assertThat(after(0, 20).part())
        .isCloseTo(TurnScale.common(List.of(SEEN, SEEN)).doubt(), within(1e-12));
    assertThat(after(0, 20).part()).isLessThan(after(0).part());
  }
}
