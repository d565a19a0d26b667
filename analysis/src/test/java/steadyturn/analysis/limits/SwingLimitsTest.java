package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureReason;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/** Values written by hand, just within a limit and just beyond it; spreads of 1 unless said. */
class SwingLimitsTest {

  private static final MeasureValue TURN = value(Measure.PELVIS_TURN, "top", -45, 1);
  private static final MeasureValue RELEASE = value(Measure.WRIST_RELEASE, "", 90, 1);
  private static final MeasureValue BACK = value(Measure.TEMPO_BACK, "", 0.8, 0.01);

  private static MeasureValue value(Measure measure, String at, double value, double sd) {
    return MeasureValue.of(measure, at, value, sd, Grade.MEASURED, Reason.NONE);
  }

  private static List<MeasureValue> kept(MeasureValue... values) {
    return SwingLimits.kept(3, List.of(values), List.of());
  }

  private static List<MeasureValue> beside(MeasureValue one) {
    return kept(one, TURN, RELEASE, BACK);
  }

  private static List<String> withheld(List<MeasureValue> values) {
    return values.stream().filter(v -> !v.given()).map(v -> v.measure().id()).distinct().toList();
  }

  @Test
  void aUsualSwingKeepsItsValues() {
    // Given: the tempo of tour professionals (Grober and Cholewicki: 0.80 and 0.27 s), the turn of
    // trade rules (45 deg, common practice). Expect: the very list that was given.
    List<MeasureValue> given =
        List.of(
            TURN,
            value(Measure.PELVIS_TURN, "impact", 40, 1),
            value(Measure.PELVIS_SLIDE, "top", -20, 5),
            value(Measure.PELVIS_SLIDE, "impact", 100, 5),
            value(Measure.WRIST_COCK, "takeaway", 15, 2),
            value(Measure.WRIST_COCK, "top", 80, 2),
            value(Measure.WRIST_COCK, "impact", 10, 2),
            BACK,
            value(Measure.TEMPO_DOWN, "", 0.27, 0.005),
            value(Measure.TEMPO_RATIO, "", 2.96, 0.1));
    assertThat(SwingLimits.kept(1, given, List.of())).isSameAs(given);
  }

  @Test
  void aValueThatMayBeHalfOfAllThatBodiesDoIsWithheldAlone() {
    // Given: a slide within its limits (-500 to 500 mm), its 95 % interval 501 and 499 mm long, and
    // one that an estimate which had lost its way once gave, -4 +- 3319 mm. Expect: withheld alone
    // and with that reason, kept, withheld; "at least" values have no length and stay.
    for (double lengthMm : List.of(501.0, 499.0, 6638.0)) {
      double sd = lengthMm / 2 / MeasureValue.Z95;
      List<MeasureValue> kept = beside(value(Measure.PELVIS_SLIDE, "top", -4, sd));
      assertThat(kept.get(0).given()).isEqualTo(lengthMm < 500);
      assertThat(kept.subList(1, 4)).containsExactly(TURN, RELEASE, BACK);
      if (lengthMm > 500) {
        assertThat(kept.get(0).why().code()).isEqualTo(MeasureReason.TOO_UNSURE);
      }
    }
    MeasureValue least =
        new MeasureValue(
            Measure.WRIST_RATE,
            "",
            1900,
            1800,
            Double.POSITIVE_INFINITY,
            Grade.ESTIMATED,
            Reason.of(MeasureReason.AT_LEAST));
    assertThat(beside(least).get(0)).isEqualTo(least);
  }

  @ParameterizedTest
  @CsvSource({
    // measure, beyond, side (1: above, -1: below), what goes with it: hips, wrist, all
    "wrist.cock, 115, 1, wrist", "wrist.cock, -70, -1, wrist", "wrist.cock-max, 115, 1, wrist",
    "wrist.flexion, 100, 1, wrist", "wrist.flexion, -100, -1, wrist", "wrist.rate, 3000, 1, wrist",
    "pelvis.turn, 150, 1, hips", "pelvis.turn, -130, -1, hips", "pelvis.slide, 500, 1, hips",
    "pelvis.slide, -500, -1, hips", "pelvis.thrust, 400, 1, hips", "pelvis.thrust, -400, -1, hips",
    "pelvis.lift, 300, 1, hips", "pelvis.lift, -300, -1, hips", "pelvis.tilt, 90, 1, hips",
    "pelvis.tilt, -50, -1, hips", "pelvis.sidetilt, 50, 1, hips", "pelvis.sidetilt, -50, -1, hips",
    "tempo.back, 3, 1, all", "tempo.back, 0.25, -1, all", "tempo.down, 0.8, 1, all",
    "tempo.down, 0.1, -1, all", "tempo.ratio, 10, 1, all", "tempo.ratio, 0.8, -1, all"
  })
  void whatLiesWhollyBeyondALimitIsWithheldWithItsKind(
      String id, double limit, int side, String group) {
    // Given: a value 2.1 spreads beyond its limit, then one 1.8 spreads beyond: its 95 % interval
    // reaches back over it. Expect: withheld with what comes from the same units; kept whole.
    Measure measure = Measure.ofId(id).orElseThrow();
    double sd = Math.abs(limit) / 1000;
    List<MeasureValue> far = beside(value(measure, "finish", limit + side * 2.1 * sd, sd));
    assertThat(far.get(0).given()).isFalse();
    assertThat(far.get(0).why().args()).containsEntry("swing", 3);
    List<String> others = withheld(far.subList(1, 4));
    assertThat(others)
        .isEqualTo(
            switch (group) {
              case "hips" -> List.of("pelvis.turn");
              case "wrist" -> List.of("wrist.release");
              default -> List.of("pelvis.turn", "wrist.release", "tempo.back");
            });
    assertThat(withheld(beside(value(measure, "finish", limit + side * 1.8 * sd, sd)))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    // 0.25 s from top to impact: 2.5 m/s are 625 mm, 900 deg/s are 225 deg; 1 % to either side
    "pelvis.slide, -200, 431, true", "pelvis.slide, -200, 419, false",
    "pelvis.thrust, 316, -315, true", "pelvis.thrust, 309, -310, false",
    "pelvis.lift, -295, 336, true", "pelvis.turn, -110, 117.5, true",
    "pelvis.turn, -110, 112.5, false"
  })
  void hipsCannotMoveFasterThanAnybodyRuns(
      String id, double top, double impact, boolean isImpossible) {
    Measure measure = Measure.ofId(id).orElseThrow();
    List<MeasureValue> values =
        kept(
            value(measure, "top", top, 1e-6),
            value(measure, "impact", impact, 1e-6),
            value(Measure.TEMPO_DOWN, "", 0.25, 1e-6));
    assertThat(withheld(values)).isEqualTo(isImpossible ? List.of(id) : List.of());
  }

  @Test
  void aSpeedThatIsNotKnownWellIsNotHeldAgainstTheHips() {
    // Given: 640 mm in 0.25 s, too fast by 15 mm; each end known to 6 mm (1 SD): 1.96 * 8.5 = 16.6.
    List<MeasureValue> values =
        kept(
            value(Measure.PELVIS_SLIDE, "top", -240, 6),
            value(Measure.PELVIS_SLIDE, "impact", 400, 6),
            value(Measure.TEMPO_DOWN, "", 0.25, 1e-6));
    assertThat(withheld(values)).isEmpty();
  }

  private static EventTime at(SwingEvent event, double timeS, double sdS) {
    return new EventTime(event, timeS, sdS, Grade.MEASURED, Reason.NONE);
  }

  @ParameterizedTest
  @CsvSource({
    // ms from the top of the hands to that of the hips, spread of each, turn there, impossible?
    "-66, 0.1, -45, false",
    "121, 0.1, -45, true",
    "119, 0.1, -45, false",
    "-801, 0.1, -45, true",
    "-799, 0.1, -45, false",
    "140, 8, -45, false",
    "140, 6, -45, true",
    "-830, 12, -45, false",
    "-830, 10, -45, true",
    "160, 0.1, -10.1, true",
    "160, 0.1, -9.9, false"
  })
  void hipsTurnRoundBeforeTheHands(
      double lagMs, double sdMs, double turnDeg, boolean isImpossible) {
    // Source: the pelvis reverses first (Meister et al. 2011, J Appl Biomech 27:242-251, abstract),
    // later where arms start by themselves;
    // the sizes are our choice. Two spreads of 8 ms: 1.96 * 11.3 = 22 ms of doubt.
    List<MeasureValue> values =
        SwingLimits.kept(
            1,
            List.of(
                value(Measure.PELVIS_TURN, "pelvis-turnaround", turnDeg, 0.01),
                RELEASE,
                value(Measure.ORDER_PELVIS, "", 100, 1)),
            List.of(
                at(SwingEvent.TOP, 10, sdMs / 1000),
                at(SwingEvent.PELVIS_TURNAROUND, 10 + lagMs / 1000, sdMs / 1000)));
    assertThat(withheld(values))
        .isEqualTo(isImpossible ? List.of("pelvis.turn", "order.pelvis") : List.of());
    if (isImpossible) {
      assertThat(values.get(0).why().args())
          .containsEntry("leastMs", -800.0)
          .containsEntry("mostMs", 120.0)
          .hasEntrySatisfying(
              "valueMs", ms -> assertThat((double) ms).isCloseTo(lagMs, within(1e-9)));
    }
  }

  @ParameterizedTest
  @CsvSource({"9.9, true", "10.2, false"})
  void aWristThatDoesNotMoveIsNone(double most, boolean isOnePlace) {
    // Given: cock of 0 at takeaway and impact and so much at the top, each +- 1.96; bound 12.
    // Expect: no wrist, and no top either, at which the hips could be read.
    List<MeasureValue> values =
        kept(
            value(Measure.WRIST_COCK, "takeaway", 0, 1),
            value(Measure.WRIST_COCK, "top", most, 1),
            value(Measure.WRIST_COCK, "impact", 0, 1),
            TURN);
    assertThat(withheld(values))
        .isEqualTo(isOnePlace ? List.of("wrist.cock", "pelvis.turn") : List.of());
    assertThat(values.stream().flatMap(v -> SwingLimits.whyOf(v).stream()).map(Reason::code))
        .allMatch(code -> code == MountReason.SAME_PLACE)
        .hasSize(isOnePlace ? 4 : 0);
  }

  @Test
  void whatWasWithheldForAnotherReasonStaysSo() {
    Reason other = Reason.of(SwingReason.TEMPO, 9, 1.0, 2.0, 3.0);
    MeasureValue before = MeasureValue.withheld(Measure.PELVIS_LIFT, "top", other);
    List<MeasureValue> values = kept(before, value(Measure.PELVIS_TURN, "top", -200, 1));
    assertThat(values.get(0)).isSameAs(before);
    assertThat(Stream.of(RELEASE).flatMap(v -> SwingLimits.whyOf(v).stream())).isEmpty();
  }
}
