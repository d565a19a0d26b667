package steadyturn.fusion.attitude;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Cuts of parabolas, which a cubic with their own slopes gives back exactly. Full scale 30. */
class PeakRepairTest {

  private static final double FULL = 30;
  private static final double PEAK_S = 0.2;

  /** A peak of that height, above full scale for the half width, on slightly uneven instants. */
  private static double truth(double timeS, double peak, double halfS) {
    double u = (timeS - PEAK_S) / halfS;
    return peak - (peak - FULL) * u * u;
  }

  private static UnitStream cut(int axis, int sign, double peak, double halfS, int samples) {
    double[] time = new double[samples];
    double[][] gyro = new double[3][samples];
    for (int i = 0; i < samples; i++) {
      time[i] = 0.002 * i + 0.0003 * Math.sin(i);
      double rate = truth(time[i], peak, halfS);
      gyro[axis][i] = sign * Math.max(-20, Math.min(FULL, rate));
    }
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", 500, Double.POSITIVE_INFINITY, FULL, false);
    return new UnitStream(facts, time, new double[3][samples], gyro);
  }

  @ParameterizedTest
  @CsvSource({"0,1,33,0.02", "1,-1,36,0.02", "2,1,31,0.01", "2,-1,38,0.015"})
  void aCutParabolaIsGivenBackAndItsDoubtIsAQuarterOfWhatWasAdded(
      int axis, int sign, double peak, double halfS) {
    // Expect: the parabola at each cut sample; doubt a quarter of the area above full scale so far
    // (sum of heights times half the way between neighbours). Within 1e-6 of the slope by three
    // samples, which is exact for a parabola.
    UnitStream stream = cut(axis, sign, peak, halfS, 200);
    PeakRepair.Repaired repaired = PeakRepair.repair(stream);
    PeakRepair.Cut cut = repaired.cuts().get(0);
    assertThat(repaired.cuts()).hasSize(1);
    assertThat(cut.axis()).isEqualTo(axis);
    assertThat(cut.beyond()).isFalse();
    assertThat(repaired.beyondFromS()).isInfinite();
    double area = 0;
    for (int i = 1; i < 199; i++) {
      double t = stream.timeS(i);
      boolean lost = Math.abs(stream.gyroRadPerS(axis, i)) >= 0.999 * FULL;
      double expected = lost ? sign * truth(t, peak, halfS) : stream.gyroRadPerS(axis, i);
      assertThat(repaired.stream().gyroRadPerS(axis, i))
          .as("at " + t)
          .isCloseTo(lost ? sign * Math.max(FULL, sign * expected) : expected, within(1e-6));
      area +=
          lost
              ? (Math.max(FULL, sign * expected) - FULL)
                  * (stream.timeS(i + 1) - stream.timeS(i - 1))
                  / 2
              : 0;
      double before = t <= cut.fromS() ? 0 : area / 4;
      assertThat(repaired.angleSdRad(t)).isCloseTo(before, within(1e-6));
      if (lost) {
        assertThat(t).isBetween(cut.fromS(), cut.toS());
      }
    }
    assertThat(stream.gyroRadPerS(axis, 100)).isEqualTo(sign * FULL);
  }

  @ParameterizedTest
  @CsvSource({"0.0242,false", "0.0282,true"})
  void overFiveHundredthsOfASecondACutIsBeyondRepair(double halfS, boolean beyond) {
    // Given: cuts of about 48 and 56 ms; 50 ms and a tenth of the cut are allowed between the
    // samples beside it. Expect: filled either way; beyond, unsure by 0.1 rad at once and by all
    // that was added.
    UnitStream stream = cut(1, 1, 36, halfS, 200);
    PeakRepair.Repaired repaired = PeakRepair.repair(stream);
    PeakRepair.Cut cut = repaired.cuts().get(0);
    assertThat(cut.beyond()).isEqualTo(beyond);
    assertThat(repaired.beyondBefore(1)).isEqualTo(beyond);
    assertThat(repaired.beyondBefore(cut.fromS())).isFalse();
    double area = 4 * halfS * (36 - FULL) / 3;
    double expected = beyond ? 0.1 + area : area / 4;
    assertThat(repaired.angleSdRad(1)).isCloseTo(expected, within(0.02 * expected));
    if (beyond) {
      assertThat(repaired.beyondFromS()).isEqualTo(cut.fromS());
    }
  }

  @ParameterizedTest
  @CsvSource({"41.5,false", "42.6,true"})
  void aPeakAboveOnePointFourFullScalesIsBeyondRepair(double peak, boolean beyond) {
    assertThat(PeakRepair.repair(cut(0, -1, peak, 0.02, 200)).cuts().get(0).beyond())
        .isEqualTo(beyond);
  }

  @Test
  void atTheEndsOfTheStreamNothingCanBeFilled() {
    // Given: a stream that ends within the cut, and one that begins in it. Expect: beyond repair.
    UnitStream ends = cut(0, 1, 36, 0.02, 101);
    assertThat(PeakRepair.repair(ends).cuts().get(0).beyond()).isTrue();
    UnitStream whole = cut(0, 1, 36, 0.02, 200);
    UnitStream begins = whole.between(PEAK_S, 9);
    assertThat(PeakRepair.repair(begins).cuts().get(0).beyond()).isTrue();
    assertThat(PeakRepair.repair(begins).angleSdRad(9)).isCloseTo(0.1, within(1e-12));
  }

  @Test
  void cutsOfSeveralAxesAddUpInSquaresAndALostNeighbourSpoilsOne() {
    UnitStream one = cut(0, 1, 33, 0.02, 200);
    UnitStream other = cut(2, -1, 36, 0.01, 200);
    double[][] gyro = {one.gyroColumnRadPerS(0), new double[200], other.gyroColumnRadPerS(2)};
    UnitStream both = new UnitStream(one.facts(), one.timeColumnS(), new double[3][200], gyro);
    PeakRepair.Repaired repaired = PeakRepair.repair(both);
    double first = PeakRepair.repair(one).angleSdRad(1);
    double second = PeakRepair.repair(other).angleSdRad(1);
    assertThat(repaired.cuts()).hasSize(2);
    assertThat(repaired.angleSdRad(1)).isCloseTo(Math.hypot(first, second), within(1e-12));
    int before = one.indexAt(repaired.cuts().get(0).fromS()) - 1;
    gyro[0][before] = Double.NaN;
    assertThat(PeakRepair.repair(both).cuts().get(0).beyond()).isTrue();
    assertThat(PeakRepair.repair(both).cuts().get(1).beyond()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {29.98, 29.96})
  void whatCountsAsCutIsNinetyNinePointNinePercent(double rate) {
    UnitStream stream = cut(2, 1, 33, 0.02, 60);
    for (int i = 30; i < 34; i++) {
      stream.gyroColumnRadPerS(0)[i] = rate;
    }
    assertThat(PeakRepair.repair(stream).cuts()).hasSize(rate > 29.97 ? 1 : 0);
    stream.gyroColumnRadPerS(0)[32] = -rate;
    assertThat(PeakRepair.repair(stream).cuts()).hasSize(rate > 29.97 ? 3 : 0);
  }

  /** The stream with its cut filled anew by 0.1 x sample number above full scale. */
  private static PeakRepair.Repaired refilled(PeakRepair.Repaired repaired, int reach, int sure) {
    double[] rates = new double[reach];
    double[] sd = new double[reach];
    for (int i = 0; i < reach; i++) {
      rates[i] = FULL + 0.1 * i;
      sd[i] = i < sure ? 0.01 * i : 9;
    }
    return new Filling(rates, sd, 0.2).into(repaired, repaired.cuts().get(0));
  }

  @ParameterizedTest
  @CsvSource({"100,100", "12,12", "12,7", "12,0"})
  void aFillingTakesThePlaceOfThePeakAsFarAsItIsTrusted(int reach, int sure) {
    // Given: rates for the whole cut or its first twelve samples, trusted for all, seven or none.
    // Expect: those rates, then a straight line to the sample behind the cut; one cut with the
    // filling's doubt as far as it is trusted, and one beyond repair, 0.3 rad, for the rest.
    PeakRepair.Repaired before = PeakRepair.repair(cut(1, 1, 36, 0.02, 200));
    PeakRepair.Cut cut = before.cuts().get(0);
    UnitStream old = before.stream();
    int first = old.indexAt(cut.fromS());
    int last = old.indexAt(cut.toS());
    int n = Math.min(reach, last - first + 1);
    int trusted = Math.min(sure, n);
    PeakRepair.Repaired after = refilled(before, n, trusted);
    UnitStream now = after.stream();
    for (int i = 0; i < 200; i++) {
      double expected = old.gyroRadPerS(1, i);
      if (i >= first && i < first + n) {
        expected = FULL + 0.1 * (i - first);
      } else if (i >= first + n && i <= last) {
        double from = FULL + 0.1 * (n - 1);
        double part =
            (now.timeS(i) - now.timeS(first + n - 1))
                / (now.timeS(last + 1) - now.timeS(first + n - 1));
        expected = from + part * (old.gyroRadPerS(1, last + 1) - from);
      }
      assertThat(now.gyroRadPerS(1, i)).as("sample " + i).isCloseTo(expected, within(1e-9));
    }
    List<PeakRepair.Cut> cuts = after.cuts();
    boolean whole = first + trusted - 1 == last;
    assertThat(cuts).hasSize(trusted == 0 || whole ? 1 : 2);
    if (trusted > 0) {
      assertThat(cuts.get(0).beyond()).isFalse();
      assertThat(cuts.get(0).fromS()).isEqualTo(cut.fromS());
      assertThat(cuts.get(0).toS()).isEqualTo(now.timeS(first + trusted - 1));
      assertThat(cuts.get(0).doubt().atRad(now.timeS(first + 3))).isCloseTo(0.03, within(1e-12));
    }
    if (!whole) {
      PeakRepair.Cut rest = cuts.get(cuts.size() - 1);
      assertThat(rest.beyond()).isTrue();
      assertThat(rest.axis()).isEqualTo(1);
      assertThat(rest.toS()).isEqualTo(cut.toS());
      assertThat(rest.doubt().atRad(9)).isEqualTo(0.3);
    }
  }

  @Test
  void atALowRateTheNextSampleGivesTheSlope() {
    // Given: 100 Hz, samples 10 ms apart, farther than the 8 ms of a slope: 19, 29, cut, 29, 19.
    // Expect: the cubic half way, 29 + (1000 + 1000) / 8 x 0.02 s = 34.
    double[] time = {0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06};
    double[] rate = {9, 19, 29, 30, 29, 19, 9};
    UnitFacts facts =
        new UnitFacts(BodyPoint.LEAD_HAND, "", 100, Double.POSITIVE_INFINITY, FULL, false);
    UnitStream stream =
        new UnitStream(
            facts, time, new double[3][7], new double[][] {new double[7], rate, new double[7]});
    assertThat(PeakRepair.repair(stream).stream().gyroRadPerS(1, 3)).isCloseTo(34, within(1e-9));
  }
}
