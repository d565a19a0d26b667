package steadyturn.fusion.displace;

import java.util.Optional;
import steadyturn.fusion.attitude.GyroTrack;
import steadyturn.fusion.rest.Rest;
import steadyturn.fusion.rest.RestGate;
import steadyturn.fusion.rest.RestSettings;
import steadyturn.fusion.rotation.Vector3;
import steadyturn.ingest.sample.UnitStream;

/** A rest before the one at address, from which the speed at address can be told. */
public final class EarlierRest {

  /**
   * An earlier rest lasts at least this, s; ends this before the address; lies this far back at
   * most.
   */
  private static final double REST_S = 0.4;

  private static final double GAP_S = 0.3;
  private static final double REACH_S = 5;

  /**
   * Sway, bias and scale put two rests some 5 deg apart that are one turn from another (0.3 m/s^2;
   * 0.5 deg/s for 5 s; 2 % of 90 deg); twice that, rad.
   */
  private static final double UNSEEN_TURN_RAD = Math.toRadians(10);

  private EarlierRest() {}

  /**
   * A rest of the player before taking up the address, at most some seconds back.
   *
   * @param bias rate shown at rest, unit axes, rad/s
   * @param addressFromS when the rest at address begins, s
   */
  public static Optional<Anchor> before(UnitStream window, Vector3 bias, double addressFromS) {
    double untilS = addressFromS - GAP_S;
    return new RestGate(RestSettings.address().atLeast(REST_S))
        .before(window, bias, Math.max(window.timeS(0), addressFromS - REACH_S), untilS)
        .filter(r -> turnsBetween(window, bias, r, addressFromS))
        .map(r -> new Anchor(r.startS(), r.endS(), 0.010, Math.toRadians(1.2), 0));
  }

  /**
   * Whether the turning between a rest and the address leads from the one's up to the other's; else
   * the unit was moved unseen, as where its cable was out while it was put on, and the rest tells
   * nothing of this swing.
   */
  private static boolean turnsBetween(
      UnitStream window, Vector3 bias, Rest rest, double addressFromS) {
    UnitStream between = window.between(rest.startS(), addressFromS + REST_S);
    GyroTrack track = GyroTrack.of(between, bias);
    Vector3 upAtAddress =
        track
            .levelled(0, track.indexAt(rest.endS()))
            .meanForceTrack(track.indexAt(addressFromS), track.size());
    return upAtAddress.unit().z() > Math.cos(UNSEEN_TURN_RAD);
  }
}
