package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.StringJoiner;
import steadyturn.fusion.calibrate.StillStretches.Run;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/**
 * Leads through known turns against a square block: takes each turn by quarters between two rests,
 * two about every axis of the unit, and says why a turn does not count.
 */
public final class TurnGuide implements GuidedStep {

  /** Word of the events file for one turn with the rests around it. */
  public static final String TRIAL_TYPE = "known-turn";

  private static final int TURNS_AN_AXIS = 2;

  /** So much of the rests around a turn is kept, s. */
  private static final double REST_S = 1.5;

  private final int[] turns = new int[3];
  private final List<Mark> taken = new ArrayList<>();
  private double neededFromS = Double.NEGATIVE_INFINITY;

  @Override
  public String task() {
    return "With one edge against a square block, turn the unit flat on the table by a quarter, a"
        + " half or a whole turn, end against the block, and rest 2 s before and after. Twice (there"
        + " and back) about each of its three axes.";
  }

  @Override
  public String missing() {
    StringJoiner words = new StringJoiner(", ");
    for (int axis = 0; axis < 3; axis++) {
      int left = TURNS_AN_AXIS - turns[axis];
      if (left > 0) {
        words.add((left == 1 ? "one turn" : left + " turns") + " about " + "xyz".charAt(axis));
      }
    }
    return words.toString();
  }

  @Override
  public boolean isDone() {
    return missing().isEmpty();
  }

  @Override
  public double neededFromS() {
    return neededFromS;
  }

  @Override
  public Optional<String> look(UnitStream recent) {
    List<Run> rests =
        StillStretches.runs(recent).stream().filter(run -> run.lengthS() >= REST_S).toList();
    if (rests.size() < 2) {
      return Optional.empty();
    }
    Run before = rests.get(0);
    Run after = rests.get(1);
    double fromS = Math.max(before.startS(), before.endS() - REST_S);
    double toS = Math.min(after.endS(), after.startS() + REST_S);
    neededFromS = after.startS();
    try {
      return KnownTurns.turnIn(recent.between(fromS, toS)).map(turn -> take(turn, fromS, toS));
    } catch (CalibrationException e) {
      return Optional.of("Does not count: " + e.getMessage() + ". Missing: " + missing() + ".");
    }
  }

  private String take(KnownTurns.Turn turn, double fromS, double toS) {
    turns[turn.axis()]++;
    taken.add(new Mark(fromS, toS - fromS, TRIAL_TYPE, "", ""));
    String words =
        String.format(
            Locale.ROOT,
            "Turn of %+.0f deg about %c taken. ",
            Math.toDegrees(turn.trueRad()),
            "xyz".charAt(turn.axis()));
    return words + (isDone() ? "That is all." : "Missing: " + missing() + ".");
  }

  @Override
  public void beginAnew(double fromS) {
    neededFromS = fromS;
  }

  @Override
  public List<Mark> taken() {
    return List.copyOf(taken);
  }
}
