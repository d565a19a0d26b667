package steadyturn.cli.command.live;

/** The text of a new adapter and of its test. */
final class AdapterSkeleton {

  private static final String ADAPTER =
      """
      package steadyturn.ingest.sensor;

      import java.nio.ByteBuffer;

      /** Reads NAME: say here what it sends, byte by byte. */
      public final class TYPE implements SensorAdapter {

        // Frames of one length that begin with known bytes. For text use LineProtocol, for frames
        // ended by a zero CobsFrames. Here: AA 55, u32 microseconds, 6 x i16, CRC-16.
        private final SyncFrames frames =
            new SyncFrames(new byte[] {(byte) 0xAA, 0x55}, 20, this::frame);
        private final WrappingCounter micros = new WrappingCounter(32);

        @Override
        public String name() {
          return "NAME";
        }

        @Override
        public void read(ByteBuffer bytes, SampleSink sink) {
          frames.read(bytes, sink);
        }

        private boolean frame(ByteBuffer f, SampleSink sink) {
          if (Crc16.CCITT_FALSE.of(f, 0, 18) != (f.getShort(18) & 0xFFFF)) {
            return false;
          }
          double accel = 16 * 9.80665 / 32768; // its range, in m/s^2
          double gyro = Math.toRadians(2000) / 32768; // its range, in rad/s
          double timeS = micros.next(f.getInt(2) & 0xFFFFFFFFL) * 1e-6;
          sink.sample(
              timeS,
              f.getShort(6) * accel,
              f.getShort(8) * accel,
              f.getShort(10) * accel,
              f.getShort(12) * gyro,
              f.getShort(14) * gyro,
              f.getShort(16) * gyro);
          return true;
        }
      }
      """;

  private static final String TEST =
      """
      package steadyturn.ingest.sensor.kit;

      import steadyturn.ingest.sensor.SensorAdapter;
      import steadyturn.ingest.sensor.TYPE;

      class TYPETest extends AdapterKit {

        @Override
        protected SensorAdapter adapter() {
          return new TYPE();
        }

        /** Captures from the real unit; see docs/how-to/add-a-unit.md for how they are taken. */
        @Override
        protected GoldenRecording golden() {
          return GoldenRecording.beside(TYPETest.class, "NAME", 200);
        }
      }
      """;

  private AdapterSkeleton() {}

  static String adapter(String name, String type) {
    return ADAPTER.replace("TYPE", type).replace("NAME", name);
  }

  static String test(String name, String type) {
    return TEST.replace("TYPE", type).replace("NAME", name);
  }
}
