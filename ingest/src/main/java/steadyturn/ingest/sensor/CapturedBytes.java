package steadyturn.ingest.sensor;

import static java.util.Locale.ROOT;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import steadyturn.ingest.recording.table.RecordingException;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitStream;

/**
 * A file of bytes as a unit sent them, or as its logger kept them, read as a stream.
 *
 * @param unit what came, on the unit's own clock
 * @param skippedBytes that made no sense
 * @param lostSamples that the unit's counter missed
 * @param unfinishedBytes at its end, of a frame that does not end in it or has nothing behind it
 */
public record CapturedBytes(
    UnitStream unit, long skippedBytes, long lostSamples, int unfinishedBytes) {

  /** A clock that goes back by more than this began anew, s. */
  private static final double SMALL_STEP_BACK_S = 0.5;

  /**
   * Reads a file.
   *
   * @param number which of several units in the file; 0 for the only one
   * @param rateHz of a unit that sends no time
   * @throws RecordingException when it holds too little, or its times cannot be told
   */
  public static CapturedBytes read(
      Path file, SensorAdapter adapter, int number, BodyPoint point, OptionalDouble rateHz) {
    Gathered all = new Gathered();
    Gathered asked = number == 0 ? all : new Gathered();
    all.number = number;
    all.asked = asked;
    int unfinished;
    try {
      byte[] bytes = Files.readAllBytes(file);
      AdapterFeed feed = new AdapterFeed(adapter, all);
      feed.feed(bytes, bytes.length);
      unfinished = feed.dropRest();
    } catch (IOException e) {
      throw RecordingException.io(file, e);
    }
    if (asked.size < 2) {
      throw RecordingException.of(
          file, adapter.name() + " finds " + asked.size + " samples in it. Is it of another unit?");
    }
    return new CapturedBytes(
        asked.stream(file, point, rateHz), all.skipped, asked.lost, unfinished);
  }

  /** Keeps all that one unit said. */
  private static final class Gathered implements SampleSink {
    private static final int COLUMNS = 7;

    private int number;
    private Gathered asked = this;
    private double[] values = new double[1024 * COLUMNS];
    private int size;
    private long skipped;
    private long lost;
    private KnownUnit known = KnownUnit.NOTHING;
    private Optional<KnownUnit> less = Optional.empty();
    private int lessFrom;

    @Override
    public SampleSink unit(int which) {
      return which == number ? asked : new Gathered();
    }

    @Override
    public void hello(UnitHello hello) {
      if (size > 0 && less.isEmpty() && hello.known().isLessThan(known)) {
        less = Optional.of(hello.known());
        lessFrom = size;
      } else if (less.isEmpty()) {
        known = hello.known().or(known);
      }
    }

    @Override
    public void known(KnownUnit told) {
      known = told;
    }

    @Override
    public void sample(
        double timeS, double ax, double ay, double az, double gx, double gy, double gz) {
      int at = size * COLUMNS;
      if (at == values.length) {
        values = Arrays.copyOf(values, 2 * values.length);
      }
      values[at] = timeS;
      values[at + 1] = ax;
      values[at + 2] = ay;
      values[at + 3] = az;
      values[at + 4] = gx;
      values[at + 5] = gy;
      values[at + 6] = gz;
      size++;
    }

    @Override
    public void skipped(int bytes) {
      skipped += bytes;
    }

    @Override
    public void lost(int samples) {
      lost += samples;
    }

    UnitStream stream(Path file, BodyPoint point, OptionalDouble rateHz) {
      less.ifPresent(
          now -> {
            throw RecordingException.of(
                file,
                String.format(
                    ROOT,
                    "the unit says %s after %d samples at %s. Cut the file there, import two.",
                    now.setting(),
                    lessFrom,
                    known.setting()));
          });
      double[][] columns = new double[COLUMNS][size];
      int n = 0;
      for (int i = 0; i < size; i++) {
        double timeS = timeS(file, i, rateHz);
        double backS = n == 0 ? -1 : columns[0][n - 1] - timeS;
        if (backS > SMALL_STEP_BACK_S) {
          throw RecordingException.of(
              file,
              "the unit's clock begins anew after "
                  + n
                  + " samples. Cut the file there, import two.");
        }
        if (backS < 0) {
          columns[0][n] = timeS;
          for (int c = 1; c < COLUMNS; c++) {
            columns[c][n] = values[i * COLUMNS + c];
          }
          n++;
        }
      }
      for (int c = 0; c < COLUMNS; c++) {
        columns[c] = Arrays.copyOf(columns[c], n);
      }
      double ranHz = n < 2 ? 1 : (n - 1) / (columns[0][n - 1] - columns[0][0]);
      return new UnitStream(
          known.facts(point, rateHz.orElse(ranHz)),
          columns[0],
          Arrays.copyOfRange(columns, 1, 4),
          Arrays.copyOfRange(columns, 4, 7));
    }

    private double timeS(Path file, int i, OptionalDouble rateHz) {
      double timeS = values[i * COLUMNS];
      if (!Double.isNaN(timeS)) {
        return timeS;
      }
      return i
          / rateHz.orElseThrow(
              () ->
                  RecordingException.of(
                      file,
                      "its unit sends no time. Give the rate it ran at (--rate), or record it live:"
                          + " then the arrivals tell."));
    }
  }
}
