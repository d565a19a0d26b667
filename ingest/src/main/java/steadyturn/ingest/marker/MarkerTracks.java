package steadyturn.ingest.marker;

import java.util.List;

/**
 * Places of markers over time, in the laboratory's axes.
 *
 * @param names of the markers
 * @param timeS s of each frame, rising
 * @param placesM by marker, axis (3) and frame, m; NaN where a marker was not seen
 */
@SuppressWarnings("ArrayRecordComponent") // long columns
public record MarkerTracks(List<String> names, double[] timeS, double[][][] placesM) {

  public MarkerTracks {
    names = List.copyOf(names);
    if (placesM.length != names.size()) {
      throw new IllegalArgumentException(names.size() + " names for " + placesM.length);
    }
  }

  /** A marker's x, y and z by frame, m; empty arrays where there is none of that name. */
  public double[][] of(String name) {
    int index = names.indexOf(name);
    return index < 0 ? new double[0][] : placesM[index];
  }
}
