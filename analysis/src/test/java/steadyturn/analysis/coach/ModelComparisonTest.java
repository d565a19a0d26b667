package steadyturn.analysis.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadyturn.analysis.compare.LessonSwing;
import steadyturn.analysis.compare.MeasureAt;
import steadyturn.analysis.compare.SwingGroup;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Curve;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.reason.Reason;

class ModelComparisonTest {

  private static final MeasureAt TURN_AT_TOP = new MeasureAt(Measure.PELVIS_TURN, "top");

  @Test
  void theSameMotionAtHalfTheSpeedLiesOnTheModel() {
    // Given: one motion, once with 0.8 + 0.25 s, once with 1.6 + 0.5 s, 500 samples a second.
    // Expect: the same curve. Within 0.15 deg: linear between samples, sharpest bend at the top.
    var compared = compare(List.of(swing(1, -45, 0.8, 0.25)), List.of(swing(2, -45, 1.6, 0.5)));
    var turn = compared.curves().get(0);
    for (int i = 0; i < turn.place().size(); i++) {
      assertThat(turn.player().get(i)).isCloseTo(turn.model().get(i), within(0.15));
    }
  }

  @Test
  void theTopLiesAtItsPlaceInBoth() {
    var compared = compare(List.of(swing(1, -45, 0.8, 0.25)), List.of(swing(2, -30, 1.0, 0.3)));
    var turn = compared.curves().get(0);
    assertThat(turn.model().get(turn.place().indexOf(75.0))).isCloseTo(-45, within(0.15));
    assertThat(turn.player().get(turn.place().indexOf(75.0))).isCloseTo(-30, within(0.15));
  }

  @Test
  void theGapIsGivenInUnitsAndInThePlayersOwnSpread() {
    // Given: a model of -45 deg and a player of -30, -32, -34 deg. Expect: +13 deg, spread 2 deg,
    // so
    // 6.5 spreads. Within 1e-9: a few roundings.
    var player =
        List.of(swing(1, -30, 0.8, 0.25), swing(2, -32, 0.8, 0.25), swing(3, -34, 0.8, 0.25));
    var gap = compare(List.of(swing(9, -45, 0.8, 0.25)), player).gaps().get(0);
    assertThat(gap.difference()).isCloseTo(13, within(1e-9));
    assertThat(gap.spreads().orElseThrow()).isCloseTo(6.5, within(1e-9));
    assertThat(gap.low()).isPositive();
  }

  @Test
  void oneSwingHasNoSpreadOfItsOwn() {
    var compared = compare(List.of(swing(1, -45, 0.8, 0.25)), List.of(swing(2, -44, 0.8, 0.25)));
    assertThat(compared.gaps().get(0).spreads()).isEmpty();
    assertThat(compared.gaps().get(0).low()).isNegative();
    assertThat(compared.curves().get(0).spread()).allMatch(s -> Double.isNaN(s));
  }

  @Test
  void aKeyPositionOneSwingLacksIsNotAligned() {
    // Given: a model without the top. Expect: still compared, from takeaway to impact.
    var model = swing(1, -45, 0.8, 0.25);
    var noTop =
        new SwingResult(
            1,
            "",
            SwingKind.HIT,
            List.of(),
            model.events().stream().filter(e -> e.event() != SwingEvent.TOP).toList(),
            model.measures(),
            model.curves());
    var turn = compare(List.of(noTop), List.of(swing(2, -45, 0.8, 0.25))).curves().get(0);
    assertThat(turn.place().get(0)).isZero();
    assertThat(turn.place().get(turn.place().size() - 1)).isEqualTo(100);
  }

  private static ModelComparison compare(List<SwingResult> model, List<SwingResult> player) {
    return ModelComparison.of(group("model", model), group("player", player), List.of(TURN_AT_TOP));
  }

  private static SwingGroup group(String name, List<SwingResult> swings) {
    return new SwingGroup(name, swings.stream().map(s -> new LessonSwing(name, s)).toList());
  }

  /** Turns back in a half cosine and through to +40 deg in another. */
  private static SwingResult swing(int number, double topDeg, double backS, double downS) {
    int samples = (int) Math.round((backS + downS) * 500) + 1;
    List<Double> timeS = new ArrayList<>();
    List<Double> turnDeg = new ArrayList<>();
    for (int k = 0; k < samples; k++) {
      double t = k / 500.0;
      double back = topDeg * (1 - Math.cos(Math.PI * t / backS)) / 2;
      double down = topDeg + (40 - topDeg) * (1 - Math.cos(Math.PI * (t - backS) / downS)) / 2;
      timeS.add(10 + t);
      turnDeg.add(t <= backS ? back : down);
    }
    List<Double> sd = IntStream.range(0, samples).mapToObj(k -> 0.5).toList();
    return new SwingResult(
        number,
        "7-iron",
        SwingKind.HIT,
        List.of(),
        List.of(
            event(SwingEvent.TAKEAWAY, 10),
            event(SwingEvent.TOP, 10 + backS),
            event(SwingEvent.IMPACT, 10 + backS + downS)),
        List.of(
            MeasureValue.of(Measure.PELVIS_TURN, "top", topDeg, 1, Grade.MEASURED, Reason.NONE)),
        List.of(new Curve("pelvis.turn", "deg", timeS, turnDeg, sd)));
  }

  private static EventTime event(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0.005, Grade.MEASURED, Reason.NONE);
  }
}
