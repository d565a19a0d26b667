package steadyturn.cli.bench;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks at the threads that are at work now and then and counts the rooms of the project on their
 * stacks: the innermost as the one that works, each other as one that waits for its answer.
 */
final class RoomShares {

  private static final String HOUSE = "steadyturn.";

  /** The room that looks is not part of what is looked at. */
  private static final String HERE = RoomShares.class.getPackageName();

  private final Map<String, Integer> inside = new HashMap<>();
  private final Map<String, Integer> within = new HashMap<>();
  private int looks;

  /** One look at a stack, innermost frame first; one without a room of ours is passed over. */
  void look(StackTraceElement[] stack) {
    Set<String> rooms = new HashSet<>();
    for (StackTraceElement frame : stack) {
      String room = room(frame.getClassName());
      if (!room.isEmpty()) {
        if (rooms.isEmpty()) {
          inside.merge(room, 1, Integer::sum);
        }
        if (rooms.add(room)) {
          within.merge(room, 1, Integer::sum);
        }
      }
    }
    looks += rooms.isEmpty() ? 0 : 1;
  }

  /** {@code fusion.wear} for a class of that package; an empty string outside the house. */
  private static String room(String type) {
    boolean ours = type.startsWith(HOUSE) && !type.startsWith(HERE + ".");
    return ours
        ? type.substring(HOUSE.length(), Math.max(HOUSE.length(), type.lastIndexOf('.')))
        : "";
  }

  /** The rooms, the one that works most first. */
  List<RoomShare> shares() {
    return within.keySet().stream()
        .map(
            room ->
                new RoomShare(
                    room,
                    (double) inside.getOrDefault(room, 0) / looks,
                    (double) within.getOrDefault(room, 0) / looks))
        .sorted(
            Comparator.comparingDouble(RoomShare::inside)
                .thenComparingDouble(RoomShare::within)
                .reversed()
                .thenComparing(RoomShare::room))
        .toList();
  }
}
