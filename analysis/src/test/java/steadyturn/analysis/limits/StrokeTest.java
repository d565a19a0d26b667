package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Fast moments after a still one, where no swing was found. Given in all: rates of a made course at
 * 200 Hz, still to 4 s, 100 deg/s back to 5 s, slow for an instant at 5.2 s, fastest at 5.6 s; each
 * limit (our choice) from either side.
 */
class StrokeTest {

  private static final int N = 200 * 60;
  private final double[] degPerS = new double[N];

  StrokeTest() {
    stroke(0);
  }

  private void stroke(double laterS) {
    fill(laterS + 3, laterS + 4, 2);
    fill(laterS + 4, laterS + 5.4, 100);
    fill(laterS + 5.2, laterS + 5.205, 20);
    fill(laterS + 5.4, laterS + 5.8, 600);
    fill(laterS + 5.6, laterS + 5.605, 900);
  }

  private void fill(double fromS, double toS, double value) {
    Arrays.fill(degPerS, (int) Math.round(200 * fromS), (int) Math.round(200 * toS), value);
  }

  private UnitStream unit(BodyPoint point, double times) {
    double[] timeS = new double[N];
    double[][] gyro = new double[3][N];
    for (int i = 0; i < N; i++) {
      timeS[i] = i / 200.0;
      gyro[0][i] = Math.toRadians(0.6 * times * degPerS[i]);
      gyro[2][i] = Math.toRadians(-0.8 * times * degPerS[i]);
    }
    return new UnitStream(UnitFacts.plain(point, 200), timeS, new double[3][N], gyro);
  }

  private List<Stroke> found(UnitStream... units) {
    List<UnitStream> all = units.length > 0 ? List.of(units) : List.of(unit(BodyPoint.PELVIS, 1));
    return Stroke.fast(
        new Recording("made", Player.unmeasured("p", Handedness.RIGHT), all, List.of()));
  }

  private void expect(double takeawayS, double topS, double impactS) {
    assertThat(found()).hasSize(1);
    Stroke stroke = found().get(0);
    assertThat(
            Stream.of(stroke.takeawayS(), stroke.topS(), stroke.impactS())
                .mapToDouble(Double::doubleValue)
                .toArray())
        .containsExactly(new double[] {takeawayS, topS, impactS}, within(1e-9));
  }

  @Test
  void itLastsFromTheEndOfStillnessByTheSlowestMomentToTheFastest() {
    expect(3.995, 5.2, 5.6);
  }

  @ParameterizedTest
  @CsvSource({"498, 0", "502, 1"})
  void aStrokeIsFasterThanFiveHundredDegreesASecond(double most, int strokes) {
    for (int i = 0; i < N; i++) {
      degPerS[i] = Math.min(most, degPerS[i]);
    }
    assertThat(found()).hasSize(strokes);
  }

  @ParameterizedTest
  @CsvSource({"1.25, true", "1.35, false"})
  void theFastestMomentComesWithinThirteenTenths(double afterS, boolean isThere) {
    fill(5.4 + afterS, 5.4 + afterS + 0.005, 950);
    fill(5.1 + afterS, 5.1 + afterS + 0.005, 10);
    assertThat(found().get(0).impactS()).isCloseTo(isThere ? 5.4 + afterS : 5.6, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"-0.59, true", "-0.61, false", "-0.125, true", "-0.115, false"})
  void theTopLiesTwelveToSixtyHundredthsBefore(double beforeS, boolean isTop) {
    fill(5.6 + beforeS, 5.6 + beforeS + 0.005, 16);
    assertThat(found().get(0).topS()).isCloseTo(isTop ? 5.6 + beforeS : 5.2, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"14.8, true", "15.2, false"})
  void stillIsUnderFifteenDegreesASecond(double sway, boolean isStill) {
    fill(0, 4, sway);
    assertThat(found()).hasSize(isStill ? 1 : 0);
  }

  @ParameterizedTest
  @CsvSource({"0.49, false", "0.52, true"})
  void itMustBeStillForHalfASecond(double lengthS, boolean isStill) {
    fill(0, 4 - lengthS, 30);
    assertThat(found()).hasSize(isStill ? 1 : 0);
  }

  @ParameterizedTest
  @CsvSource({"1.75, 1", "1.85, 0"})
  void itMustHaveBeenStillWithinThreeAndAHalfSeconds(double movedForS, int strokes) {
    // The half second of stillness too: 1.2 s to the top, 0.505 s still, 1.795 s of movement.
    fill(4 - movedForS, 4, 100);
    assertThat(found()).hasSize(strokes);
  }

  @ParameterizedTest
  @CsvSource({"2.9, 1", "3.1, 2"})
  void fastMomentsWithinThreeSecondsAreOne(double laterS, int strokes) {
    fill(5.8, 20, 0);
    fill(5.6 + laterS, 5.6 + laterS + 0.005, 800);
    assertThat(found()).hasSize(strokes);
  }

  @ParameterizedTest
  @CsvSource({"12, 12", "13, 7"})
  void aDozenStrokesAreEnough(int strokes, int kept) {
    // Given: fast moments 3.1 s apart, still between. Expect: all, or every second one.
    Arrays.fill(degPerS, 0);
    for (int k = 0; k < strokes; k++) {
      fill(5 + 3.1 * k, 5.005 + 3.1 * k, 800);
    }
    assertThat(found()).hasSize(kept);
  }

  @Test
  void theFastestUnitIsAskedWhateverItIsCalled() {
    // Given: a slower copy of the course beside it. Expect: that of the faster one alone.
    assertThat(found(unit(BodyPoint.PELVIS, 1), unit(BodyPoint.LEAD_HAND, 0.5))).hasSize(1);
    assertThat(found(unit(BodyPoint.PELVIS, 0.5), unit(BodyPoint.LEAD_HAND, 1))).hasSize(1);
    assertThat(found(unit(BodyPoint.PELVIS, 0.5))).isEmpty();
  }
}
