package steadyturn.fusion.wear.wrist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The numbers of this room against their sources, in constants.csv. */
class WristConstantsTest {

  @ParameterizedTest(name = "{0} is {1} {2}")
  @CsvFileSource(resources = "constants.csv")
  void theConstantIsThatOfItsSource(
      String id, double value, String unit, double tolerance, String source) {
    assertThat(source).as(id + " has a source").isNotBlank();
    assertThat(unit).isNotBlank();
    assertThat(value(id)).as(id).isCloseTo(value, within(tolerance));
  }

  private static double value(String id) {
    UnitStream still =
        MadeUnit.of(
            UnitFacts.plain(BodyPoint.LEAD_HAND, 100),
            3,
            t -> Vector3.ZERO,
            t -> new Vector3(9.8, 0, 0));
    return switch (id) {
      case "drawn-long-axis-sd" -> Math.toDegrees(UnitMount.onSkin().longAxisSdRad());
      case "drawn-axial-sd" -> Math.toDegrees(UnitMount.onShaft().axialSdRad());
      case "skin-slip-sd" -> Math.toDegrees(UnitMount.onSkin().slipSdRad());
      case "forearm-twist-sd" -> Math.toDegrees(UnitMount.onForearm().axialSlipSdRad());
      case "grip-slip-sd" -> Math.toDegrees(UnitMount.onShaft().slipSdRad());
      case "cocking-purity-limit" ->
          CockingStep.of(WristAlignment.nominal(), still, Vector3.ZERO, still, Vector3.ZERO, 1, 2)
              .result()
              .limit();
      case "neutral-wrist-limit" ->
          NeutralWrist.of(WristAlignment.nominal(), still, still, 1, 2).result().limit();
      default -> throw new IllegalArgumentException("no constant " + id);
    };
  }
}
