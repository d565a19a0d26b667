package steadyturn.analysis.marker;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.lesson.LessonResult;
import steadyturn.analysis.lesson.SwingResult;
import steadyturn.analysis.measure.Measure;
import steadyturn.analysis.measure.MeasureValue;
import steadyturn.analysis.swing.EventTime;
import steadyturn.analysis.swing.SwingEvent;
import steadyturn.ingest.sample.Handedness;

/**
 * Turn, slide, thrust and lift of a recording beside those of markers. The target line of the
 * markers is the hip line at each address where ours is (square hips), else the one line in the
 * room on which the two paths of mid-hip lie best: where the target is, a laboratory does not tell.
 *
 * @param clockMissDeg RMS by which the two turns differ once their clocks lie on each other
 * @param skewPpm by how much the cameras' clock runs faster than ours
 * @param swings how many swings both saw
 */
public record MarkerAgreement(
    List<AgreementRow> rows, double clockMissDeg, double skewPpm, int swings) {

  private static final List<Measure> COMPARED =
      List.of(
          Measure.PELVIS_TURN, Measure.PELVIS_SLIDE, Measure.PELVIS_THRUST, Measure.PELVIS_LIFT);

  /** The reference at address: the mean over this stretch before the takeaway, s. */
  private static final double ADDRESS_FROM_S = 0.25;

  private static final double ADDRESS_UNTIL_S = 0.03;

  public MarkerAgreement {
    rows = List.copyOf(rows);
  }

  /** Mid-hip since address, m, and turn, rad, in the room; what was not seen is NaN. */
  private record Seen(MeasureValue[] ours, double addressRad, double turnRad, double[] movedM) {}

  /** Compares a recording's result, with its curves, with the markers of the same time. */
  public static MarkerAgreement of(LessonResult result, PelvisMarkers markers) {
    int h = result.player().handed() == Handedness.RIGHT ? 1 : -1;
    MarkerClock clock = MarkerClock.of(result.swings(), h, markers);
    Map<String, List<Seen>> byPosition = new LinkedHashMap<>();
    int swings = 0;
    for (SwingResult swing : result.swings()) {
      int before = size(byPosition);
      for (EventTime event : swing.events()) {
        seen(swing, event, clock, markers)
            .ifPresent(
                s ->
                    byPosition
                        .computeIfAbsent(event.event().word(), k -> new ArrayList<>())
                        .add(s));
      }
      swings += size(byPosition) > before ? 1 : 0;
    }
    boolean isSquare = result.aim().equals("square-hips");
    double room = isSquare ? Double.NaN : forwardRad(byPosition, h);
    List<AgreementRow> rows = new ArrayList<>();
    for (int m = 0; m < COMPARED.size(); m++) {
      for (Map.Entry<String, List<Seen>> at : byPosition.entrySet()) {
        row(m, at.getKey(), at.getValue(), h, room).ifPresent(rows::add);
      }
    }
    return new MarkerAgreement(rows, clock.missDeg(), 1e6 * (clock.rate() - 1), swings);
  }

  private static int size(Map<String, List<Seen>> byPosition) {
    return byPosition.values().stream().mapToInt(List::size).sum();
  }

  private static Optional<Seen> seen(
      SwingResult swing, EventTime event, MarkerClock clock, PelvisMarkers markers) {
    if (event.event().compareTo(SwingEvent.TAKEAWAY) <= 0) {
      return Optional.empty(); // nothing has moved yet
    }
    double takeawayS = swing.timeS(SwingEvent.TAKEAWAY);
    MeasureValue[] ours = new MeasureValue[COMPARED.size()];
    for (int m = 0; m < ours.length; m++) {
      Optional<MeasureValue> value = swing.measure(COMPARED.get(m), event.event().word());
      if (value.isEmpty()) {
        return Optional.empty();
      }
      ours[m] = value.get();
    }
    double fromS = clock.markersS(takeawayS - ADDRESS_FROM_S);
    double untilS = clock.markersS(takeawayS - ADDRESS_UNTIL_S);
    double thenS = clock.markersS(event.timeS());
    double address = markers.mean(markers.azimuthRad(), fromS, untilS);
    double[] moved = new double[3];
    double sum = address + markers.at(markers.azimuthRad(), thenS);
    for (int axis = 0; axis < 3; axis++) {
      double[] column = markers.midHipM()[axis];
      moved[axis] = markers.at(column, thenS) - markers.mean(column, fromS, untilS);
      sum += moved[axis];
    }
    return Double.isNaN(sum)
        ? Optional.empty()
        : Optional.of(
            new Seen(ours, address, markers.at(markers.azimuthRad(), thenS) - address, moved));
  }

  /**
   * The azimuth towards the ball at which the markers' paths lie best on ours, by least squares:
   * the sums of the products along and across give tangent's two sides.
   */
  private static double forwardRad(Map<String, List<Seen>> byPosition, int h) {
    double alike = 0;
    double across = 0;
    for (List<Seen> all : byPosition.values()) {
      for (Seen s : all) {
        if (s.ours[1].given() && s.ours[2].given()) {
          double left = h * s.ours[1].value(); // towards the player's left, then towards the ball
          double ahead = s.ours[2].value();
          alike += s.movedM[0] * ahead + s.movedM[1] * left;
          across += s.movedM[1] * ahead - s.movedM[0] * left;
        }
      }
    }
    return Math.atan2(across, alike);
  }

  private static Optional<AgreementRow> row(
      int m, String at, List<Seen> all, int h, double roomRad) {
    List<Double> differences = new ArrayList<>();
    int covered = 0;
    for (Seen s : all) {
      MeasureValue ours = s.ours[m];
      if (ours.given()) {
        double theirs = theirs(m, s, h, roomRad);
        differences.add(ours.value() - theirs);
        covered += ours.low() <= theirs && theirs <= ours.high() ? 1 : 0;
      }
    }
    return differences.isEmpty()
        ? Optional.empty()
        : Optional.of(
            AgreementRow.of(
                COMPARED.get(m), at, differences.stream().mapToDouble(d -> d).toArray(), covered));
  }

  /** A measure of the markers in its own unit: deg or mm. */
  private static double theirs(int m, Seen s, int h, double roomRad) {
    double forward = Double.isNaN(roomRad) ? s.addressRad - Math.PI / 2 : roomRad;
    double cos = Math.cos(forward);
    double sin = Math.sin(forward);
    return switch (COMPARED.get(m)) {
      case PELVIS_TURN -> h * Math.toDegrees(s.turnRad);
      case PELVIS_SLIDE -> 1e3 * h * (-sin * s.movedM[0] + cos * s.movedM[1]);
      case PELVIS_THRUST -> 1e3 * (cos * s.movedM[0] + sin * s.movedM[1]);
      default -> 1e3 * s.movedM[2];
    };
  }
}
