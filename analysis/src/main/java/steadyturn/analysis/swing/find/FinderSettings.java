package steadyturn.analysis.swing.find;

/**
 * What makes a full swing. Angles in rad, rates in rad/s, times in s.
 *
 * @param fastRadPerS in-plane rate a downswing must exceed
 * @param slowArmRadPerS in-plane rate the arm must exceed where the hand is fast: a cast spends the
 *     speed early
 * @param fastHandRadPerS in-plane rate the hand must exceed then
 * @param leastBackRad in-plane angle a backswing must exceed
 * @param shortestBackS shortest backswing, takeaway to top
 * @param longestBackS longest backswing
 * @param shortestDownS shortest downswing, top to impact
 * @param longestDownS longest downswing
 * @param leastForwardPart in-plane angle forward that the arm must cover, as a part of that back
 * @param beforeTakeawayS how much of the time before the takeaway belongs to the swing at most
 * @param afterImpactS how much of the time after impact belongs to the swing at most
 */
record FinderSettings(
    double fastRadPerS,
    double slowArmRadPerS,
    double fastHandRadPerS,
    double leastBackRad,
    double shortestBackS,
    double longestBackS,
    double shortestDownS,
    double longestDownS,
    double leastForwardPart,
    double beforeTakeawayS,
    double afterImpactS) {

  static FinderSettings defaults() {
    return new FinderSettings(
        Math.toRadians(500),
        Math.toRadians(350),
        Math.toRadians(900),
        Math.toRadians(60),
        0.35,
        1.8,
        0.08,
        0.6,
        0.9,
        3.0,
        4.0);
  }
}
