package steadyturn.analysis.lab.family;

/**
 * How one player's swings run in time, whatever their sizes.
 *
 * @param startPower the arm sets off as the time to this power: large is a slow, one-piece start
 * @param topPower it comes to the top as the time left to this power
 * @param uneven by how much its speed wavers on the way, in logarithms
 * @param downPower it gathers speed from the top as the time to this power
 * @param peakAt part of the downswing at which it is fastest
 * @param slowing part of that speed left at impact
 * @param throughPower it comes to the finish as the time left to this power
 * @param lateS how much later than the arm each pelvis joint sets off; earlier below 0
 * @param wander by how much a joint strays between its ends, in parts of its way
 * @param setFrom part of the backswing at which the wrist begins to cock
 * @param setUntil part at which it has
 * @param rollS how long before impact the forearm begins to roll back
 * @param pauseS how long the arm waits at the top
 * @param loopRad by how much the arm's plane swings out at the top
 * @param playRad by how much the hand turns about the forearm's length, beside the joint's axes
 */
public record SwingTiming(
    double startPower,
    double topPower,
    double uneven,
    double downPower,
    double peakAt,
    double slowing,
    double throughPower,
    double lateS,
    double wander,
    double setFrom,
    double setUntil,
    double rollS,
    double pauseS,
    double loopRad,
    double playRad) {

  /** The same with a wait at the top. */
  public SwingTiming pausing(double waitS) {
    return new SwingTiming(
        startPower,
        topPower,
        uneven,
        downPower,
        peakAt,
        slowing,
        throughPower,
        lateS,
        wander,
        setFrom,
        setUntil,
        rollS,
        waitS,
        loopRad,
        playRad);
  }
}
