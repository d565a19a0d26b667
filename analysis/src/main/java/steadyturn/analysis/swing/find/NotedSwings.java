package steadyturn.analysis.swing.find;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import steadyturn.analysis.swing.DrillMark;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.ingest.mark.MarkWord;
import steadyturn.ingest.sample.Mark;

/**
 * Which of the marks speaks of which swing: the one noted while it ran, else the nearest, before or
 * after, by the time from its last movement or to its takeaway.
 */
final class NotedSwings {

  private final List<FoundSwing> swings;
  private final List<Mark> marks;
  private final List<Optional<Mark>> noted = new ArrayList<>();

  private record Pair(int swing, Mark mark, double apartS) {}

  NotedSwings(List<FoundSwing> swings, List<Mark> marks) {
    this.swings = swings;
    this.marks = marks;
    List<Mark> spoken = marks.stream().filter(UnplacedMarks::isOfSwing).toList();
    swings.forEach(s -> noted.add(during(s, spoken)));
    List<Mark> free =
        new ArrayList<>(
            spoken.stream().filter(m -> swings.stream().noneMatch(s -> overlap(s, m))).toList());
    pairs(free).forEach(pair -> take(pair, free));
  }

  /** The mark that holds the impact, or else the takeaway. */
  private static Optional<Mark> during(FoundSwing swing, List<Mark> spoken) {
    return spoken.stream()
        .filter(m -> m.onsetS() <= swing.impactS() && swing.impactS() <= m.endS())
        .findFirst()
        .or(() -> spoken.stream().filter(m -> overlap(swing, m)).findFirst());
  }

  private static boolean overlap(FoundSwing swing, Mark mark) {
    return mark.onsetS() <= swing.motionEndS() && swing.takeawayS() <= mark.endS();
  }

  /** Nearest first; where two are as near, the swing before the mark. */
  private List<Pair> pairs(List<Mark> free) {
    return free.stream()
        .flatMap(
            m ->
                IntStream.range(0, swings.size())
                    .mapToObj(i -> new Pair(i, m, apartS(swings.get(i), m))))
        .filter(pair -> pair.apartS <= UnplacedMarks.WITHIN_S)
        .sorted(Comparator.comparingDouble(Pair::apartS).thenComparingInt(Pair::swing))
        .toList();
  }

  private static double apartS(FoundSwing swing, Mark mark) {
    return Math.max(swing.takeawayS() - mark.endS(), mark.onsetS() - swing.motionEndS());
  }

  private void take(Pair pair, List<Mark> free) {
    if (noted.get(pair.swing).isEmpty() && free.remove(pair.mark)) {
      noted.set(pair.swing, Optional.of(pair.mark));
    }
  }

  /** Whether it is a repetition of a drill, whatever else was noted. */
  boolean isDrill(int swing) {
    double topS = swings.get(swing).topS();
    return DrillMark.reps(marks).anyMatch(m -> DrillMark.holds(m, topS));
  }

  /** The marks that speak of a swing: the one that gives its kind, then the notes nearest to it. */
  List<Mark> marks(int swing) {
    return Stream.concat(
            noted.get(swing).stream(),
            marks.stream()
                .filter(
                    m ->
                        UnplacedMarks.isAbout(m) && nearest(m).filter(i -> i == swing).isPresent()))
        .toList();
  }

  private Optional<Integer> nearest(Mark note) {
    return pairs(List.of(note)).stream().findFirst().map(Pair::swing);
  }

  /** The club noted with the swing, else the one named last before it; empty where none was. */
  String club(int swing) {
    String club = "";
    double sinceS = Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= swing; i++) {
      Optional<Mark> own = noted.get(i).filter(m -> !m.club().isEmpty());
      if (own.isPresent()) {
        club = own.get().club();
        sinceS = swings.get(i).takeawayS();
      }
    }
    boolean isOwn = sinceS == swings.get(swing).takeawayS();
    for (Mark mark : isOwn ? List.<Mark>of() : marks) {
      boolean names = mark.trialType().equals(MarkWord.CLUB.word());
      if (names && mark.onsetS() >= sinceS && mark.onsetS() <= swings.get(swing).motionEndS()) {
        club = mark.club();
      }
    }
    return club;
  }

  /**
   * The marks, those of swings laid on them: so a weak blow in a swing noted as a hit is looked for
   * whenever it was noted.
   */
  List<Mark> laid() {
    List<Mark> all = new ArrayList<>(marks);
    for (int i = 0; i < swings.size(); i++) {
      FoundSwing swing = swings.get(i);
      noted
          .get(i)
          .filter(m -> !overlap(swing, m))
          .ifPresent(m -> all.set(all.indexOf(m), m.during(swing.takeawayS(), swing.motionEndS())));
    }
    return all;
  }
}
