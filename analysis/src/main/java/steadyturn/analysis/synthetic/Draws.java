package steadyturn.analysis.synthetic;

import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Random numbers by seed, purpose and index, so that switching one source of error on or off leaves
 * all other draws as they were. Well19937c (Panneton, L'Ecuyer, Matsumoto 2006, ACM TOMS 32:1-16,
 * from memory) as Commons Math implements it: the same numbers on every Java.
 */
final class Draws {

  private Draws() {}

  static RandomGenerator of(long seed, String purpose, int index) {
    return new Well19937c(
        new int[] {(int) seed, (int) (seed >>> 32), purpose.hashCode(), index, 0x5eed});
  }
}
