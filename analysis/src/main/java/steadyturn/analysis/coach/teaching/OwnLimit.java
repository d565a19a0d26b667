package steadyturn.analysis.coach.teaching;

/** A limit the teacher set for one player or club; an empty player or club means every one. */
public record OwnLimit(String player, String club, String limit, double value) {

  boolean isFor(String somePlayer, String someClub) {
    return (player.isEmpty() || player.equals(somePlayer))
        && (club.isEmpty() || club.equals(someClub));
  }
}
