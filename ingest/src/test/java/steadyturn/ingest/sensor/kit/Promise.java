package steadyturn.ingest.sensor.kit;

import static java.util.Locale.ROOT;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.SensorAdapters;

/** What an adapter must keep. A failure says what was found and what is probably wrong. */
public enum Promise {
  IS_REGISTERED("it is registered under its name") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      SensorAdapter adapter = adapters.get();
      boolean isFound =
          SensorAdapters.named(adapter.name())
              .filter(a -> a.getClass() == adapter.getClass())
              .isPresent();
      require(
          isFound && adapter.name().matches("[a-z0-9]+(-[a-z0-9]+)*"),
          "\"%s\" is not found: its class must stand in META-INF/services, its name be lower-case"
              + " words joined by hyphens",
          adapter.name());
    }
  },
  READS_THE_GOLDEN_RECORDING("it reads every byte of the golden recording") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      for (byte[] bytes : List.of(golden.zUp(), golden.xUp(), golden.left(), golden.tumble())) {
        Heard heard = Heard.inOneBlock(adapters.get(), bytes);
        require(heard.samples.size() >= 50, "only %d samples came out", heard.samples.size());
        require(
            heard.skippedBytes < bytes.length / 10,
            "%d of %d bytes were skipped",
            heard.skippedBytes,
            bytes.length);
      }
    }
  },
  GRAVITY_IS_9_81("at rest the acceleration is 9.81 m/s^2") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      for (byte[] bytes : List.of(golden.zUp(), golden.xUp())) {
        double norm = Heard.inOneBlock(adapters.get(), bytes).accelNorm();
        require(
            Math.abs(norm / 9.80665 - 1) < 0.05,
            "the acceleration at rest is %.4f: in g, in mg, or of another range?",
            norm);
      }
    }
  },
  Z_UP_IS_PLUS_Z("lying with z up, z shows +9.81") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      Heard heard = Heard.inOneBlock(adapters.get(), golden.zUp());
      require(
          heard.mean(3) > 0.94 * heard.accelNorm(),
          "with z up the accelerations are %.2f, %.2f, %.2f: wrong sign or axes exchanged?",
          heard.mean(1),
          heard.mean(2),
          heard.mean(3));
    }
  },
  X_UP_IS_PLUS_X("standing with x up, x shows +9.81") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      Heard heard = Heard.inOneBlock(adapters.get(), golden.xUp());
      require(
          heard.mean(1) > 0.94 * heard.accelNorm(),
          "with x up the accelerations are %.2f, %.2f, %.2f: wrong sign or axes exchanged?",
          heard.mean(1),
          heard.mean(2),
          heard.mean(3));
    }
  },
  A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG("a quarter turn to the left is +90 degrees about z") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      Heard heard = Heard.inOneBlock(adapters.get(), golden.left()).timed(golden.rateHz());
      double z = heard.turnDeg(6);
      require(
          Math.abs(z - 90) < 20,
          "the quarter turn reads %.0f degrees about z (%.0f about x, %.0f about y): -90 is a wrong"
              + " sign, 5157 are degrees taken for radians, 1.6 the reverse, other factors another"
              + " range or time unit, or the turn began before the first sample that was read",
          z,
          heard.turnDeg(4),
          heard.turnDeg(5));
    }
  },
  GYRO_AND_ACCELEROMETER_AGREE("gyroscope and accelerometer agree while it is turned") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      double[] error =
          GravityFollowed.errorDeg(
              Heard.inOneBlock(adapters.get(), golden.tumble()).timed(golden.rateHz()));
      require(
          error[1] > 20,
          "in the tumbling recording gravity moves only %.0f degrees within a second (each axis"
              + " must be turned through up and down)",
          error[1]);
      require(
          error[0] < 0.35 * error[1],
          "followed by the gyroscope, gravity is off by %.0f degrees after a second in which it"
              + " moved by %.0f: an axis is exchanged, has the wrong sign, or the axes are"
              + " left-handed",
          error[0],
          error[1]);
    }
  },
  TIME_IS_IN_SECONDS("its time is in seconds") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      double stepS = Heard.inOneBlock(adapters.get(), golden.zUp()).medianStepS();
      require(
          Math.abs(stepS * golden.rateHz() - 1) < 0.1,
          "samples come %g s apart, at %.0f Hz it should be %g: another time unit or rate?",
          stepS,
          golden.rateHz(),
          1 / golden.rateHz());
    }
  },
  TIME_GROWS("its time grows from sample to sample") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      for (byte[] bytes : List.of(golden.zUp(), golden.xUp(), golden.left(), golden.tumble())) {
        List<double[]> samples = Heard.inOneBlock(adapters.get(), bytes).samples;
        for (int i = 1; i < samples.size(); i++) {
          require(
              samples.get(i)[0] > samples.get(i - 1)[0],
              "sample %d at %.6f s follows one at %.6f s",
              i,
              samples.get(i)[0],
              samples.get(i - 1)[0]);
        }
      }
    }
  },
  PIECES_DO_NOT_MATTER("one byte at a time gives the same as one block") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      Heard whole = Heard.inOneBlock(adapters.get(), golden.left());
      Heard single = Heard.inBlocks(adapters.get(), golden.left(), 1);
      require(
          single.isSameAs(whole) && single.skippedBytes == whole.skippedBytes,
          "%d samples (%d bytes skipped) in one block, %d (%d) byte by byte",
          whole.samples.size(),
          whole.skippedBytes,
          single.samples.size(),
          single.skippedBytes);
      Random random = new Random(SEED);
      for (int round = 0; round < 5; round++) {
        Heard pieces = Heard.inRandomBlocks(adapters.get(), golden.left(), random);
        require(
            pieces.isSameAs(whole),
            "%d samples in one block, %d in pieces (seed %d)",
            whole.samples.size(),
            pieces.samples.size(),
            SEED);
      }
    }
  },
  A_CUT_COSTS_ONE_SAMPLE("a cut tail costs at most one sample") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      byte[] bytes = golden.zUp();
      Heard whole = Heard.inOneBlock(adapters.get(), bytes);
      int pieceBytes = Heard.bytesASample(adapters, bytes);
      for (int cut = 1; cut < 2 * pieceBytes; cut++) {
        byte[] shorter = Arrays.copyOf(bytes, bytes.length - cut);
        Heard heard = Heard.inOneBlock(adapters.get(), shorter);
        int frameBytes = pieceBytes * golden.samplesAFrame();
        int mayLack = golden.samplesAFrame() * (1 + cut / Math.max(1, frameBytes - 4));
        require(
            heard.isFirstPartOf(whole) && heard.samples.size() >= whole.samples.size() - mayLack,
            "with %d bytes cut off, %d of %d samples came out, or others than before",
            cut,
            heard.samples.size(),
            whole.samples.size());
      }
    }
  },
  JOINING_MIDWAY_RESYNCHRONISES("joining in the middle resynchronises and says so") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      byte[] bytes = golden.zUp();
      Heard whole = Heard.inOneBlock(adapters.get(), bytes);
      int starts = 2 * Heard.bytesASample(adapters, bytes);
      long[] skipped = new long[starts];
      for (int from = 1; from <= starts; from++) {
        Heard heard =
            Heard.inOneBlock(adapters.get(), Arrays.copyOfRange(bytes, from, bytes.length));
        int mayLack = 5 * golden.samplesAFrame() + golden.samplesUntilHello();
        require(
            heard.isLastPartOf(whole)
                && heard.samples.size() >= Math.max(1, whole.samples.size() - mayLack),
            "begun %d bytes later, these bytes give %d samples in place of %d, or others than"
                + " before. If the unit tells its ranges by a message of its own every N seconds,"
                + " say so: golden().believedFromHello(N)",
            from,
            heard.samples.size(),
            whole.samples.size());
        skipped[from - 1] = heard.skippedBytes;
      }
      long atFrames = Arrays.stream(skipped).min().orElse(0); // what it skips begun between frames
      long told = Arrays.stream(skipped).filter(n -> n > atFrames).count();
      require(told >= starts / 2, "of %d late starts only %d told of skipped bytes", starts, told);
    }
  },
  DAMAGE_INVENTS_NO_MORE_THAN_THE_CHECK_LETS_THROUGH(
      "damage invents no sample its check can tell") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      Set<List<Double>> known = new HashSet<>();
      Heard.inOneBlock(adapters.get(), golden.left()).samples.forEach(s -> known.add(asList(s)));
      long invented = 0;
      for (long seed = SEED; seed < SEED + SEEDS; seed++) {
        Random random = new Random(seed);
        for (int round = 0; round < ROUNDS; round++) {
          byte[] damaged = golden.left().clone();
          for (int k = 0; k < DAMAGES; k++) {
            damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
          }
          invented +=
              Heard.inOneBlock(adapters.get(), damaged).samples.stream()
                  .filter(sample -> !known.contains(asList(sample)))
                  .count();
        }
      }
      double expected = check.mostInvented() * SEEDS * ROUNDS * DAMAGES * golden.samplesAFrame();
      double most = check == FrameCheck.BITS_24 ? 0 : expected + 4 * Math.sqrt(expected);
      require(
          invented <= most,
          "%d samples never sent came out of %d damages; a check of %d bits lets %.0f through at"
              + " most (seeds from %d on)",
          invented,
          SEEDS * ROUNDS * DAMAGES,
          check.bits(),
          most,
          SEED);
    }
  },
  DAMAGE_COSTS_LITTLE_AND_IS_TOLD("damage costs the damaged samples only, and is told") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      byte[] bytes = golden.left();
      Heard whole = Heard.inOneBlock(adapters.get(), bytes);
      byte[] damaged = bytes.clone();
      Random random = new Random(SEED);
      for (int i = 0; i < 12; i++) {
        damaged[bytes.length / 2 + i] = (byte) random.nextInt(256);
      }
      Heard heard = Heard.inOneBlock(adapters.get(), damaged);
      require(
          heard.samples.size() >= whole.samples.size() - 6 * golden.samplesAFrame(),
          "12 damaged bytes cost %d samples",
          whole.samples.size() - heard.samples.size());
      require(
          heard.skippedBytes > whole.skippedBytes,
          "12 damaged bytes were passed over without a word (SampleSink.skipped)");
    }
  },
  NOISE_IS_NO_SAMPLE("noise throws nothing, gives no sample, and is told") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      byte[] noise = new byte[200_000];
      new Random(SEED).nextBytes(noise);
      Heard heard = Heard.inBlocks(adapters.get(), noise, 997);
      require(heard.samples.isEmpty(), "noise gave %d samples", heard.samples.size());
      require(
          heard.skippedBytes > noise.length / 2,
          "of %d bytes of noise only %d were told as skipped",
          noise.length,
          heard.skippedBytes);
    }
  },
  EACH_PORT_BEGINS_ANEW("two adapters share nothing") {
    @Override
    void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
      SensorAdapter first = adapters.get();
      Heard before = Heard.inOneBlock(first, golden.xUp());
      Heard.inOneBlock(first, Arrays.copyOf(golden.left(), golden.left().length - 3));
      Heard after = Heard.inOneBlock(adapters.get(), golden.xUp());
      require(
          before.isSameAs(after)
              && Double.compare(before.samples.get(0)[0], after.samples.get(0)[0]) == 0,
          "a new adapter reads the same bytes otherwise than the first did");
    }
  };

  private static final long SEED = 20260404;
  private static final int SEEDS = 8;
  private static final int ROUNDS = 12;
  private static final int DAMAGES = 40;

  private static final Set<Promise> OF_POSES =
      Set.of(
          GRAVITY_IS_9_81,
          Z_UP_IS_PLUS_Z,
          X_UP_IS_PLUS_X,
          A_QUARTER_TURN_LEFT_IS_PLUS_90_DEG,
          GYRO_AND_ACCELEROMETER_AGREE);

  private final String words;

  Promise(String words) {
    this.words = words;
  }

  /** The promise as people read it. */
  public String words() {
    return words;
  }

  /** Why this cannot be proved with what there is; empty when it can. */
  Optional<String> notProvable(
      Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check) {
    if (OF_POSES.contains(this) && !golden.isPosed()) {
      return Optional.of("not proved: a capture that is not posed tells nothing of axes and signs");
    }
    boolean isOfTime = this == TIME_IS_IN_SECONDS || this == TIME_GROWS;
    if (isOfTime && !Heard.inOneBlock(adapters.get(), golden.zUp()).hasClock()) {
      return Optional.of("not proved: the unit sends no time");
    }
    boolean isOfCheck = this == DAMAGE_INVENTS_NO_MORE_THAN_THE_CHECK_LETS_THROUGH;
    return isOfCheck && check == FrameCheck.NONE
        ? Optional.of("not promised: the unit sends no check, damaged samples come through")
        : Optional.empty();
  }

  abstract void check(Supplier<SensorAdapter> adapters, GoldenRecording golden, FrameCheck check);

  private static List<Double> asList(double[] sample) {
    return Arrays.stream(Heard.values(sample)).boxed().toList();
  }

  private static void require(boolean holds, String format, Object... found) {
    if (!holds) {
      throw new AssertionError(String.format(ROOT, format, found));
    }
  }
}
