package steadyturn.ingest.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

class RecordingQualityTest {

  private static Recording recording(UnitStream... units) {
    return new Recording(
        "sub-test", Player.unmeasured("test", Handedness.RIGHT), List.of(units), List.of());
  }

  private static UnitStream made(BodyPoint point, double peakDegPerS) {
    return MadeUnit.good(point, 200, 80, Math.toRadians(peakDegPerS)).stream();
  }

  private static List<Check> checksOf(RecordingReport report, BodyPoint point) {
    return Check.unit(report, point).orElseThrow().findings().stream().map(Check::of).toList();
  }

  @Test
  void unitsThatMoveAsTheyAreNamedRaiseNoDoubt() {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                made(BodyPoint.PELVIS, 450),
                made(BodyPoint.LEAD_FOREARM, 1000),
                made(BodyPoint.LEAD_HAND, 1150)));
    assertThat(report.verdict()).isEqualTo(Verdict.FIT);
  }

  @Test
  void aPelvisThatTurnsFasterThanTheHandIsCalledExchanged() {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                made(BodyPoint.PELVIS, 1150),
                made(BodyPoint.LEAD_FOREARM, 1000),
                made(BodyPoint.LEAD_HAND, 450)));
    assertThat(checksOf(report, BodyPoint.PELVIS)).contains(Check.SWAPPED);
    assertThat(checksOf(report, BodyPoint.LEAD_HAND)).contains(Check.SWAPPED);
    assertThat(Check.unit(report, BodyPoint.PELVIS).orElseThrow().verdict())
        .isEqualTo(Verdict.NOT_USABLE);
  }

  @Test
  void aForearmThatTurnsFasterThanTheHandInEverySwingIsCalledExchanged() {
    RecordingReport report =
        RecordingQuality.judge(
            recording(made(BodyPoint.LEAD_FOREARM, 1150), made(BodyPoint.LEAD_HAND, 1000)));
    assertThat(checksOf(report, BodyPoint.LEAD_HAND)).containsExactly(Check.SWAPPED);
  }

  @Test
  void unitsThatNeverRanTogetherAreNotUsedTogether() {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                made(BodyPoint.PELVIS, 450), made(BodyPoint.LEAD_FOREARM, 1000).shifted(100)));
    assertThat(checksOf(report, BodyPoint.PELVIS)).isEmpty();
    assertThat(checksOf(report, BodyPoint.LEAD_FOREARM)).containsExactly(Check.OVERLAP);
    assertThat(report.verdict()).isEqualTo(Verdict.NOT_USABLE);
  }

  // Source of the next three: whole-body recording of Bo Yang, 2021 (MIT), repository dlaidig/qmt;
  // everyday movement of one person, real wear.

  @ParameterizedTest
  @CsvSource({
    "hip, forearm_left, hand_left", "hip, forearm_right, hand_right",
    "lower_back, forearm_left, hand_left", "lower_back, forearm_right, hand_right"
  })
  void realWornUnitsAreUsableAndInTheirPlaces(String trunk, String forearm, String hand)
      throws IOException {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                OpenData.worn(trunk, BodyPoint.PELVIS),
                OpenData.worn(forearm, BodyPoint.LEAD_FOREARM),
                OpenData.worn(hand, BodyPoint.LEAD_HAND)));
    assertThat(report.verdict()).isNotEqualTo(Verdict.NOT_USABLE);
    assertThat(report.units())
        .allSatisfy(u -> assertThat(u.findings()).noneMatch(f -> Check.of(f) == Check.SWAPPED));
  }

  @ParameterizedTest
  @CsvSource({"left", "right"})
  void aRealHipAndHandWithExchangedNamesAreNoticed(String side) throws IOException {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                OpenData.worn("hand_" + side, BodyPoint.PELVIS),
                OpenData.worn("forearm_" + side, BodyPoint.LEAD_FOREARM),
                OpenData.worn("hip", BodyPoint.LEAD_HAND)));
    assertThat(checksOf(report, BodyPoint.PELVIS)).contains(Check.SWAPPED);
    assertThat(checksOf(report, BodyPoint.LEAD_HAND)).contains(Check.SWAPPED);
  }

  @ParameterizedTest
  @CsvSource({"left", "right"})
  void aRealHandNamedPelvisBesideItsForearmIsNoticed(String side) throws IOException {
    RecordingReport report =
        RecordingQuality.judge(
            recording(
                OpenData.worn("hand_" + side, BodyPoint.PELVIS),
                OpenData.worn("forearm_" + side, BodyPoint.LEAD_FOREARM)));
    assertThat(checksOf(report, BodyPoint.PELVIS)).contains(Check.SWAPPED);
  }

  @ParameterizedTest
  @CsvSource({
    // file, rate, first accel column, unit of accel, first gyro column, unit of gyro, counter?
    "broad/01_undisturbed_slow_rotation_A.csv.gz, 285.71, 1, 1, 4, 1, false",
    "broad/07_undisturbed_fast_rotation_B.csv.gz, 285.71, 1, 1, 4, 1, false",
    "broad/18_undisturbed_fast_translation_with_breaks_B.csv.gz, 285.71, 1, 1, 4, 1, false",
    "fusion/sensor_data.csv, 99.2, 4, 9.80665, 1, 0.017453292519943, false",
    "mobgap/TimeMeasure1_Test11_Trial1.csv, 100, 1, 9.80665, 4, 0.017453292519943, true",
    "mobgap/TimeMeasure1_Test5_Trial1.csv, 100, 1, 9.80665, 4, 0.017453292519943, true"
  })
  void realRecordingsOfFourSourcesComeOutUsable(
      String file, double rateHz, int accel, double g, int gyro, double deg, boolean counts)
      throws IOException {
    UnitReport report =
        UnitQuality.judge(
            OpenData.read(file, BodyPoint.PELVIS, rateHz, accel, g, gyro, deg, counts));
    assertThat(report.verdict()).isNotEqualTo(Verdict.NOT_USABLE);
    assertThat(report.saturatedSamples()).isZero();
    assertThat(report.lostPct()).isLessThan(0.5);
  }
}
