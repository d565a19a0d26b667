package steadyturn.analysis.lesson;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadyturn.analysis.limits.TrunkClock;
import steadyturn.analysis.swing.ClockSpread;
import steadyturn.analysis.swing.Faults;
import steadyturn.analysis.swing.LostReason;
import steadyturn.analysis.swing.Swing;
import steadyturn.analysis.swing.UnplacedMarks;
import steadyturn.analysis.swing.find.LostSwings;
import steadyturn.analysis.swing.find.SwingFinder;
import steadyturn.fusion.attitude.RestBiases;
import steadyturn.fusion.wear.StepResult;
import steadyturn.fusion.wear.pelvis.AimCarry;
import steadyturn.ingest.clock.AlignedRecording;
import steadyturn.ingest.clock.CommonClock;
import steadyturn.ingest.quality.RecordingQuality;
import steadyturn.ingest.quality.RecordingReport;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Mark;
import steadyturn.ingest.sample.Player;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Takes the recordings of a lesson one after the other, keeps what the swings need and lets the
 * rest go: units aligned, wear steps read, swings cut out with their samples.
 */
final class LessonGathering {

  /** Two finds of one swing in overlapping stretches lie closer than this, s. */
  private static final double SAME_SWING_S = 0.5;

  private final boolean curves;
  private final Faults faults;
  private final SwingFinder finder = SwingFinder.withDefaults();
  private final List<GatheredSwing> swings = new ArrayList<>();
  private final Map<String, List<Double>> middlesS = new HashMap<>();
  private final Map<String, UnitTally> units = new LinkedHashMap<>();
  private final Map<String, UnplacedMarks> unplaced = new HashMap<>();
  private final Refusals refusals;
  private Optional<Player> player = Optional.empty();
  private String club = "";
  private PelvisSteps steps = PelvisSteps.NONE;
  private Optional<AimCarry> aim = Optional.empty();
  private WristWearing wrist;

  /** Gathers with or without the courses of the arm's measures over time. */
  LessonGathering(boolean curves, Faults faults) {
    this(curves, faults, new WristWearing(), new Refusals());
  }

  private LessonGathering(boolean curves, Faults faults, WristWearing wrist, Refusals refusals) {
    this.refusals = refusals;
    this.curves = curves;
    this.faults = faults;
    this.wrist = wrist;
  }

  /** Knows what another one knows, so that a piece can be tried on it. */
  private LessonGathering(LessonGathering other) {
    this(other.curves, other.faults, new WristWearing(other.wrist), other.refusals);
    swings.addAll(other.swings);
    other.middlesS.forEach((id, all) -> middlesS.put(id, new ArrayList<>(all)));
    player = other.player;
    steps = other.steps;
    aim = other.aim;
    club = other.club;
  }

  /** The swings that a piece would bring; nothing here is changed by asking. */
  LessonGathering tried(Recording piece) {
    LessonGathering trial = new LessonGathering(this);
    Recording usable = refusals.known(refusals.sized(piece));
    trial.player = Optional.of(usable.player());
    boolean goesOn = units.containsKey(piece.id());
    faults.keep(piece.id(), 0, () -> trial.read(Refusals.seeing(usable), goesOn));
    return trial;
  }

  /** Lets the samples of all but the latest swings go; answers how many swings were let go. */
  int forgetBut(int latest) {
    List<GatheredSwing> old = swings.subList(0, Math.max(0, swings.size() - latest));
    int forgotten = old.size();
    old.clear();
    return forgotten;
  }

  /** A mistake of the program costs the recording it meets; units that see nothing are told of. */
  void add(Recording raw) {
    Recording sized = refusals.sized(raw);
    player = Optional.of(sized.player());
    aim = Optional.empty(); // a heading lives in one unbroken stream only
    boolean goesOn = units.containsKey(raw.id());
    Recording usable = judged(sized);
    faults.keep(raw.id(), 0, () -> read(Refusals.seeing(usable), goesOn));
  }

  /**
   * Answers how many swings were found.
   *
   * @param goesOn whether an earlier stretch of it was read
   */
  private int read(Recording raw, boolean goesOn) {
    AlignedRecording asTied = CommonClock.align(raw);
    RestBiases biases = RestBiases.of(asTied.recording());
    LessonMarks marks = marks(asTied.recording(), goesOn, biases);
    Recording recording = asTied.recording().with(marks.all());
    WristWearing before = new WristWearing(wrist);
    wrist.read(recording, biases);
    List<Swing> all = finder.find(recording, wrist.steps().alignment(), biases, faults);
    Recording asTheySay = refusals.worn(recording, all);
    if (asTheySay.units().size() < recording.units().size()) {
      wrist = before;
      return read(Refusals.kept(raw, asTheySay), goesOn);
    }
    refusals.slipped(recording);
    AlignedRecording aligned = TrunkClock.judged(asTied, all, biases, faults);
    List<Mark> pending = new ArrayList<>(recording.marks());
    List<GatheredSwing.Found> found = new ArrayList<>();
    club = marks.clubAfter(all);
    LostSwings.timesS(recording, all)
        .forEach(t -> refusals.say(raw, "", Reason.of(LostReason.SWING, t), false));
    for (Swing swing : all) {
      double takeawayS = LessonMarks.takeawayS(swing);
      readBefore(recording, pending, takeawayS);
      if (middlesS.computeIfAbsent(raw.id(), id -> new ArrayList<>()).stream()
          .noneMatch(otherS -> Math.abs(otherS - GatheredSwing.middleS(swing)) < SAME_SWING_S)) {
        middlesS.get(raw.id()).add(GatheredSwing.middleS(swing));
        found.add(new GatheredSwing.Found(swing, steps, aim));
      } else {
        swings.replaceAll(known -> isSame(known, raw.id(), swing) ? known.noted(swing) : known);
      }
    }
    tellClocks(aligned, found);
    GatheredSwing.Cut cut =
        new GatheredSwing.Cut(
            raw.id(), aligned, biases, wrist.steps(), refusals, faults, curves, found.size() == 1);
    // swings do not see one another here: on all cores, kept in their order
    swings.addAll(found.parallelStream().map(cut::of).toList());
    unplaced(raw.id()).read(marks.all(), known(raw.id()));
    readBefore(recording, pending, Double.POSITIVE_INFINITY);
    return found.size();
  }

  private List<Swing> known(String recording) {
    return swings.stream()
        .filter(swing -> swing.recording().equals(recording))
        .map(GatheredSwing::swing)
        .toList();
  }

  /** The marks of a recording that no swing was found near. */
  UnplacedMarks unplaced(String recording) {
    return unplaced.computeIfAbsent(recording, id -> new UnplacedMarks());
  }

  /** A swing found before, of which by now more may have been noted. */
  private static boolean isSame(GatheredSwing known, String recording, Swing swing) {
    return known.recording().equals(recording)
        && Math.abs(GatheredSwing.middleS(known.swing()) - GatheredSwing.middleS(swing))
            < SAME_SWING_S;
  }

  private LessonMarks marks(Recording recording, boolean goesOn, RestBiases biases) {
    LessonMarks marks = LessonMarks.of(recording, goesOn, club, known(recording.id()));
    return marks.isOpen()
        ? marks.before(finder.find(recording, wrist.steps().alignment(), biases, faults))
        : marks;
  }

  private void readBefore(Recording recording, List<Mark> pending, double timeS) {
    Optional<UnitStream> pelvis = recording.unit(BodyPoint.PELVIS);
    pending.removeIf(
        mark -> {
          boolean isNow = mark.endS() <= timeS;
          pelvis.filter(p -> isNow).ifPresent(p -> readPelvis(recording, p, mark));
          return isNow;
        });
  }

  private void readPelvis(Recording recording, UnitStream pelvis, Mark noted) {
    Mark mark = steps.settled(recording, pelvis, noted);
    steps = steps.and(recording, pelvis, mark);
    if (mark.trialType().equals("aim")) {
      double middleS = (mark.onsetS() + mark.endS()) / 2;
      aim = steps.isGood("aim") ? Optional.of(AimCarry.of(pelvis, middleS)) : Optional.empty();
    }
  }

  private void tellClocks(AlignedRecording aligned, List<GatheredSwing.Found> found) {
    Recording recording = aligned.recording();
    ClockSpread.reasons(aligned, found.stream().map(f -> GatheredSwing.middleS(f.swing())).toList())
        .forEach(
            (point, all) ->
                all.forEach(r -> refusals.say(recording, point.trackedPoint(), r, false)));
  }

  private Recording judged(Recording recording) {
    RecordingReport report = RecordingQuality.judge(recording);
    units.computeIfAbsent(recording.id(), id -> new UnitTally()).add(recording, report);
    return refusals.judged(recording, report);
  }

  List<GatheredSwing> swings() {
    return List.copyOf(swings);
  }

  /** What is said of the units, by recording, in the order the recordings came. */
  Map<String, List<UnitResult>> units() {
    Map<String, List<UnitResult>> results = new LinkedHashMap<>();
    units.forEach((id, tally) -> results.put(id, tally.results()));
    return results;
  }

  Refusals refusals() {
    return refusals;
  }

  /** What was said of units and wear steps since this was last asked. */
  List<Notice> takeNotices() {
    return refusals.takeNotices();
  }

  Optional<Player> player() {
    return player;
  }

  PelvisSteps steps() {
    return steps;
  }

  /** How the wear steps went, of pelvis and wrist. */
  List<StepResult> stepResults() {
    List<StepResult> out = new ArrayList<>(steps.results());
    out.addAll(wrist.results());
    return out;
  }
}
