package steadyturn.ingest.sensor.maker;

import org.junit.jupiter.api.Nested;
import steadyturn.ingest.lab.Frames55Encoder;
import steadyturn.ingest.lab.UnitEncoder;
import steadyturn.ingest.lab.XImu3Encoder;
import steadyturn.ingest.lab.XbusEncoder;
import steadyturn.ingest.sensor.FrameCheck;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.UnitOptions;
import steadyturn.ingest.sensor.kit.AdapterKit;
import steadyturn.ingest.sensor.kit.GoldenRecording;
import steadyturn.ingest.sensor.kit.MadeGolden;

/** Every framing of every shipped unit keeps the promises, on made poses and on real captures. */
class MakerKitTest {

  /** The unit after the adapter's own commands reached it. */
  static <E extends UnitEncoder> E setUp(E unit, SensorAdapter adapter) {
    adapter.configure((bytes, pauseMs) -> unit.heard(bytes));
    return unit;
  }

  @Nested
  class Frames55WithSums extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new Frames55Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(setUp(new Frames55Encoder(false), adapter()));
    }
  }

  @Nested
  class Frames55WithoutTime extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new Frames55Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(new Frames55Encoder(false));
    }
  }

  @Nested
  class Frames55OfTwentyBytes extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new Frames55Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(new Frames55Encoder(true));
    }

    @Override
    protected FrameCheck check() {
      return FrameCheck.NONE;
    }
  }

  @Nested
  class Frames55Captured extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new Frames55Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return GoldenRecording.ofCapture(100, Captures.wt901(), 1);
    }

    @Override
    protected FrameCheck check() {
      return FrameCheck.NONE;
    }
  }

  @Nested
  class XImu3Text extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new XImu3Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(new XImu3Encoder(""));
    }
  }

  @Nested
  class XImu3Binary extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new XImu3Adapter();
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(setUp(new XImu3Encoder(""), adapter()));
    }
  }

  @Nested
  class Xbus extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      SensorAdapter adapter = new XbusAdapter();
      adapter.choose(UnitOptions.of("rate=200", 0));
      return adapter;
    }

    @Override
    protected GoldenRecording golden() {
      return MadeGolden.of(setUp(new XbusEncoder(), adapter()));
    }
  }

  @Nested
  class CwaCaptured extends AdapterKit {
    @Override
    protected SensorAdapter adapter() {
      return new CwaAdapter();
    }

    @Override
    protected GoldenRecording golden() {
      return GoldenRecording.ofCapture(100, Captures.ax6(), 40);
    }
  }
}
