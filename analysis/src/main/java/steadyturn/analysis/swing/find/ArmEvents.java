package steadyturn.analysis.swing.find;

/** The moment of a stroke without a ball: the way back to the address direction. */
final class ArmEvents {

  private ArmEvents() {}

  /**
   * The nearest return of the bone to its direction before the takeaway, among samples from..to-1:
   * where a ball would have been struck.
   */
  static Instant nearestReturn(ArmMotion arm, int from, int to, double sdS) {
    int reference = arm.shape().takeaway();
    int best = from;
    double closest = -2;
    for (int i = from; i < to; i++) {
      double cosine = arm.boneLevel(i).dot(arm.boneLevel(reference));
      if (cosine > closest) {
        closest = cosine;
        best = i;
      }
    }
    return new Instant(arm.timeS(best), sdS);
  }
}
