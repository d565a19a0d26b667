package steadyturn.ingest.sensor.kit;

import steadyturn.ingest.lab.TextLineEncoder;
import steadyturn.ingest.sensor.SensorAdapter;
import steadyturn.ingest.sensor.frame.TextLineAdapter;

class TextLineAdapterTest extends AdapterKit {

  @Override
  protected SensorAdapter adapter() {
    return new TextLineAdapter();
  }

  @Override
  protected GoldenRecording golden() {
    return MadeGolden.of(new TextLineEncoder());
  }
}
