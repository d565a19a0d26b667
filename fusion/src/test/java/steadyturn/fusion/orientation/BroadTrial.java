package steadyturn.fusion.orientation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.zip.GZIPInputStream;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/**
 * One trial of BROAD (Laidig, Caruso, Cereatti, Seel 2021, Data 6(7):72; CC BY 4.0): a hand-held
 * unit and its optical orientation. Columns time, accel, gyro, opt_q (scalar first, unit to earth,
 * NaN where unseen), movement.
 */
@SuppressWarnings("ArrayRecordComponent") // bulk columns, read only
public record BroadTrial(String name, UnitStream stream, double[][] truth, boolean[] moving) {

  static List<BroadTrial> readAll(Path folder) {
    List<BroadTrial> trials = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*.csv.gz")) {
      for (Path file : files) {
        trials.add(read(file));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    trials.sort(Comparator.comparing(BroadTrial::name));
    return trials;
  }

  static BroadTrial read(Path file) throws IOException {
    double[][] columns = new double[12][1 << 16];
    int n = 0;
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
      String line = in.readLine();
      for (line = in.readLine(); line != null; line = in.readLine()) {
        String[] cells = line.split(",", -1);
        for (int c = 0; c < 12; c++) {
          columns[c][n] = Double.parseDouble(cells[c].equals("nan") ? "NaN" : cells[c]);
        }
        n++;
      }
    }
    return of(file.getFileName().toString().substring(0, 2), columns, n);
  }

  private static BroadTrial of(String name, double[][] columns, int n) {
    double[][] c = new double[12][];
    for (int i = 0; i < 12; i++) {
      c[i] = Arrays.copyOf(columns[i], n);
    }
    boolean[] moving = new boolean[n];
    for (int i = 0; i < n; i++) {
      moving[i] = c[11][i] == 1;
    }
    UnitStream stream =
        new UnitStream(
            UnitFacts.plain(BodyPoint.LEAD_HAND, 285.71),
            c[0],
            new double[][] {c[1], c[2], c[3]},
            new double[][] {c[4], c[5], c[6]});
    return new BroadTrial(name, stream, new double[][] {c[7], c[8], c[9], c[10]}, moving);
  }

  int firstMoving() {
    for (int i = 0; i < moving.length; i++) {
      if (moving[i]) {
        return i;
      }
    }
    throw new IllegalStateException(name + " has no movement");
  }

  /** The same trial from {@code restS} seconds before the first movement on. */
  BroadTrial startingWithRestOf(double restS) {
    double fromS = stream.timeS(firstMoving()) - restS;
    int from = stream.indexAt(fromS);
    int n = stream.size();
    double[][] cut = new double[4][];
    for (int i = 0; i < 4; i++) {
      cut[i] = Arrays.copyOfRange(truth[i], from, n);
    }
    return new BroadTrial(
        name,
        stream.between(stream.timeS(from), Double.POSITIVE_INFINITY),
        cut,
        Arrays.copyOfRange(moving, from, n));
  }
}
