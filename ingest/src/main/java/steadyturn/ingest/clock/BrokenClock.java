package steadyturn.ingest.clock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import steadyturn.ingest.reason.Reason;
import steadyturn.ingest.sample.UnitStream;
import steadyturn.ingest.shock.Shock;

/**
 * A unit whose time jumps against all others': each piece is tied by itself, and what lies between
 * the last moment known to be before a jump and the first known to be after it is left out.
 *
 * @param stream on the partner's clock
 * @param fit of the piece that is known worst
 */
record BrokenClock(UnitStream stream, ClockFit fit, List<Reason> reasons) {

  static BrokenClock of(UnitTie.Felt unit, UnitTie.Felt partner, double coarseSdS) {
    List<LagPath> pieces = LagPath.of(unit.stream(), partner.stream()).pieces();
    List<UnitStream> parts = new ArrayList<>();
    List<Reason> reasons = new ArrayList<>();
    ClockFit worst = ClockFit.reference();
    for (int k = 0; k < pieces.size(); k++) {
      LagPath piece = pieces.get(k);
      double fromS = k == 0 ? Double.NEGATIVE_INFINITY : piece.firstS();
      double untilS = k + 1 == pieces.size() ? Double.POSITIVE_INFINITY : piece.lastS();
      UnitTie.Felt part = part(unit, fromS, untilS);
      if (part.stream().size() < 2) {
        continue;
      }
      ClockFit known = new ClockFit(0, 0, piece.firstS(), coarseSdS, ClockLine.SKEW_SD_PPM, 0);
      UnitTie tie = UnitTie.of(part, partner, piece.line(coarseSdS, ClockLine.SKEW_SD_PPM), known);
      parts.add(UnitTie.moved(part.stream(), tie.fit()));
      worst = tie.fit().sdS() > worst.sdS() ? tie.fit() : worst;
      if (k > 0) {
        LagPath before = pieces.get(k - 1);
        reasons.add(
            Reason.of(
                ClockReason.JUMP,
                partner.stream().point(),
                before.lastS(),
                piece.windows().get(0).lagS() - before.endLagS(),
                fromS - before.lastS()));
      }
    }
    return new BrokenClock(joined(unit.stream(), parts), worst, reasons);
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
