package steadyturn.fusion.calibrate;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadyturn.fusion.calibrate.StillStretches.Run;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/** Leads through a rest on the table: of some seconds for the bias, of an hour for the noise. */
public final class RestGuide implements GuidedStep {

  /** Word of the events file for the rest that gives the bias. */
  public static final String TABLE_REST = "table-rest";

  /** Word of the events file for the rest that gives the noise figures. */
  public static final String LONG_REST = "long-rest";

  private static final double TABLE_REST_S = 5;

  /** Rests up to this length are looked at as a whole before they are taken, s. */
  private static final double LOOKED_AT_S = 60;

  private static final double WORTH_TELLING_S = 1;

  private final String trialType;
  private final double lengthS;
  private double sinceS = Double.NaN;
  private double neededFromS = Double.NEGATIVE_INFINITY;
  private Optional<Mark> taken = Optional.empty();

  private RestGuide(String trialType, double lengthS) {
    this.trialType = trialType;
    this.lengthS = lengthS;
  }

  /** Five seconds for the bias of the gyroscope. */
  public static RestGuide tableRest() {
    return new RestGuide(TABLE_REST, TABLE_REST_S);
  }

  /** A rest of this length for random walk and bias instability. */
  public static RestGuide longRest(double lengthS) {
    return new RestGuide(LONG_REST, lengthS);
  }

  @Override
  public String task() {
    return "Lay the unit on a firm table and leave it alone for " + words(lengthS) + ".";
  }

  @Override
  public String missing() {
    return "a rest of " + words(lengthS);
  }

  private static String words(double seconds) {
    return seconds < 120
        ? String.format(Locale.ROOT, "%.0f s", seconds)
        : String.format(Locale.ROOT, "%.0f min", seconds / 60);
  }

  @Override
  public boolean isDone() {
    return taken.isPresent();
  }

  @Override
  public boolean isUnderWay() {
    return !Double.isNaN(sinceS);
  }

  @Override
  public double neededFromS() {
    return neededFromS;
  }

  @Override
  public Optional<String> look(UnitStream recent) {
    double nowS = recent.timeS(recent.size() - 1);
    List<Run> runs = StillStretches.runs(recent);
    boolean isStill = !runs.isEmpty() && !runs.get(runs.size() - 1).isOver();
    boolean goesOn = isStill && runs.size() == 1 && runs.get(0).startS() == recent.timeS(0);
    double heldS = isUnderWay() ? (goesOn ? nowS : brokenAtS(runs, recent)) - sinceS : 0;
    boolean wasMoved = isUnderWay() && !goesOn;
    if (!goesOn || !isUnderWay()) {
      sinceS = isStill ? runs.get(runs.size() - 1).startS() : Double.NaN;
    }
    neededFromS = neededFrom(nowS);
    if (wasMoved) {
      return heldS < WORTH_TELLING_S ? Optional.empty() : Optional.of(moved(heldS));
    }
    return heldS >= lengthS + 2 * StillStretches.WINDOW_S ? take(recent, nowS) : Optional.empty();
  }

  private double neededFrom(double nowS) {
    if (Double.isNaN(sinceS)) {
      return nowS;
    }
    return lengthS <= LOOKED_AT_S ? sinceS : Math.max(sinceS, nowS - 1);
  }

  /** Where the stillness at the beginning of the samples ended. */
  private static double brokenAtS(List<Run> runs, UnitStream recent) {
    boolean begins = !runs.isEmpty() && runs.get(0).startS() == recent.timeS(0);
    return begins ? runs.get(0).endS() : recent.timeS(0);
  }

  private String moved(double heldS) {
    return String.format(
        Locale.ROOT,
        "It was moved after %.1f s. Do it again: leave it alone for %s.",
        heldS,
        words(lengthS));
  }

  private Optional<String> take(UnitStream recent, double nowS) {
    double fromS = sinceS + StillStretches.WINDOW_S;
    double toS = nowS - StillStretches.WINDOW_S;
    if (lengthS <= LOOKED_AT_S) {
      try {
        TableRest.of(recent.between(fromS, toS));
      } catch (CalibrationException e) {
        beginAnew(nowS);
        return Optional.of("Do it again: " + e.getMessage() + ".");
      }
    }
    taken = Optional.of(new Mark(fromS, toS - fromS, trialType, "", ""));
    return Optional.of("Rest of " + words(lengthS) + " taken.");
  }

  @Override
  public void beginAnew(double fromS) {
    sinceS = Double.NaN;
    neededFromS = fromS;
  }

  @Override
  public List<Mark> taken() {
    return taken.stream().toList();
  }
}
