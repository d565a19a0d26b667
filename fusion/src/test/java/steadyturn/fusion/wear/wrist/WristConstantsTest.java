package steadyturn.fusion.wear.wrist;

import steadyturn.fusion.rotation.Vector3;
import steadyturn.fusion.trial.ConstantsTable;
import steadyturn.fusion.trial.MadeUnit;
import steadyturn.ingest.sample.BodyPoint;
import steadyturn.ingest.sample.UnitFacts;
import steadyturn.ingest.sample.UnitStream;

/** The numbers of this room against their sources, in constants.csv. */
class WristConstantsTest extends ConstantsTable {

  @Override
  protected double value(String id) {
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
