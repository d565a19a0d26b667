package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * When a table began whose start nobody told, by the witnesses of its units: the lag at which they
 * turn with units of a table whose start is known, then the blows that both felt.
 *
 * @param byS to add to the table's times, s
 * @param sdS its spread over the whole table, s
 * @param other the unit that tells it
 */
public record TableStart(double byS, double sdS, BodyPoint other) {

  /**
   * By so much must a lag be likelier than those beside it. Of 114 pelvises beside forearms in
   * lessons made for tuning 112 right ones had 6.6 and more, all but one 11; two wrong ones 1.8 and
   * 7.1. Arms beside each other have 48 and more.
   */
  private static final double SURELY = 10;

  /** Beside a lag: farther than arms lag behind the hips, and than crystals drift, steps. */
  private static final int BESIDE = 6;

  /** Surer than that, a start can be laid into a recording and refined there, s. */
  private static final double LOOSEST_SD_S = 0.03;

  private static final double ARM_SD_S = 0.03;
  private static final double TRUNK_SD_S = 0.07;

  /**
   * The surest tie of a table to one whose start is known; nothing where none is sure enough.
   *
   * @param table its units, on one clock, laid within some 10 s of the right place
   * @param known units whose start is known, on one clock
   */
  public static Optional<TableStart> of(List<UnitStream> table, List<UnitStream> known) {
    List<TableStart> found = new ArrayList<>();
    for (UnitStream unit : table) {
      for (UnitStream other : known) {
        between(unit, other).ifPresent(found::add);
      }
    }
    return found.stream()
        .filter(start -> start.sdS < LOOSEST_SD_S)
        .min(Comparator.comparingDouble(TableStart::sdS));
  }

  private static Optional<TableStart> between(UnitStream unit, UnitStream other) {
    double[] total = new double[2 * LagPath.MOST + 1];
    for (double[] gain : LagGains.of(unit, other).gains()) {
      for (int k = 0; k < total.length; k++) {
        total[k] += gain[k];
      }
    }
    int best = best(total, -1);
    if (total[best] - total[best(total, best)] < SURELY) {
      return Optional.empty();
    }
    boolean withTrunk = unit.point().isTrunk() || other.point().isTrunk();
    double fromS = unit.timeS(0);
    double lagS = (best - LagPath.MOST) * LagPath.STEP_S;
    double sdS = withTrunk ? TRUNK_SD_S : ARM_SD_S;
    ClockFit fit =
        UnitTie.of(
                new UnitTie.Felt(unit, WholeShocks.find(unit)),
                new UnitTie.Felt(other, WholeShocks.find(other)),
                new ClockFit(lagS, 0, fromS, sdS, ClockLine.SKEW_SD_PPM, 0),
                new ClockFit(0, 0, fromS, sdS, ClockLine.SKEW_SD_PPM, 0))
            .fit();
    double spreadS = Math.max(fit.sdAtS(fromS), fit.sdAtS(fromS + unit.lengthS()));
    return Optional.of(new TableStart(fit.correctionS(fromS), spreadS, other.point()));
  }

  /** The likeliest lag, but none beside that one; the lags from -{@link LagPath#MOST} steps on. */
  private static int best(double[] total, int beside) {
    int best = beside < BESIDE + 1 ? total.length - 1 : 0;
    for (int k = 0; k < total.length; k++) {
      boolean isFree = beside < 0 || Math.abs(k - beside) > BESIDE;
      best = isFree && total[k] > total[best] ? k : best;
    }
    return best;
  }
}
