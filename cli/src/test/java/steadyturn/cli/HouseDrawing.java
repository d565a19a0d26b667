package steadyturn.cli;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The plan of the house, from its compiled classes and the number of its sources: a column a
 * module, in it a box a room with its files, an arrow from each room to each room of the same
 * module that it uses, and below each room the rooms of other modules it uses. Rooms that use
 * nothing of their module lie lowest.
 */
@SuppressWarnings("NullAway") // every name looked up was laid in just before
final class HouseDrawing {

  private static final int WIDTH = 1480;
  private static final int COLUMN = 360;
  private static final int BOX = 250;
  private static final int TOP = 96;
  private static final int LINE = 15;
  private static final int AIR = 16;
  private static final int TITLE = 24;
  private static final List<String> INKS = List.of("#1d6996", "#c0561e", "#3b7d3a", "#7a4b94");

  /** A room: its files, the rooms it uses in its module, and those of others, module by module. */
  private record Room(String name, int files, Set<String> near, Map<String, Set<String>> far) {

    List<String> farLines() {
      List<String> lines = new ArrayList<>();
      far.forEach((module, rooms) -> lines.addAll(wrapped(module, rooms)));
      return lines;
    }

    private static List<String> wrapped(String module, Set<String> rooms) {
      List<String> lines = new ArrayList<>();
      String line = module + ":";
      for (String room : rooms) {
        if (line.length() + room.length() > 40) {
          lines.add(line);
          line = " ";
        }
        line += " " + room;
      }
      lines.add(line);
      return lines;
    }

    int height() {
      return TITLE + 8 + LINE * farLines().size();
    }
  }

  private final Map<String, Map<String, Room>> modules = new LinkedHashMap<>();
  private final StringBuilder svg = new StringBuilder();

  private HouseDrawing(JavaClasses house) throws IOException {
    for (String module : SourceFiles.MODULES) {
      modules.put(module, new TreeMap<>());
    }
    for (Path file : SourceFiles.main()) {
      String[] parts = parts(SourceFiles.HOME.relativize(file.getParent()).toString());
      modules
          .get(parts[0])
          .merge(
              parts[1],
              new Room(parts[1], 1, new TreeSet<>(), new TreeMap<>()),
              (room, one) -> new Room(room.name, room.files + 1, room.near, room.far));
    }
    house.forEach(this::uses);
  }

  /** Module and room of {@code analysis/src/main/java/steadyturn/analysis/swing/find}. */
  private static String[] parts(String folder) {
    String[] sides = folder.split("/src/main/java/steadyturn/?", -1);
    String room = sides.length < 2 ? "" : sides[1].replaceFirst("^" + sides[0] + "/?", "");
    return new String[] {sides[0], room.isEmpty() ? "(door)" : room.replace('/', '.')};
  }

  private static String[] place(JavaClass type) {
    String[] names = type.getPackageName().split("\\.", 3);
    return new String[] {names.length < 2 ? "" : names[1], names.length < 3 ? "(door)" : names[2]};
  }

  private void uses(JavaClass type) {
    String[] from = place(type);
    for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
      JavaClass target = dependency.getTargetClass().getBaseComponentType();
      String[] to = place(target);
      if (!target.getPackageName().startsWith("steadyturn") || !modules.containsKey(to[0])) {
        continue;
      }
      Room room = modules.get(from[0]).get(from[1]);
      if (!from[0].equals(to[0])) {
        room.far.computeIfAbsent(to[0], m -> new TreeSet<>()).add(to[1]);
      } else if (!from[1].equals(to[1])) {
        room.near.add(to[1]);
      }
    }
  }

  static String of(JavaClasses house) throws IOException {
    return new HouseDrawing(house).draw();
  }

  private String draw() {
    int height = 0;
    int column = 0;
    for (Map.Entry<String, Map<String, Room>> module : modules.entrySet()) {
      height = Math.max(height, module(module.getKey(), module.getValue(), 24 + COLUMN * column++));
    }
    String head =
        """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %1$d %2$d" width="%1$d" height="%2$d" font-family="sans-serif" font-size="12">
        <title>The house: modules, rooms, files a room, who uses whom</title>
        <style>
        rect{fill:#fff;stroke:#555} .room{font-weight:bold;font-size:13px} .far{fill:#555;font-size:11px}
        .module{font-size:20px;font-weight:bold} path{fill:none;stroke-width:1.2}
        .lab{fill:#f3efe2}
        </style>
        <rect x="0" y="0" width="%1$d" height="%2$d" style="fill:#fbfbf9;stroke:none"/>
        <text x="24" y="28" class="room">Each box is a room (package) with its number of files. A line leaves a room at its side and ends with a dot at a room of the same module that it uses;</text>
        <text x="24" y="46" class="room">grey: the rooms of other modules that it uses. Whole modules: cli uses analysis, fusion, ingest; analysis uses fusion, ingest; fusion uses ingest.</text>
        """;
    return head.formatted(WIDTH, height + AIR) + svg + "</svg>\n";
  }

  /** Draws a column and returns where it ends. */
  private int module(String name, Map<String, Room> rooms, int x) {
    int files = rooms.values().stream().mapToInt(Room::files).sum();
    text(x, TOP - 16, "module", name + " (" + rooms.size() + " rooms, " + files + " files)");
    Map<String, Integer> top = new LinkedHashMap<>();
    int y = TOP;
    for (Room room : fromTheTop(rooms)) {
      top.put(room.name, y);
      box(room, x, y);
      y += room.height() + AIR;
    }
    int lane = 0;
    for (String room : top.keySet()) {
      int uses = rooms.get(room).near.size();
      if (uses > 0) {
        arrows(x + BOX, top.get(room) + TITLE / 2, rooms.get(room).near, top, lane++);
      }
    }
    return y;
  }

  /** Users above what they use. */
  private static List<Room> fromTheTop(Map<String, Room> rooms) {
    Map<String, Integer> depth = new TreeMap<>();
    rooms.keySet().forEach(room -> depth(room, rooms, depth));
    return rooms.values().stream()
        .sorted(
            (a, b) ->
                depth.get(a.name).equals(depth.get(b.name))
                    ? a.name.compareTo(b.name)
                    : depth.get(b.name) - depth.get(a.name))
        .toList();
  }

  private static int depth(String room, Map<String, Room> rooms, Map<String, Integer> known) {
    if (!known.containsKey(room)) {
      int most = 0;
      for (String used : rooms.get(room).near) {
        most = Math.max(most, 1 + depth(used, rooms, known));
      }
      known.put(room, most);
    }
    return known.get(room);
  }

  private void box(Room room, int x, int y) {
    String kind = room.name.matches("(.*\\.)?lab(\\..*)?") ? " class=\"lab\"" : "";
    append("<rect x='%d' y='%d' width='%d' height='%d' rx='4'%s/>", x, y, BOX, room.height(), kind);
    text(x + 8, y + 18, "room", room.name);
    append("<text x='%d' y='%d' text-anchor='end'>%d</text>", x + BOX - 8, y + 18, room.files);
    int line = y + TITLE + 10;
    for (String far : room.farLines()) {
      text(x + 8, line, "far", far);
      line += LINE;
    }
  }

  /** One lane a room that uses others: out to the lane, down it, back to each of them. */
  private void arrows(int x, int y, Set<String> near, Map<String, Integer> top, int lane) {
    int out = x + 8 + 5 * lane;
    String ink = INKS.get(lane % INKS.size());
    for (String used : near) {
      int end = top.get(used) + TITLE / 2 - 8 + (5 * lane) % 16;
      append("<path d='M%d %dH%dV%dH%d' stroke='%s'/>", x, y, out, end, x, ink);
      append("<circle cx='%d' cy='%d' r='2.5' fill='%s'/>", x, end, ink);
    }
  }

  private void text(int x, int y, String kind, String words) {
    append("<text x='%d' y='%d' class='%s' xml:space='preserve'>%s</text>", x, y, kind, words);
  }

  private void append(String form, Object... values) {
    svg.append(form.replace('\'', '"').formatted(values)).append('\n');
  }
}
