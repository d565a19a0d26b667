package steadyturn.cli.output.tsv;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import steadyturn.cli.output.FixedDecimals;
import steadyturn.fusion.orientation.OrientationTrack;
import steadyturn.ingest.sample.BodyPoint;

/**
 * Orientations as plain text: comma-separated rows of one unit for scripts, and the STO table of
 * quaternions of one or several units that programs for musculoskeletal models read. Quaternions
 * turn unit coordinates into earth coordinates, scalar first, z up.
 */
public final class OrientationText {

  private static final double DEG_PER_RAD = 180 / Math.PI;

  private OrientationText() {}

  /** Rows {@code time_s,qw,qx,qy,qz}, with sigmas in two more columns where asked for. */
  public static void writeCsv(OrientationTrack track, boolean withSigma, Appendable to)
      throws IOException {
    to.append("time_s,qw,qx,qy,qz");
    to.append(withSigma ? ",inclination_sigma_deg,heading_sigma_deg\n" : "\n");
    StringBuilder row = new StringBuilder();
    for (int i = 0; i < track.size(); i++) {
      row.setLength(0);
      FixedDecimals.append(row, track.timeS()[i], 6);
      FixedDecimals.cells(row, ',', 9, track.qw()[i], track.qx()[i], track.qy()[i], track.qz()[i]);
      if (withSigma) {
        sigmas(row, ',', track, i);
      }
      to.append(row).append('\n');
    }
  }

  /**
   * One STO table of all units at the instants of the first: header, then time and one quaternion a
   * unit. The columns are called {@code <body point>_imu}.
   */
  public static void writeSto(Map<BodyPoint, OrientationTrack> tracks, Appendable to)
      throws IOException {
    OrientationTrack first = tracks.values().iterator().next();
    List<OrientationTrack> units = tracks.values().stream().map(t -> t.at(first.timeS())).toList();
    to.append("DataRate=");
    StringBuilder row = new StringBuilder();
    FixedDecimals.append(row, rateHz(first), 6);
    to.append(row).append("\nDataType=Quaternion\nversion=3\nOpenSimVersion=4.5\nendheader\ntime");
    for (BodyPoint point : tracks.keySet()) {
      to.append('\t').append(point.trackedPoint()).append("_imu");
    }
    to.append('\n');
    for (int i = 0; i < first.size(); i++) {
      row.setLength(0);
      FixedDecimals.append(row, first.timeS()[i], 6);
      for (OrientationTrack track : units) {
        FixedDecimals.append(row.append('\t'), track.qw()[i], 9);
        FixedDecimals.cells(row, ',', 9, track.qx()[i], track.qy()[i], track.qz()[i]);
      }
      to.append(row).append('\n');
    }
  }

  /** The two sigmas of a sample, deg. */
  static void sigmas(StringBuilder row, char mark, OrientationTrack track, int i) {
    double inclinationDeg = DEG_PER_RAD * track.inclinationSigmaRad()[i];
    FixedDecimals.cells(row, mark, 4, inclinationDeg, DEG_PER_RAD * track.headingSigmaRad()[i]);
  }

  private static double rateHz(OrientationTrack track) {
    int n = track.size();
    return n < 2 ? 0 : (n - 1) / (track.timeS()[n - 1] - track.timeS()[0]);
  }
}
