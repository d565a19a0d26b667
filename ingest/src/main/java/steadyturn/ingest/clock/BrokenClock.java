package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;

/**
 * A unit whose time jumps, or may have jumped where samples are missing: each piece is tied by
 * itself. What lies between the last moment known to be before a jump of the lags and the first
 * known to be after it is left out.
 *
 * @param stream on the partner's clock
 * @param ties of the pieces, in order
 * @param fromS begin of each piece on the partner's clock, s
 */
record BrokenClock(
    UnitStream stream, List<ClockFit> ties, List<Double> fromS, List<Reason> reasons) {

  /**
   * A unit that began anew is laid down by the arrival of a sample; that is worth so much (our
   * choice: 30 ms late happens), s.
   */
  private static final double LAID_SD_S = 0.02;

  /** What is said of a clock is surely so, and worth saying, s. */
  private static final double SURE = 3;

  private static final double WORTH_SAYING_S = 0.002;

  /**
   * A piece of the unit's time.
   *
   * @param guess what is tried first
   * @param known spreads of what is left after it
   * @param lostS between the piece before and this one, s
   */
  private record Piece(double fromS, double untilS, ClockFit guess, ClockFit known, double lostS) {

    /** Cut where the clock may have begun anew. */
    List<Piece> cutAt(List<ClockBreak> breaks) {
      List<Piece> cut = new ArrayList<>(List.of(this));
      for (ClockBreak at : breaks) {
        Piece last = cut.get(cut.size() - 1);
        if (at.firstS() > last.fromS && at.firstS() < untilS) {
          double sdS = Math.hypot(known.sdS(), LAID_SD_S);
          ClockFit laid =
              new ClockFit(0, 0, guess.toReferenceS(at.firstS()), sdS, known.skewSdPpm(), 0);
          cut.set(
              cut.size() - 1, new Piece(last.fromS, at.firstS(), guess, last.known, last.lostS));
          cut.add(new Piece(at.firstS(), untilS, guess, laid, at.firstS() - at.lastS()));
        }
      }
      return cut;
    }
  }

  /** The unit jumps along a path of lags. */
  static BrokenClock alongPath(
      UnitTie.Felt unit,
      UnitTie.Felt partner,
      LagPath path,
      double coarseSdS,
      List<ClockBreak> breaks) {
    List<LagPath> parts = path.pieces();
    List<Piece> pieces = new ArrayList<>();
    for (int k = 0; k < parts.size(); k++) {
      LagPath part = parts.get(k);
      ClockFit line = part.line(coarseSdS, ClockLine.SKEW_SD_PPM);
      ClockFit known = new ClockFit(0, 0, part.firstS(), coarseSdS, ClockLine.SKEW_SD_PPM, 0);
      double beforeS = k == 0 ? Double.NEGATIVE_INFINITY : parts.get(k - 1).lastS();
      double afterS = k + 1 == parts.size() ? Double.POSITIVE_INFINITY : parts.get(k + 1).firstS();
      double fromS = k == 0 ? beforeS : Math.max(beforeS, part.firstS());
      double untilS = k + 1 == parts.size() ? afterS : Math.min(afterS, part.lastS());
      double lostS = k == 0 ? 0 : Math.abs(part.firstS() - beforeS);
      pieces.addAll(new Piece(fromS, untilS, line, known, lostS).cutAt(breaks));
    }
    return tied(unit, partner, pieces).doubted(path.rivalS());
  }

  private BrokenClock doubted(double sdS) {
    List<ClockFit> wider = ties.stream().map(t -> UnitTie.wider(t, sdS)).toList();
    return new BrokenClock(stream, wider, fromS, reasons);
  }

  /**
   * The unit's clock may have begun anew.
   *
   * @param guess what is tried first, for all pieces
   * @param known spreads of what is left after it
   */
  static BrokenClock atBreaks(
      UnitTie.Felt unit,
      UnitTie.Felt partner,
      ClockFit guess,
      ClockFit known,
      List<ClockBreak> breaks) {
    Piece all = new Piece(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, guess, known, 0);
    return tied(unit, partner, all.cutAt(breaks));
  }

  private static BrokenClock tied(UnitTie.Felt unit, UnitTie.Felt partner, List<Piece> pieces) {
    List<UnitStream> parts = new ArrayList<>();
    List<ClockFit> ties = new ArrayList<>();
    List<Double> fromS = new ArrayList<>();
    List<Reason> reasons = new ArrayList<>();
    for (Piece piece : pieces) {
      UnitTie.Felt part = part(unit, piece.fromS, piece.untilS);
      if (part.stream().size() < 2) {
        continue;
      }
      UnitTie tie = UnitTie.of(part, partner, piece.guess, piece.known);
      ClockFit fit = tie.fit();
      if (!tie.trouble().isNone()) {
        reasons.add(tie.trouble());
      }
      parts.add(UnitTie.moved(part.stream(), fit));
      double beginS = part.stream().timeS(0);
      if (!ties.isEmpty()) {
        ClockFit before = ties.get(ties.size() - 1);
        double byS = fit.correctionS(beginS) - before.correctionS(beginS);
        double sdS = Math.hypot(fit.sdAtS(beginS), before.sdAtS(beginS));
        if (Math.abs(byS) > Math.max(WORTH_SAYING_S, SURE * sdS)) {
          double lastS = beginS - piece.lostS;
          reasons.add(
              Reason.of(ClockReason.JUMP, partner.stream().point(), lastS, byS, piece.lostS));
        }
      }
      fromS.add(ties.isEmpty() ? Double.NEGATIVE_INFINITY : fit.toReferenceS(beginS));
      ties.add(fit);
    }
    return new BrokenClock(joined(unit.stream(), parts), ties, fromS, reasons);
  }

  /** Whether a piece surely lies otherwise than the one before it. */
  boolean hasJumped() {
    return reasons.stream().anyMatch(r -> r.code() == ClockReason.JUMP);
  }

  private static UnitTie.Felt part(UnitTie.Felt unit, double fromS, double untilS) {
    List<Shock> shocks =
        unit.shocks().stream().filter(s -> s.timeS() >= fromS && s.timeS() < untilS).toList();
    return new UnitTie.Felt(unit.stream().between(fromS, untilS), shocks);
  }

  /** The parts behind one another; what would go back in time is left out. */
  private static UnitStream joined(UnitStream whole, List<UnitStream> parts) {
    double[][] columns = new double[7][whole.size()];
    int n = 0;
    for (UnitStream part : parts) {
      for (int i = 0; i < part.size(); i++) {
        if (n == 0 || part.timeS(i) > columns[6][n - 1]) {
          for (int channel = 0; channel < 6; channel++) {
            columns[channel][n] = part.column(channel)[i];
          }
          columns[6][n++] = part.timeS(i);
        }
      }
    }
    int size = n;
    double[][] cut =
        Arrays.stream(columns).map(c -> Arrays.copyOf(c, size)).toArray(double[][]::new);
    return new UnitStream(
        whole.facts(), cut[6], Arrays.copyOfRange(cut, 0, 3), Arrays.copyOfRange(cut, 3, 6));
  }
}
