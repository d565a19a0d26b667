package steadyturn.analysis.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.analysis.lesson.LessonAnalyzer;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * A minute of everyday movement of one real wearer (whole-body recording of Bo Yang, 2021, MIT,
 * repository dlaidig/qmt): a golf swing is not in it, so nothing may be refused for how it is worn.
 */
class RealBodyTest {

  private static final Path FOLDER = Path.of("..", "..", "shared", "data", "qmt_fullbody");

  private static UnitStream worn(String name, BodyPoint point) throws IOException {
    Path file = FOLDER.resolve(name + ".csv.gz");
    assumeTrue(Files.exists(file), "open recordings are not at ../shared/data: " + file);
    List<double[]> rows;
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
      rows =
          reader
              .lines()
              .skip(1)
              .map(line -> Stream.of(line.split(",", -1)).limit(7))
              .map(cells -> cells.mapToDouble(Double::parseDouble).toArray())
              .toList();
    }
    double[][] columns = new double[7][rows.size()];
    for (int i = 0; i < rows.size(); i++) {
      for (int k = 0; k < 7; k++) {
        columns[k][i] = rows.get(i)[k];
      }
    }
    return new UnitStream(
        UnitFacts.plain(point, 100),
        columns[0],
        new double[][] {columns[1], columns[2], columns[3]},
        new double[][] {columns[4], columns[5], columns[6]});
  }

  @ParameterizedTest
  @CsvSource({"hip, left", "hip, right", "lower_back, left", "lower_back, right"})
  void everydayMovementIsNoSwingAndIsNotRefused(String trunk, String side) throws IOException {
    Recording recording =
        new Recording(
            "real",
            Player.unmeasured("r", side.equals("left") ? Handedness.RIGHT : Handedness.LEFT),
            List.of(
                worn(trunk, BodyPoint.PELVIS),
                worn("forearm_" + side, BodyPoint.LEAD_FOREARM),
                worn("hand_" + side, BodyPoint.LEAD_HAND)),
            List.of());
    LessonResult result = LessonAnalyzer.withDefaults().analyze(List.of(recording)).get(0);
    assertThat(result.swings()).isEmpty();
    assertThat(result.notices()).noneMatch(notice -> notice.refuses());
  }

  @ParameterizedTest
  @CsvSource({"hip, 25", "lower_back, 25", "upper_back, 25"})
  void noRealTrunkIsPulledLikeAnArm(String name, double mostMps2) throws IOException {
    // Given: means over 70 ms, the time the pull of a swing is taken over. Expect: under the bound
    // that tells arms from trunks, by a factor of more than two.
    UnitStream unit = worn(name, BodyPoint.PELVIS);
    double most = 0;
    for (int i = 0; i + 7 <= unit.size(); i++) {
      double[] mean = new double[3];
      for (int j = i; j < i + 7; j++) {
        for (int axis = 0; axis < 3; axis++) {
          mean[axis] += unit.accelMps2(axis, j) / 7;
        }
      }
      most = Math.max(most, Math.sqrt(mean[0] * mean[0] + mean[1] * mean[1] + mean[2] * mean[2]));
    }
    assertThat(most - 9.81).isLessThan(mostMps2 / 2);
  }
}
