package steadyturn.analysis.lab;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Random numbers by seed, purpose and index, so that switching one source of error on or off leaves
 * all other draws as they were. Well19937c (Panneton, L'Ecuyer, Matsumoto 2006, ACM TOMS 32:1-16,
 * from memory) as Commons Math implements it: the same numbers on every Java.
 *
 * <p>That generator is linear in its state, so states that differ by the same bits give numbers
 * that differ by the same bits, for every seed. Seed, purpose and index are therefore mixed by
 * SHA-256 (FIPS 180-4) first.
 */
public final class Draws {

  private Draws() {}

  /** A generator for one purpose of one lesson. */
  public static RandomGenerator of(long seed, String purpose, int index) {
    byte[] mixed = sha256(seed + "/" + purpose + "/" + index);
    int[] state = new int[mixed.length / Integer.BYTES];
    ByteBuffer.wrap(mixed).asIntBuffer().get(state);
    return new Well19937c(state);
  }

  private static byte[] sha256(String words) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(words.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
