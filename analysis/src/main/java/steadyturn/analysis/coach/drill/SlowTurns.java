package steadyturn.analysis.coach.drill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import steadyturn.analysis.measure.Grade;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.DrillMark;
import steadyturn.analysis.swing.EventReason;
import steadyturn.fusion.filter.RestDetectorSettings;
import steadyturn.fusion.filter.kalman.KalmanSettings;
import steadyturn.fusion.orientation.OrientationMethod;
import steadyturn.fusion.orientation.OrientationRun;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.TimeAxis;
import steadyturn.ingest.sample.UnitStream;

/**
 * Finds rehearsals in the stretches marked as drill repetitions: the pelvis rests, turns back by 15
 * deg or more, and comes back to where it rested. Only the heading of the unit is needed, so it
 * does not matter how the unit sits.
 */
public final class SlowTurns {

  private static final double STEP_S = 0.02;
  private static final double BEFORE_S = 3;

  /** Our choice: a weight shift turns the pelvis less. */
  private static final double LEAST_DEG = 15;

  /** Our choice: back where it started, as hips come to rest a few degrees apart. */
  private static final double BACK_DEG = 7.5;

  /**
   * A quarter turn. Feet that stay let the hips turn less: about 45 deg by the hip joint (American
   * Academy of Orthopaedic Surgeons 1965, Joint Motion; from memory) and a foot turned out.
   */
  private static final double MOST_DEG = 90;

  /** Our choice: a pelvis in a downswing turns faster, in a rehearsal slower. */
  private static final double SWING_DEG_PER_S = 200;

  /** Our choice: slower than any rehearsal from leaving the rest to coming back. */
  private static final double LONGEST_S = 6;

  /** Our choice: a person who stands sways by up to 3 deg/s; twice as much is no turn yet. */
  private static final double STILL_DEG_PER_S = 6;

  private static final double REST_S = 0.4;

  /** Skin over bone 1 deg and sway at rest 0.5 deg: assumptions, as in docs/accuracy.md. */
  private static final double BODY_SD_DEG = Math.hypot(1, 0.5);

  /** Scale and misalignment of a unit without its own calibration, part of the turn. */
  private static final double UNIT_SD = 0.01;

  private final OrientationTrack track;
  private final double[] turnDeg;
  private final double[] atS;
  private int rest = -1;
  private double restDeg;
  private final Stepping stepping;
  private int lastBack = -1;
  private int swungAt = -1;

  private SlowTurns(OrientationTrack track, Stepping stepping, int handSign) {
    this.track = track;
    this.stepping = stepping;
    int n = (int) Math.floor((track.timeS()[track.size() - 1] - track.timeS()[0]) / STEP_S) + 1;
    turnDeg = new double[n];
    atS = new double[n];
    for (int i = 0; i < n; i++) {
      atS[i] = track.timeS()[0] + i * STEP_S;
      double deg = handSign * Math.toDegrees(track.qEarthUnitAt(atS[i]).twistAboutZRad());
      turnDeg[i] = i == 0 ? deg : turnDeg[i - 1] + Math.IEEEremainder(deg - turnDeg[i - 1], 360);
    }
  }

  /** The rehearsals within the marks of a recording, by time; none without a pelvis unit. */
  public static List<Rehearsal> of(Recording recording) {
    return recording.unit(BodyPoint.PELVIS).stream()
        .flatMap(
            unit ->
                DrillMark.reps(recording.marks())
                    .flatMap(mark -> within(mark, unit, recording.player().handed()).stream()))
        .sorted(Comparator.comparingDouble(Rehearsal::timeS))
        .toList();
  }

  private static List<Rehearsal> within(Mark mark, UnitStream unit, Handedness handed) {
    UnitStream stretch = unit.between(mark.onsetS() - BEFORE_S, DrillMark.endS(mark));
    if (stretch.size() < 2) {
      return List.of();
    }
    KalmanSettings worn = KalmanSettings.with(RestDetectorSettings.worn());
    OrientationTrack track = new OrientationRun(worn).run(stretch, OrientationMethod.OFFLINE);
    return new SlowTurns(track, Stepping.of(stretch), handed.sign())
        .find().stream().filter(turn -> turn.timeS() >= mark.onsetS()).toList();
  }

  private List<Rehearsal> find() {
    List<Rehearsal> found = new ArrayList<>();
    int furthest = -1;
    for (int i = 0; i < atS.length; i++) {
      if (i > 0 && Math.abs(turnDeg[i] - turnDeg[i - 1]) > SWING_DEG_PER_S * STEP_S) {
        swungAt = i;
      }
      rested(i);
      if (rest < 0) {
        continue;
      }
      double backDeg = restDeg - turnDeg[i];
      if (walkedAway(i)) {
        rest = -1;
        furthest = -1;
        continue;
      }
      if (backDeg > LEAST_DEG && (furthest < 0 || turnDeg[i] < turnDeg[furthest])) {
        furthest = i;
      } else if (furthest >= 0 && backDeg < BACK_DEG) {
        found.add(turn(furthest));
        furthest = -1;
      }
    }
    return found;
  }

  /**
   * Takes a rest as the new start, if it lies near the last one: a pause with the pelvis turned is
   * none.
   */
  private void rested(int i) {
    int from = i - (int) Math.round(REST_S / STEP_S);
    if (from < 0 || (swungAt >= 0 && (i - swungAt) * STEP_S < LONGEST_S)) {
      return;
    }
    double mean = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int k = from; k <= i; k++) {
      mean += turnDeg[k] / (i - from + 1);
      low = Math.min(low, turnDeg[k]);
      high = Math.max(high, turnDeg[k]);
    }
    boolean still = high - low < STILL_DEG_PER_S * REST_S;
    if (still && (rest < 0 || Math.abs(mean - restDeg) < BACK_DEG)) {
      rest = i;
      restDeg = mean;
    }
  }

  /**
   * Turned too far for hips, stepped while turned, or not back for long: the player stands
   * elsewhere now. So too after a downswing: the rest before it is no start any more, and a held
   * finish was none.
   */
  private boolean walkedAway(int i) {
    double away = Math.abs(turnDeg[i] - restDeg);
    if (away < BACK_DEG) {
      lastBack = i;
    }
    boolean stepped = away > BACK_DEG && stepping.at(atS[i]);
    return swungAt == i
        || stepped
        || away > MOST_DEG
        || (i - Math.max(lastBack, rest)) * STEP_S > LONGEST_S;
  }

  private Rehearsal turn(int furthest) {
    double deg = turnDeg[furthest] - restDeg;
    double driftDeg = Math.toDegrees(headingGained(atS[rest], atS[furthest]));
    double sdDeg = Math.hypot(BODY_SD_DEG, Math.hypot(UNIT_SD * deg, driftDeg));
    return new Rehearsal(
        atS[furthest],
        List.of(
            MeasureValue.of(
                Measure.PELVIS_TURN,
                "top",
                deg,
                sdDeg,
                Grade.ESTIMATED,
                Reason.of(EventReason.REHEARSAL))));
  }

  /** One sigma of the heading gained between two instants, rad; rather too much than too little. */
  private double headingGained(double fromS, double toS) {
    double from = sigma(fromS);
    double to = sigma(toS);
    return Math.sqrt(Math.max(0, to * to - from * from));
  }

  private double sigma(double instantS) {
    int k = Math.min(track.size() - 1, TimeAxis.indexAt(track.timeS(), instantS));
    return track.headingSigmaRad()[k];
  }
}
