package steadyturn.fusion.calibrate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import steadyturn.fusion.calibrate.StillStretches.Run;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.UnitStream;

/**
 * Leads through the six positions of the accelerometer, in any order: takes each as soon as it is
 * still, and says which are missing, which was taken already, and which must be done again because
 * it does not fit the others.
 */
public final class FaceGuide implements GuidedStep {

  /** Word of the events file for one position; its note is the pose. */
  public static final String TRIAL_TYPE = "six-position";

  private static final double LEAST_S = 1.5;
  private static final double WORTH_TELLING_S = 0.8;

  private final double gravityMps2;
  private final Map<Pose, UnitStream> faces = new EnumMap<>(Pose.class);
  private double neededFromS = Double.NEGATIVE_INFINITY;
  private double heardOfS = Double.NaN;
  private boolean isDone;

  public FaceGuide(double gravityMps2) {
    this.gravityMps2 = gravityMps2;
  }

  @Override
  public String task() {
    return "Lay the unit on each of its six faces on a level table, 2 s each, in any order; turn it"
        + " over between them.";
  }

  @Override
  public String missing() {
    Set<Pose> missing = EnumSet.allOf(Pose.class);
    missing.removeAll(faces.keySet());
    return missing.stream().map(Pose::words).collect(Collectors.joining(", "));
  }

  @Override
  public boolean isDone() {
    return isDone;
  }

  @Override
  public double neededFromS() {
    return neededFromS;
  }

  @Override
  public Optional<String> look(UnitStream recent) {
    for (Run run : StillStretches.runs(recent)) {
      boolean isNew = run.startS() != heardOfS;
      UnitStream inside = run.insideOf(recent);
      if (isNew && run.lengthS() >= LEAST_S + 2 * StillStretches.WINDOW_S) {
        heardOfS = run.startS();
        return Optional.of(lies(inside));
      }
      if (run.isOver()) {
        neededFromS = run.endS();
        if (isNew && run.lengthS() >= WORTH_TELLING_S) {
          return Optional.of(
              String.format(
                  Locale.ROOT,
                  "It was moved after %.1f s. Do it again: let go of it for 2 s.",
                  run.lengthS()));
        }
      }
    }
    return Optional.empty();
  }

  private String lies(UnitStream still) {
    Vector3 shown = RestGate.meanAccelMps2(still);
    Optional<Pose> pose = Pose.of(shown);
    if (pose.isEmpty()) {
      return "It lies on no face: more than 25 deg off. Lay it flat. Missing: " + missing() + ".";
    }
    if (faces.containsKey(pose.get())) {
      return pose.get().words() + " was taken already. Missing: " + missing() + ".";
    }
    faces.put(pose.get(), still);
    if (faces.size() < Pose.values().length) {
      return pose.get().words() + " taken. Missing: " + missing() + ".";
    }
    return pose.get().words() + " taken. " + judge();
  }

  /** With all six: whether they fit one another; those that do not are forgotten. */
  private String judge() {
    List<UnitStream> all = List.copyOf(faces.values());
    try {
      SixPositions.ofStills(all, gravityMps2);
      isDone = true;
      return "All six fit one another.";
    } catch (CalibrationException e) {
      SixPositions.misfit(all, gravityMps2).ifPresentOrElse(faces::remove, faces::clear);
      return "Do it again: " + e.getMessage() + ". Missing: " + missing() + ".";
    }
  }

  @Override
  public void beginAnew(double fromS) {
    neededFromS = fromS;
  }

  @Override
  public List<Mark> taken() {
    List<Mark> marks = new ArrayList<>();
    faces.forEach(
        (pose, still) -> {
          double fromS = still.timeS(0);
          double lengthS = still.timeS(still.size() - 1) - fromS;
          marks.add(new Mark(fromS, lengthS, TRIAL_TYPE, "", pose.words()));
        });
    return marks;
  }
}
