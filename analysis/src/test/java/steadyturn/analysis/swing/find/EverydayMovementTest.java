package steadyturn.analysis.swing.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import steadyturn.analysis.coach.drill.HalfSwings;
import steadyturn.analysis.coach.drill.SlowTurns;
import steadyturn.analysis.swing.Swing;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * Real worn units of a person who walks, bends, waves and turns, 60 s at 100 Hz: qmt full-body
 * example (c) 2021 Bo Yang, MIT, read in place from ../shared/data. No golf in it.
 */
class EverydayMovementTest {

  private static final Path FOLDER = Path.of("..", "..", "shared", "data", "qmt_fullbody");

  private static UnitStream read(String name, BodyPoint point) {
    Path file = FOLDER.resolve(name + ".csv.gz");
    assumeTrue(Files.exists(file), "skipped: no recordings in ../shared/data/qmt_fullbody");
    List<double[]> rows = new ArrayList<>();
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
      in.lines().skip(1).forEach(line -> rows.add(numbers(line)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    int n = rows.size();
    double[][] c = new double[7][n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < 7; k++) {
        c[k][i] = rows.get(i)[k];
      }
    }
    return new UnitStream(
        UnitFacts.plain(point, 100),
        c[0],
        new double[][] {c[1], c[2], c[3]},
        new double[][] {c[4], c[5], c[6]});
  }

  private static double[] numbers(String line) {
    String[] words = line.split(",", -1);
    double[] out = new double[7];
    for (int k = 0; k < 7; k++) {
      out[k] = Double.parseDouble(words[k]);
    }
    return out;
  }

  private static List<Swing> find(Handedness handed, UnitStream... units) {
    return SwingFinder.withDefaults()
        .find(new Recording("everyday", Player.unmeasured("p", handed), List.of(units), List.of()));
  }

  @ParameterizedTest
  @CsvSource({
    "forearm_left, hand_left, RIGHT",
    "forearm_right, hand_right, LEFT",
    "forearm_left, hand_left, LEFT",
    "forearm_right, hand_right, RIGHT"
  })
  void anArmInEverydayMovementMakesNoSwing(String forearm, String hand, Handedness handed) {
    // Given: forearm and hand of one side, up to 968 deg/s. Expect: no swing at all.
    UnitStream forearmStream = read(forearm, BodyPoint.LEAD_FOREARM);
    UnitStream handStream = read(hand, BodyPoint.LEAD_HAND);
    assertThat(find(handed, forearmStream, handStream)).isEmpty();
    assertThat(find(handed, handStream)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void hipsInEverydayMovementMakeNoSwing(Handedness handed) {
    // Given: the hip unit, up to 510 deg/s. Expect: no swing at all.
    assertThat(find(handed, read("hip", BodyPoint.PELVIS))).isEmpty();
    assertThat(find(handed, read("lower_back", BodyPoint.PELVIS))).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Handedness.class)
  void everydayMovementMakesNoRehearsal(Handedness handed) {
    // Given: the whole minute marked as a drill, hips and both arms. Expect: no rehearsal, though
    // the hips turn by 16 to 57 deg and back five times, stepping and bending.
    for (String hips : List.of("hip", "lower_back")) {
      assertThat(SlowTurns.of(asDrill(handed, read(hips, BodyPoint.PELVIS)))).isEmpty();
    }
    for (String side : List.of("left", "right")) {
      Recording arm =
          asDrill(
              handed,
              read("forearm_" + side, BodyPoint.LEAD_FOREARM),
              read("hand_" + side, BodyPoint.LEAD_HAND));
      assertThat(new HalfSwings().of(arm)).isEmpty();
    }
  }

  private static Recording asDrill(Handedness handed, UnitStream... units) {
    double fromS = units[0].timeS(0);
    double lengthS = units[0].timeS(units[0].size() - 1) - fromS;
    Mark all = new Mark(fromS, lengthS, MarkWord.DRILL_REP.word(), "", "club-across-hips");
    return new Recording("everyday", Player.unmeasured("p", handed), List.of(units), List.of(all));
  }

  @Test
  void theRecordIsAsFastAsItsDescriptionSays() {
    // Given: data/README: hands to 968 deg/s. Expect: what we read shows it, so the test above
    // does not pass on an empty stream.
    UnitStream hand = read("hand_right", BodyPoint.LEAD_HAND);
    UnitStream other = read("hand_left", BodyPoint.LEAD_HAND);
    double fastest = 0;
    for (int i = 0; i < hand.size(); i++) {
      fastest = Math.max(fastest, hand.gyroNormRadPerS(i));
      fastest = Math.max(fastest, other.gyroNormRadPerS(i));
    }
    assertThat(Math.toDegrees(fastest)).isBetween(960.0, 975.0);
  }

  @Test
  void theHalfTurnOfTheHipsIsSeenAsAHalfTurn() {
    // Given: the same person, who late in the record turns round on the spot (72 to 80 s of the
    // 100).
    // Expect: 180 deg of turn of the hip line (a half turn by eye; no optical truth in the record).
    // Within 10 deg: a person does not turn by exactly half.
    OrientationTrack track =
        OrientationRun.withDefaults().run(read("hip", BodyPoint.PELVIS), OrientationMethod.OFFLINE);
    double turnDeg = 0;
    double beforeRad = azimuthRad(track, 110);
    // by the second, so that no step comes near half a turn
    for (double timeS = 111; timeS <= 130; timeS++) {
      double nowRad = azimuthRad(track, timeS);
      turnDeg += Math.toDegrees(Math.IEEEremainder(nowRad - beforeRad, 2 * Math.PI));
      beforeRad = nowRad;
    }
    assertThat(Math.abs(turnDeg)).isCloseTo(180, within(10.0));
  }

  /**
   * Heading of the hip line, the unit's y axis, which lies within 3 deg of level in this record.
   */
  private static double azimuthRad(OrientationTrack track, double timeS) {
    Vector3 left = track.qEarthUnitAt(timeS).rotate(Vector3.Y);
    return Math.atan2(left.y(), left.x());
  }
}
