package steadyturn.analysis.pelvis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.reason.Reason;

/** A shift of 1 deg and 4 mm; takeaway at 1 s, top at 2 s, impact at 2.25 s, finish at 3 s. */
class SkinCourseTest {

  private static final double CLOSE = 1e-12;
  private static final EventTime TAKEAWAY = event(SwingEvent.TAKEAWAY, 1);
  private static final EventTime TOP = event(SwingEvent.TOP, 2);
  private static final EventTime IMPACT = event(SwingEvent.IMPACT, 2.25);
  private static final EventTime FINISH = event(SwingEvent.FINISH, 3);

  private static EventTime event(SwingEvent event, double timeS) {
    return new EventTime(event, timeS, 0, Grade.MEASURED, Reason.NONE);
  }

  @ParameterizedTest
  @CsvSource({"1,0", "1.5,0.5", "2,1", "2.125,0.70711", "2.25,1", "3,1", "3.5,1"})
  void aShiftIsWholeAtTheKeyPositionsAndLessBetweenThem(double timeS, double part) {
    // Given: independent shifts at top, impact and finish, going over into each other. Expect by
    // hand: half way back one half of one shift, half way down half of two, sqrt(1/4 + 1/4) of the
    // size of one, and a twentieth that sway leaves; a turn of up to 45 deg has no say, one of 90
    // deg
    // drags twice as far. Within 1e-5: as written.
    SkinCourse course = SkinCourse.of(SkinShift.assumed(), List.of(TAKEAWAY, TOP, IMPACT, FINISH));
    double expected = Math.hypot(0.05, part);
    SkinShift shift = course.at(timeS, Math.toRadians(45));
    assertThat(Math.toDegrees(shift.angleRad())).isCloseTo(expected, within(1e-5));
    assertThat(1e3 * shift.placeM()).isCloseTo(4 * expected, within(4e-5));
    SkinShift far = course.at(timeS, Math.toRadians(90));
    assertThat(Math.toDegrees(far.angleRad())).isCloseTo(2 * expected, within(2e-5));
  }

  @Test
  void withoutAFinishOneIsTakenASecondAfterImpact() {
    // Expect: half way from 2.25 to 3.25 s again sqrt(1/2), and the twentieth.
    SkinCourse course = SkinCourse.of(SkinShift.assumed(), List.of(TAKEAWAY, TOP, IMPACT));
    assertThat(1e3 * course.at(2.75, 0).placeM())
        .isCloseTo(4 * Math.sqrt(0.5 + 0.0025), within(CLOSE));
  }

  @Test
  void withoutKeyPositionsTheShiftGrowsWithTheTurn() {
    // Given: no impact, or one before the top. Expect: half a shift at 22.5 of 45 deg, two at 90
    // deg.
    for (EventTime impact : List.of(FINISH, event(SwingEvent.IMPACT, 1.9))) {
      SkinCourse course = SkinCourse.of(SkinShift.assumed(), List.of(TAKEAWAY, TOP, impact));
      assertThat(1e3 * course.at(2, Math.toRadians(22.5)).placeM()).isCloseTo(2, within(CLOSE));
      assertThat(1e3 * course.at(2, Math.toRadians(90)).placeM()).isCloseTo(8, within(CLOSE));
    }
  }

  @Test
  void independentShiftsAddInSquares() {
    // Given: 3 mrad and 4 mm, then 4 mrad and 3 mm. Expect: 5 and 5, by Pythagoras.
    SkinShift both = new SkinShift(0.003, 0.004).and(0.004, 0.003);
    assertThat(both.angleRad()).isCloseTo(0.005, within(CLOSE));
    assertThat(both.placeM()).isCloseTo(0.005, within(CLOSE));
  }
}
