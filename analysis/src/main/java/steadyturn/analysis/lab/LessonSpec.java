package steadyturn.analysis.lab;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.family.Family;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/**
 * What lesson to simulate. Start at {@link #standard()} and change what matters: {@code
 * LessonSpec.standard().withHits(20).withHanded(Handedness.LEFT)}: the same with that one changed.
 * Never changes once given out.
 */
public final class LessonSpec implements Cloneable {

  private Handedness handed = Handedness.RIGHT;
  private String playerId = "p01";
  private PlayerStyle player = PlayerStyle.mixed();
  private int hits = 10;
  private int practices = 2;
  private int waggles = 2;
  private int putts = 0;
  private List<String> clubs = List.of("7-iron");
  private boolean walking = true;
  private double addressDriftMps = 0;
  private boolean finishHeld = true;
  private Set<Habit> habits = EnumSet.noneOf(Habit.class);
  private Optional<Family> family = Optional.empty();
  private boolean turfBrush = false;
  private Set<WearStep> wearSteps = EnumSet.allOf(WearStep.class);
  private boolean marks = true;
  private BodyErrors body = BodyErrors.standard();
  private UnitSpec unit = new UnitSpec();

  private LessonSpec() {}

  /**
   * Ten hits and two practice swings of a right-handed player with a 7-iron: 500 Hz, calibrated
   * units, 1 s of still address, finish held, human sway, wobble and skin shift.
   */
  public static LessonSpec standard() {
    return new LessonSpec();
  }

  private LessonSpec with(Consumer<LessonSpec> change) {
    try {
      LessonSpec c = (LessonSpec) clone();
      change.accept(c);
      return c;
    } catch (CloneNotSupportedException e) {
      throw new IllegalStateException("a spec can be cloned", e);
    }
  }

  private LessonSpec withUnit(Consumer<UnitSpec> change) {
    return with(c -> c.unit = unit.with(change));
  }

  UnitSpec unit() {
    return unit;
  }

  /** Body points that wear a unit. */
  public Set<BodyPoint> units() {
    return unit.worn;
  }

  /** How good the units are. */
  public UnitGrade unitGrade() {
    return unit.grade;
  }

  /** Side the player swings from. */
  public Handedness handed() {
    return handed;
  }

  public LessonSpec withHanded(Handedness handed) {
    return with(c -> c.handed = handed);
  }

  public String playerId() {
    return playerId;
  }

  public LessonSpec withPlayerId(String playerId) {
    return with(c -> c.playerId = playerId);
  }

  /** Kind of player. */
  public PlayerStyle player() {
    return player;
  }

  public LessonSpec withPlayer(PlayerStyle player) {
    return with(c -> c.player = player);
  }

  /** Balls struck. */
  public int hits() {
    return hits;
  }

  public LessonSpec withHits(int hits) {
    requireAtLeast(0, hits, "hits");
    return with(c -> c.hits = hits);
  }

  /** Practice swings, spread among the hits. */
  public int practices() {
    return practices;
  }

  public LessonSpec withPractices(int practices) {
    requireAtLeast(0, practices, "practice swings");
    return with(c -> c.practices = practices);
  }

  /** Waggles of the club before each swing. */
  public int waggles() {
    return waggles;
  }

  public LessonSpec withWaggles(int waggles) {
    requireAtLeast(0, waggles, "waggles");
    return with(c -> c.waggles = waggles);
  }

  /** Putting strokes after the last swing; they are not full swings. */
  public int putts() {
    return putts;
  }

  public LessonSpec withPutts(int putts) {
    requireAtLeast(0, putts, "putts");
    return with(c -> c.putts = putts);
  }

  /** Clubs, each used for an equal run of swings. */
  public List<String> clubs() {
    return clubs;
  }

  public LessonSpec withClubs(List<String> clubs) {
    return with(c -> c.clubs = List.copyOf(clubs));
  }

  /** Whether the player walks off and back between swings. */
  public boolean walking() {
    return walking;
  }

  public LessonSpec withWalking(boolean walking) {
    return with(c -> c.walking = walking);
  }

  /** Speed at which the body drifts to the target all through the address, m/s. */
  public double addressDriftMps() {
    return addressDriftMps;
  }

  public LessonSpec withAddressDriftMps(double addressDriftMps) {
    return with(c -> c.addressDriftMps = addressDriftMps);
  }

  /** Whether the finish is held for about a second. */
  public boolean finishHeld() {
    return finishHeld;
  }

  public LessonSpec withFinishHeld(boolean finishHeld) {
    return with(c -> c.finishHeld = finishHeld);
  }

  public Set<Habit> habits() {
    return habits;
  }

  /** Families of movement and error the lesson is drawn from; empty for the usual sizes. */
  public Optional<Family> family() {
    return family;
  }

  /** The same with player, body and units drawn from a family. */
  public LessonSpec withFamily(Family family, Set<Habit> habits) {
    return with(
        c -> {
          c.family = Optional.of(family);
          c.habits = Set.copyOf(habits);
          c.player = family.shape().style();
          c.unit = unit.with(u -> u.wear(family.errors().chip()));
        });
  }

  /** Whether the club brushes the turf in practice swings. */
  public boolean turfBrush() {
    return turfBrush;
  }

  public LessonSpec withTurfBrush(boolean turfBrush) {
    return with(c -> c.turfBrush = turfBrush);
  }

  /** Wear steps done before the first swing. */
  public Set<WearStep> wearSteps() {
    return wearSteps;
  }

  public LessonSpec withWearSteps(Set<WearStep> wearSteps) {
    return with(c -> c.wearSteps = Set.copyOf(wearSteps));
  }

  /** Whether the recording carries marks of wear steps and swings. */
  public boolean marks() {
    return marks;
  }

  public LessonSpec withMarks(boolean marks) {
    return with(c -> c.marks = marks);
  }

  /** What the body does to the measurement. */
  public BodyErrors body() {
    return body;
  }

  public LessonSpec withBody(BodyErrors body) {
    return with(c -> c.body = body);
  }

  public LessonSpec withUnits(Set<BodyPoint> units) {
    return withUnit(u -> u.worn = Set.copyOf(units));
  }

  public LessonSpec withUnitGrade(UnitGrade unitGrade) {
    return withUnit(u -> u.grade = unitGrade);
  }

  public LessonSpec withRateHz(double rateHz) {
    requireAtLeast(50, rateHz, "rate in Hz");
    return withUnit(u -> u.rateHz = rateHz);
  }

  public LessonSpec withGyroFullScaleDegPerS(double gyroFullScaleDegPerS) {
    return withUnit(u -> u.gyroFullScaleDegPerS = gyroFullScaleDegPerS);
  }

  public LessonSpec withAccelFullScaleG(double accelFullScaleG) {
    return withUnit(u -> u.accelFullScaleG = accelFullScaleG);
  }

  public LessonSpec withLossPct(double lossPct) {
    requireAtLeast(0, lossPct, "loss in %");
    return withUnit(u -> u.lossPct = lossPct);
  }

  public LessonSpec withClockSkewPpm(double clockSkewPpm) {
    requireAtLeast(0, clockSkewPpm, "skew in ppm");
    return withUnit(u -> u.clockSkewPpm = clockSkewPpm);
  }

  public LessonSpec withUnitStartSpreadS(double unitStartSpreadS) {
    requireAtLeast(0, unitStartSpreadS, "spread in s");
    return withUnit(u -> u.startSpreadS = unitStartSpreadS);
  }

  public LessonSpec withUnitStartErrorS(double unitStartErrorS) {
    requireAtLeast(0, unitStartErrorS, "error in s");
    return withUnit(u -> u.startErrorS = unitStartErrorS);
  }

  public LessonSpec withJitterS(double jitterS) {
    requireAtLeast(0, jitterS, "jitter in s");
    return withUnit(u -> u.jitterS = jitterS);
  }

  public LessonSpec withWearSteps(boolean all) {
    return withWearSteps(all ? EnumSet.allOf(WearStep.class) : EnumSet.noneOf(WearStep.class));
  }

  private static void requireAtLeast(double least, double value, String what) {
    if (!(value >= least)) {
      throw new IllegalArgumentException(what + " must be at least " + least + ", was " + value);
    }
  }
}
