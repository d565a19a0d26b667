package steadyturn.cli.bench;

/**
 * What one room takes of the time in which the project's code runs.
 *
 * @param inside its own code, 0 to 1
 * @param within its own code and all that it calls, 0 to 1
 */
public record RoomShare(String room, double inside, double within) {}
