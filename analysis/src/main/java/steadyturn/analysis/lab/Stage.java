package steadyturn.analysis.lab;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.BodyMotion;
import steadyturn.analysis.lab.body.BodySizes;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.WristAxes;
import steadyturn.analysis.lab.curve.Bursts;
import steadyturn.analysis.lab.curve.Steps;
import steadyturn.analysis.lab.curve.Sway;
import steadyturn.analysis.lab.curve.TimeFunction;
import steadyturn.analysis.lab.family.WornBody;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;

/**
 * Where the lesson is being laid out: steps and bursts of every joint, of every unit's shift
 * against its segment, the strength of sway, and the marks, all in true time. Filled in order of
 * time; {@link #nowS} is how far it has come.
 */
final class Stage {

  /** Which way a unit is moved against its segment. */
  static final int SHIFTS = 6;

  private static final double LEAST_BLOW_DELAY_S = 0.0003;

  /** A metre of arm and spine at some 500 m/s, between bone and soft parts: our choice. */
  private static final double BLOW_TO_TRUNK_S = 0.002;

  final long seed;
  final BodyErrors errors;
  final Map<Joint, Steps> joints = new EnumMap<>(Joint.class);
  final Map<Joint, Bursts> bursts = new EnumMap<>(Joint.class);
  final Map<BodyPoint, Steps[]> skin = new EnumMap<>(BodyPoint.class);
  final Map<BodyPoint, Bursts[]> rings = new EnumMap<>(BodyPoint.class);
  final Steps swayMps = new Steps(0);
  final Steps swayRadPerS = new Steps(0);

  /** By how much this player's trunk feels a blow later than the hands, s. */
  final double blowDelayS;

  final Optional<WornBody> worn;
  final List<Mark> marks = new ArrayList<>();
  double nowS;

  Stage(long seed, BodyErrors errors, Optional<WornBody> worn) {
    this.seed = seed;
    this.worn = worn;
    this.errors = errors;
    double awayMs = errors.blowDelayMs() * Draws.of(seed, "blow-delay", 0).nextGaussian();
    this.blowDelayS = Math.max(LEAST_BLOW_DELAY_S, BLOW_TO_TRUNK_S + awayMs / 1000);
    for (BodyPoint point : BodyPoint.values()) {
      Steps[] shifts = new Steps[SHIFTS];
      Bursts[] shakes = new Bursts[SHIFTS];
      for (int i = 0; i < SHIFTS; i++) {
        shifts[i] = new Steps(0);
        shakes[i] = new Bursts();
      }
      skin.put(point, shifts);
      rings.put(point, shakes);
    }
  }

  /** Steps of a joint, which starts at {@code start} when first asked for. */
  Steps start(Joint joint, double start) {
    return joints.computeIfAbsent(joint, j -> new Steps(start));
  }

  Steps joint(Joint joint) {
    return start(joint, 0);
  }

  Bursts burst(Joint joint) {
    return bursts.computeIfAbsent(joint, j -> new Bursts());
  }

  Steps[] skin(BodyPoint point) {
    return skin.getOrDefault(point, new Steps[0]);
  }

  Bursts[] rings(BodyPoint point) {
    return rings.getOrDefault(point, new Bursts[0]);
  }

  /** Changes the strength of sway smoothly; factors 1 are the sizes given for address. */
  void sway(double fromS, double toS, double mmPerS, double degPerS) {
    swayMps.to(fromS, toS, mmPerS / 1000);
    swayRadPerS.to(fromS, toS, Math.toRadians(degPerS));
  }

  void swayOfAddress(double fromS, double toS) {
    sway(fromS, toS, errors.swayAddressMmPerS(), errors.swayAddressDegPerS());
  }

  void mark(double fromS, double toS, String word, String club) {
    marks.add(new Mark(fromS, toS - fromS, word, club, ""));
  }

  /** What a joint was meant to do, without sway and bursts. */
  TimeFunction planned(Joint joint) {
    return joint(joint).build();
  }

  /** The whole motion up to {@code untilS}. */
  BodyMotion body(BodySizes sizes, double untilS) {
    TimeFunction speed = swayMps.build();
    TimeFunction rate = swayRadPerS.build();
    Map<Joint, TimeFunction> all = new EnumMap<>(Joint.class);
    for (Joint joint : Joint.values()) {
      List<TimeFunction> parts = new ArrayList<>();
      parts.add(planned(joint));
      double share = swayShare(joint, worn.map(w -> w.stance().up()).orElse(1.0 / 3));
      if (share > 0 && errors.swayAddressMmPerS() > 0) {
        RandomGenerator random = Draws.of(seed, "sway " + joint, 0);
        TimeFunction strength = isPlace(joint) ? speed : rate;
        double haste = worn.map(w -> w.stance().haste()).orElse(1.0) * haste(joint);
        parts.add(Sway.draw(random, 0, untilS + 1, t -> share * strength.at(t), haste));
      }
      if (!burst(joint).isEmpty()) {
        parts.add(burst(joint).build());
      }
      all.put(joint, TimeFunction.sum(parts.toArray(TimeFunction[]::new)));
    }
    return new BodyMotion(sizes, worn.map(WornBody::wrist).orElse(WristAxes.SQUARE), all);
  }

  private static boolean isPlace(Joint joint) {
    return joint == Joint.PLACE_X || joint == Joint.PLACE_Y || joint == Joint.PLACE_Z;
  }

  /** Up and down a standing person moves less than to the sides: a third, our assumption. */
  private static double swayShare(Joint joint, double up) {
    return switch (joint) {
      case PLACE_X, PLACE_Y, TURN, SIDE_TILT, TILT -> 1;
      case PLACE_Z -> up;
      case PLANE, ARM, ROLL, COCK, FLEXION -> 1;
      case HEADING, TRUNK_TURN, TRUNK_BEND, PLAY, CLUB_BEND -> 0;
    };
  }

  /** Up and down a person goes as the breath does, and an arm trembles faster: our choice. */
  private static double haste(Joint joint) {
    return switch (joint) {
      case PLACE_X, PLACE_Y -> 1;
      case PLANE, ARM, ROLL, COCK, FLEXION -> 2.5;
      default -> 1.6;
    };
  }

  /** Shifts of a unit against its segment, as {@code WornUnit} takes them. */
  TimeFunction[] shifts(BodyPoint point) {
    TimeFunction[] out = new TimeFunction[SHIFTS];
    for (int i = 0; i < SHIFTS; i++) {
      TimeFunction steps = skin(point)[i].build();
      Bursts shakes = rings(point)[i];
      out[i] = shakes.isEmpty() ? steps : TimeFunction.sum(steps, shakes.build());
    }
    return out;
  }
}
