package steadyturn.analysis.lab;

import java.util.EnumSet;
import java.util.Set;
import java.util.function.Consumer;
import steadyturn.analysis.lab.family.Chip;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.sample.BodyPoint;

/** The units of a lesson to simulate; changed in a copy only, by {@link LessonSpec}. */
final class UnitSpec {

  Set<BodyPoint> worn = EnumSet.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
  UnitGrade grade = UnitGrade.CALIBRATED;

  /** Samples a second. */
  double rateHz = 500;

  /** Largest acceleration a unit shows. */
  double accelFullScaleG = 16;

  /** Largest rate a unit shows. */
  double gyroFullScaleDegPerS = 2000;

  /** Samples lost. */
  double lossPct = 0.1;

  /** Size of each unit's clock skew, give or take 40 %, either sign. */
  double clockSkewPpm = 35;

  /** How far apart the units start; known to the recording. */
  double startSpreadS = 0.2;

  /** Standard deviation of what is not known of it. */
  double startErrorS = 0.0005;

  /** Standard deviation of time stamps. */
  double jitterS = 0.0002;

  /** Takes over what a family's chip says. */
  void wear(Chip chip) {
    grade = chip.grade();
    rateHz = chip.rateHz();
    lossPct = chip.lossPct();
    jitterS = chip.jitterS();
    startErrorS = chip.startErrorS();
  }

  UnitSpec with(Consumer<UnitSpec> change) {
    UnitSpec c = new UnitSpec();
    c.worn = worn;
    c.grade = grade;
    c.rateHz = rateHz;
    c.accelFullScaleG = accelFullScaleG;
    c.gyroFullScaleDegPerS = gyroFullScaleDegPerS;
    c.lossPct = lossPct;
    c.clockSkewPpm = clockSkewPpm;
    c.startSpreadS = startSpreadS;
    c.startErrorS = startErrorS;
    c.jitterS = jitterS;
    change.accept(c);
    return c;
  }
}
