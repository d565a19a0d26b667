package steadyturn.analysis.tempo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.rotation.Quaternion;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.UnitMount;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Units at 500 Hz whose rates peak at known moments; top at 2 s, impact at 2.3 s. */
class OrderTest {

  private static final double TOP_S = 2;
  private static final double IMPACT_S = 2.3;
  private static final Quaternion SITS = Quaternion.fromRotationVector(new Vector3(0.3, -0.2, 0.5));
  private static final Vector3 BIAS = new Vector3(0.02, -0.03, 0.01);

  /** A smooth bell around an instant, 1 at its height. */
  private static double bell(double timeS, double peakS, double halfS) {
    double u = (timeS - peakS) / halfS;
    return Math.exp(-u * u);
  }

  private static UnitStream unit(BodyPoint point, DoubleFunction<Vector3> rate) {
    int n = 2000;
    double[] time = new double[n];
    double[][] gyro = new double[3][n];
    for (int i = 0; i < n; i++) {
      time[i] = i / 500.0;
      Vector3 seen = rate.apply(time[i]).plus(BIAS);
      for (int axis = 0; axis < 3; axis++) {
        gyro[axis][i] = seen.get(axis);
      }
    }
    return new UnitStream(UnitFacts.plain(point, 500), time, new double[3][n], gyro);
  }

  /** Turns in its segment's axes: roll about x peaks elsewhere, the rest across at peakS. */
  private static UnitStream limb(BodyPoint point, double peakS, double rollS, double roll) {
    return unit(
        point,
        t ->
            SITS.rotate(
                new Vector3(
                    roll * bell(t, rollS, 0.06),
                    -12 * bell(t, peakS, 0.08),
                    9 * bell(t, peakS, 0.08))));
  }

  private static UnitStream trunk(BodyPoint point, double peakS) {
    Vector3 about = new Vector3(2, -3, 6).times(1 / 7.0);
    return unit(point, t -> about.times(-7 * bell(t, peakS, 0.1)));
  }

  private static List<MeasureValue> order(
      List<UnitStream> units, UnitMount mount, double topSdS, double impactSdS) {
    List<UnitStream> all = new ArrayList<>(units);
    Recording recording =
        new Recording("made", Player.unmeasured("p", Handedness.RIGHT), all, List.of());
    Swing swing =
        new Swing(
            1,
            SwingKind.HIT,
            "",
            0,
            4,
            List.of(
                at(SwingEvent.TAKEAWAY, 1, 0),
                at(SwingEvent.TOP, TOP_S, topSdS),
                at(SwingEvent.IMPACT, IMPACT_S, impactSdS)),
            List.of());
    WristAlignment alignment = new WristAlignment(mount, mount, 0, WristAlignment.Source.NOMINAL);
    return OrderMeasures.of(recording, RestBiases.of(recording), swing, alignment, 0);
  }

  private static EventTime at(SwingEvent event, double timeS, double sdS) {
    return new EventTime(event, timeS, sdS, Grade.MEASURED, NO_CAVEAT.why());
  }

  /** For what an event without a caveat says. */
  private static final MeasureValue NO_CAVEAT =
      MeasureValue.of(Measure.ARM_PEAK, "", 0, 0, Grade.MEASURED, Reason.NONE);

  private static MeasureValue find(List<MeasureValue> values, Measure measure) {
    return values.stream().filter(v -> v.measure() == measure).findFirst().orElseThrow();
  }

  private static double sdMs(MeasureValue value) {
    return (value.high() - value.value()) / MeasureValue.Z95;
  }

  private static UnitMount mount(Quaternion sits, double longSd, double slipSd) {
    return new UnitMount(sits, longSd, 0, slipSd);
  }

  @Test
  void eachPartIsToldByHowLongBeforeImpactItIsFastest() {
    // Given: pelvis at 2.15 s, thorax at 2.18, arm at 2.22 (rolling faster still at 2.27), hand at
    // 2.25; a bias each. Expect: ms before 2.3 s. Within 1 ms, 2 for the trunk, whose flat top is
    // smoothed.
    List<MeasureValue> values =
        order(
            List.of(
                trunk(BodyPoint.PELVIS, 2.15),
                limb(BodyPoint.LEAD_FOREARM, 2.22, 2.27, 20),
                limb(BodyPoint.LEAD_HAND, 2.25, 2.1, 20),
                trunk(BodyPoint.THORAX, 2.18)),
            mount(SITS, 0, 0),
            0,
            0.003);
    assertThat(find(values, Measure.ORDER_PELVIS).value()).isCloseTo(150, within(2.0));
    assertThat(find(values, Measure.ORDER_THORAX).value()).isCloseTo(120, within(2.0));
    assertThat(find(values, Measure.ORDER_ARM).value()).isCloseTo(80, within(1.0));
    assertThat(find(values, Measure.ARM_PEAK).value())
        .isEqualTo(find(values, Measure.ORDER_ARM).value());
    assertThat(find(values, Measure.ORDER_HAND).value()).isCloseTo(50, within(1.0));
    // a mount known exactly: a step of 2 ms over root 12, 2.5 ms as skin rings, impact's 3 ms
    assertThat(sdMs(find(values, Measure.ORDER_ARM)))
        .isCloseTo(Math.hypot(2 / Math.sqrt(12), Math.hypot(2.5, 3)), within(1e-3));
  }

  @Test
  void theTrunksSpreadIsThatOfAFlatTop() {
    // Given: a bell of half width 0.1 s; ten percent below its height lies 0.1 root(-ln 0.9) to
    // each side. Expect: twice that over root 12, and the impact's 3 ms. Within 5 % (smoothed).
    MeasureValue pelvis =
        find(
            order(List.of(trunk(BodyPoint.PELVIS, 2.15)), UnitMount.onSkin(), 0, 0.003),
            Measure.ORDER_PELVIS);
    double flat = 2 * 100 * Math.sqrt(-Math.log(0.9)) / Math.sqrt(12);
    double expected = Math.hypot(flat, 3);
    assertThat(sdMs(pelvis)).isCloseTo(expected, within(0.05 * expected));
  }

  @Test
  void aMountThatMayBeTurnedMovesThePeakAsTurningItDoes() {
    // Given: a long axis known to 3 deg, a roll that peaks 50 ms later. Expect: for each axis the
    // larger of the peak's moves when the mount is really turned by root 3 spreads either way, over
    // root 3; a step of 2 ms over root 12, and 2.5 ms as skin rings. Within 10 %: turns of 5 deg,
    // not small.
    double sd = Math.toRadians(3);
    UnitStream arm = limb(BodyPoint.LEAD_FOREARM, 2.2, 2.25, 20);
    MeasureValue found = find(order(List.of(arm), mount(SITS, sd, 0), 0, 0), Measure.ARM_PEAK);
    double variance = 4 / 12.0 + 2.5 * 2.5;
    for (Vector3 axis : new Vector3[] {Vector3.Y, Vector3.Z}) {
      double largest = 0;
      for (int sign : new int[] {-1, 1}) {
        Quaternion turned =
            SITS.times(Quaternion.fromRotationVector(axis.times(sign * Math.sqrt(3) * sd)));
        double moved =
            find(order(List.of(arm), mount(turned, 0, 0), 0, 0), Measure.ARM_PEAK).value()
                - found.value();
        largest = Math.max(largest, moved * moved);
      }
      variance += largest / 3;
    }
    double expected = Math.sqrt(variance);
    assertThat(expected).isGreaterThan(3);
    assertThat(sdMs(found)).isCloseTo(expected, within(0.1 * expected));
  }

  @Test
  void whatRingsAfterTheBlowDoesNotCountButTheTrunkMayBeLate() {
    // Given: an arm that is fastest 40 ms after impact, and a pelvis 20 ms after it. Expect: the
    // arm's last sample before impact; the pelvis at -20 ms.
    List<MeasureValue> values =
        order(
            List.of(trunk(BodyPoint.PELVIS, 2.32), limb(BodyPoint.LEAD_FOREARM, 2.34, 2.1, 0)),
            mount(SITS, 0, 0),
            0,
            0);
    assertThat(find(values, Measure.ORDER_PELVIS).value()).isCloseTo(-20, within(3.0));
    assertThat(find(values, Measure.ARM_PEAK).value()).isBetween(0.0, 4.1);
    assertThat(values.stream().map(MeasureValue::measure))
        .containsExactly(Measure.ORDER_PELVIS, Measure.ORDER_ARM, Measure.ARM_PEAK);
  }

  @Test
  void beforeATenthOfASecondAheadOfTheTopNothingCounts() {
    // Given: a faster turn 0.3 s before the top. Expect: not seen.
    Vector3 about = new Vector3(0, 5, 0);
    UnitStream pelvis =
        unit(BodyPoint.PELVIS, t -> about.times(bell(t, 2.15, 0.1) + 3 * bell(t, 1.7, 0.05)));
    assertThat(find(order(List.of(pelvis), UnitMount.onSkin(), 0, 0), Measure.ORDER_PELVIS).value())
        .isCloseTo(150, within(2.0));
  }

  @Test
  void withoutAForearmTheArmsPeakIsWithheld() {
    List<MeasureValue> values =
        order(List.of(trunk(BodyPoint.PELVIS, 2.1)), UnitMount.onSkin(), 0, 0);
    assertThat(find(values, Measure.ARM_PEAK).given()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"0,1,0", "6,1,6"})
  void aPeakAtTheEdgeIsThatSample(int best, double sd, double timeS) {
    // Given: values that fall from, or rise to, an end; half a step of 1 s at least.
    double[] time = {0, 1, 2, 3, 4, 5, 6};
    double[] value = new double[7];
    for (int i = 0; i < 7; i++) {
      value[i] = 10 - Math.abs(i - best);
    }
    PeakTime peak = PeakTime.of(time, value, 0.01);
    assertThat(peak.timeS()).isEqualTo(timeS);
    assertThat(peak.value()).isEqualTo(10);
    assertThat(peak.sdS()).isEqualTo(0.5 * sd);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.2, 0.4})
  void aLopsidedPeakIsTheMiddleOfWhereItIsHigh(double part) {
    // Given: a tent of height 10 at 3 s, slopes 5 and -2.5 a second, part below the height. Expect:
    // met at 3 - 2 part and 3 + 4 part, so the middle 3 + part, width 6 part over root 12.
    double[] time = {1, 3, 7};
    double[] value = {0, 10, 0};
    PeakTime peak = PeakTime.of(time, value, part);
    assertThat(peak.timeS()).isCloseTo(3 + part, within(1e-12));
    double sd = Math.max(1.5, 6 * part / Math.sqrt(12));
    assertThat(peak.sdS()).isCloseTo(sd, within(1e-12));
  }

  private static final double LATE_S = 0.0025;

  @Test
  void aSecondPeakAsHighLeavesOpenWhichItWas() {
    // Given: tents of 10 at 2 s and of 9.95 at 9 s, slopes of 5 a second. Expect: within 0.1 of 10,
    // i.e. 0.02 s on each side of 2 s; the sample at 9 s is as high, so one moment in two lies 7 s
    // off.
    // Within 1e-9: rounding.
    double[] time = {0, 1, 2, 3, 4, 8, 9, 10};
    double[] value = {0, 5, 10, 5, 0, 5, 9.95, 5};
    PeakTime peak = PeakTime.of(time, value, 0.01);
    assertThat(peak.timeS()).isCloseTo(2, within(1e-12));
    double own = 0.04 * 0.04 / 12;
    assertThat(peak.sdS()).isCloseTo(Math.sqrt((own + 49) / 2), within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0.3, 7", "0.15, 0"})
  void aLowerPeakThatMayBeTheHighestLiesWithin(double rivalPart, double reachedS) {
    // Given: tents of 10 at 2 s and of 8 at 9 s. Expect: where heights may be off against each
    // other
    // by 0.3 of it, 95 % reach the second, 7 s off; by 0.15, it is none. Within 1e-9: rounding.
    double[] time = {0, 1, 2, 3, 4, 8, 9, 10};
    double[] value = {0, 5, 10, 5, 0, 5, 8, 5};
    PeakTime alone = PeakTime.of(time, value, 0.01);
    PeakTime peak = alone.beside(time, value, rivalPart);
    assertThat(peak.timeS()).isEqualTo(alone.timeS());
    assertThat(peak.sdS()).isCloseTo(Math.hypot(alone.sdS(), reachedS / 1.959964), within(1e-6));
  }

  @Test
  void theSpreadsOfTempoAreFirstOrderInEachEvent() {
    // Given: takeaway 1.2 +- 0.02, top 2 +- 0.01, impact 2.25 +- 0.005 s, of which 2.5 ms of the
    // first two are one and the same. Expect: by differences of the three numbers by each event,
    // the
    // common part moving both. Within 1e-6.
    double[] t = {1.2, 2, 2.25};
    double[] sd = {0.02, 0.01, 0.005};
    List<MeasureValue> tempo = tempo(t, sd);
    Measure[] measures = {Measure.TEMPO_BACK, Measure.TEMPO_DOWN, Measure.TEMPO_RATIO};
    for (Measure measure : measures) {
      double variance = 0;
      double together = 0;
      for (int e = 0; e < 3; e++) {
        double[] plus = t.clone();
        double[] minus = t.clone();
        plus[e] += 1e-5;
        minus[e] -= 1e-5;
        double slope =
            (find(tempo(plus, sd), measure).value() - find(tempo(minus, sd), measure).value())
                / 2e-5;
        variance += slope * slope * (sd[e] * sd[e] - (e < 2 ? LATE_S * LATE_S : 0));
        together += e < 2 ? slope * LATE_S : 0;
      }
      variance += together * together;
      assertThat(sdMs(find(tempo, measure))).isCloseTo(Math.sqrt(variance), within(1e-6));
      assertThat(find(tempo, measure).grade()).isEqualTo(Grade.MEASURED);
    }
  }

  private static List<MeasureValue> tempo(double[] t, double[] sd) {
    return TempoMeasures.of(
        new Swing(
            1,
            SwingKind.HIT,
            "",
            0,
            9,
            List.of(
                at(SwingEvent.TAKEAWAY, t[0], sd[0]),
                at(SwingEvent.TOP, t[1], sd[1]),
                at(SwingEvent.IMPACT, t[2], sd[2])),
            List.of()));
  }

  /** A limb whose rates in its own axes are these. */
  private static UnitStream arm(DoubleFunction<Vector3> segmentRate) {
    return unit(BodyPoint.LEAD_FOREARM, t -> SITS.rotate(segmentRate.apply(t)));
  }

  private static Vector3 rolling(double t) {
    return new Vector3(20 * bell(t, 2.25, 0.06), -12 * bell(t, 2.2, 0.08), 9 * bell(t, 2.2, 0.08));
  }

  @Test
  void aSlippingUnitMovesThePeakAsRatesSeenByASlippingUnitDo() {
    // Given: a unit that slips by 1 deg (1 SD) about each axis, one turn full at the top, one at
    // impact. Expect: for each of the six the larger of the peak's moves when the rates are really
    // those of a unit turned by root 3 spreads either way, its own turning included, over root 3;
    // a step of 2 ms over root 12, and 2.5 ms as skin rings. Within 10 %: the turns are taken to
    // first order.
    double sd = Math.toRadians(1);
    SkinSlip slip = new SkinSlip(1, TOP_S, IMPACT_S, IMPACT_S + 1);
    MeasureValue found =
        find(order(List.of(arm(OrderTest::rolling)), mount(SITS, 0, sd), 0, 0), Measure.ARM_PEAK);
    double variance = 4 / 12.0 + 2.5 * 2.5;
    for (Vector3 axis : new Vector3[] {Vector3.X, Vector3.Y, Vector3.Z}) {
      for (int part = 0; part < 2; part++) {
        int which = part;
        double largest = 0;
        for (int sign : new int[] {-1, 1}) {
          double size = sign * Math.sqrt(3) * sd;
          DoubleFunction<Vector3> turn = t -> axis.times(size * slip.parts(t)[which]);
          UnitStream slipping =
              arm(
                  t ->
                      Quaternion.fromRotationVector(turn.apply(t))
                          .conjugate()
                          .rotate(rolling(t))
                          .plus(turn.apply(t + 1e-4).minus(turn.apply(t - 1e-4)).times(5e3)));
          double moved =
              find(order(List.of(slipping), mount(SITS, 0, 0), 0, 0), Measure.ARM_PEAK).value()
                  - found.value();
          largest = Math.max(largest, moved * moved);
        }
        variance += largest / 3;
      }
    }
    double expected = Math.sqrt(variance);
    assertThat(expected).isGreaterThan(2.65);
    assertThat(sdMs(found)).isCloseTo(expected, within(0.1 * expected));
  }

  @Test
  void aCutWidensThePeakByItsLengthOverRootTwelve() {
    // Given: a rate cut at 14 of 15 rad/s about y, for about 42 ms. Expect: that over root 12, a
    // step over root 12, and 2.5 ms as skin rings.
    UnitStream whole = arm(t -> new Vector3(0, -15 * bell(t, 2.2, 0.08), 0));
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_FOREARM, "", 500, Double.POSITIVE_INFINITY, 14, false);
    double[][] gyro = new double[3][whole.size()];
    for (int i = 0; i < whole.size(); i++) {
      double y = -15 * bell(whole.timeS(i), 2.2, 0.08);
      gyro[1][i] = Math.max(-14, y);
    }
    UnitStream cut = new UnitStream(facts, whole.timeColumnS(), new double[3][whole.size()], gyro);
    MeasureValue peak =
        find(order(List.of(cut), mount(Quaternion.IDENTITY, 0, 0), 0, 0), Measure.ARM_PEAK);
    double half = 0.08 * Math.sqrt(-Math.log(14 / 15.0));
    int samples = (int) Math.floor(half / 0.002);
    double cutMs = 2 * 2.0 * samples;
    assertThat(peak.value()).isCloseTo(100, within(1.0));
    assertThat(sdMs(peak))
        .isCloseTo(Math.hypot(2.5, Math.hypot(cutMs, 2) / Math.sqrt(12)), within(0.1));
  }

  @Test
  void theBiasOfAUnitMovesNoPeak() {
    // Given: slow turns whose parts peak apart, so that a bias left in would favour one of them;
    // with and without a bias of 2 deg/s and more. Expect: the same times. Within 0.01 ms.
    DoubleFunction<Vector3> slow =
        t ->
            new Vector3(
                0.1 * bell(t, 2.1, 0.1), 0.4 * bell(t, 2.15, 0.1), -0.4 * bell(t, 2.22, 0.1));
    Vector3 more = new Vector3(-0.03, 0.07, 0.06);
    for (BodyPoint point : List.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM)) {
      Measure measure = point == BodyPoint.PELVIS ? Measure.ORDER_PELVIS : Measure.ARM_PEAK;
      double plain =
          find(order(List.of(unit(point, slow)), mount(SITS, 0, 0), 0, 0), measure).value();
      double biased =
          find(
                  order(
                      List.of(unit(point, t -> slow.apply(t).plus(more))), mount(SITS, 0, 0), 0, 0),
                  measure)
              .value();
      assertThat(biased).isCloseTo(plain, within(0.01));
    }
  }

  @Test
  void lostRatesCountAsNoneAndFewSamplesAsNoUnit() {
    // Given: a value of the trunk and of the arm lost before their peaks. Expect: the peaks
    // unmoved. Given: a unit that ends 14 ms after the search begins: seven samples. Expect: none.
    UnitStream pelvis = trunk(BodyPoint.PELVIS, 2.15);
    pelvis.gyroColumnRadPerS(0)[960] = Double.NaN;
    UnitStream arm = arm(OrderTest::rolling);
    double whole = find(order(List.of(arm), mount(SITS, 0, 0), 0, 0), Measure.ARM_PEAK).value();
    arm.gyroColumnRadPerS(1)[960] = Double.NaN;
    List<MeasureValue> values = order(List.of(pelvis, arm), mount(SITS, 0, 0), 0, 0);
    assertThat(find(values, Measure.ORDER_PELVIS).value()).isCloseTo(150, within(2.0));
    assertThat(find(values, Measure.ARM_PEAK).value()).isCloseTo(whole, within(1e-9));
    for (int samples : new int[] {7, 8}) {
      UnitStream ends = trunk(BodyPoint.PELVIS, 2.15).between(0, 1.9 - 1e-6 + 0.002 * samples);
      assertThat(
              order(List.of(ends), mount(SITS, 0, 0), 0, 0).stream()
                  .anyMatch(v -> v.measure() == Measure.ORDER_PELVIS))
          .isEqualTo(samples == 8);
    }
  }

  @Test
  void withoutTopOrImpactThereIsNoOrderAndWithoutTakeawayThereIs() {
    Recording recording =
        new Recording(
            "made",
            Player.unmeasured("p", Handedness.RIGHT),
            List.of(arm(OrderTest::rolling)),
            List.of());
    EventTime top = at(SwingEvent.TOP, TOP_S, 0);
    EventTime impact = at(SwingEvent.IMPACT, IMPACT_S, 0);
    for (List<EventTime> events : List.of(List.of(top), List.of(impact), List.of(top, impact))) {
      Swing swing = new Swing(1, SwingKind.HIT, "", 0, 4, events, List.of());
      List<MeasureValue> values =
          OrderMeasures.of(recording, RestBiases.of(recording), swing, WristAlignment.nominal(), 0);
      assertThat(find(values, Measure.ARM_PEAK).given()).isEqualTo(events.size() == 2);
      assertThat(TempoMeasures.of(swing)).hasSize(3).noneMatch(MeasureValue::given);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2})
  void aTempoOfAGuessedEventIsAnEstimate(int guessed) {
    // Expect: the parts that rest on the event, and the ratio, estimated; the other part measured.
    List<EventTime> events = new ArrayList<>();
    SwingEvent[] all = {SwingEvent.TAKEAWAY, SwingEvent.TOP, SwingEvent.IMPACT};
    for (int e = 0; e < 3; e++) {
      EventTime sure = at(all[e], 1 + e, 0.01);
      events.add(
          e == guessed ? new EventTime(all[e], 1 + e, 0.01, Grade.ESTIMATED, sure.why()) : sure);
    }
    List<MeasureValue> tempo =
        TempoMeasures.of(new Swing(1, SwingKind.HIT, "", 0, 9, events, List.of()));
    assertThat(find(tempo, Measure.TEMPO_BACK).grade())
        .isEqualTo(guessed < 2 ? Grade.ESTIMATED : Grade.MEASURED);
    assertThat(find(tempo, Measure.TEMPO_DOWN).grade())
        .isEqualTo(guessed > 0 ? Grade.ESTIMATED : Grade.MEASURED);
    assertThat(find(tempo, Measure.TEMPO_RATIO).grade()).isEqualTo(Grade.ESTIMATED);
  }
}
