package steadyturn.ingest.recording;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Small invented lessons for the tests of this room. */
public final class Lessons {

  public static final LocalDateTime NINE_O_CLOCK =
      LocalDateTime.of(2025, 3, 31, 9, 0, 0, 250_001_000);
  static final Player MIKA =
      new Player(
          "mika",
          Handedness.LEFT,
          OptionalDouble.of(262),
          OptionalDouble.of(148.5),
          OptionalDouble.empty());

  private Lessons() {}

  /** Three units with clocks of their own: the forearm begins 12.345 ms late, the hand early. */
  static Recording threeUnits(int samples, long seed) {
    List<UnitStream> units = new ArrayList<>();
    units.add(stream(BodyPoint.PELVIS, 0, samples, seed));
    units.add(stream(BodyPoint.LEAD_FOREARM, 0.012345, samples, seed + 1));
    units.add(stream(BodyPoint.LEAD_HAND, -0.000017, samples, seed + 2));
    return new Recording(
        "sub-mika_ses-01_task-swing",
        MIKA,
        units,
        List.of(
            new Mark(0.5, 2, "quiet-stance", "", ""),
            new Mark(3.25, 0, "hit", "7-iron", "a little thin")));
  }

  /** The pelvis unit alone, without marks. */
  public static Recording pelvisOnly(int samples, long seed) {
    return new Recording(
        "sub-mika_ses-01_task-swing",
        MIKA,
        List.of(stream(BodyPoint.PELVIS, 0, samples, seed)),
        List.of());
  }

  static UnitStream stream(BodyPoint point, double startS, int samples, long seed) {
    Random random = new Random(seed);
    double[] timeS = new double[samples];
    double[][] accelMps2 = new double[3][samples];
    double[][] gyroRadPerS = new double[3][samples];
    for (int i = 0; i < samples; i++) {
      timeS[i] = startS + i / 500.0;
      for (int axis = 0; axis < 3; axis++) {
        accelMps2[axis][i] = 160 * random.nextGaussian();
        gyroRadPerS[axis][i] = 35 * random.nextGaussian();
      }
    }
    return new UnitStream(
        new UnitFacts(
            point, "ST-" + point.tracksysLabel(), 500, 156.9, 34.9, point == BodyPoint.PELVIS),
        timeS,
        accelMps2,
        gyroRadPerS);
  }
}
