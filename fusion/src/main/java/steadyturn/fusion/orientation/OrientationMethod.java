package steadyturn.fusion.orientation;

import java.util.Arrays;
import java.util.Optional;
import steadyturn.ingest.reason.Worded;

/** The ways to find an orientation, by the word that names them in commands and files. */
public enum OrientationMethod implements Worded {
  /** Error-state Kalman filter: each answer uses the samples so far. */
  ONLINE,
  /** The same forward and backward: each answer uses the whole recording. */
  OFFLINE,
  /** Low-pass of the specific force in an almost-inertial frame: a second, independent way. */
  LOW_PASS,
  /** The textbook complementary filter: the simplest way, to compare with. */
  COMPLEMENTARY;

  /** The method of this word; {@code kalman} is another word for {@link #ONLINE}. */
  public static Optional<OrientationMethod> ofWord(String word) {
    if (word.equals("kalman")) {
      return Optional.of(ONLINE);
    }
    return Arrays.stream(values()).filter(m -> m.word().equals(word)).findFirst();
  }
}
