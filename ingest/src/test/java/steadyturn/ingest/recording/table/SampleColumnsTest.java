package steadyturn.ingest.recording.table;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** Two units of six values; sample i is at i / 4 s and slot k holds 1000 i + k. */
class SampleColumnsTest {

  private static final int SAMPLES = 50;
  private static final UnitFacts FACTS = UnitFacts.plain(BodyPoint.PELVIS, 4);

  private static SampleColumns columns() {
    SampleColumns columns = new SampleColumns(13, 0);
    for (int i = 0; i < SAMPLES; i++) {
      double[] row = new double[13];
      row[0] = i / 4.0;
      for (int k = 1; k < 13; k++) {
        row[k] = 1000 * i + k;
      }
      columns.append(row);
    }
    return columns;
  }

  @ParameterizedTest
  @CsvSource({"-1, 0", "0, 0", "0.1, 1", "0.25, 1", "0.26, 2", "12.25, 49", "12.3, 50"})
  void theFirstSampleAtOrAfterAnInstant(double instantS, int index) {
    assertThat(columns().indexAt(instantS)).isEqualTo(index);
  }

  @Test
  void aCopyHasItsSamplesItsUnitAndItsTimeMoved() {
    SampleColumns columns = columns();
    UnitStream second = columns.copy(FACTS, 7, 2, 5, 100);
    assertThat(second.timeColumnS()).containsExactly(100.5, 100.75, 101);
    for (int axis = 0; axis < 3; axis++) {
      assertThat(second.accelColumnMps2(axis))
          .containsExactly(2007 + axis, 3007 + axis, 4007 + axis);
      assertThat(second.gyroColumnRadPerS(axis))
          .containsExactly(2010 + axis, 3010 + axis, 4010 + axis);
    }
    assertThat(columns.timeS(2)).as("its own time stays").isEqualTo(0.5);
  }

  @Test
  void whatIsDroppedIsGoneAndTheRestMovesUp() {
    SampleColumns columns = columns();
    columns.dropBefore(10.1);
    assertThat(columns.size()).isEqualTo(9);
    assertThat(columns.timeS(0)).isEqualTo(10.25);
    assertThat(columns.lastTimeS()).isEqualTo(12.25);
    assertThat(columns.copy(FACTS, 1, 0, 1, 0).accelMps2(0, 0)).isEqualTo(41_001);
    columns.append(new double[13]);
    assertThat(columns.size()).isEqualTo(10);
  }

  @Test
  void allOfAUnitIsHandedOver() {
    UnitStream first = columns().handOver(FACTS, 1, -3);
    assertThat(first.size()).isEqualTo(SAMPLES);
    assertThat(first.timeS(0)).isEqualTo(-3);
    assertThat(first.timeS(49)).isEqualTo(9.25);
    assertThat(first.gyroRadPerS(2, 49)).isEqualTo(49_006);
  }
}
