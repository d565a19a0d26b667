package steadyturn.analysis.lab;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import steadyturn.analysis.lab.body.BodyErrors;
import steadyturn.analysis.lab.body.PlayerStyle;
import steadyturn.analysis.lab.unit.UnitGrade;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Handedness;

/**
 * What lesson to simulate. Start at {@link #standard()} and change what matters: {@code
 * LessonSpec.standard().withHits(20).withHanded(Handedness.LEFT)}. Never changes once given out.
 */
public final class LessonSpec {

  private Handedness handed = Handedness.RIGHT;
  private String playerId = "p01";
  private PlayerStyle player = PlayerStyle.mixed();
  private int hits = 10;
  private int practices = 2;
  private int waggles = 2;
  private int putts = 0;
  private List<String> clubs = List.of("7-iron");
  private boolean walking = true;
  private double gapS = 3;
  private double addressHoldS = 1;
  private double addressDriftMps = 0;
  private boolean finishHeld = true;
  private boolean turfBrush = false;
  private Set<WearStep> wearSteps = EnumSet.allOf(WearStep.class);
  private boolean marks = true;
  private BodyErrors body = BodyErrors.standard();
  private Set<BodyPoint> units =
      EnumSet.of(BodyPoint.PELVIS, BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND);
  private UnitGrade unitGrade = UnitGrade.CALIBRATED;
  private double rateHz = 500;
  private double accelFullScaleG = 16;
  private double gyroFullScaleDegPerS = 2000;
  private double lossPct = 0.1;
  private double clockSkewPpm = 35;
  private double unitStartSpreadS = 0.2;
  private double unitStartErrorS = 0.0005;
  private double jitterS = 0.0002;

  private LessonSpec() {}

  /**
   * Ten hits and two practice swings of a right-handed player with a 7-iron: 500 Hz, calibrated
   * units, 1 s of still address, finish held, human sway, wobble and skin shift.
   */
  public static LessonSpec standard() {
    return new LessonSpec();
  }

  private LessonSpec copy() {
    LessonSpec c = new LessonSpec();
    c.handed = handed;
    c.playerId = playerId;
    c.player = player;
    c.hits = hits;
    c.practices = practices;
    c.waggles = waggles;
    c.putts = putts;
    c.clubs = clubs;
    c.walking = walking;
    c.gapS = gapS;
    c.addressHoldS = addressHoldS;
    c.addressDriftMps = addressDriftMps;
    c.finishHeld = finishHeld;
    c.turfBrush = turfBrush;
    c.wearSteps = wearSteps;
    c.marks = marks;
    c.body = body;
    c.units = units;
    c.unitGrade = unitGrade;
    c.rateHz = rateHz;
    c.accelFullScaleG = accelFullScaleG;
    c.gyroFullScaleDegPerS = gyroFullScaleDegPerS;
    c.lossPct = lossPct;
    c.clockSkewPpm = clockSkewPpm;
    c.unitStartSpreadS = unitStartSpreadS;
    c.unitStartErrorS = unitStartErrorS;
    c.jitterS = jitterS;
    return c;
  }

  /** Side the player swings from. */
  public Handedness handed() {
    return handed;
  }

  /** The same with: side the player swings from. */
  public LessonSpec withHanded(Handedness handed) {
    LessonSpec c = copy();
    c.handed = handed;
    return c;
  }

  /** Label of the player, letters and digits. */
  public String playerId() {
    return playerId;
  }

  /** The same with: label of the player, letters and digits. */
  public LessonSpec withPlayerId(String playerId) {
    LessonSpec c = copy();
    c.playerId = playerId;
    return c;
  }

  /** Kind of player. */
  public PlayerStyle player() {
    return player;
  }

  /** The same with: kind of player. */
  public LessonSpec withPlayer(PlayerStyle player) {
    LessonSpec c = copy();
    c.player = player;
    return c;
  }

  /** Balls struck. */
  public int hits() {
    return hits;
  }

  /** The same with: balls struck. */
  public LessonSpec withHits(int hits) {
    requireAtLeast(0, hits, "hits");
    LessonSpec c = copy();
    c.hits = hits;
    return c;
  }

  /** Practice swings, spread among the hits. */
  public int practices() {
    return practices;
  }

  /** The same with: practice swings, spread among the hits. */
  public LessonSpec withPractices(int practices) {
    requireAtLeast(0, practices, "practice swings");
    LessonSpec c = copy();
    c.practices = practices;
    return c;
  }

  /** Waggles of the club before each swing. */
  public int waggles() {
    return waggles;
  }

  /** The same with: waggles of the club before each swing. */
  public LessonSpec withWaggles(int waggles) {
    requireAtLeast(0, waggles, "waggles");
    LessonSpec c = copy();
    c.waggles = waggles;
    return c;
  }

  /** Putting strokes after the last swing; they are not full swings. */
  public int putts() {
    return putts;
  }

  /** The same with: putting strokes after the last swing; they are not full swings. */
  public LessonSpec withPutts(int putts) {
    requireAtLeast(0, putts, "putts");
    LessonSpec c = copy();
    c.putts = putts;
    return c;
  }

  /** Clubs, each used for an equal run of swings. */
  public List<String> clubs() {
    return clubs;
  }

  /** The same with: clubs, each used for an equal run of swings. */
  public LessonSpec withClubs(List<String> clubs) {
    LessonSpec c = copy();
    c.clubs = List.copyOf(clubs);
    return c;
  }

  /** Whether the player walks off and back between swings. */
  public boolean walking() {
    return walking;
  }

  /** The same with: whether the player walks off and back between swings. */
  public LessonSpec withWalking(boolean walking) {
    LessonSpec c = copy();
    c.walking = walking;
    return c;
  }

  /** Time from a finish to the next address where the player does not walk, s. */
  public double gapS() {
    return gapS;
  }

  /** Stillness before the takeaway, s. */
  public double addressHoldS() {
    return addressHoldS;
  }

  /** The same with: stillness before the takeaway, s. */
  public LessonSpec withAddressHoldS(double addressHoldS) {
    requireAtLeast(0.2, addressHoldS, "address hold in s");
    LessonSpec c = copy();
    c.addressHoldS = addressHoldS;
    return c;
  }

  /** Speed at which the body drifts to the target all through the address, m/s. */
  public double addressDriftMps() {
    return addressDriftMps;
  }

  /** The same with: speed at which the body drifts to the target all through the address, m/s. */
  public LessonSpec withAddressDriftMps(double addressDriftMps) {
    LessonSpec c = copy();
    c.addressDriftMps = addressDriftMps;
    return c;
  }

  /** Whether the finish is held for about a second. */
  public boolean finishHeld() {
    return finishHeld;
  }

  /** The same with: whether the finish is held for about a second. */
  public LessonSpec withFinishHeld(boolean finishHeld) {
    LessonSpec c = copy();
    c.finishHeld = finishHeld;
    return c;
  }

  /** Whether the club brushes the turf in practice swings. */
  public boolean turfBrush() {
    return turfBrush;
  }

  /** The same with: whether the club brushes the turf in practice swings. */
  public LessonSpec withTurfBrush(boolean turfBrush) {
    LessonSpec c = copy();
    c.turfBrush = turfBrush;
    return c;
  }

  /** Wear steps done before the first swing. */
  public Set<WearStep> wearSteps() {
    return wearSteps;
  }

  /** The same with: wear steps done before the first swing. */
  public LessonSpec withWearSteps(Set<WearStep> wearSteps) {
    LessonSpec c = copy();
    c.wearSteps = Set.copyOf(wearSteps);
    return c;
  }

  /** Whether the recording carries marks of wear steps and swings. */
  public boolean marks() {
    return marks;
  }

  /** The same with: whether the recording carries marks of wear steps and swings. */
  public LessonSpec withMarks(boolean marks) {
    LessonSpec c = copy();
    c.marks = marks;
    return c;
  }

  /** What the body does to the measurement. */
  public BodyErrors body() {
    return body;
  }

  /** The same with: what the body does to the measurement. */
  public LessonSpec withBody(BodyErrors body) {
    LessonSpec c = copy();
    c.body = body;
    return c;
  }

  /** Body points that wear a unit. */
  public Set<BodyPoint> units() {
    return units;
  }

  /** The same with: body points that wear a unit. */
  public LessonSpec withUnits(Set<BodyPoint> units) {
    LessonSpec c = copy();
    c.units = Set.copyOf(units);
    return c;
  }

  /** How good the units are. */
  public UnitGrade unitGrade() {
    return unitGrade;
  }

  /** The same with: how good the units are. */
  public LessonSpec withUnitGrade(UnitGrade unitGrade) {
    LessonSpec c = copy();
    c.unitGrade = unitGrade;
    return c;
  }

  /** Samples a second of every unit. */
  public double rateHz() {
    return rateHz;
  }

  /** The same with: samples a second of every unit. */
  public LessonSpec withRateHz(double rateHz) {
    requireAtLeast(50, rateHz, "rate in Hz");
    LessonSpec c = copy();
    c.rateHz = rateHz;
    return c;
  }

  /** Largest acceleration a unit shows, g. */
  public double accelFullScaleG() {
    return accelFullScaleG;
  }

  /** Largest rate a unit shows, deg/s. */
  public double gyroFullScaleDegPerS() {
    return gyroFullScaleDegPerS;
  }

  /** The same with: largest rate a unit shows, deg/s. */
  public LessonSpec withGyroFullScaleDegPerS(double gyroFullScaleDegPerS) {
    LessonSpec c = copy();
    c.gyroFullScaleDegPerS = gyroFullScaleDegPerS;
    return c;
  }

  /** Samples lost, percent. */
  public double lossPct() {
    return lossPct;
  }

  /** The same with: samples lost, percent. */
  public LessonSpec withLossPct(double lossPct) {
    requireAtLeast(0, lossPct, "loss in %");
    LessonSpec c = copy();
    c.lossPct = lossPct;
    return c;
  }

  /** Size of each unit's clock skew, millionths, give or take 40 %, either sign. */
  public double clockSkewPpm() {
    return clockSkewPpm;
  }

  /** The same with: size of each unit's clock skew, millionths, give or take 40 %, either sign. */
  public LessonSpec withClockSkewPpm(double clockSkewPpm) {
    requireAtLeast(0, clockSkewPpm, "skew in ppm");
    LessonSpec c = copy();
    c.clockSkewPpm = clockSkewPpm;
    return c;
  }

  /** How far apart the units start; known to the recording, s. */
  public double unitStartSpreadS() {
    return unitStartSpreadS;
  }

  /** The same with: how far apart the units start; known to the recording, s. */
  public LessonSpec withUnitStartSpreadS(double unitStartSpreadS) {
    requireAtLeast(0, unitStartSpreadS, "spread in s");
    LessonSpec c = copy();
    c.unitStartSpreadS = unitStartSpreadS;
    return c;
  }

  /** Standard deviation of what is not known of it, s. */
  public double unitStartErrorS() {
    return unitStartErrorS;
  }

  /** The same with: standard deviation of what is not known of it, s. */
  public LessonSpec withUnitStartErrorS(double unitStartErrorS) {
    requireAtLeast(0, unitStartErrorS, "error in s");
    LessonSpec c = copy();
    c.unitStartErrorS = unitStartErrorS;
    return c;
  }

  /** Standard deviation of time stamps, s. */
  public double jitterS() {
    return jitterS;
  }

  /** The same with: standard deviation of time stamps, s. */
  public LessonSpec withJitterS(double jitterS) {
    requireAtLeast(0, jitterS, "jitter in s");
    LessonSpec c = copy();
    c.jitterS = jitterS;
    return c;
  }

  /** The same with all wear steps, or none. */
  public LessonSpec withWearSteps(boolean all) {
    return withWearSteps(all ? EnumSet.allOf(WearStep.class) : EnumSet.noneOf(WearStep.class));
  }

  private static void requireAtLeast(double least, double value, String what) {
    if (!(value >= least)) {
      throw new IllegalArgumentException(what + " must be at least " + least + ", was " + value);
    }
  }
}
