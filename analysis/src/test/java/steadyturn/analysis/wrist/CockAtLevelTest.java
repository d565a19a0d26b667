package steadyturn.analysis.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.fusion.attitude.LevelTrack;
import steadyturn.fusion.attitude.PeakRepair;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.wear.SkinSlip;
import steadyturn.fusion.wear.wrist.TwoAxisJoint;
import steadyturn.fusion.wear.wrist.WristAlignment;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.UnitStream;

/** Errors of a level moment and of the angle there that add, or take each other away. */
class CockAtLevelTest {

  private static final TwoAxisJoint JOINT =
      TwoAxisJoint.fit(
          track(
              WristLawsTest.unit(BodyPoint.LEAD_FOREARM, Handedness.RIGHT, WristLawsTest::forearm)),
          track(WristLawsTest.unit(BodyPoint.LEAD_HAND, Handedness.RIGHT, WristLawsTest::hand)),
          WristAlignment.nominal(),
          new SkinSlip(1.2, 2, 2.26, 2.9),
          0.95,
          2.25,
          1e-4);

  private static LevelTrack track(UnitStream stream) {
    return LevelTrack.of(PeakRepair.repair(stream), Vector3.ZERO, LevelTrack.Spreads.RAW, 0.4, 1.1);
  }

  private static EventTime at(double timeS, double sdS) {
    MeasureValue plain = MeasureValue.of(Measure.ARM_PEAK, "", 0, 0, Grade.MEASURED, Reason.NONE);
    return new EventTime(SwingEvent.LEAD_ARM_LEVEL_DOWN, timeS, sdS, Grade.MEASURED, plain.why());
  }

  private static double slopeRadPerS(int k, boolean ofHand) {
    return (JOINT.elevationRad(k + 1, ofHand) - JOINT.elevationRad(k - 1, ofHand))
        / (JOINT.timeS(k + 1) - JOINT.timeS(k - 1));
  }

  @ParameterizedTest
  @CsvSource({
    "3,400,false",
    "-3,400,false",
    "3,-400,true",
    "-3,-400,true",
    "0.5,900,false",
    "2,0,false"
  })
  void anErrorThatIsSharedWhollyAddsAsItIs(double times, double rateDegPerS, boolean ofHand) {
    // Given: an angle that is wrong by so many times what its level is wrong by, and a moment wrong
    // by exactly that. Expect by hand: the error of the level e puts the moment off by -e / slope,
    // so the angle there by times e - rate e / slope; one spread of it. At least root 0.1 of what
    // the two give when they are independent.
    int k = 1060;
    double[] row = JOINT.elevationRow(k, ofHand);
    double level = Math.toDegrees(JOINT.sdRad(row));
    double slope = Math.toDegrees(slopeRadPerS(k, ofHand));
    double timeSdS = level / Math.abs(slope);
    for (int i = 0; i < row.length; i++) {
      row[i] *= times;
    }
    double found =
        CockAtLevel.sdDeg(
            JOINT,
            k,
            at(JOINT.timeS(k), timeSdS),
            row,
            Math.abs(times) * level,
            rateDegPerS,
            ofHand);
    double together = Math.abs(times - rateDegPerS / slope) * level;
    double apart = Math.hypot(times * level, rateDegPerS / slope * level);
    assertThat(found).isCloseTo(Math.max(together, Math.sqrt(0.1) * apart), within(1e-6 * apart));
  }

  @Test
  void aMomentKnownBetterThanTheLevelSharesLess() {
    // Given: a moment stated to half of what the level would make it, and to none at all. Expect:
    // half of the product shared, and none.
    int k = 1060;
    double[] row = JOINT.elevationRow(k, false);
    double level = Math.toDegrees(JOINT.sdRad(row));
    double slope = Math.toDegrees(slopeRadPerS(k, false));
    double half = 0.5 * level / Math.abs(slope);
    double rate = -300;
    double product = rate * level * level / slope;
    double expected = level * level + Math.pow(rate * half, 2) - 2 * 0.5 * product;
    assertThat(CockAtLevel.sdDeg(JOINT, k, at(JOINT.timeS(k), half), row, level, rate, false))
        .isCloseTo(Math.sqrt(expected), within(1e-6));
    assertThat(CockAtLevel.sdDeg(JOINT, k, at(JOINT.timeS(k), 0), row, level, rate, false))
        .isCloseTo(level, within(1e-9));
  }
}
