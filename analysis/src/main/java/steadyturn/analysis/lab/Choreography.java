package steadyturn.analysis.lab;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import steadyturn.analysis.lab.body.Joint;
import steadyturn.analysis.lab.body.Trait;
import steadyturn.analysis.lab.curve.Bursts;
import steadyturn.analysis.lab.family.Dice;
import steadyturn.analysis.lab.family.SwingTiming;
import steadyturn.analysis.lab.family.WornBody;
import steadyturn.analysis.lab.unit.UnitErrors;
import steadyturn.analysis.swing.SwingKind;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Lays a whole lesson on the stage: wear steps, then for each swing the way to the ball, waggles,
 * still address, swing, finish.
 */
final class Choreography {

  /** Stillness before the takeaway, s. */
  private static final double ADDRESS_HOLD_S = 1;

  private final LessonSpec spec;
  private final List<ArmCourse> arms;
  private final long seed;
  private final Stage stage;
  private final double standingTiltRad;
  private final RandomGenerator random;
  private final Map<Trait, Double> player;
  private final double playerAimRad;
  private final Approach approach;
  private final Map<BodyPoint, double[]> skinHabit = new EnumMap<>(BodyPoint.class);
  private final Optional<SwingTiming> timing;
  private final List<PlannedSwing> swings = new ArrayList<>();

  Choreography(
      LessonSpec spec,
      List<ArmCourse> arms,
      long seed,
      double standingTiltRad,
      Optional<WornBody> worn) {
    this.spec = spec;
    this.arms = List.copyOf(arms);
    this.seed = seed;
    this.standingTiltRad = standingTiltRad;
    this.stage = new Stage(seed, spec.body(), worn);
    this.timing = spec.family().map(f -> f.shape().player(new Dice(Draws.of(seed, "timing", 0))));
    this.random = Draws.of(seed, "choreography", 0);
    this.player = SwingPlan.drawPlayer(spec.player(), Draws.of(seed, "player", 0));
    RandomGenerator habits = Draws.of(seed, "habits", 0);
    this.playerAimRad = Math.toRadians(spec.body().aimDeg()) * habits.nextGaussian();
    this.approach = new Approach(stage, spec, player, playerAimRad, standingTiltRad, random);
    for (BodyPoint point : BodyPoint.values()) {
      double[] habit = new double[18];
      for (int i = 0; i < habit.length; i++) {
        habit[i] = habits.nextGaussian();
      }
      skinHabit.put(point, habit);
    }
  }

  Stage stage() {
    return stage;
  }

  List<PlannedSwing> swings() {
    return swings;
  }

  double playerAimRad() {
    return playerAimRad;
  }

  /** Lays everything; afterwards {@code stage().nowS} is the end of the recording. */
  void lay() {
    stage.start(Joint.PLACE_Z, Approach.HIP_HEIGHT_M);
    stage.start(Joint.TILT, standingTiltRad);
    new WearSteps(stage, spec, standingTiltRad, playerAimRad, seed).lay();
    List<SwingPlan> plans = plans();
    for (int i = 0; i < plans.size(); i++) {
      approach.goToAddress(i == 0);
      waggle();
      swing(plans.get(i), i);
    }
    for (int i = 0; i < spec.putts(); i++) {
      approach.goToAddress(false);
      putt();
    }
    stage.nowS += spec.finishHeld() ? 0.5 : 0;
    goToRest();
  }

  /** Hits in runs of one club, practice swings spread among them. */
  private List<SwingPlan> plans() {
    int all = arms.isEmpty() ? spec.hits() + spec.practices() : arms.size();
    int practices = arms.isEmpty() ? spec.practices() : 0;
    List<SwingPlan> plans = new ArrayList<>();
    int practised = 0;
    int clubs = Math.max(1, spec.clubs().size());
    for (int i = 0; i < all; i++) {
      boolean practice = (i + 1) * practices / all > practised;
      practised += practice ? 1 : 0;
      String club = spec.clubs().isEmpty() ? "" : spec.clubs().get(i * clubs / all);
      SwingKind kind = practice ? SwingKind.PRACTICE : SwingKind.HIT;
      SwingPlan plan =
          SwingPlan.draw(kind, club, spec.player(), player, Draws.of(seed, "swing", i));
      plans.add(arms.isEmpty() ? plan : plan.with(Trait.DOWN_S, arms.get(i).downS()));
    }
    return plans;
  }

  /** The club to and fro a few degrees, with a light tap on the ground each time. */
  private void waggle() {
    for (int i = 0; i < spec.waggles(); i++) {
      double fromS = stage.nowS + 0.1;
      double lengthS = 0.8 + 0.4 * random.nextDouble();
      double halfS = fromS + lengthS / 2;
      double arm = Math.toRadians(6 + 6 * random.nextDouble());
      double cock = Math.toRadians(10 + 15 * random.nextDouble());
      stage.joint(Joint.ARM).by(fromS, halfS, -arm).by(halfS, fromS + lengthS, arm);
      stage.joint(Joint.COCK).by(fromS, halfS, cock).by(halfS, fromS + lengthS, -cock);
      tap(fromS + lengthS - 0.05, (2 + 6 * random.nextDouble()) * UnitErrors.G_MPS2);
      stage.nowS = fromS + lengthS;
    }
    stage.nowS += 0.25;
  }

  private void tap(double atS, double peakMps2) {
    double frequencyHz = 60 + 40 * random.nextDouble();
    stage.rings(BodyPoint.CLUB_SHAFT)[1].addRing(atS, 0.012, 2 * peakMps2, frequencyHz);
    stage.rings(BodyPoint.LEAD_HAND)[1].addRing(atS, 0.012, peakMps2, frequencyHz);
    stage.rings(BodyPoint.LEAD_FOREARM)[1].addRing(atS, 0.012, peakMps2 / 3, frequencyHz);
  }

  private void swing(SwingPlan plan, int index) {
    if (timing.isPresent()) {
      drawnSwing(plan, timing.get(), new Dice(Draws.of(seed, "swing-errors", index)));
      return;
    }
    double stillS = stage.nowS;
    double startS = stillS + ADDRESS_HOLD_S;
    drift(stillS, startS);
    SwingMoves moves =
        new SwingMoves(stage, plan, startS, skinHabit, Draws.of(seed, "swing-errors", index));
    if (!arms.isEmpty()) {
      moves.follow(arms.get(index));
    }
    moves.lay();
    if (plan.kind() == SwingKind.PRACTICE && spec.turfBrush()) {
      brush(moves.impactS());
    }
    double holdS = spec.finishHeld() ? 1.1 + 0.3 * random.nextDouble() : -0.35;
    finish(plan, stillS, startS, moves.impactS(), moves.endS(), moves.endS() + holdS);
  }

  private void finish(
      SwingPlan plan, double stillS, double startS, double impactS, double endS, double leaveS) {
    double topS = startS + plan.of(Trait.BACK_S);
    swings.add(new PlannedSwing(plan.kind(), plan.club(), startS, topS, impactS, endS, leaveS));
    stage.mark(stillS, leaveS, plan.kind().word(), plan.club());
    stage.nowS = leaveS;
  }

  private void drawnSwing(SwingPlan plan, SwingTiming usual, Dice dice) {
    double stillS = stage.nowS;
    double startS = new DrawnAddress(stage, spec, dice).lay();
    drift(stillS, startS);
    SwingTiming course =
        spec.habits().contains(Habit.PAUSE_AT_TOP) ? usual.pausing(dice.even(0.05, 0.35)) : usual;
    ShapedSwing shape = new ShapedSwing(stage, plan, course, startS, dice);
    double endS = shape.lay();
    stage.worn.ifPresent(
        w -> new BlowShakes(stage, w.blow(), plan.club(), shape.impactS(), dice).lay());
    stage.sway(
        shape.impactS(), endS, stage.errors.swayFinishMmPerS(), stage.errors.swayFinishDegPerS());
    double holdS = spec.finishHeld() ? dice.even(0.7, 1.6) : -dice.even(0.1, 0.4);
    if (spec.habits().contains(Habit.WANDERING_FINISH)) {
      wander(endS - 0.2, endS + holdS, dice);
    }
    finish(plan, stillS, startS, shape.impactS(), endS, endS + holdS);
  }

  /** Out of balance after the swing: small shifts, turns and bends that never cease. */
  private void wander(double fromS, double toS, Dice dice) {
    for (Joint joint : List.of(Joint.PLACE_X, Joint.PLACE_Y, Joint.TURN, Joint.TILT, Joint.ARM)) {
      double size = joint == Joint.PLACE_X || joint == Joint.PLACE_Y ? 0.04 : 0.15;
      for (double atS = fromS; atS < toS; atS += 0.3) {
        stage.joint(joint).by(atS, atS + dice.even(0.4, 0.7), dice.about(0, size));
      }
    }
  }

  private void drift(double stillS, double startS) {
    if (spec.addressDriftMps() != 0) {
      stage.joint(Joint.PLACE_X).ramp(stillS - 0.3, startS + 0.3, spec.addressDriftMps(), 0.25);
    }
  }

  /**
   * The sole of the club through the grass: 2-5 g at the hand for 40 ms, a third at the forearm.
   */
  private void brush(double impactS) {
    double peak = (2 + 3 * random.nextDouble()) * UnitErrors.G_MPS2;
    double frequencyHz = 40 + 30 * random.nextDouble();
    double fromS = impactS - 0.01 + 0.02 * random.nextDouble();
    double amplitude = peak / Math.pow(2 * Math.PI * frequencyHz, 2);
    for (BodyPoint point :
        new BodyPoint[] {BodyPoint.LEAD_HAND, BodyPoint.CLUB_SHAFT, BodyPoint.LEAD_FOREARM}) {
      double here = point == BodyPoint.LEAD_FOREARM ? amplitude / 3 : amplitude;
      stage.rings(point)[1].add(fromS, 0.04, here, frequencyHz, 0, Bursts.Window.SMOOTH);
    }
  }

  private void putt() {
    double startS = stage.nowS + ADDRESS_HOLD_S;
    double size = Math.toRadians(15 + 10 * random.nextDouble());
    stage
        .joint(Joint.ARM)
        .by(startS, startS + 0.75, -size)
        .by(startS + 0.65, startS + 1.25, 2 * size)
        .by(startS + 2, startS + 3, -size);
    tap(startS + 0.95, 2 * UnitErrors.G_MPS2);
    stage.nowS = startS + 3.2;
  }

  private void goToRest() {
    double fromS = stage.nowS;
    approach.upright(fromS, fromS + 1.5);
    stage.swayOfAddress(fromS, fromS + 1.5);
    stage.nowS = fromS + 3;
  }
}
