package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.Recording;
import steadyturn.ingest.sample.UnitStream;

/**
 * Aligns the clocks of a recording's units. The surest ties are used: each unit is tied to that one
 * already aligned with which it shares the sharpest events, so that forearm and hand, which feel
 * every impact sharply, are tied to each other and not both to the pelvis, which feels it dully. A
 * unit whose time jumps is tied last, in pieces.
 */
public final class CommonClock {

  /** A path of lags within this says nothing against the stated starts, s. */
  private static final double USUAL_ARM_S = 0.11;

  /** The pelvis turns before the arms do, s. */
  private static final double USUAL_TRUNK_S = 0.31;

  /** What a path of lags is worth (our choice: 60 simulated lessons made for tuning), s. */
  private static final double ARM_PATH_SD_S = 0.03;

  private static final double TRUNK_PATH_SD_S = 0.07;

  /** Crystals are never that wrong by themselves, ppm. */
  private static final double WRONG_SKEW_PPM = 2000;

  /** What is said of a clock is surely so. */
  private static final double SURE = 3;

  /** A skew below that is a crystal's, ppm. */
  private static final double USUAL_SKEW_PPM = 150;

  private final Recording recording;
  private final Map<BodyPoint, UnitTie.Felt> units = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, List<ClockBreak>> breaks = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, LagPath> paths = new EnumMap<>(BodyPoint.class);
  private final Map<List<BodyPoint>, UnitTie> known = new HashMap<>();
  private final Map<BodyPoint, UnitStream> moved = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, ClockFit> fits = new EnumMap<>(BodyPoint.class);
  private final List<ClockLink> links = new ArrayList<>();
  private final Map<BodyPoint, List<Reason>> reasons = new EnumMap<>(BodyPoint.class);

  private CommonClock(Recording recording) {
    this.recording = recording;
  }

  /**
   * Brings all units onto the clock of the first whose time does not jump, which is the pelvis unit
   * where there is one.
   */
  public static AlignedRecording align(Recording recording) {
    return recording.units().isEmpty()
        ? new AlignedRecording(recording, Map.of(), List.of(), Map.of())
        : new CommonClock(recording).aligned();
  }

  private AlignedRecording aligned() {
    units.putAll(
        recording.units().parallelStream()
            .collect(
                Collectors.toMap(
                    UnitStream::point, u -> new UnitTie.Felt(u, WholeShocks.find(u)))));
    units.forEach((point, felt) -> breaks.put(point, ClockBreak.of(felt.stream())));
    BodyPoint hub = hub();
    List<BodyPoint> jumping = jumping(hub);
    List<BodyPoint> broken = new ArrayList<>(jumping);
    broken.addAll(
        0,
        units.keySet().stream()
            .filter(p -> !jumping.contains(p) && !breaksOf(p).isEmpty())
            .toList());
    List<BodyPoint> waiting = new ArrayList<>(units.keySet());
    waiting.removeAll(broken);
    BodyPoint axis = waiting.isEmpty() ? broken.remove(0) : waiting.remove(0);
    fits.put(axis, ClockFit.reference());
    moved.put(axis, stream(axis));
    while (!waiting.isEmpty()) {
      waiting.remove(tieSurest(waiting));
    }
    broken.forEach(point -> tieInPieces(point, hub, jumping.contains(point)));
    ClockDoubts doubts = new ClockDoubts(hub, jumping, recording, paths, fitOf(hub));
    List<ClockLink> loose = doubts.of(links, reasons);
    List<UnitStream> out = recording.units().stream().map(u -> moved.get(u.point())).toList();
    return new AlignedRecording(
        new Recording(recording.id(), recording.player(), out, recording.marks()),
        fits,
        loose,
        reasons);
  }

  private UnitStream stream(BodyPoint point) {
    return felt(point).stream();
  }

  private UnitTie.Felt felt(BodyPoint point) {
    return Optional.ofNullable(units.get(point)).orElseThrow();
  }

  /** The units whose time jumps against the hub's; the hub's own where all others seem to. */
  private List<BodyPoint> jumping(BodyPoint hub) {
    List<BodyPoint> others = units.keySet().stream().filter(p -> p != hub).toList();
    paths.putAll(
        others.parallelStream()
            .collect(
                Collectors.toMap(Function.identity(), p -> LagPath.of(stream(hub), stream(p)))));
    List<BodyPoint> jumping = others.stream().filter(p -> path(p).pieces().size() > 1).toList();
    return jumping.size() > 1 && jumping.size() == others.size() ? List.of(hub) : jumping;
  }

  /** The unit whose turning the others' is held against: an arm's where there is one. */
  private BodyPoint hub() {
    return List.of(BodyPoint.LEAD_FOREARM, BodyPoint.LEAD_HAND).stream()
        .filter(units::containsKey)
        .findFirst()
        .orElse(recording.units().get(0).point());
  }

  private LagPath path(BodyPoint point) {
    return paths.getOrDefault(point, new LagPath(List.of()));
  }

  private BodyPoint tieSurest(List<BodyPoint> waiting) {
    Optional<ClockLink> best = Optional.empty();
    double bestSdS = Double.POSITIVE_INFINITY;
    for (BodyPoint unit : waiting) {
      for (BodyPoint done : moved.keySet()) {
        ClockFit fit = between(unit, done).fit();
        double sdS = sdOverS(fit, stream(unit));
        if (sdS < bestSdS) {
          bestSdS = sdS;
          best = Optional.of(new ClockLink(unit, done, fit));
        }
      }
    }
    ClockLink link = best.orElseThrow();
    links.add(link);
    ClockFit fit = link.fit().then(fitOf(link.tiedTo()));
    fits.put(link.unit(), fit);
    moved.put(link.unit(), UnitTie.moved(stream(link.unit()), fit));
    tell(link);
    return link.unit();
  }

  private ClockFit fitOf(BodyPoint point) {
    return fits.getOrDefault(point, ClockFit.reference());
  }

  /** The larger of the spreads at the stream's two ends, s. */
  private static double sdOverS(ClockFit fit, UnitStream unit) {
    if (unit.size() == 0) {
      return fit.sdS();
    }
    return Math.max(fit.sdAtS(unit.timeS(0)), fit.sdAtS(unit.timeS(unit.size() - 1)));
  }

  private UnitTie between(BodyPoint unit, BodyPoint other) {
    return known.computeIfAbsent(
        List.of(unit, other),
        pair -> {
          LagPath far = far(unit, other);
          ClockFit line = far.line(pathSdS(unit, other), WRONG_SKEW_PPM);
          UnitTie tie = UnitTie.of(felt(unit), felt(other), line, left(unit, line));
          return new UnitTie(UnitTie.wider(tie.fit(), far.rivalS()), tie.trouble());
        });
  }

  /** The path of lags, without its course where that lies near what is stated. */
  private LagPath far(BodyPoint unit, BodyPoint other) {
    if (isUsual(unit) && isUsual(other)) {
      return new LagPath(List.of());
    }
    LagPath path = unit == hub() ? path(other) : LagPath.of(stream(unit), stream(other));
    return path.mostS() < usualS(unit, other) ? new LagPath(List.of(), path.rivalS()) : path;
  }

  /** What such a line leaves open. */
  private ClockFit left(BodyPoint unit, ClockFit line) {
    return line.pairs() == 0
        ? ClockLine.prior(stream(unit).size() == 0 ? 0 : stream(unit).timeS(0))
        : new ClockFit(0, 0, line.centreS(), line.sdS(), line.skewSdPpm(), 0);
  }

  private List<ClockBreak> breaksOf(BodyPoint point) {
    return breaks.getOrDefault(point, List.of());
  }

  private boolean isUsual(BodyPoint point) {
    return path(point).rivalS() == 0
        && path(point).mostS() < (point.isTrunk() ? USUAL_TRUNK_S : USUAL_ARM_S);
  }

  private static double usualS(BodyPoint a, BodyPoint b) {
    return a.isTrunk() || b.isTrunk() ? USUAL_TRUNK_S : USUAL_ARM_S;
  }

  private static double pathSdS(BodyPoint a, BodyPoint b) {
    return a.isTrunk() || b.isTrunk() ? TRUNK_PATH_SD_S : ARM_PATH_SD_S;
  }

  private void tieInPieces(BodyPoint unit, BodyPoint hub, boolean jumps) {
    BodyPoint partner =
        moved.containsKey(hub)
            ? hub
            : moved.keySet().stream()
                .min(Comparator.comparing(p -> pathSdS(unit, p)))
                .orElseThrow();
    ClockFit laid = fitOf(partner);
    boolean isWhole = links.stream().filter(l -> l.unit() == partner).count() < 2;
    UnitStream axis = Optional.ofNullable(moved.get(partner)).orElseThrow();
    UnitTie.Felt other =
        isWhole ? felt(partner).moved(laid) : new UnitTie.Felt(axis, WholeShocks.find(axis));
    BrokenClock mended;
    if (jumps) {
      boolean isKnown = partner == hub && isWhole;
      LagPath path = isKnown ? path(unit).inverted(laid) : LagPath.of(stream(unit), other.stream());
      mended =
          BrokenClock.alongPath(felt(unit), other, path, pathSdS(unit, partner), breaksOf(unit));
    } else {
      ClockFit guess = far(unit, partner).line(pathSdS(unit, partner), WRONG_SKEW_PPM);
      List<ClockBreak> at = new ArrayList<>(breaksOf(unit));
      breaksOf(partner).forEach(b -> at.add(b.earlier(guess.offsetS())));
      at.sort(Comparator.comparing(ClockBreak::firstS));
      ClockFit known = left(unit, guess);
      mended = BrokenClock.atBreaks(felt(unit), other, guess.then(laid), known, at);
      if (!mended.hasJumped()) {
        List<ClockBreak> sure = at.stream().filter(ClockBreak::isSure).toList();
        mended = BrokenClock.atBreaks(felt(unit), other, guess.then(laid), known, sure);
      }
    }
    for (int k = 0; k < mended.ties().size(); k++) {
      ClockFit tie = UnitTie.believed(stream(unit), mended.ties().get(k));
      links.add(new ClockLink(unit, partner, tie, mended.fromS().get(k)));
    }
    fits.put(unit, mended.ties().isEmpty() ? ClockFit.reference() : mended.ties().get(0));
    moved.put(unit, mended.stream());
    reasons.put(unit, mended.reasons());
  }

  /** Says what was mended and what contradicts itself. */
  private void tell(ClockLink link) {
    ClockFit fit = link.fit();
    List<Reason> said = new ArrayList<>();
    double startS = stream(link.unit()).size() == 0 ? 0 : stream(link.unit()).timeS(0);
    double offS = fit.correctionS(startS);
    double sdS = fit.sdAtS(startS);
    boolean runsWrong = Math.abs(fit.skewPpm()) > USUAL_SKEW_PPM + SURE * fit.skewSdPpm();
    if (runsWrong) {
      said.add(Reason.of(ClockReason.RATE, link.tiedTo(), fit.skewPpm(), fit.skewSdPpm()));
    } else if (Math.abs(offS) > SURE * (ClockLine.OFFSET_SD_S + sdS)) {
      said.add(Reason.of(ClockReason.START, link.tiedTo(), 1000 * offS, 1000 * sdS));
    }
    UnitTie tie = between(link.unit(), link.tiedTo());
    if (!tie.trouble().isNone()) {
      said.add(tie.trouble());
    }
    if (!said.isEmpty()) {
      reasons.put(link.unit(), said);
    }
  }
}
