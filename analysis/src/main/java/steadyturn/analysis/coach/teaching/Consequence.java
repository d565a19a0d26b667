package steadyturn.analysis.coach.teaching;

import java.util.List;

/**
 * Something a finding tends to cause.
 *
 * @param seenWhen conditions by which the units can check it; empty where they cannot
 * @param tendencyOf the consequence it follows from, where only that one can be checked; else empty
 * @param look not measured here: something to look for in a picture
 */
public record Consequence(String name, List<Need> seenWhen, String tendencyOf, boolean look) {

  public Consequence {
    seenWhen = List.copyOf(seenWhen);
    int kinds = (seenWhen.isEmpty() ? 0 : 1) + (tendencyOf.isEmpty() ? 0 : 1) + (look ? 1 : 0);
    if (kinds != 1) {
      throw new TeachingException(
          name + ": needs exactly one of seen-when, tendency-of and look = true.");
    }
  }
}
