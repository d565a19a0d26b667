package steadyturn.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One of several questions asked at once, by Holm's steps (Holm 1979, A simple sequentially
 * rejective multiple test procedure, Scand J Stat 6:65-70; from memory): the k-th smallest of m
 * chances is multiplied by m - k + 1 and never falls again.
 *
 * @param chance after allowing for all questions
 * @param level chance of a false answer that this question may spend, so that all together spend no
 *     more than was given; where the steps have stopped, that of the step at which they did
 */
record Holm(double chance, double level) {

  /** Steps through chances, answering in their order. */
  static List<Holm> steps(List<Double> chances, double level) {
    List<Integer> order =
        IntStream.range(0, chances.size())
            .boxed()
            .sorted(Comparator.comparingDouble(chances::get))
            .toList();
    List<Holm> steps = new ArrayList<>(Collections.nCopies(chances.size(), new Holm(1, level)));
    double floor = 0;
    int left = chances.size();
    for (int k = 0; k < order.size(); k++) {
      left = floor < level ? chances.size() - k : left;
      floor = Math.max(floor, Math.min(1, (chances.size() - k) * chances.get(order.get(k))));
      steps.set(order.get(k), new Holm(floor, level / left));
    }
    return steps;
  }
}
