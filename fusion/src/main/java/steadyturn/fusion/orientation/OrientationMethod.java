package steadyturn.fusion.orientation;

import java.util.Arrays;
import java.util.Optional;

/** The ways to find an orientation, by the word that names them in commands and files. */
public enum OrientationMethod {
  /** Error-state Kalman filter: each answer uses the samples so far. */
  ONLINE("online"),
  /** The same forward and backward: each answer uses the whole recording. */
  OFFLINE("offline"),
  /** Low-pass of the specific force in an almost-inertial frame: a second, independent way. */
  LOW_PASS("low-pass"),
  /** The textbook complementary filter: the simplest way, to compare with. */
  COMPLEMENTARY("complementary");

  private final String word;

  OrientationMethod(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  /** The method of this word; {@code kalman} is another word for {@link #ONLINE}. */
  public static Optional<OrientationMethod> ofWord(String word) {
    if (word.equals("kalman")) {
      return Optional.of(ONLINE);
    }
    return Arrays.stream(values()).filter(m -> m.word.equals(word)).findFirst();
  }
}
