package steadyturn.ingest.sensor.kit;

import steadyturn.ingest.lab.BinaryFrameEncoder;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.frame.BinaryFrameAdapter;

class BinaryFrameAdapterTest extends AdapterKit {

  @Override
  protected SensorAdapter adapter() {
    return new BinaryFrameAdapter();
  }

  @Override
  protected GoldenRecording golden() {
    return MadeGolden.of(new BinaryFrameEncoder(16, 2000));
  }
}
